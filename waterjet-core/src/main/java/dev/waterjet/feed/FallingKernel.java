package dev.waterjet.feed;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Turns a falling positive function of a positive number around: from its value back to the number. */
final class FallingKernel {

    private static final double WIDEN = Math.log(8);
    private static final int MOST_WIDENINGS = 60;
    private static final int MOST_EVALUATIONS = 200;

    /** Stands in for the logarithm of zero. */
    private static final double LEAST_LOG = -700;

    private FallingKernel() {}

    /** x with f(x) = value, by Brent's method on logarithms; 0 if f stays below the value however small x is. */
    static double inverse(DoubleUnaryOperator falling, double value, double guess) {
        double wanted = Math.log(value);
        DoubleUnaryOperator excess = t -> Math.max(LEAST_LOG, Math.log(falling.applyAsDouble(Math.exp(t)))) - wanted;
        double lower = Math.log(guess);
        double upper = lower;
        for (int i = 0; i < MOST_WIDENINGS && excess.applyAsDouble(upper) > 0; i++) {
            lower = upper;
            upper += WIDEN;
        }
        for (int i = 0; i < MOST_WIDENINGS && excess.applyAsDouble(lower) < 0; i++) {
            upper = lower;
            lower -= WIDEN;
        }
        if (excess.applyAsDouble(lower) < 0) {
            return 0;
        }
        return lower == upper
                ? Math.exp(lower)
                : Math.exp(new BrentSolver(1e-15, 1e-15).solve(MOST_EVALUATIONS, excess::applyAsDouble, lower, upper));
    }
}
