package dev.waterjet.calibrate;

import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.PointValuePair;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Maximum of a smooth log-likelihood of a few parameters: Nelder and Mead to come near, then Newton's method with derivatives
 * by differences, which also gives the observed information.
 */
final class Maximizer {

    private static final int MAX_STEPS = 60;
    private static final double SETTLED = 1e-9;

    /** Step of a difference, as a share of the width over which the logarithm falls by one half. */
    private static final double STEP = 0.01;

    /** Change of a width that needs no further round. */
    private static final double NEAR = 0.2;

    private final ToDoubleFunction<double[]> logLikelihood;

    /** Place of the maximum, its value, and minus the matrix of second derivatives there. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Maximum(double[] at, double value, double[][] information) {

        boolean isRegular() {
            return Matrices.isPositive(information);
        }

        double[][] covariance() {
            return Matrices.inverse(information);
        }
    }

    Maximizer(ToDoubleFunction<double[]> logLikelihood) {
        this.logLikelihood = logLikelihood;
    }

    private double at(double[] point) {
        double value = logLikelihood.applyAsDouble(point);
        return Double.isNaN(value) ? Double.NEGATIVE_INFINITY : value;
    }

    /** Searches from a start, with first steps of a size. */
    Maximum from(double[] start, double[] sizes) {
        Maximum direct = newton(start, sizes);
        if (direct.isRegular()) {
            return direct;
        }
        double[] near = start;
        for (int round = 0; round < 2; round++) {
            near = simplex(near, sizes);
        }
        return newton(near, sizes);
    }

    private double[] simplex(double[] start, double[] sizes) {
        try {
            PointValuePair best = new SimplexOptimizer(1e-9, 1e-9)
                    .optimize(
                            new MaxEval(4000),
                            new ObjectiveFunction(point -> Math.max(-1e300, at(point))),
                            GoalType.MAXIMIZE,
                            new InitialGuess(start),
                            new NelderMeadSimplex(sizes));
            return best.getPoint();
        } catch (TooManyEvaluationsException e) {
            return start;
        }
    }

    /** Newton's method from a point near the maximum. */
    Maximum newton(double[] start, double[] sizes) {
        double[] x = start.clone();
        double value = at(x);
        double[] widths = sizes.clone();
        for (int step = 0; step < MAX_STEPS; step++) {
            widths(x, value, widths);
            double[][] axes = axes(x, widths);
            double[][] information = information(x, value, widths, axes);
            double[] gradient = gradient(axes, widths);
            double[] move = Matrices.isPositive(information)
                    ? Matrices.times(Matrices.inverse(information), gradient)
                    : steepest(gradient, widths);
            double factor = 1;
            double[] next = moved(x, move, factor);
            while (!(at(next) >= value - 1e-12 * Math.abs(value)) && factor > 1e-8) {
                factor /= 2;
                next = moved(x, move, factor);
            }
            if (factor <= 1e-8) {
                break;
            }
            x = next;
            value = at(x);
            if (size(move, widths) < SETTLED) {
                break;
            }
        }
        widths(x, value, widths);
        return new Maximum(x, value, information(x, value, widths, axes(x, widths)));
    }

    private static double[] steepest(double[] gradient, double[] widths) {
        double[] move = new double[gradient.length];
        for (int j = 0; j < move.length; j++) {
            double bounded = Math.max(-1, Math.min(1, gradient[j] * widths[j]));
            move[j] = bounded * widths[j];
        }
        return move;
    }

    private static double size(double[] move, double[] widths) {
        double largest = 0;
        for (int j = 0; j < move.length; j++) {
            largest = Math.max(largest, Math.abs(move[j]) / widths[j]);
        }
        return largest;
    }

    private static double[] moved(double[] x, double[] move, double factor) {
        double[] next = x.clone();
        for (int j = 0; j < next.length; j++) {
            next[j] += factor * move[j];
        }
        return next;
    }

    /** Widths over which the logarithm falls by one half, from its curvature along each axis. */
    private void widths(double[] x, double value, double[] widths) {
        for (int j = 0; j < x.length; j++) {
            for (int round = 0; round < 3; round++) {
                double step = 0.1 * widths[j];
                double curvature = (2 * value - at(shifted(x, j, step)) - at(shifted(x, j, -step))) / (step * step);
                if (!(curvature > 0) || Double.isInfinite(curvature)) {
                    break;
                }
                double width = Math.max(0.1 * widths[j], Math.min(10 * widths[j], 1 / Math.sqrt(curvature)));
                boolean isNear = Math.abs(width - widths[j]) < NEAR * width;
                widths[j] = width;
                if (isNear) {
                    break;
                }
            }
        }
    }

    private static double[] shifted(double[] x, int j, double step) {
        double[] shifted = x.clone();
        shifted[j] += step;
        return shifted;
    }

    /** Values one and two steps up and down each axis. */
    private double[][] axes(double[] x, double[] widths) {
        double[][] axes = new double[x.length][];
        for (int j = 0; j < x.length; j++) {
            double h = STEP * widths[j];
            axes[j] = new double[] {
                at(shifted(x, j, h)), at(shifted(x, j, -h)), at(shifted(x, j, 2 * h)), at(shifted(x, j, -2 * h))
            };
        }
        return axes;
    }

    private static double[] gradient(double[][] axes, double[] widths) {
        double[] gradient = new double[axes.length];
        for (int j = 0; j < axes.length; j++) {
            double near = axes[j][0] - axes[j][1];
            double far = axes[j][2] - axes[j][3];
            gradient[j] = (8 * near - far) / (12 * STEP * widths[j]);
        }
        return gradient;
    }

    private double[][] information(double[] x, double value, double[] widths, double[][] axes) {
        double[][] matrix = new double[x.length][x.length];
        for (int j = 0; j < x.length; j++) {
            double h = STEP * widths[j];
            double near = axes[j][0] + axes[j][1] - 2 * value;
            double far = axes[j][2] + axes[j][3] - 2 * value;
            matrix[j][j] = -(16 * near - far) / (12 * h * h);
            for (int k = 0; k < j; k++) {
                double d = STEP * widths[k];
                double mixed = at(shifted(shifted(x, j, h), k, d))
                        - at(shifted(shifted(x, j, h), k, -d))
                        - at(shifted(shifted(x, j, -h), k, d))
                        + at(shifted(shifted(x, j, -h), k, -d));
                matrix[j][k] = -mixed / (4 * h * d);
                matrix[k][j] = matrix[j][k];
            }
        }
        return matrix;
    }
}
