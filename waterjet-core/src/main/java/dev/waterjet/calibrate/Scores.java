package dev.waterjet.calibrate;

import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.special.Gamma;

/** Scores by which models of the same cuts are compared. */
final class Scores {

    private Scores() {}

    /** Akaike's criterion with its correction for few data; {@code parameters} counts the deviations too. */
    static double aicc(double logLikelihood, int parameters, int count) {
        double k = parameters;
        return -2 * logLikelihood + 2 * k + 2 * k * (k + 1) / (count - k - 1);
    }

    /** Logarithm of the predictive density of each measured row by a fit to the others. */
    static double[] leaveOneOut(CutRows rows) {
        return IntStream.range(0, rows.size())
                .mapToDouble(i -> jointStudent(rows.without(i), rows.only(i)))
                .toArray();
    }

    /** Logarithm of the joint predictive density of the rows of each plate, by a fit to the other plates. */
    static double[] leavePlatesOut(CutRows rows) {
        return IntStream.range(0, rows.plates())
                .mapToDouble(g -> jointStudent(rows.ofPlate(g, false), rows.ofPlate(g, true)))
                .toArray();
    }

    /** The same with plates as a random effect: normal, with the fitted deviations taken as known. */
    static double[] leavePlatesOutOfMixed(CutRows rows) {
        return IntStream.range(0, rows.plates())
                .mapToDouble(g -> {
                    VarianceFit fit = VarianceFit.of(rows.ofPlate(g, false), true);
                    CutRows left = rows.ofPlate(g, true);
                    double[][] covariance = covariance(left, fit.covariance(), fit.sigma() * fit.sigma());
                    return jointNormal(residuals(left, fit.beta()), plus(covariance, fit.tau() * fit.tau()));
                })
                .toArray();
    }

    private static double[][] plus(double[][] matrix, double common) {
        double[][] sum = new double[matrix.length][matrix.length];
        for (int i = 0; i < sum.length; i++) {
            for (int j = 0; j < sum.length; j++) {
                sum[i][j] = matrix[i][j] + common;
            }
        }
        return sum;
    }

    private static double[] residuals(CutRows rows, double[] beta) {
        return IntStream.range(0, rows.size())
                .mapToDouble(i -> rows.lo()[i] - rows.predicted(i, beta))
                .toArray();
    }

    private static double[][] covariance(CutRows rows, double[][] ofCoefficients, double variance) {
        int n = rows.size();
        double[][] matrix = new double[n][n];
        for (int i = 0; i < n; i++) {
            double[] times = Matrices.times(ofCoefficients, rows.x()[i]);
            for (int j = 0; j < n; j++) {
                matrix[i][j] = Matrices.dot(times, rows.x()[j]) + (i == j ? variance : 0);
            }
        }
        return matrix;
    }

    private static double jointNormal(double[] residuals, double[][] covariance) {
        return -residuals.length * NormalTails.LOG_ROOT_TWO_PI
                - Matrices.logDeterminant(covariance) / 2
                - Matrices.square(residuals, Matrices.inverse(covariance)) / 2;
    }

    private static double jointStudent(CutRows fitted, CutRows left) {
        VarianceFit fit = VarianceFit.of(
                new CutRows(fitted.lo(), fitted.up(), fitted.x(), fitted.delta(), new int[fitted.size()], 0), true);
        double freedom = fitted.size() - fitted.width();
        double[][] scale = covariance(left, fit.covariance(), fit.sigma() * fit.sigma());
        double[] residuals = residuals(left, fit.beta());
        int n = residuals.length;
        if (n == 1) {
            double deviation = Math.sqrt(scale[0][0]);
            return new TDistribution(null, freedom).logDensity(residuals[0] / deviation) - Math.log(deviation);
        }
        return Gamma.logGamma((freedom + n) / 2)
                - Gamma.logGamma(freedom / 2)
                - n / 2.0 * Math.log(freedom * Math.PI)
                - Matrices.logDeterminant(scale) / 2
                - (freedom + n) / 2 * Math.log1p(Matrices.square(residuals, Matrices.inverse(scale)) / freedom);
    }
}
