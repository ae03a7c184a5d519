package dev.waterjet.feed;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** Roots and maxima of positive functions of a positive number, on logarithms of both. */
final class LogRoot {

    private static final double WIDEN = Math.log(8);
    private static final int MAX_WIDENINGS = 60;
    private static final int MAX_EVALUATIONS = 300;
    private static final int GRID = 48;

    /** Replaces the logarithm of zero. */
    private static final double MIN_LOG = -700;

    /** Step of a slope, relative. */
    private static final double STEP = 1e-5;

    private LogRoot() {}

    /** x with f(x) = value for a decreasing f; 0 if f is below the value however small x is. */
    static double ofDecreasing(DoubleUnaryOperator decreasing, double value, double guess) {
        DoubleUnaryOperator excess = excess(decreasing, value);
        double lower = Math.log(guess);
        double upper = lower;
        for (int i = 0; i < MAX_WIDENINGS && excess.applyAsDouble(upper) > 0; i++) {
            lower = upper;
            upper += WIDEN;
        }
        for (int i = 0; i < MAX_WIDENINGS && excess.applyAsDouble(lower) < 0; i++) {
            upper = lower;
            lower -= WIDEN;
        }
        if (excess.applyAsDouble(lower) < 0) {
            return 0;
        }
        return lower == upper ? Math.exp(lower) : solve(excess, lower, upper, 1e-15);
    }

    /** The smallest x from minimum to the maximum of f with f(x) = value; minimum if f exceeds the value there. */
    static double smallest(DoubleUnaryOperator f, double value, double minimum, double peak) {
        DoubleUnaryOperator excess = excess(f, value);
        double from = Math.log(minimum);
        double to = Math.log(peak);
        if (excess.applyAsDouble(from) >= 0) {
            return minimum;
        }
        return excess.applyAsDouble(to) <= 0 ? peak : solve(excess, from, to, 1e-14);
    }

    private static DoubleUnaryOperator excess(DoubleUnaryOperator f, double value) {
        double log = Math.log(value);
        return t -> Math.max(MIN_LOG, Math.log(f.applyAsDouble(Math.exp(t)))) - log;
    }

    private static double solve(DoubleUnaryOperator excess, double from, double to, double tolerance) {
        return Math.exp(new BrentSolver(1e-15, tolerance).solve(MAX_EVALUATIONS, excess::applyAsDouble, from, to));
    }

    /**
     * The place of the maximum of f, which has at most one inside: the best of a logarithmic grid, refined between its
     * neighbours, as Brent's method alone can end in a flat part.
     */
    static double maximum(DoubleUnaryOperator f, double minimum, double maximum) {
        double from = Math.log(minimum);
        double by = (Math.log(maximum) - from) / GRID;
        int best = GRID;
        double largest = f.applyAsDouble(maximum);
        for (int i = 0; i < GRID; i++) {
            double value = f.applyAsDouble(Math.exp(from + i * by));
            if (value > largest) {
                best = i;
                largest = value;
            }
        }
        if (best == GRID && f.applyAsDouble(maximum * (1 - STEP)) <= largest) {
            return maximum;
        }
        double peak = Math.exp(new BrentOptimizer(1e-10, 1e-12)
                .optimize(
                        new MaxEval(MAX_EVALUATIONS),
                        GoalType.MAXIMIZE,
                        new UnivariateObjectiveFunction(t -> f.applyAsDouble(Math.exp(t))),
                        new SearchInterval(from + Math.max(0, best - 1) * by, from + Math.min(GRID, best + 1) * by))
                .getPoint());
        return Math.min(maximum, Math.max(minimum, peak));
    }

    /** d ln f / d ln x, at least a tenth, so that an answer near a maximum has a finite uncertainty. */
    static double slope(DoubleUnaryOperator f, double x) {
        double slope = Math.log(f.applyAsDouble(x * (1 + STEP)) / f.applyAsDouble(x * (1 - STEP)))
                / Math.log((1 + STEP) / (1 - STEP));
        return Math.max(0.1, Math.abs(slope));
    }
}
