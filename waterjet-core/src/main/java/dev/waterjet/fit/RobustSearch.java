package dev.waterjet.fit;

import java.util.function.BinaryOperator;

/** Iteratively reweighted least squares: a fit repeated with the weights of its own residuals until it converges. */
final class RobustSearch {

    private static final int MAX_ROUNDS = 50;
    private static final double TOLERANCE = 1e-9;

    private final LeastSquaresSolver solver;
    private final BinaryOperator<double[]> minimum;
    private double[] inner;
    private double[] rootWeights;
    private double spread;

    private RobustSearch(double[] inner, LeastSquaresSolver solver, BinaryOperator<double[]> minimum) {
        this.inner = inner;
        this.solver = solver;
        this.minimum = minimum;
        this.rootWeights = LeastSquaresSolver.ones(solver.residuals(inner).length);
    }

    /** Starts from the ordinary fit; {@code minimum} returns inner parameters for a start and root weights. */
    static RobustSearch from(double[] ordinary, LeastSquaresSolver solver, BinaryOperator<double[]> minimum) {
        RobustSearch search = new RobustSearch(ordinary, solver, minimum);
        search.iterate(true);
        search.iterate(false);
        return search;
    }

    /** The spread is estimated with Huber's weights and kept for the bisquare, whose weights depend on it. */
    private void iterate(boolean isHuber) {
        for (int round = 0; round < MAX_ROUNDS; round++) {
            double[] residuals = solver.residuals(inner);
            if (isHuber) {
                spread = RobustWeights.spread(residuals, inner.length);
            }
            if (!(spread > 0)) {
                // more than half of the residuals are 0, so their median gives no scale for the others
                return;
            }
            for (int i = 0; i < residuals.length; i++) {
                double scaled = residuals[i] / spread;
                rootWeights[i] = Math.sqrt(isHuber ? RobustWeights.huber(scaled) : RobustWeights.bisquare(scaled));
            }
            double[] before = inner;
            inner = minimum.apply(inner, rootWeights);
            if (change(before, inner) < TOLERANCE) {
                return;
            }
        }
    }

    private static double change(double[] before, double[] after) {
        double largest = 0;
        for (int j = 0; j < before.length; j++) {
            largest = Math.max(largest, Math.abs(after[j] - before[j]) / Math.max(1, Math.abs(after[j])));
        }
        return largest;
    }

    double[] inner() {
        return inner;
    }

    double[] rootWeights() {
        return rootWeights;
    }

    /** Takes the place of the variance of the residuals in the covariance of the parameters. */
    double variance() {
        return spread > 0 ? RobustWeights.variance(solver.residuals(inner), spread, inner.length) : 0;
    }
}
