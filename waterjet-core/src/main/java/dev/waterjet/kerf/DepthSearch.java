package dev.waterjet.kerf;

import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Search for the separation depths between which a result computed from a shape is at most a limit. */
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
        if (excess(0, shape, computed, limit) <= 0) {
            return shape.thicknessM();
        }
        return change(shape, computed, limit, 0);
    }

    /** The depth, from one within the limit upwards, at which the limit is exceeded again. */
    static double maximum(KerfShape shape, ToDoubleFunction<KerfShape> computed, double limit, double withinM) {
        // a little beyond, so that the search does not find the root again that led there
        double start = Math.log(withinM / shape.thicknessM()) + STEP / 1000;
        return excess(start, shape, computed, limit) > 0 ? withinM : change(shape, computed, limit, start);
    }

    /** The first depth beyond a start at which the result passes the limit, upwards or downwards. */
    private static double change(
            KerfShape shape, ToDoubleFunction<KerfShape> computed, double limit, double startLogIndex) {
        double last = Math.log(MAX_INDEX);
        double from = startLogIndex;
        boolean isWithin = excess(from, shape, computed, limit) <= 0;
        while (from < last) {
            double to = from + STEP;
            if (excess(to, shape, computed, limit) <= 0 != isWithin) {
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
