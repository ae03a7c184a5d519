package dev.waterjet.motion;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Feed along a path, block by block, its exact time, and which limit held where. Blocks follow the edges of the contour in
 * order; an edge may be cut into several. Numbers of single blocks are asked by index and cost no objects.
 *
 * <p>The time is that of the path as drawn, from rest to rest: a machine that rounds corners within its deviation runs a
 * trifle shorter.
 */
public final class FeedPlan implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Contour contour;
    private final MotionProfile motion;
    private final QualityFeeds feeds;

    FeedPlan(Contour contour, MotionProfile motion, QualityFeeds feeds) {
        this.contour = contour;
        this.motion = motion;
        this.feeds = feeds;
    }

    /**
     * The path.
     *
     * @return the contour that was planned
     */
    public Contour contour() {
        return contour;
    }

    /**
     * How long the whole path takes.
     *
     * @return the time, in s
     */
    public Quantity<Time> time() {
        return Kind.TIME.of(motion.totalS);
    }

    /**
     * How many blocks there are.
     *
     * @return the count
     */
    public int size() {
        return motion.count;
    }

    /**
     * One block.
     *
     * @param index index from 0
     * @return the block
     */
    public PlanBlock block(int index) {
        return PlanBlock.of(this, index);
    }

    /**
     * The edge that a block runs along.
     *
     * @param index index of the block
     * @return index of the edge
     */
    public int edge(int index) {
        return motion.edge(index);
    }

    /**
     * Length of a block.
     *
     * @param index index of the block
     * @return the length in m
     */
    public double lengthSi(int index) {
        return motion.lengthM[index];
    }

    /**
     * Feed at the start of a block.
     *
     * @param index index of the block
     * @return the feed in m/s
     */
    public double entrySi(int index) {
        return motion.nodeMPerS[index];
    }

    /**
     * Greatest feed within a block.
     *
     * @param index index of the block
     * @return the feed in m/s
     */
    public double peakFeedSi(int index) {
        return motion.peakMPerS[index];
    }

    /**
     * Feed at the end of a block.
     *
     * @param index index of the block
     * @return the feed in m/s
     */
    public double exitSi(int index) {
        return motion.nodeMPerS[index + 1];
    }

    /**
     * Time of a block.
     *
     * @param index index of the block
     * @return the time in s
     */
    public double timeSi(int index) {
        return motion.timeS[index];
    }

    /**
     * Greatest feed that front and machine would allow in a block, acceleration left aside.
     *
     * @param index index of the block
     * @return the feed in m/s
     */
    public double allowedSi(int index) {
        return motion.capMPerS[index];
    }

    /**
     * What held the greatest feed of a block down.
     *
     * @param index index of the block
     * @return the limit
     */
    public FeedLimit limit(int index) {
        return motion.peakMPerS[index] < motion.capMPerS[index] * (1 - 1e-12)
                ? FeedLimit.ACCELERATION
                : FeedLimit.of(motion.limit[index]);
    }

    /**
     * Time spent under each limit: at the feed that it allows, or in speeding up and slowing down.
     *
     * @return the times by limit, in s; a limit that never held is missing
     */
    public Map<FeedLimit, Quantity<Time>> timeByLimit() {
        double[] sums = new double[FeedLimit.values().length];
        for (int i = 0; i < motion.count; i++) {
            sums[motion.limit[i]] += motion.atCapS[i];
            sums[FeedLimit.ACCELERATION.code()] += motion.timeS[i] - motion.atCapS[i];
        }
        Map<FeedLimit, Quantity<Time>> times = new EnumMap<>(FeedLimit.class);
        for (FeedLimit limit : FeedLimit.values()) {
            if (sums[limit.code()] > 0) {
                times.put(limit, Kind.TIME.of(sums[limit.code()]));
            }
        }
        return times;
    }

    /**
     * Time spent under one limit.
     *
     * @param limit the limit
     * @return the time, in s; zero if it never held
     */
    public Quantity<Time> timeLimitedBy(FeedLimit limit) {
        return timeByLimit().getOrDefault(limit, Kind.TIME.of(0));
    }

    /**
     * Feed at a distance along the path. It walks the blocks from the start.
     *
     * @param distance distance from the start, from 0 to the length of the path
     * @return the feed, in m/s
     */
    public Quantity<Speed> feedAt(Quantity<Length> distance) {
        double left = Require.notNegative("distance along the path", Kind.LENGTH.si(distance), Units.MILLIMETRE);
        int n = motion.count;
        for (int i = 0; i < n; i++) {
            if (left <= motion.lengthM[i] || i == n - 1) {
                return Kind.SPEED.of(new BlockProfile(motion).block(i).speed(Math.min(left, motion.lengthM[i])));
            }
            left -= motion.lengthM[i];
        }
        throw new IllegalStateException("a plan has blocks");
    }

    /**
     * The stretches where the jet runs slower than the finish asks, so that the kerf widens.
     *
     * @param share share of the feed of the finish below which a place counts as slow, such as 0.9
     * @return the stretches in order; neighbouring slow blocks are one
     */
    public List<SlowZone> slowZones(double share) {
        Require.above("share of the feed", share, 0, Units.ONE, "");
        Require.atMost("share of the feed", share, 1, Units.ONE, "");
        return SlowZoneFinder.find(contour, motion, feeds, share);
    }

    @Override
    public Map<String, Object> describe() {
        List<Map<String, Object>> limits = new ArrayList<>();
        timeByLimit()
                .forEach((limit, time) -> limits.add(Description.of("limit")
                        .put("limit", limit)
                        .put("time", Kind.TIME, Kind.TIME.si(time))
                        .map()));
        return Description.of("feed plan")
                .put("time", Kind.TIME, motion.totalS)
                .put("length", Kind.LENGTH, Kind.LENGTH.si(contour.length()))
                .put("blocks", motion.count)
                .put("limits", limits)
                .map();
    }

    @Override
    public String toString() {
        return describe().toString();
    }
}
