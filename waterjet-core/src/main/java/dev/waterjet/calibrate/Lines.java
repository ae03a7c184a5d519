package dev.waterjet.calibrate;

import java.util.function.IntFunction;

/** Statistics of readings along lines: a line is one specimen, and its readings are not independent. */
final class Lines {

    private Lines() {}

    /** Coefficient of {@code readings = k drivers} of one line, by least squares. */
    static double slope(double[] drivers, double[] readings) {
        return Matrices.dot(drivers, readings) / Matrices.dot(drivers, drivers);
    }

    /**
     * Standard errors of least squares that hold if the readings of a line are correlated in any manner (cluster sandwich).
     *
     * @param rows measured rows, with a line as plate
     * @param isCorrected whether the variance is multiplied by G/(G-1) (n-1)/(n-p)
     */
    static double[] clusterErrors(CutRows rows, boolean isCorrected) {
        int n = rows.size();
        int p = rows.width();
        int lines = rows.plates();
        MarginalLikelihood likelihood = new MarginalLikelihood(rows);
        double[] beta = VarianceFit.coefficients(likelihood, p, 1, 0);
        double[][] inverse = Matrices.inverse(likelihood.derivatives(beta, 1, 0).information());
        double[][] middle = new double[p][p];
        for (int[] line : rows.byPlate()) {
            double[] score = new double[p];
            for (int i : line) {
                double residual = rows.lo()[i] - rows.predicted(i, beta);
                for (int j = 0; j < p; j++) {
                    score[j] += residual * rows.x()[i][j];
                }
            }
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                    middle[j][k] += score[j] * score[k];
                }
            }
        }
        double factor = isCorrected ? (double) lines / (lines - 1) * (n - 1) / (n - p) : 1;
        double[] errors = new double[p];
        for (int j = 0; j < p; j++) {
            errors[j] = Math.sqrt(factor * Matrices.square(inverse[j], middle));
        }
        return errors;
    }

    /**
     * Standard errors of estimates by leaving out each line in turn (jackknife), which hold if the readings of a line are
     * correlated in any manner, for an estimate of any kind.
     *
     * @param lines number of lines, 2 or more
     * @param without estimates without a line
     */
    static double[] leaveOneOutErrors(int lines, IntFunction<double[]> without) {
        double[][] estimates = new double[lines][];
        for (int l = 0; l < lines; l++) {
            estimates[l] = without.apply(l);
        }
        double[] errors = new double[estimates[0].length];
        for (int j = 0; j < errors.length; j++) {
            double mean = 0;
            for (double[] estimate : estimates) {
                mean += estimate[j] / lines;
            }
            for (double[] estimate : estimates) {
                errors[j] += (estimate[j] - mean) * (estimate[j] - mean);
            }
            errors[j] = Math.sqrt((lines - 1.0) / lines * errors[j]);
        }
        return errors;
    }
}
