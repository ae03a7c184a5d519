package dev.waterjet.fit;

import java.util.function.BinaryOperator;

/** Repeats a fit with the weights that its own residuals earn, until these settle. */
final class RobustSearch {

    private static final int MAX_ROUNDS = 50;
    private static final double SETTLED = 1e-9;

    private final LeastSquaresSolver kernel;
    private final BinaryOperator<double[]> minimum;
    private double[] inner;
    private double[] rootWeights;
    private double spread;

    private RobustSearch(double[] inner, LeastSquaresSolver kernel, BinaryOperator<double[]> minimum) {
        this.inner = inner;
        this.kernel = kernel;
        this.minimum = minimum;
        this.rootWeights = LeastSquares.ones(kernel.residuals(inner).length);
    }

    /** From the ordinary fit; {@code minimum} finds inner parameters from a start and root weights. */
    static RobustSearch from(double[] ordinary, LeastSquaresSolver kernel, BinaryOperator<double[]> minimum) {
        RobustSearch search = new RobustSearch(ordinary, kernel, minimum);
        search.settle(true);
        search.settle(false);
        return search;
    }

    private void settle(boolean isHuber) {
        for (int round = 0; round < MAX_ROUNDS; round++) {
            double[] residuals = kernel.residuals(inner);
            if (isHuber) {
                spread = RobustWeights.spread(residuals, inner.length);
            }
            if (!(spread > 0)) {
                // more than half of the observations are met exactly: nothing tells how far the others may be off
                return;
            }
            for (int i = 0; i < residuals.length; i++) {
                double scaled = residuals[i] / spread;
                rootWeights[i] = Math.sqrt(isHuber ? RobustWeights.huber(scaled) : RobustWeights.bisquare(scaled));
            }
            double[] before = inner;
            inner = minimum.apply(inner, rootWeights);
            if (change(before, inner) < SETTLED) {
                return;
            }
        }
    }

    private static double change(double[] before, double[] after) {
        double greatest = 0;
        for (int j = 0; j < before.length; j++) {
            greatest = Math.max(greatest, Math.abs(after[j] - before[j]) / Math.max(1, Math.abs(after[j])));
        }
        return greatest;
    }

    double[] inner() {
        return inner;
    }

    double[] rootWeights() {
        return rootWeights;
    }

    /** Stands in for the variance of the residuals in the covariance of the parameters. */
    double variance() {
        return spread > 0 ? RobustWeights.variance(kernel.residuals(inner), spread, inner.length) : 0;
    }
}
