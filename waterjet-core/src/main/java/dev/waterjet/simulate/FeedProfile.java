package dev.waterjet.simulate;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.TiltProfile;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;

/**
 * Path of the jet axis and the feed along it, from a plan or as a program states it.
 *
 * <pre>{@code
 * FeedProfile planned = FeedProfile.of(plan);
 * FeedProfile written = FeedProfile.perEdge(path, QuantityArray.of(Kind.SPEED, new double[] {120, 40, 120}, Units.MILLIMETRE_PER_MINUTE));
 * }</pre>
 *
 * <p>The path starts over a pierced hole with the jet on, unless {@link #afterSteadyFeed} says that the nozzle came running.
 * Immutable.
 */
public final class FeedProfile {

    /** Feeds that differ by less are one. */
    private static final double SAME_FEED = 1e-9;

    private static final double TILT_TOLERANCE_RAD = 1e-5;
    private static final String TILT = "displacement of the jet over depth";

    private final Contour path;
    /** Places at which the law of the feed changes, from 0 to the length of the path. */
    private final double[] distanceM;
    /** Feed at both ends of each piece; in between its square is linear, as at a constant acceleration. */
    private final double[] startMPerS;

    private final double[] endMPerS;
    private final double startDwellS;
    private final double endDwellS;
    private final boolean isRunning;
    private final @Nullable TiltTable tilts;

    private FeedProfile(
            Contour path,
            FeedPieces pieces,
            double startDwellS,
            double endDwellS,
            boolean isRunning,
            @Nullable TiltTable tilts) {
        this.path = Objects.requireNonNull(path, "path");
        this.distanceM = pieces.distances();
        this.startMPerS = pieces.starts();
        this.endMPerS = pieces.ends();
        this.startDwellS = startDwellS;
        this.endDwellS = endDwellS;
        this.isRunning = isRunning;
        this.tilts = tilts;
    }

    private FeedProfile with(double startS, double endS, boolean running) {
        return with(startS, endS, running, tilts);
    }

    private FeedProfile with(double startS, double endS, boolean running, @Nullable TiltTable table) {
        FeedPieces pieces = new FeedPieces();
        for (int i = 0; i < startMPerS.length; i++) {
            pieces.add(distanceM[i + 1] - distanceM[i], startMPerS[i], endMPerS[i]);
        }
        return new FeedProfile(path, pieces, startS, endS, running, table);
    }

    /**
     * Returns the profile of a plan: the feeds at the ends of its blocks, the greatest ones within, and their times.
     *
     * @param plan the plan of a tool path
     * @return the profile
     */
    public static FeedProfile of(FeedPlan plan) {
        Objects.requireNonNull(plan, "plan");
        FeedPieces pieces = new FeedPieces();
        for (int i = 0; i < plan.size(); i++) {
            pieces.addBlock(plan.lengthSi(i), plan.entrySi(i), plan.peakFeedSi(i), plan.exitSi(i), plan.timeSi(i));
        }
        TiltTable tilts = plan.tilt().map(FeedProfile::table).orElse(null);
        return new FeedProfile(plan.contour(), pieces, 0, 0, false, tilts);
    }

    private static TiltTable table(TiltProfile tilt) {
        double[] places = tilt.places(Kind.ANGLE.of(TILT_TOLERANCE_RAD)).toSi();
        double[] x = new double[places.length];
        double[] y = new double[places.length];
        for (int i = 0; i < places.length; i++) {
            x[i] = tilt.displacementXSi(places[i]);
            y[i] = tilt.displacementYSi(places[i]);
        }
        return new TiltTable(places, x, y);
    }

    /**
     * Returns a path at one feed.
     *
     * @param path path of the jet axis
     * @param feed the feed, above 0
     * @return the profile
     */
    public static FeedProfile constant(Contour path, Quantity<Speed> feed) {
        Objects.requireNonNull(path, "path");
        double feedMPerS = Kind.SPEED.si(Objects.requireNonNull(feed, "feed"));
        return asWritten(path, QuantityArray.ofSi(Kind.LENGTH, 0), QuantityArray.ofSi(Kind.SPEED, feedMPerS));
    }

