package dev.waterjet.feed;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** Best and least settings of a function that rises to at most one peak, on a logarithmic scale. */
public final class InverseKernel {

    private static final int GRID = 48;
    private static final int MOST_EVALUATIONS = 300;

    /** Step of a slope, relative. */
    private static final double STEP = 1e-5;

    private InverseKernel() {}

    /**
     * Returns the place of the maximum of a function: the best of a logarithmic grid, refined between its neighbours.
     *
     * @param f the function
     * @param lowest lower limit, above zero
     * @param highest upper limit, above the lower one
     * @return the place of the maximum
     */
    public static double best(DoubleUnaryOperator f, double lowest, double highest) {
        double from = Math.log(lowest);
        double by = (Math.log(highest) - from) / GRID;
        int best = GRID;
        double most = f.applyAsDouble(highest);
        for (int i = 0; i < GRID; i++) {
            double value = f.applyAsDouble(Math.exp(from + i * by));
            if (value > most) {
                best = i;
                most = value;
            }
        }
        if (best == GRID && f.applyAsDouble(highest * (1 - STEP)) <= most) {
            return highest;
        }
        double peak = Math.exp(new BrentOptimizer(1e-10, 1e-12)
                .optimize(
                        new MaxEval(MOST_EVALUATIONS),
                        GoalType.MAXIMIZE,
                        new UnivariateObjectiveFunction(t -> f.applyAsDouble(Math.exp(t))),
                        new SearchInterval(from + Math.max(0, best - 1) * by, from + Math.min(GRID, best + 1) * by))
                .getPoint());
        return Math.min(highest, Math.max(lowest, peak));
    }

    /** The least x from lowest to the peak with f(x) = value; lowest where f is greater there already. */
    static double least(DoubleUnaryOperator f, double value, double lowest, double peak) {
        double wanted = Math.log(value);
        DoubleUnaryOperator excess = t -> Math.max(-700, Math.log(f.applyAsDouble(Math.exp(t)))) - wanted;
        double from = Math.log(lowest);
        double to = Math.log(peak);
        if (excess.applyAsDouble(from) >= 0) {
            return lowest;
        }
        if (excess.applyAsDouble(to) <= 0) {
            return peak;
        }
        return Math.exp(new BrentSolver(1e-15, 1e-14).solve(MOST_EVALUATIONS, excess::applyAsDouble, from, to));
    }

    /** d ln f / d ln x, no smaller than a tenth, so that an answer near a peak has a finite uncertainty. */
    static double relativeSlope(DoubleUnaryOperator f, double x) {
        double slope = Math.log(f.applyAsDouble(x * (1 + STEP)) / f.applyAsDouble(x * (1 - STEP)))
                / Math.log((1 + STEP) / (1 - STEP));
        return Math.max(0.1, Math.abs(slope));
    }
}
