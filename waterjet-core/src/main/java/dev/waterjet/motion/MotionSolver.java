package dev.waterjet.motion;

/**
 * Fastest motion along a path from rest to rest that keeps the caps of the process and all limits of the machine.
 *
 * <pre>{@code
 * PathPieces pieces = new PathPieces(2).line(0.05, 0).arc(1, 0, 0.01, Math.PI);
 * MotionCurve motion = MotionSolver.solve(pieces, FeedCaps.same(0.02, 0), limits, MotionSettings.defaults());
 * motion.timeS();
 * motion.feedAt(0.03);
 * }</pre>
 */
final class MotionSolver {

    private MotionSolver() {}

    /**
     * Computes the motion.
     *
     * @param pieces lines and arcs of the path
     * @param caps maximum feed of the process over the distance along the path
     * @param limits limits of the machine; with a limit of jerk the motion is optimized on a grid
     * @param settings accuracy and size of the computation
     * @return feed and time over the distance, and the limits that govern
     */
    static MotionCurve solve(PathPieces pieces, FeedCaps caps, DynamicLimits limits, MotionSettings settings) {
        Stretches stretches = new Stretches(pieces, caps, limits);
        return limits.hasJerk()
                ? new JerkPass(stretches, settings).run()
                : AccelerationWalk.run(stretches, settings.arcStepRad());
    }
}
