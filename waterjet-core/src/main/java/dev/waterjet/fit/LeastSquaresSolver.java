package dev.waterjet.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
 * Minimum of the sum of squares, by inner parameters: the logarithm of a parameter that must stay positive, else the
 * parameter itself. Levenberg-Marquardt steps are followed by Gauss-Newton steps. Derivatives are central differences.
 */
final class LeastSquaresSolver {

    private static final int MAX_ITERATIONS = 2000;
    private static final int MAX_POLISHING_STEPS = 8;
    private static final double TOLERANCE = 1e-10;

    /** Step of a central difference relative to its variable: the cube root of the machine's precision. */
    private static final double STEP = Math.cbrt(Math.ulp(1.0));

    /** Replaces a prediction that is not finite, so that the search turns back. */
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

    /** Predictions, each over its standard deviation and times the root of its weight. */
    private double[] predictions(double[] inner, double[] rootWeights) {
        double[] outer = outer(inner);
        double[] values = new double[observed.length];
        for (int i = 0; i < values.length; i++) {
            double predicted = response.at(i, outer);
            values[i] = Double.isFinite(predicted) ? predicted / deviations[i] * rootWeights[i] : FAR_OFF;
        }
        return values;
    }

    /** Observations, each over its standard deviation and times the root of its weight. */
    private double[] target(double[] rootWeights) {
        double[] target = new double[observed.length];
        for (int i = 0; i < target.length; i++) {
            target[i] = observed[i] / deviations[i] * rootWeights[i];
        }
        return target;
    }

    /** Residuals, observed less predicted, each over its standard deviation; unweighted. */
    double[] residuals(double[] inner) {
        return residuals(inner, ones(observed.length));
    }

    private double[] residuals(double[] inner, double[] rootWeights) {
        double[] residuals = target(rootWeights);
        double[] predictions = predictions(inner, rootWeights);
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] -= predictions[i];
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
            double[] above = predictions(moved, rootWeights);
            moved[j] = inner[j] - step;
            double[] below = predictions(moved, rootWeights);
            for (int i = 0; i < rows.length; i++) {
                rows[i][j] = (above[i] - below[i]) / (upper - moved[j]);
            }
        }
        return new Array2DRowRealMatrix(rows, false);
    }

    /** Inner parameters of the minimum; nothing if the search does not converge. */
    Optional<double[]> minimum(double[] start, double[] rootWeights) {
        try {
            return Optional.of(polished(levenbergMarquardt(start, rootWeights), rootWeights));
        } catch (MathIllegalStateException e) {
            return Optional.empty();
        }
    }

    private double[] levenbergMarquardt(double[] start, double[] rootWeights) {
        MultivariateJacobianFunction model = point -> {
            double[] inner = point.toArray();
            return Pair.<RealVector, RealMatrix>create(
                    new ArrayRealVector(predictions(inner, rootWeights), false), jacobian(inner, rootWeights));
        };
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .start(start)
                .model(model)
                .target(target(rootWeights))
                .maxEvaluations(MAX_ITERATIONS)
                .maxIterations(MAX_ITERATIONS)
                .lazyEvaluation(false)
                .build();
        return new LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(TOLERANCE)
                .withParameterRelativeTolerance(TOLERANCE)
                .withOrthoTolerance(TOLERANCE)
                .optimize(problem)
                .getPoint()
                .toArray();
    }

    /**
     * Gauss-Newton steps while the sum of squares falls. Levenberg-Marquardt stops by the relative change of that sum, which
     * near its minimum hardly depends on the parameters: of the NIST set BoxBOD it leaves an error of 3e-7 at a tolerance of
     * 1e-10, and of 8e-9 at 1e-15. These steps leave 2e-10, with fewer evaluations than the tighter tolerance.
     */
    private double[] polished(double[] start, double[] rootWeights) {
        double[] best = start;
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

    /** The observations with their residuals at inner parameters. */
    List<Fit.Observation> observations(double[] inner, double[] leverages, double[] rootWeights) {
        double[] residuals = residuals(inner);
        List<Fit.Observation> observations = new ArrayList<>();
        for (int i = 0; i < residuals.length; i++) {
            observations.add(
                    new Fit.Observation(observed[i], deviations[i], residuals[i], leverages[i], rootWeights[i]));
        }
        return observations;
    }

    static double[] ones(int count) {
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        return ones;
    }

    static double sumOfSquares(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return sum;
    }
}
