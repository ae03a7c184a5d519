package dev.waterjet.motion;

/**
 * Feed at one corner, arc or end, and the slowdown zone around it, on SI doubles.
 *
 * @param feedMPerS greatest feed within the zone
 * @param zoneM length of the zone before the place and after it: the lag at that feed, which is at least the run-in that
 *     brings the lag down; 0 where the straight feed holds
 * @param predictedErrorM deviation of the part from the straight wall of the same depth that this feed is predicted to
 *     leave, 0 or more
 * @param toleranceM deviation allowed
 * @param reason what decided on the feed
 */
record Slowdown(double feedMPerS, double zoneM, double predictedErrorM, double toleranceM, SlowdownReason reason) {

    /** Whether the predicted error keeps the tolerance; where it does not, no feed does. */
    boolean isWithinTolerance() {
        return predictedErrorM <= toleranceM;
    }
}
