package dev.waterjet.calibrate;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * Regression by weights that decrease with the residual over a scale (M-estimates), and the scale of residuals of which nearly half
 * may be wrong. Bisquare and tuning constants: Beaton and Tukey (1974), Huber (1981), Yohai (1987), from memory.
 *
 * @param rows measured rows; their known deviations have no part
 */
record RobustRows(CutRows rows) {

    /** Efficiency of 95 % for a normal scatter. */
    static final double HUBER = 1.345;

    static final double BISQUARE = 4.685061;

    /** Bisquare whose mean over a normal scatter is a half, so that up to half of the rows may be far off. */
    static final double HALF = 1.547645;

    /** Ratio of the median absolute deviation of a normal distribution to its standard deviation. */
    static final double MAD = 0.6745;

    private static final double TOLERANCE = 1e-12;
    private static final int MOST_STEPS = 500;

    double[] residuals(double[] beta) {
        double[] residuals = new double[rows.size()];
        Arrays.setAll(residuals, i -> rows.middle(i) - rows.predicted(i, beta));
        return residuals;
    }

    /** Scale from the median size of residuals. */
    static double median(double[] residuals) {
        return new Median().evaluate(Arrays.stream(residuals).map(Math::abs).toArray()) / MAD;
    }

    /** Scale at which the mean bisquare loss of the residuals is a half, with n - p in place of n. */
    double scale(double[] residuals, double start) {
        double scale = start;
        for (int step = 0; step < MOST_STEPS && scale > 0; step++) {
            double next = scale * Math.sqrt(2 * loss(residuals, scale));
            boolean isFound = Math.abs(next - scale) <= TOLERANCE * scale;
            scale = next;
            if (isFound) {
                break;
            }
        }
        return scale;
    }

    /** Mean bisquare loss: 1 for a far residual. */
    double loss(double[] residuals, double scale) {
        double sum = 0;
        for (double residual : residuals) {
            double square = residual / scale / HALF * (residual / scale / HALF);
            double rest = 1 - Math.min(1, square);
            sum += 1 - rest * rest * rest;
        }
        return sum / (residuals.length - rows.width());
    }

    static double bisquare(double scaled, double tuning) {
        double share = scaled / tuning;
        double rest = Math.max(0, 1 - share * share);
        return rest * rest;
    }

    static double huber(double scaled) {
        double size = Math.abs(scaled);
        return size <= HUBER ? 1 : HUBER / size;
    }

    /** Coefficients of the rows with weights; the start itself if the weights leave too few rows. */
    double[] weighted(double[] start, double[] weights) {
        int p = start.length;
        double[][] squares = new double[p][p];
        double[] products = new double[p];
        for (int i = 0; i < weights.length; i++) {
            double[] x = rows.x()[i];
            for (int j = 0; j < p; j++) {
                products[j] += weights[i] * x[j] * rows.middle(i);
                for (int k = 0; k < p; k++) {
                    squares[j][k] += weights[i] * x[j] * x[k];
                }
            }
        }
        return Matrices.isPositive(squares) ? Matrices.times(Matrices.inverse(squares), products) : start;
    }

    double[] step(double[] beta, double scale, DoubleUnaryOperator weight) {
        return weighted(
                beta,
                Arrays.stream(residuals(beta))
                        .map(residual -> weight.applyAsDouble(residual / scale))
                        .toArray());
    }

    /** Coefficients at which the weights of their own residuals give them again, with a scale that is held. */
    double[] settled(double[] start, double scale, DoubleUnaryOperator weight) {
        double[] beta = start;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] next = step(beta, scale, weight);
            boolean isFound = isNear(beta, next, scale);
            beta = next;
            if (isFound) {
                break;
            }
        }
        return beta;
    }

    static boolean isNear(double[] one, double[] other, double scale) {
        double largest = 0;
        for (int j = 0; j < one.length; j++) {
            largest = Math.max(largest, Math.abs(one[j] - other[j]));
        }
        return largest <= 1e-10 * scale;
    }

    /** Huber's coefficients from those of least squares, with the median scale found anew in every step. */
    double[] ofHuber() {
        double[] beta = weighted(new double[rows.width()], ones());
        for (int step = 0; step < MOST_STEPS; step++) {
            double scale = median(residuals(beta));
            if (!(scale > 0)) {
                return beta;
            }
            double[] next = step(beta, scale, RobustRows::huber);
            if (isNear(beta, next, scale)) {
                return next;
            }
            beta = next;
        }
        return beta;
    }

    private double[] ones() {
        double[] ones = new double[rows.size()];
        Arrays.fill(ones, 1);
        return ones;
    }
}
