package dev.waterjet.motion;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Stretch of an edge as drawn, with its feed rate and time in a plan.
 *
 * @param edge index of the edge of the path as given to the planner
 * @param from share of the length of the edge at which it starts, 0 to 1
 * @param to share at which it ends, above the first and at most 1
 * @param length its length
 * @param feed feed rate that takes its time
 * @param time its time
 * @param limit limit that governs most of its time
 */
public record SourceBlock(
        int edge,
        double from,
        double to,
        Quantity<Length> length,
        Quantity<Speed> feed,
        Quantity<Time> time,
        FeedLimit limit)
        implements Described {

    /**
     * Checks the components.
     *
     * @param edge index of the edge of the path as given to the planner
     * @param from share of the length of the edge at which it starts, 0 to 1
     * @param to share at which it ends
     * @param length its length
     * @param feed feed rate that takes its time
     * @param time its time
     * @param limit limit that governs most of its time
     */
    public SourceBlock {
        from = Require.between("share of an edge", from, 0, 1, Units.ONE, "");
        to = Require.between("share of an edge", to, from, 1, Units.ONE, "");
        Objects.requireNonNull(length, "length");
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(limit, "limit");
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("source block")
                .put("edge", edge)
                .put("from", from)
                .put("to", to)
                .put("length", Kind.LENGTH, Kind.LENGTH.si(length))
                .put("feed", Kind.SPEED, Kind.SPEED.si(feed))
                .put("time", Kind.TIME, Kind.TIME.si(time))
                .put("limit", limit)
                .map();
    }

    @Override
    public String toString() {
        return "edge " + edge + ", " + QuantityText.forPeople(Kind.LENGTH, length) + " at "
                + QuantityText.forPeople(Kind.SPEED, feed);
    }
}
