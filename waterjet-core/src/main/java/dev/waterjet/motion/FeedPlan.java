package dev.waterjet.motion;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.ConditionedContour;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;

/**
 * Feed rate along a tool path, with its time, block by block, and the limit that governs each block. A block is a stretch of
 * one edge between two changes of the maximum feed rate. Numbers of single blocks are read by index and cost no objects.
 *
 * <p>The time is that of the path as planned, from rest to rest: a machine that rounds corners within its deviation runs
 * slightly shorter.
 */
public final class FeedPlan implements Described {

    private final Contour path;
    private final Contour source;
    private final @Nullable ConditionedContour conditioned;
    private final MotionCurve motion;
    private final PathPlaces places;
    private final EdgePolicy[] policies;
    private final double minimumMPerS;
    private final List<Caution> cautions;
    private final PlanBlocks blocks;
    private final @Nullable TiltProfile tilt;

    FeedPlan(
            Contour path,
            Contour source,
            @Nullable ConditionedContour conditioned,
            PlanBlocks blocks,
            PathPlaces places,
            MotionCurve motion,
            EdgePolicy[] policies,
            double minimumMPerS,
            List<Caution> cautions,
            @Nullable TiltProfile tilt) {
        this.path = path;
        this.source = source;
        this.conditioned = conditioned;
        this.blocks = blocks;
        this.places = places;
        this.motion = motion;
        this.policies = policies;
        this.minimumMPerS = minimumMPerS;
        this.cautions = cautions;
        this.tilt = tilt;
    }

    /** {@return the path along which the jet moves: conditioned, so that its edges can be fewer than those drawn} */
    public Contour contour() {
        return path;
    }

    /** {@return the path as it was given to the planner} */
    public Contour source() {
        return source;
    }

    /** {@return the time of the whole path} */
    public Quantity<Time> time() {
        return Kind.TIME.of(motion.timeS());
    }

    /** {@return the number of blocks} */
    public int size() {
        return blocks.count();
    }

    /**
     * Returns a block.
     *
     * @param index index from 0
     * @return the block
     * @throws dev.waterjet.measure.DomainException with code {@code no-such-index} if there is no such block
     */
    public PlanBlock block(int index) {
        int at = Require.index("block", index, size());
        return blocks.block(path, at, at);
    }

    /**
     * Returns the fewest blocks whose maximum feed rates do not change by more than a share within a block. Feed rates of a
     * program that follows them differ by no more from the plan.
     *
     * @param share largest relative change, 0 or more
     * @return the blocks in order
     */
    public List<PlanBlock> blocks(double share) {
        Require.notNegative("relative change of the feed rate", share, Units.ONE);
        List<PlanBlock> merged = new ArrayList<>();
        int first = 0;
        double least = blocks.allowed(0);
        double most = least;
        for (int i = 1; i <= blocks.count(); i++) {
            boolean isSame = i < blocks.count() && blocks.edge(i) == blocks.edge(first);
            double low = isSame ? Math.min(least, blocks.allowed(i)) : 0;
            double high = isSame ? Math.max(most, blocks.allowed(i)) : 0;
            if (isSame && high <= low * (1 + share)) {
                least = low;
                most = high;
                continue;
            }
            merged.add(blocks.block(path, first, i - 1));
            first = i;
            least = i < blocks.count() ? blocks.allowed(i) : 0;
            most = least;
        }
        return merged;
    }

    /**
     * Returns the edges of {@link #source()} with the feed rates of the plan, split where the maximum feed rate changes by more
     * than a share within an edge. The times of all add up to that of the plan.
     *
     * @param share largest relative change, 0 or more
     * @return stretches of the edges in order
     */
    public List<SourceBlock> sourceBlocks(double share) {
        Require.notNegative("relative change of the feed rate", share, Units.ONE);
        return new SourceBlocks(source, path, conditioned, blocks, motion, share).list();
    }

    /**
     * Returns the edge of {@link #contour()} along which a block runs.
     *
     * @param index index of the block
     * @return index of the edge
     */
    public int edge(int index) {
        return blocks.edge(check(index));
    }

    /**
     * Returns the length of a block.
     *
     * @param index index of the block
     * @return the length in m
     */
    public double lengthSi(int index) {
        return blocks.endM(check(index)) - blocks.startM(index);
    }

    /**
     * Returns the feed rate at the start of a block.
     *
     * @param index index of the block
     * @return the feed rate in m/s
     */
    public double entrySi(int index) {
        return blocks.motion().entryMPerS[check(index)];
    }

    /**
     * Returns the highest feed rate within a block.
     *
     * @param index index of the block
     * @return the feed rate in m/s
     */
    public double peakFeedSi(int index) {
        return blocks.motion().peakMPerS[check(index)];
    }

    /**
     * Returns the feed rate at the end of a block.
     *
     * @param index index of the block
     * @return the feed rate in m/s
     */
    public double exitSi(int index) {
        return blocks.motion().exitMPerS[check(index)];
    }

    /**
     * Returns the time of a block.
     *
     * @param index index of the block
     * @return the time in s
     */
    public double timeSi(int index) {
        return blocks.motion().timeS[check(index)];
    }

