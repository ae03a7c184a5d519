package dev.waterjet.calibrate;

import org.apache.commons.math3.distribution.TDistribution;

/**
 * Influence of measured cuts on a least-squares fit.
 *
 * @param residuals observed less fitted
 * @param leverages leverage of each row
 * @param deleted residuals over the standard deviation that the other rows give them; NaN where these leave no freedom
 * @param cook Cook's distances
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record Influence(double[] residuals, double[] leverages, double[] deleted, double[] cook) {

    static Influence of(CutRows rows) {
        int n = rows.size();
        int p = rows.width();
        MarginalLikelihood likelihood = new MarginalLikelihood(rows);
        double[] beta = VarianceFit.coefficients(likelihood, p, 1, 0);
        double[][] inverse = Matrices.inverse(likelihood.derivatives(beta, 1, 0).information());
        double[] residuals = new double[n];
        double[] leverages = new double[n];
        double squares = 0;
        for (int i = 0; i < n; i++) {
            residuals[i] = rows.lo()[i] - rows.predicted(i, beta);
            leverages[i] = Math.min(1, Matrices.square(rows.x()[i], inverse));
            squares += residuals[i] * residuals[i];
        }
        double[] deleted = new double[n];
        double[] cook = new double[n];
        double variance = squares / (n - p);
        for (int i = 0; i < n; i++) {
            double rest = 1 - leverages[i];
            double without = (squares - residuals[i] * residuals[i] / rest) / (n - p - 1);
            deleted[i] = n - p - 1 < 1 ? Double.NaN : residuals[i] / Math.sqrt(Math.max(0, without) * rest);
            cook[i] = residuals[i] * residuals[i] * leverages[i] / (p * variance * rest * rest);
        }
        return new Influence(residuals, leverages, deleted, cook);
    }

    /** Probability that the largest of n deleted residuals is larger, by Bonferroni. */
    static double outlierProbability(double deleted, int count, int freedom) {
        return Math.min(1, count * 2 * new TDistribution(null, freedom).cumulativeProbability(-Math.abs(deleted)));
    }
}
