package dev.waterjet.cost;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** Setting with the minimum cost, by Brent's method on the logarithm of the setting. */
final class LeastCost {

    private static final int GRID = 48;
    private static final int MAX_EVALUATIONS = 300;

    /** Relative step by which a cost that decreases up to the maximum setting is recognized. */
    private static final double STEP = 1e-5;

    private LeastCost() {}

    /**
     * The setting with the minimum cost, which has at most one inside the limits: the best of a logarithmic grid, refined
     * between its neighbours. The grid is needed as the cost has a kink where the feed rate is limited, and Brent's method
     * alone can end there.
     */
    static double setting(DoubleUnaryOperator cost, double minimum, double maximum) {
        double from = Math.log(minimum);
        double by = (Math.log(maximum) - from) / GRID;
        int best = GRID;
        double least = cost.applyAsDouble(maximum);
        for (int i = 0; i < GRID; i++) {
            double value = cost.applyAsDouble(Math.exp(from + i * by));
            if (value < least) {
                best = i;
                least = value;
            }
        }
        if (best == GRID && cost.applyAsDouble(maximum * (1 - STEP)) >= least) {
            return maximum;
        }
        double setting = Math.exp(new BrentOptimizer(1e-10, 1e-12)
                .optimize(
                        new MaxEval(MAX_EVALUATIONS),
                        GoalType.MAXIMIZE,
                        new UnivariateObjectiveFunction(t -> 1 / cost.applyAsDouble(Math.exp(t))),
                        new SearchInterval(from + Math.max(0, best - 1) * by, from + Math.min(GRID, best + 1) * by))
                .getPoint());
        return Math.min(maximum, Math.max(minimum, setting));
    }
}
