package dev.waterjet.fit;

import java.util.Arrays;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.Pair;

/**
 * The arithmetic of a fit, on inner parameters: the logarithm of one that must stay positive, else the parameter itself.
 *
 * <p>Levenberg and Marquardt find the valley, a few steps of Gauss and Newton its floor. Derivatives are central
 * differences.
 */
final class LeastSquaresSolver {

    private static final int MAX_ITERATIONS = 2000;
    private static final int MAX_POLISHING_STEPS = 8;
    private static final double TOLERANCE = 1e-10;

    /** Step of a central difference relative to its variable: the cube root of the machine's precision. */
    private static final double STEP = Math.cbrt(Math.ulp(1.0));

    /** Stands in for a prediction that is not finite, so that the search turns back. */
    private static final double FAR_OFF = 1e100;

    private final Response response;
    private final double[] observed;
    private final double[] deviations;
    private final boolean[] isPositive;
    private final double[] scale;

    LeastSquaresSolver(
            Response response, double[] observed, double[] deviations, boolean[] isPositive, double[] start) {
        this.response = response;
        this.observed = observed;
        this.deviations = deviations;
        this.isPositive = isPositive;
        this.scale = new double[start.length];
        for (int j = 0; j < scale.length; j++) {
            scale[j] = isPositive[j] || start[j] == 0 ? 1 : Math.abs(start[j]);
        }
    }

    double[] inner(double[] outer) {
        double[] inner = outer.clone();
        for (int j = 0; j < inner.length; j++) {
            if (isPositive[j]) {
                inner[j] = Math.log(outer[j]);
            }
        }
        return inner;
    }

    double[] outer(double[] inner) {
        double[] outer = inner.clone();
        for (int j = 0; j < outer.length; j++) {
            if (isPositive[j]) {
                outer[j] = Math.exp(inner[j]);
            }
        }
        return outer;
    }

    /** Predictions at inner parameters, each over its standard deviation and times the root of its weight. */
    private double[] weighted(double[] inner, double[] rootWeights) {
        double[] outer = outer(inner);
        double[] values = new double[observed.length];
        for (int i = 0; i < values.length; i++) {
            double predicted = response.at(i, outer);
            values[i] = Double.isFinite(predicted) ? predicted / deviations[i] * rootWeights[i] : FAR_OFF;
        }
        return values;
    }

    /** Residuals, observed less predicted, each over its standard deviation; unweighted. */
    double[] residuals(double[] inner) {
        double[] ones = new double[observed.length];
        Arrays.fill(ones, 1);
        return residuals(inner, ones);
    }

    private double[] residuals(double[] inner, double[] rootWeights) {
        double[] residuals = weighted(inner, rootWeights);
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = observed[i] / deviations[i] * rootWeights[i] - residuals[i];
        }
        return residuals;
    }

    /** Derivatives of the weighted predictions by the inner parameters. */
    RealMatrix jacobian(double[] inner, double[] rootWeights) {
        double[][] rows = new double[observed.length][inner.length];
        for (int j = 0; j < inner.length; j++) {
            double step = STEP * Math.max(Math.abs(inner[j]), scale[j]);
            double[] moved = inner.clone();
            moved[j] = inner[j] + step;
            double upper = moved[j];
            double[] above = weighted(moved, rootWeights);
            moved[j] = inner[j] - step;
            double[] below = weighted(moved, rootWeights);
            for (int i = 0; i < rows.length; i++) {
                rows[i][j] = (above[i] - below[i]) / (upper - moved[j]);
            }
        }
        return new Array2DRowRealMatrix(rows, false);
    }

    /** Inner parameters of the least sum of squares. */
    double[] minimum(double[] start, double[] rootWeights) {
        double[] target = new double[observed.length];
        for (int i = 0; i < target.length; i++) {
            target[i] = observed[i] / deviations[i] * rootWeights[i];
        }
        MultivariateJacobianFunction model = point -> {
            double[] inner = point.toArray();
            return Pair.<RealVector, RealMatrix>create(
                    new ArrayRealVector(weighted(inner, rootWeights), false), jacobian(inner, rootWeights));
        };
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .start(start)
                .model(model)
                .target(target)
                .maxEvaluations(MAX_ITERATIONS)
                .maxIterations(MAX_ITERATIONS)
                .lazyEvaluation(false)
                .build();
        double[] valley = new LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(TOLERANCE)
                .withParameterRelativeTolerance(TOLERANCE)
                .withOrthoTolerance(TOLERANCE)
                .optimize(problem)
                .getPoint()
                .toArray();
        return polished(valley, rootWeights);
    }

    private double[] polished(double[] valley, double[] rootWeights) {
        double[] best = valley;
        double cost = sumOfSquares(residuals(best, rootWeights));
        for (int k = 0; k < MAX_POLISHING_STEPS; k++) {
            double[] step;
            try {
                step = new QRDecomposition(jacobian(best, rootWeights))
                        .getSolver()
                        .solve(new ArrayRealVector(residuals(best, rootWeights), false))
                        .toArray();
            } catch (SingularMatrixException e) {
                return best;
            }
            double[] next = new ArrayRealVector(best)
                    .add(new ArrayRealVector(step, false))
                    .toArray();
            double nextCost = sumOfSquares(residuals(next, rootWeights));
            if (!(nextCost < cost)) {
                return best;
            }
            best = next;
            cost = nextCost;
        }
        return best;
    }

    /** Like {@link #minimum}, with the reason in plain words where the search does not end. */
    double[] minimumOrNothing(double[] start, double[] rootWeights) {
        try {
            return minimum(start, rootWeights);
        } catch (MathIllegalStateException e) {
            return new double[0];
        }
    }

    static double sumOfSquares(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return sum;
    }
}