    /**
     * Returns the maximum feed rate of the process in a block, whatever the machine can follow.
     *
     * @param index index of the block
     * @return the feed rate in m/s
     */
    public double allowedSi(int index) {
        return blocks.allowed(check(index));
    }

    /**
     * Returns the limit that governs most of the time of a block.
     *
     * @param index index of the block
     * @return the limit
     */
    public FeedLimit limit(int index) {
        return blocks.limits().ofBlock(check(index));
    }

    private int check(int index) {
        return Require.index("block", index, size());
    }

    /** {@return the time that each limit governs; a limit that never governs has no entry} */
    public Map<FeedLimit, Quantity<Time>> timeByLimit() {
        Map<FeedLimit, Quantity<Time>> times = new EnumMap<>(FeedLimit.class);
        for (FeedLimit limit : FeedLimit.values()) {
            double seconds = blocks.limits().timeS(limit);
            if (seconds > 0) {
                times.put(limit, Kind.TIME.of(seconds));
            }
        }
        return times;
    }

    /**
     * Returns the time that one limit governs.
     *
     * @param limit the limit
     * @return the time; zero if it never governs
     */
    public Quantity<Time> timeLimitedBy(FeedLimit limit) {
        Objects.requireNonNull(limit, "limit");
        return timeByLimit().getOrDefault(limit, Kind.TIME.of(0));
    }

    /**
     * Returns the time along one edge.
     *
     * @param edge index of an edge of {@link #contour()}
     * @return the time
     */
    public Quantity<Time> timeOfEdge(int edge) {
        Require.index("edge", edge, path.size());
        double sum = 0;
        for (int i = blocks.firstOfEdge(edge); i < blocks.count() && blocks.edge(i) == edge; i++) {
            sum += timeSi(i);
        }
        return Kind.TIME.of(sum);
    }

    /**
     * Returns the feed rate at a distance along the path.
     *
     * @param distance distance from the start, from 0 to the length of the path
     * @return the feed rate
     */
    public Quantity<Speed> feedAt(Quantity<Length> distance) {
        Objects.requireNonNull(distance, "distance");
        return Kind.SPEED.of(feedAtSi(Kind.LENGTH.si(distance)));
    }

    /**
     * Returns the feed rate at a distance along the path, on SI numbers.
     *
     * @param distanceM distance from the start in m, from 0 to the length of the path
     * @return the feed rate in m/s
     */
    public double feedAtSi(double distanceM) {
        return motion.feedAt(distanceM);
    }

    /**
     * Returns the time at which the jet passes a distance along the path, on SI numbers.
     *
     * @param distanceM distance from the start in m, from 0 to the length of the path
     * @return the time since the start in s
     */
    public double timeAtSi(double distanceM) {
        return motion.timeAt(distanceM);
    }

    /**
     * Returns the distance along the path at a time, on SI numbers: the inverse of {@link #timeAtSi}.
     *
     * @param timeS time since the start in s, from 0 to the time of the path
     * @return the distance from the start in m
     */
    public double distanceAtSi(double timeS) {
        return motion.placeAt(
                Require.between("time along the path", timeS, 0, motion.timeS(), Units.SECOND, "it ends there"));
    }

    /**
     * Returns the stretches where the jet runs slower than the edge alone would allow, so that the kerf widens.
     *
     * @param share share of the feed rate of the edge below which a place counts as slow, above 0 to 1
     * @return the stretches in order
     */
    public List<SlowZone> slowZones(double share) {
        Require.above("share of the feed rate", share, 0, Units.ONE, "");
        Require.atMost("share of the feed rate", share, 1, Units.ONE, "");
        return new SlowZoneFinder(path, blocks, motion, policies, places, share).find();
    }

    /**
     * Returns the places at which no feed rate keeps the predicted error of the bottom edge within its tolerance, and those
     * at which the minimum feed rate of the machine is above the one required.
     *
     * @return findings that are not satisfied, in the order of the path
     */
    public List<Finding> findings() {
        return new PlanFindings(path, places, minimumMPerS).list();
    }

    /** {@return the tilt of the head along {@link #contour()}; empty without a tilting head} */
    public Optional<TiltProfile> tilt() {
        return Optional.ofNullable(tilt);
    }

    /** {@return the cautions of the models behind the plan, each once} */
    public List<Caution> cautions() {
        return cautions;
    }

    @Override
    public Map<String, Object> describe() {
        List<Map<String, Object>> limits = new ArrayList<>();
        timeByLimit()
                .forEach((limit, time) -> limits.add(Description.of("limit")
                        .put("limit", limit)
                        .put("time", Kind.TIME, Kind.TIME.si(time))
                        .map()));
        List<Map<String, Object>> all = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            all.add(block(i).describe());
        }
        Map<String, Object> map = new LinkedHashMap<>(Description.of("feed plan")
                .put("time", Kind.TIME, motion.timeS())
                .put("length", Kind.LENGTH, motion.lengthM())
                .put("findings", findings())
                .put("cautions", cautions)
                .map());
        map.put("limits", limits);
        map.put("blocks", all);
        return map;
    }

    @Override
    public String toString() {
        return "feed plan of " + QuantityText.forPeople(Kind.LENGTH, motion.lengthM()) + ", "
                + QuantityText.forPeople(Kind.TIME, motion.timeS()) + " in " + size() + " blocks";
    }
}
