package dev.waterjet.motion;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import java.io.Serializable;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/** A piece of a plan as a controller takes it: an edge or a part of one, run between two feeds. */
public final class PlanBlock implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final int edge;
    private final double lengthM;
    private final double entryMPerS;
    private final double greatestMPerS;
    private final double exitMPerS;
    private final double timeS;
    private final FeedLimit limit;

    private PlanBlock(FeedPlan plan, int index) {
        this.edge = plan.edge(index);
        this.lengthM = plan.lengthSi(index);
        this.entryMPerS = plan.entrySi(index);
        this.greatestMPerS = plan.peakFeedSi(index);
        this.exitMPerS = plan.exitSi(index);
        this.timeS = plan.timeSi(index);
        this.limit = plan.limit(index);
    }

    static PlanBlock of(FeedPlan plan, int index) {
        return new PlanBlock(plan, index);
    }

    /**
     * The edge that it runs along.
     *
     * @return index of the edge in the contour
     */
    public int edge() {
        return edge;
    }

    /**
     * Its length.
     *
     * @return the length, in m
     */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(lengthM);
    }

    /**
     * Feed at its start.
     *
     * @return the feed, in m/s
     */
    public Quantity<Speed> entry() {
        return Kind.SPEED.of(entryMPerS);
    }

    /**
     * Greatest feed within it: the feed to programme.
     *
     * @return the feed, in m/s
     */
    public Quantity<Speed> peakFeed() {
        return Kind.SPEED.of(greatestMPerS);
    }

    /**
     * Feed at its end.
     *
     * @return the feed, in m/s
     */
    public Quantity<Speed> exit() {
        return Kind.SPEED.of(exitMPerS);
    }

    /**
     * How long it takes.
     *
     * @return the time, in s
     */
    public Quantity<Time> time() {
        return Kind.TIME.of(timeS);
    }

    /**
     * What held its greatest feed down.
     *
     * @return the limit
     */
    public FeedLimit limit() {
        return limit;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("block")
                .put("edge", edge)
                .put("length", Kind.LENGTH, lengthM)
                .put("entry", Kind.SPEED, entryMPerS)
                .put("greatest", Kind.SPEED, greatestMPerS)
                .put("exit", Kind.SPEED, exitMPerS)
                .put("time", Kind.TIME, timeS)
                .put("limit", limit)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PlanBlock that && describe().equals(that.describe());
    }

    @Override
    public int hashCode() {
        return describe().hashCode();
    }

    @Override
    public String toString() {
        return describe().toString();
    }
}
