package dev.waterjet.motion;

/**
 * Lays the rows of acceleration and jerk of a grid from the geometry of the path.
 *
 * <p>Along a straight path the weakest limit gives one row. On an arc with limits of the axes, each axis gives a row: its
 * acceleration {@code T a + k N v^2} in the middle of an interval, and its jerk {@code T (da/dt - k^2 v^3) + 3 k v a N} at a
 * node, with the components T of the direction and N of the normal along the axis and the curvature k.
 */
final class RowLayer {

    private static final double SAME_DIRECTION = 1e-9;

    private final Stretches stretches;
    private final DynamicLimits limits;
    private final GridNodes nodes;

    // weakest limit along the path of the last interval asked
    private double weakest;
    private byte weakestWhy;

    RowLayer(Stretches stretches, GridNodes nodes) {
        this.stretches = stretches;
        this.limits = stretches.limits;
        this.nodes = nodes;
    }

    /** Last stretch that an interval touches. */
    private int lastStretch(int k) {
        int at = nodes.stretch[k];
        while (at + 1 < stretches.count() && stretches.startM(at + 1) < nodes.placeM[k + 1]) {
            at++;
        }
        return at;
    }

    private double lengthM(int k) {
        return nodes.placeM[k + 1] - nodes.placeM[k];
    }

    /** Lays the rows of acceleration of the intervals from one index up to and including another. */
    void layAccelerations(AccelerationRows rows, int first, int last) {
        rows.clear();
        for (int k = first; k <= last; k++) {
            weakest = Double.POSITIVE_INFINITY;
            int end = lastStretch(k);
            for (int at = nodes.stretch[k]; at <= end; at++) {
                if (stretches.isTurning(at)) {
                    layAxes(rows, k, at);
                    weaken(limits.path().accelerationMPerS2(), GoverningLimit.PATH_ACCELERATION);
                } else {
                    double tx = stretches.directionX(at);
                    double ty = stretches.directionY(at);
                    weaken(limits.tangentialAcceleration(tx, ty), limits.tangentialAccelerationLimit(tx, ty));
                }
            }
            if (weakest < Double.POSITIVE_INFINITY) {
                double per = 1 / (2 * lengthM(k) * weakest);
                rows.add(k, -per, per, weakestWhy);
            }
        }
    }

    private void weaken(double limit, GoverningLimit why) {
        if (limit < weakest) {
            weakest = limit;
            weakestWhy = why.code();
        }
    }

    /** Rows of both axes in the middle of what an interval covers of an arc. */
    private void layAxes(AccelerationRows rows, int k, int at) {
        double fromM = Math.max(nodes.placeM[k], stretches.startM(at));
        double toM = Math.min(nodes.placeM[k + 1], stretches.startM(at + 1));
        double heading = stretches.headingAt(at, (fromM + toM) / 2);
        double tx = Math.cos(heading);
        double ty = Math.sin(heading);
        double twice = 2 * lengthM(k);
        double half = stretches.curvature(at) / 2;
        if (limits.x().hasAcceleration()) {
            double per = 1 / limits.x().accelerationMPerS2();
            rows.add(k, (-tx / twice - half * ty) * per, (tx / twice - half * ty) * per, code(0));
        }
        if (limits.y().hasAcceleration()) {
            double per = 1 / limits.y().accelerationMPerS2();
            rows.add(k, (-ty / twice + half * tx) * per, (ty / twice + half * tx) * per, code(1));
        }
    }

    private static byte code(int axis) {
        return (axis == 0 ? GoverningLimit.X_ACCELERATION : GoverningLimit.Y_ACCELERATION).code();
    }

