package dev.waterjet.kerf;

import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Search for the minimum separation depth at which a result computed from a shape has come down to a limit. */
final class DepthSearch {

    private static final double MAX_INDEX = 1e4;
    private static final double STEP = Math.log(1.04);

    private DepthSearch() {}

    /** The depth at which the search ends: the limit is then out of reach. */
    static double end(KerfShape shape) {
        return shape.thicknessM() * MAX_INDEX;
    }

    /**
     * The minimum depth, at least the thickness. It is bracketed by steps upwards: a wall that has come square with falling
     * feed rate tapers the other way if the feed rate falls on.
     */
    static double minimum(KerfShape shape, ToDoubleFunction<KerfShape> computed, double limit) {
        double last = Math.log(end(shape) / shape.thicknessM());
        double from = 0;
        if (excess(from, shape, computed, limit) <= 0) {
            return shape.thicknessM();
        }
        while (from < last) {
            double to = from + STEP;
            if (excess(to, shape, computed, limit) <= 0) {
                double root = new BrentSolver(1e-14, 1e-12)
                        .solve(200, logIndex -> excess(logIndex, shape, computed, limit), from, to);
                return shape.thicknessM() * Math.exp(root);
            }
            from = to;
        }
        return end(shape);
    }

    private static double excess(double logIndex, KerfShape shape, ToDoubleFunction<KerfShape> computed, double limit) {
        double depth = shape.thicknessM() * Math.exp(logIndex);
        return computed.applyAsDouble(shape.withSeparationDepth(depth)) - limit;
    }
}
