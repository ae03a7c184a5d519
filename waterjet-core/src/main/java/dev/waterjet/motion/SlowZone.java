package dev.waterjet.motion;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import java.io.Serializable;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * A stretch where the jet runs slower than the finish asks: it stays longer, so that the kerf widens there. A kerf model
 * told the two feeds says by how much.
 */
public final class SlowZone implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final int edge;
    private final Point place;
    private final double startM;
    private final double endM;
    private final double leastMPerS;
    private final double usualMPerS;
    private final double timeS;
    private final FeedLimit limit;

    SlowZone(
            int edge,
            Point place,
            double startM,
            double endM,
            double leastMPerS,
            double usualMPerS,
            double timeS,
            FeedLimit limit) {
        this.edge = edge;
        this.place = place;
        this.startM = startM;
        this.endM = endM;
        this.leastMPerS = leastMPerS;
        this.usualMPerS = usualMPerS;
        this.timeS = timeS;
        this.limit = limit;
    }

    /**
     * The edge at whose start or within which the jet is slowest.
     *
     * @return index of the edge
     */
    public int edge() {
        return edge;
    }

    /**
     * Where the jet is slowest.
     *
     * @return the place
     */
    public Point place() {
        return place;
    }

    /**
     * Distance along the path at which the stretch begins.
     *
     * @return the distance, in m
     */
    public Quantity<Length> startsAt() {
        return Kind.LENGTH.of(startM);
    }

    /**
     * Distance along the path at which the stretch ends.
     *
     * @return the distance, in m
     */
    public Quantity<Length> endsAt() {
        return Kind.LENGTH.of(endM);
    }

    /**
     * The slowest feed in the stretch; zero where the path starts or ends.
     *
     * @return the feed, in m/s
     */
    public Quantity<Speed> minimumFeed() {
        return Kind.SPEED.of(leastMPerS);
    }

    /**
     * Mean feed over the stretch: what a kerf model needs where the jet comes to rest.
     *
     * @return the feed, in m/s
     */
    public Quantity<Speed> mean() {
        return Kind.SPEED.of((endM - startM) / timeS);
    }

    /**
     * The feed that the finish alone would allow there.
     *
     * @return the feed, in m/s
     */
    public Quantity<Speed> nominalFeed() {
        return Kind.SPEED.of(usualMPerS);
    }

    /**
     * How long the jet stays in the stretch.
     *
     * @return the time, in s
     */
    public Quantity<Time> time() {
        return Kind.TIME.of(timeS);
    }

    /**
     * What slows it.
     *
     * @return the limit at the slowest place
     */
    public FeedLimit limit() {
        return limit;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("slow spot")
                .put("edge", edge)
                .put("x", Kind.LENGTH, place.xSi())
                .put("y", Kind.LENGTH, place.ySi())
                .put("starts_at", Kind.LENGTH, startM)
                .put("ends_at", Kind.LENGTH, endM)
                .put("least", Kind.SPEED, leastMPerS)
                .put("usual", Kind.SPEED, usualMPerS)
                .put("time", Kind.TIME, timeS)
                .put("limit", limit)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SlowZone that && describe().equals(that.describe());
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