    /**
     * Returns a path with a feed for each of its edges, as the blocks of a program state it; a machine that brakes before a
     * corner runs slower.
     *
     * @param path path of the jet axis
     * @param feeds feed of each edge, above 0
     * @return the profile
     */
    public static FeedProfile perEdge(Contour path, QuantityArray<Speed> feeds) {
        Objects.requireNonNull(feeds, "feeds");
        Objects.requireNonNull(path, "path");
        Require.between("number of feed rates", feeds.size(), path.size(), path.size(), Units.ONE, "one for each edge");
        double[] starts = new double[path.size()];
        EdgeCursor edge = new EdgeCursor();
        for (int i = 1; i < starts.length; i++) {
            path.load(i - 1, edge);
            starts[i] = starts[i - 1] + edge.length();
        }
        return asWritten(path, QuantityArray.ofSi(Kind.LENGTH, starts), feeds);
    }

    /**
     * Returns a path with a table of feeds: each holds from its distance on.
     *
     * @param path path of the jet axis
     * @param distances distances along the path, the first 0, ascending, each below the length of the path
     * @param feeds feed from each distance on, above 0; as many as distances
     * @return the profile
     */
    public static FeedProfile asWritten(Contour path, QuantityArray<Length> distances, QuantityArray<Speed> feeds) {
        int n = distances.size();
        Require.between("number of feed rates", feeds.size(), n, n, Units.ONE, "one for each distance");
        Require.between("first distance", distances.si(0), 0, 0, Units.MILLIMETRE, "the table starts with the path");
        double lengthM = path.lengthSi();
        FeedPieces pieces = new FeedPieces();
        for (int i = 0; i < n; i++) {
            double feed = Require.positive("feed rate", feeds.si(i), Units.MILLIMETRE_PER_MINUTE);
            double end = i + 1 < n ? distances.si(i + 1) : lengthM;
            Require.above(
                    "distance", end, distances.si(i), Units.MILLIMETRE, "distances ascend up to the path's length");
            Require.atMost("distance", end, lengthM, Units.MILLIMETRE, "the length of the path");
            pieces.add(end - distances.si(i), feed, feed);
        }
        return new FeedProfile(path, pieces, 0, 0, false, null);
    }

    /**
     * Returns this profile with a dwell over the pierced hole, with the workpiece cut through there, before the nozzle moves.
     *
     * @param dwell the time, 0 or more
     * @return the profile with that dwell
     */
    public FeedProfile withStartDwell(Quantity<Time> dwell) {
        Objects.requireNonNull(dwell, "dwell");
        return with(Require.notNegative("dwell", Kind.TIME.si(dwell), Units.SECOND), endDwellS, isRunning);
    }

    /**
     * Returns this profile with a dwell at its end, with the jet on.
     *
     * @param dwell the time, 0 or more
     * @return the profile with that dwell
     */
    public FeedProfile withEndDwell(Quantity<Time> dwell) {
        Objects.requireNonNull(dwell, "dwell");
        return with(startDwellS, Require.notNegative("dwell", Kind.TIME.si(dwell), Units.SECOND), isRunning);
    }

    /**
     * Returns this profile as part of a longer one: the nozzle has come to its start in a straight line, at the first feed and
     * for long.
     *
     * @return the profile without a pierced hole
     */
    public FeedProfile afterSteadyFeed() {
        Require.positive("first feed rate", startMPerS[0], Units.MILLIMETRE_PER_MINUTE);
        return with(startDwellS, endDwellS, true);
    }

