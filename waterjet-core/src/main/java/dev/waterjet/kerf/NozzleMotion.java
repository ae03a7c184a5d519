package dev.waterjet.kerf;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.Objects;

/**
 * Way of the nozzle along its path over time, in pieces of constant feed, on SI doubles.
 *
 * <p>Before the first time the nozzle either stood over a pierced hole or ran at a steady feed for long. After the last
 * time it stands. Neighbouring pieces of the same feed are one piece.
 */
public final class NozzleMotion {

    /** Pieces whose feeds differ by less than this share are one: rounding of lengths over times. */
    private static final double SAME_FEED = 1e-13;

    /** Feed before the first time, 0 if the nozzle stood. */
    private final double approachMPerS;

    private final double[] timesS;
    private final double[] waysM;
    /** Feed of each piece. */
    private final double[] feedsMPerS;

    private NozzleMotion(double approachMPerS, double[] timesS, double[] waysM, double[] feedsMPerS) {
        this.approachMPerS = approachMPerS;
        this.timesS = timesS;
        this.waysM = waysM;
        this.feedsMPerS = feedsMPerS;
    }

    /**
     * Returns a motion that starts over a pierced hole, at the position 0.
     *
     * @param timesS times at which the feed changes, ascending; the first is that of the start, the last that of the end
     * @param feedsMPerS feed between each time and the next, 0 or more: one fewer than there are times
     * @return the motion
     * @throws dev.waterjet.measure.DomainException if a time is not after the one before, or a feed is negative
     */
    public static NozzleMotion fromRestSi(double[] timesS, double[] feedsMPerS) {
        return of(0, timesS, feedsMPerS);
    }

    /**
     * Returns a motion that had run at a steady feed for long when the first time comes, at the position 0.
     *
     * @param approachMPerS feed before the first time, above 0
     * @param timesS times at which the feed changes, ascending
     * @param feedsMPerS feed between each time and the next, 0 or more: one fewer than there are times
     * @return the motion
     * @throws dev.waterjet.measure.DomainException if a time is not after the one before, or a feed is negative
     */
    public static NozzleMotion fromSteadyFeedSi(double approachMPerS, double[] timesS, double[] feedsMPerS) {
        Objects.requireNonNull(feedsMPerS, "feedsMPerS");
        Objects.requireNonNull(timesS, "timesS");
        return of(
                Require.positive("feed before the first time", approachMPerS, Units.MILLIMETRE_PER_MINUTE),
                timesS,
                feedsMPerS);
    }

    private static NozzleMotion of(double approachMPerS, double[] timesS, double[] feedsMPerS) {
        int pieces = feedsMPerS.length;
        Require.between("number of times", timesS.length, pieces + 1, pieces + 1, Units.ONE, "one more than feeds");
        double[] times = new double[pieces + 1];
        double[] ways = new double[pieces + 1];
        double[] feeds = new double[pieces];
        times[0] = Require.finite("first time", timesS[0], Units.SECOND);
        int count = 0;
        double before = approachMPerS > 0 ? Double.NaN : 0;
        for (int i = 0; i < pieces; i++) {
            double feed = Require.notNegative("feed", feedsMPerS[i], Units.MILLIMETRE_PER_MINUTE);
            double end = Require.above("time", timesS[i + 1], timesS[i], Units.SECOND, "times ascend");
            double way = ways[count] + feed * (end - times[count]);
            if (count > 0 && Math.abs(feed - before) <= SAME_FEED * before) {
                times[count] = end;
                ways[count] = ways[count - 1] + feed * (end - times[count - 1]);
            } else {
                feeds[count] = feed;
                count++;
                times[count] = end;
                ways[count] = way;
            }
            before = feed;
        }
        return new NozzleMotion(
                approachMPerS,
                Arrays.copyOf(times, count + 1),
                Arrays.copyOf(ways, count + 1),
                Arrays.copyOf(feeds, count));
    }

    /** Number of pieces of constant feed after the first time. */
    int pieces() {
        return feedsMPerS.length;
    }

    /** Feed of a piece; piece 0 is the one before the first time. */
    double feed(int piece) {
        return piece == 0 ? approachMPerS : feedsMPerS[piece - 1];
    }

    /** Time at which a piece ends; piece 0 ends at the first time. */
    double endTime(int piece) {
        return timesS[piece];
    }

    /** Way at which a piece ends. */
    double endWay(int piece) {
        return waysM[piece];
    }

    /** {@return the first time, in s} */
    public double startSi() {
        return timesS[0];
    }

    /** {@return the last time, in s} */
    public double endSi() {
        return timesS[timesS.length - 1];
    }

    /**
     * Returns the position of the nozzle along the path at a time.
     *
     * @param timeS the time; before the first one the position is 0 or, at a steady feed, below
     * @return the position in m
     */
    public double waySi(double timeS) {
        if (timeS <= timesS[0]) {
            return approachMPerS * (timeS - timesS[0]);
        }
        int last = timesS.length - 1;
        if (timeS >= timesS[last]) {
            return waysM[last];
        }
        int at = Arrays.binarySearch(timesS, timeS);
        int piece = at >= 0 ? at : -at - 2;
        return waysM[piece] + feedsMPerS[piece] * (timeS - timesS[piece]);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof NozzleMotion that
                && approachMPerS == that.approachMPerS
                && Arrays.equals(timesS, that.timesS)
                && Arrays.equals(feedsMPerS, that.feedsMPerS);
    }

    @Override
    public int hashCode() {
        return Objects.hash(approachMPerS, Arrays.hashCode(timesS), Arrays.hashCode(feedsMPerS));
    }

    @Override
    public String toString() {
        return "motion of the nozzle over " + (endSi() - startSi()) + " s, " + pieces() + " feed rates";
    }
}
