package dev.waterjet.motion;

/**
 * Speeds at which corners, joints and arcs can be passed, in SI. A turn by the angle w enters by the sine s and the cosine
 * c of w/2. An acceleration, a jerk or a deviation may be infinite where it does not limit.
 */
final class TurnKernel {

    private TurnKernel() {}

    /**
     * Returns the speed on a tangent arc across a corner. With the deviation e the arc has the radius
     * {@code e c/(1 - c)}, and its tangent length {@code R s/c} is at most the room.
     */
    static double arcCornerSpeed(double acceleration, double deviationM, double roomM, double sine, double cosine) {
        double byDeviation = deviationM * cosine * (1 + cosine) / (sine * sine);
        double byRoom = roomM * cosine / sine;
        return Math.sqrt(acceleration * Math.min(byDeviation, byRoom));
    }

    /**
     * Returns the speed across a corner with a pulse of acceleration along the bisector that rises and falls at the jerk.
     *
     * <p>With the half duration h and the rise time r = a/j the pulse changes the velocity by {@code 2 v s}: j h<sup>2</sup>
     * for h below r, else a (2 h - r). Its deviation at the corner is j h<sup>3</sup>/6, or with x = h - r:
     * {@code a (r^2/6 + r x/2 + x^2/2)}. It starts {@code v h} before the corner, which is at most the room. Without a
     * limit of jerk it gives the parabola, {@code v = sqrt(2 a e)/s}.
     */
    static double pulseCornerSpeed(double acceleration, double jerk, double deviationM, double roomM, double sine) {
        if (acceleration == Double.POSITIVE_INFINITY && jerk == Double.POSITIVE_INFINITY) {
            return Double.POSITIVE_INFINITY;
        }
        double rise = acceleration / jerk;
        double half = Math.min(
                halfByDeviation(acceleration, jerk, rise, deviationM),
                halfByRoom(acceleration, jerk, rise, sine * roomM));
        double change = half <= rise ? jerk * half * half : acceleration * (2 * half - rise);
        return change / (2 * sine);
    }

    private static double halfByDeviation(double acceleration, double jerk, double rise, double deviationM) {
        if (6 * deviationM <= acceleration * rise * rise) {
            return Math.cbrt(6 * deviationM / jerk);
        }
        return rise / 2 + Math.sqrt(2 * deviationM / acceleration - rise * rise / 12);
    }

    /** Half duration at which {@code v h s} has the given value. */
    private static double halfByRoom(double acceleration, double jerk, double rise, double sineRoomM) {
        if (2 * sineRoomM <= acceleration * rise * rise) {
            return Math.cbrt(2 * sineRoomM / jerk);
        }
        return (rise + Math.sqrt(rise * rise + 16 * sineRoomM / acceleration)) / 4;
    }

    /** Returns the speed at which a change of direction by the given components is a change of speed of each axis. */
    static double jumpCornerSpeed(double jumpX, double jumpY, double changeX, double changeY) {
        return Math.min(jumpX / Math.abs(changeX), jumpY / Math.abs(changeY));
    }

    /** Returns the speed at which the centripetal acceleration on an arc turns with the jerk: (j R^2)^(1/3). */
    static double steadyArcSpeed(double jerk, double curvature) {
        return Math.cbrt(jerk / (curvature * curvature));
    }

    /**
     * Returns the speed over a joint where the curvature jumps. A transition of linear curvature over the length L leaves
     * the path by {@code L^2 dk/24} (first order) and has the jerk {@code v^3 dk/L}.
     *
     * @param jerk jerk across the path
     * @param deviationM allowed deviation
     * @param change change of curvature dk, in 1/m
     * @param shorterM length of the shorter neighbour; the transition is no longer than that
     */
    static double curvatureJumpSpeed(double jerk, double deviationM, double change, double shorterM) {
        double length = Math.min(Math.sqrt(24 * deviationM / change), shorterM);
        return Math.cbrt(jerk * length / change);
    }
}
