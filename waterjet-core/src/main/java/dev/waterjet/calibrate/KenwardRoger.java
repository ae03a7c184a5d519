package dev.waterjet.calibrate;

import java.util.Arrays;

/**
 * Small-sample covariance and degrees of freedom of coefficients of measured values on plates: Kenward and Roger, Biometrics 53
 * (1997) 983-997 (from memory). The covariance holds the uncertainty of both variances; the degrees of freedom come from their
 * expected information, where Satterthwaite's come from the observed one.
 *
 * @param covariance adjusted covariance of the coefficients
 * @param plain covariance with both variances taken as known
 * @param changes derivative of the plain covariance by each variance
 * @param variances covariance of both variances
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record KenwardRoger(double[][] covariance, double[][] plain, double[][][] changes, double[][] variances) {

    /** Sums over plates: P by one variance, Q by two, and traces. */
    private static final class Sums {

        final double[][][] first;
        final double[][][][] second;
        final double[][] traces = new double[2][2];

        Sums(int width) {
            first = new double[2][width][width];
            second = new double[2][2][width][width];
        }
    }

    /**
     * Returns the adjustment for a fit by the restricted likelihood.
     *
     * @param fit the fit, with a spread between plates above 0
     */
    static KenwardRoger of(VarianceFit fit) {
        CutRows rows = fit.rows();
        int p = rows.width();
        Sums sums = new Sums(p);
        for (int[] plate : rows.byPlate()) {
            add(rows, plate, fit.sigma(), fit.tau(), sums);
        }
        double[][] plain = fit.covariance();
        double[][] information = new double[2][2];
        double[][][] changes = new double[2][][];
        for (int i = 0; i < 2; i++) {
            // dV^-1 is negative, so that the covariance grows with a variance
            changes[i] = product(product(plain, sums.first[i]), plain);
            for (int j = 0; j < 2; j++) {
                double[][] both = product(product(plain, sums.first[i]), product(plain, sums.first[j]));
                information[i][j] =
                        (sums.traces[i][j] - 2 * trace(product(plain, sums.second[i][j])) + trace(both)) / 2;
            }
        }
        double[][] variances = Matrices.inverse(information);
        double[][] bias = new double[p][p];
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                double[][] inner = Matrices.sum(
                        sums.second[i][j], Matrices.scaled(product(product(sums.first[i], plain), sums.first[j]), -1));
                bias = Matrices.sum(bias, Matrices.scaled(inner, variances[i][j]));
            }
        }
        double[][] adjusted = Matrices.sum(plain, Matrices.scaled(product(product(plain, bias), plain), 2));
        return new KenwardRoger(adjusted, plain, changes, variances);
    }

    /** Adds a plate, of which the inverse covariance is known: (I - c 11') / d, row by row. */
    private static void add(CutRows rows, int[] plate, double sigma, double tau, Sums sums) {
        int n = plate.length;
        double[] weight = Arrays.stream(plate)
                .mapToDouble(i -> 1 / Math.pow(rows.deviation(i, sigma), 2))
                .toArray();
        double shrink = tau * tau / (1 + tau * tau * Arrays.stream(weight).sum());
        double[][] inverse = new double[n][n];
        double[][] x = new double[n][];
        for (int i = 0; i < n; i++) {
            x[i] = rows.x()[plate[i]];
            for (int j = 0; j < n; j++) {
                inverse[i][j] = (i == j ? weight[i] : 0) - shrink * weight[i] * weight[j];
            }
        }
        double[][] ones = new double[n][n];
        Arrays.stream(ones).forEach(row -> Arrays.fill(row, 1));
        double[][] across = product(inverse, x);
        // derivatives of the covariance of the plate: the unit matrix by the scatter, ones by the spread
        double[][][] changed = {across, product(ones, across)};
        double[][][] scaled = {inverse, product(inverse, ones)};
        for (int i = 0; i < 2; i++) {
            sums.first[i] = Matrices.sum(sums.first[i], product(transposed(across), changed[i]));
            for (int j = 0; j < 2; j++) {
                double[][] inner = product(transposed(changed[i]), product(inverse, changed[j]));
                sums.second[i][j] = Matrices.sum(sums.second[i][j], inner);
                sums.traces[i][j] += trace(product(scaled[i], scaled[j]));
            }
        }
    }

    private static double[][] product(double[][] one, double[][] other) {
        double[][] product = new double[one.length][other[0].length];
        for (int i = 0; i < one.length; i++) {
            for (int k = 0; k < other.length; k++) {
                for (int j = 0; j < other[0].length; j++) {
                    product[i][j] += one[i][k] * other[k][j];
                }
            }
        }
        return product;
    }

    private static double[][] transposed(double[][] matrix) {
        double[][] transposed = new double[matrix[0].length][matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < matrix[0].length; j++) {
                transposed[j][i] = matrix[i][j];
            }
        }
        return transposed;
    }

    private static double trace(double[][] matrix) {
        double trace = 0;
        for (int i = 0; i < matrix.length; i++) {
            trace += matrix[i][i];
        }
        return trace;
    }

    /** Degrees of freedom of a combination of the coefficients. */
    double degreesOfFreedom(double[] settings) {
        double value = Matrices.square(settings, plain);
        double[] gradient = {Matrices.square(settings, changes[0]), Matrices.square(settings, changes[1])};
        return 2 * value * value / Matrices.square(gradient, variances);
    }
}
