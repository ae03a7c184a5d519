package dev.waterjet.motion;

/** Maximum feed of the process along a path: the lowest of all places within reach, before them and after them. */
final class ProcessCaps {

    private static final byte RECOVERY = (byte) FeedLimit.FRONT_RECOVERY.processCode();
    private static final byte MINIMUM = (byte) FeedLimit.MINIMUM_FEED.processCode();

    private ProcessCaps() {}

    /**
     * Computes the caps.
     *
     * @param places places that limit the feed, which cover the path
     * @param lengthM length of the path
     * @param minimumMPerS minimum feed of the machine, which is kept in any case
     */
    static FeedCaps of(PathPlaces places, double lengthM, double minimumMPerS) {
        ReachSweep after = new ReachSweep(places, lengthM, true).run();
        ReachSweep before = new ReachSweep(places, lengthM, false).run();
        FeedCaps caps = new FeedCaps();
        int i = 0;
        int j = before.count() - 1;
        double at = 0;
        while (i < after.count() && j >= 0) {
            double endAfter = after.untilM(i);
            double endBefore = j == 0 ? lengthM : lengthM - before.untilM(j - 1);
            double until = Math.min(endAfter, endBefore);
            if (until > at) {
                boolean isAfter = after.feedMPerS(i) < before.feedMPerS(j)
                        || (after.feedMPerS(i) == before.feedMPerS(j) && after.code(i) != RECOVERY);
                double feed = isAfter ? after.feedMPerS(i) : before.feedMPerS(j);
                byte code = isAfter ? after.code(i) : before.code(j);
                caps.until(until, Math.max(feed, minimumMPerS), feed < minimumMPerS ? MINIMUM : code);
                at = until;
            }
            i += endAfter <= until ? 1 : 0;
            j -= endBefore <= until ? 1 : 0;
        }
        return caps;
    }
}
