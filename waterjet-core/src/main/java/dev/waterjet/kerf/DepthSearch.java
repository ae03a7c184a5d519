package dev.waterjet.kerf;

import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Finds the least separation depth at which something computed from a shape has come down to a limit. */
final class DepthSearch {

    private static final double FARTHEST_INDEX = 1e4;
    private static final double STEP = Math.log(1.04);

    private DepthSearch() {}

    /** Where the search ends: a depth that nothing reaches. */
    static double farthest(KerfShape shape) {
        return shape.thicknessM() * FARTHEST_INDEX;
    }

    /**
     * The least depth, the thickness or more. Steps upwards first: a wall that has come square with falling feed leans the
     * other way if the feed falls on.
     */
    static double least(KerfShape shape, ToDoubleFunction<KerfShape> computed, double limit) {
        double last = Math.log(farthest(shape) / shape.thicknessM());
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
        return farthest(shape);
    }

    private static double excess(double logIndex, KerfShape shape, ToDoubleFunction<KerfShape> computed, double limit) {
        double depth = shape.thicknessM() * Math.exp(logIndex);
        return computed.applyAsDouble(shape.withSeparationDepth(depth)) - limit;
    }
}