    /**
     * Returns this profile with a tilted head: the tilt is linear in the distance between those given, and constant beyond
     * them. The profile of a plan has the tilt of the plan.
     *
     * @param distances distances along the path, one or more, ascending
     * @param tilts tilt of the head at each distance
     * @return the profile with those tilts
     */
    public FeedProfile withTilts(QuantityArray<Length> distances, List<HeadTilt> tilts) {
        int n = distances.size();
        Require.atLeast("number of distances", n, 1, Units.ONE, "");
        Require.between("number of tilts", tilts.size(), n, n, Units.ONE, "one for each distance");
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            if (i > 0) {
                Require.above("distance", distances.si(i), distances.si(i - 1), Units.MILLIMETRE, "distances ascend");
            }
            double limit = 1;
            HeadTilt tilt = tilts.get(i);
            x[i] = Require.between(TILT, tilt.displacementX(), -limit, limit, Units.ONE, "a head tilts less");
            y[i] = Require.between(TILT, tilt.displacementY(), -limit, limit, Units.ONE, "a head tilts less");
        }
        return with(startDwellS, endDwellS, isRunning, new TiltTable(distances.toSi(), x, y));
    }

    /**
     * Returns the tilt of the head at a distance.
     *
     * @param distance distance along the path
     * @return the tilt; empty if the profile has none
     */
    public Optional<HeadTilt> tiltAt(Quantity<Length> distance) {
        Objects.requireNonNull(distance, "distance");
        double atM = Kind.LENGTH.si(distance);
        return tilts == null ? Optional.empty() : Optional.of(tilts.tilt(atM));
    }

    @Nullable
    TiltTable tilts() {
        return tilts;
    }

    /** {@return the path of the jet axis} */
    public Contour path() {
        return path;
    }

    /** {@return the time from the start to the end, with the dwells} */
    public Quantity<Time> time() {
        double sum = startDwellS + endDwellS;
        for (int i = 0; i < startMPerS.length; i++) {
            sum += 2 * (distanceM[i + 1] - distanceM[i]) / (startMPerS[i] + endMPerS[i]);
        }
        return Kind.TIME.of(sum);
    }

    /**
     * Returns the feed at a distance, on SI numbers; where it jumps, that behind the jump.
     *
     * @param distanceM distance along the path in m, from 0 to its length
     * @return feed in m/s
     */
    public double feedAtSi(double distanceM) {
        return feed(piece(distanceM), distanceM);
    }

    /** Piece that holds a distance; of two the later one. */
    int piece(double atM) {
        int at = Arrays.binarySearch(distanceM, atM);
        return Math.max(0, Math.min(startMPerS.length - 1, at >= 0 ? at : -at - 2));
    }

    double feed(int piece, double atM) {
        double share = (atM - distanceM[piece]) / (distanceM[piece + 1] - distanceM[piece]);
        double first = startMPerS[piece];
        double last = endMPerS[piece];
        return first == last ? first : Math.sqrt(Math.max(0, first * first + share * (last * last - first * first)));
    }

    int pieces() {
        return startMPerS.length;
    }

    double end(int piece) {
        return distanceM[piece + 1];
    }

    double startDwell() {
        return startDwellS;
    }

    double endDwell() {
        return endDwellS;
    }

    /** Feed before the start; 0 over a pierced hole. */
    double approach() {
        return isRunning ? startMPerS[0] : 0;
    }

    /** Whether the feed changes at the end of a piece, or its change does. */
    boolean isStep(int piece) {
        return piece + 1 < pieces() && Math.abs(startMPerS[piece + 1] - endMPerS[piece]) > SAME_FEED * endMPerS[piece];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FeedProfile that
                && path.equals(that.path)
                && Arrays.equals(distanceM, that.distanceM)
                && Arrays.equals(startMPerS, that.startMPerS)
                && Arrays.equals(endMPerS, that.endMPerS)
                && startDwellS == that.startDwellS
                && endDwellS == that.endDwellS
                && isRunning == that.isRunning
                && Objects.equals(tilts, that.tilts);
    }

    @Override
    public int hashCode() {
        return Objects.hash(path, Arrays.hashCode(distanceM), Arrays.hashCode(startMPerS), isRunning);
    }

    @Override
    public String toString() {
        return "feed over " + QuantityText.forPeople(Kind.LENGTH, path.lengthSi()) + " in "
                + QuantityText.forPeople(Kind.TIME, Kind.TIME.si(time()));
    }
}