    /** Lays the rows of jerk of the nodes from one index up to and including another. */
    void layJerks(JerkRows rows, int first, int last) {
        rows.clear();
        for (int i = first; i <= last; i++) {
            int before = lastStretch(i - 1);
            int behind = nodes.stretch[i];
            boolean isTurning = stretches.isTurning(before) || stretches.isTurning(behind);
            if (isTurning && isTangent(i, before, behind)) {
                layAxes(rows, i, before, behind);
                weakest = Double.POSITIVE_INFINITY;
                weaken(limits.path().jerkMPerS3(), GoverningLimit.PATH_JERK);
            } else {
                double one = tangentialJerk(i - 1);
                byte why = weakestWhy;
                if (one < tangentialJerk(i)) {
                    weakest = one;
                    weakestWhy = why;
                }
            }
            if (weakest < Double.POSITIVE_INFINITY) {
                rows.add(i, 1 / (2 * lengthM(i - 1) * weakest), 1 / (2 * lengthM(i) * weakest), 0, weakestWhy);
            }
        }
    }

    private boolean isTangent(int node, int before, int behind) {
        double from = stretches.headingAt(before, nodes.placeM[node]);
        double to = stretches.headingAt(behind, nodes.placeM[node]);
        return Math.abs(Math.sin(from - to)) < SAME_DIRECTION;
    }

    /**
     * Rows of both axes at a node on an arc or at its end. Over the time between the middles of two intervals the jerk of an
     * axis adds up to {@code T (a_i - a_(i-1) - k^2 v^2 h) + 3 k a h N}, each half with its own curvature k, acceleration a
     * and length h.
     */
    private void layAxes(JerkRows rows, int i, int before, int behind) {
        double halfBefore = lengthM(i - 1) / 2;
        double halfBehind = lengthM(i) / 2;
        double k0 = stretches.curvature(before);
        double k1 = stretches.curvature(behind);
        double turning = k0 * k0 * halfBefore + k1 * k1 * halfBehind;
        double heading = stretches.headingAt(behind, nodes.placeM[i]);
        double tx = Math.cos(heading);
        double ty = Math.sin(heading);
        for (int axis = 0; axis < 2; axis++) {
            double limit = axis == 0 ? limits.x().jerkMPerS3() : limits.y().jerkMPerS3();
            if (limit == Double.POSITIVE_INFINITY) {
                continue;
            }
            double t = axis == 0 ? tx : ty;
            double n = axis == 0 ? -ty : tx;
            double l = (t - 3 * k0 * halfBefore * n) / (4 * halfBefore * limit);
            double r = (t + 3 * k1 * halfBehind * n) / (4 * halfBehind * limit);
            byte why = (axis == 0 ? GoverningLimit.X_JERK : GoverningLimit.Y_JERK).code();
            rows.add(i, l, r, t * turning / limit, why);
        }
    }

    /** Smallest jerk along the path on all that an interval touches. */
    double tangentialJerk(int k) {
        weakest = Double.POSITIVE_INFINITY;
        int end = lastStretch(k);
        for (int at = nodes.stretch[k]; at <= end; at++) {
            double tx = stretches.directionX(at);
            double ty = stretches.directionY(at);
            if (stretches.isTurning(at)) {
                double heading = stretches.headingAt(at, (nodes.placeM[k] + nodes.placeM[k + 1]) / 2);
                tx = Math.cos(heading);
                ty = Math.sin(heading);
            }
            weaken(limits.tangentialJerk(tx, ty), limits.tangentialJerkLimit(tx, ty));
        }
        return weakest;
    }

    /** Code of the limit that the last call of {@link #tangentialJerk} returned. */
    byte tangentialJerkWhy() {
        return weakestWhy;
    }

    /** Square of the feed at a distance from rest that jerk and acceleration allow on a straight path. */
    double rampSquare(int node, double fromRestM) {
        int at = Math.min(nodes.stretch[node], stretches.count() - 1);
        double place = nodes.placeM[node];
        double byJerk = GridPhase.rampSpeed(stretches.tangentialJerk(at, place), fromRestM);
        return Math.min(byJerk * byJerk, 2 * stretches.tangentialAcceleration(at, place) * fromRestM);
    }
}
