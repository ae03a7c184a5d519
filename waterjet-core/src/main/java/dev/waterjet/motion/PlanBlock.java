package dev.waterjet.motion;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Block of a feed plan: an edge or a part of one, as a control takes it.
 *
 * @param edge index of the edge of the planned path
 * @param start point at which it starts
 * @param end point at which it ends
 * @param centre centre of an arc; empty for a line
 * @param turn side to which an arc turns; empty for a line
 * @param startsAt distance of its start along the path
 * @param length its length
 * @param entryFeed feed rate at its start
 * @param peakFeed highest feed rate within it
 * @param exitFeed feed rate at its end
 * @param allowedFeed maximum feed rate of the process
 * @param time its time
 * @param limit limit that governs most of its time
 */
public record PlanBlock(
        int edge,
        Point start,
        Point end,
        Optional<Point> centre,
        Optional<Side> turn,
        Quantity<Length> startsAt,
        Quantity<Length> length,
        Quantity<Speed> entryFeed,
        Quantity<Speed> peakFeed,
        Quantity<Speed> exitFeed,
        Quantity<Speed> allowedFeed,
        Quantity<Time> time,
        FeedLimit limit)
        implements Described {

    /**
     * Checks the components.
     *
     * @param edge index of the edge of the planned path
     * @param start point at which it starts
     * @param end point at which it ends
     * @param centre centre of an arc; empty for a line
     * @param turn side to which an arc turns; empty for a line
     * @param startsAt distance of its start along the path
     * @param length its length
     * @param entryFeed feed rate at its start
     * @param peakFeed highest feed rate within it
     * @param exitFeed feed rate at its end
     * @param allowedFeed maximum feed rate of the process
     * @param time its time
     * @param limit limit that governs most of its time
     */
    public PlanBlock {
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(end, "end");
        Objects.requireNonNull(centre, "centre");
        Objects.requireNonNull(turn, "turn");
        Objects.requireNonNull(startsAt, "startsAt");
        Objects.requireNonNull(length, "length");
        Objects.requireNonNull(entryFeed, "entryFeed");
        Objects.requireNonNull(peakFeed, "peakFeed");
        Objects.requireNonNull(exitFeed, "exitFeed");
        Objects.requireNonNull(allowedFeed, "allowedFeed");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(limit, "limit");
    }

    /** {@return the feed rate that takes the time of the block: its length over its time} */
    public Quantity<Speed> meanFeed() {
        return Kind.SPEED.of(Kind.LENGTH.si(length) / Kind.TIME.si(time));
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("block")
                .put("edge", edge)
                .put("start_x", Kind.LENGTH, start.xSi())
                .put("start_y", Kind.LENGTH, start.ySi())
                .put("end_x", Kind.LENGTH, end.xSi())
                .put("end_y", Kind.LENGTH, end.ySi());
        centre.ifPresent(point ->
                description.put("centre_x", Kind.LENGTH, point.xSi()).put("centre_y", Kind.LENGTH, point.ySi()));
        turn.ifPresent(side -> description.put("turn", side));
        return description
                .put("starts_at", Kind.LENGTH, Kind.LENGTH.si(startsAt))
                .put("length", Kind.LENGTH, Kind.LENGTH.si(length))
                .put("entry_feed", Kind.SPEED, Kind.SPEED.si(entryFeed))
                .put("peak_feed", Kind.SPEED, Kind.SPEED.si(peakFeed))
                .put("exit_feed", Kind.SPEED, Kind.SPEED.si(exitFeed))
                .put("allowed_feed", Kind.SPEED, Kind.SPEED.si(allowedFeed))
                .put("time", Kind.TIME, Kind.TIME.si(time))
                .put("limit", limit)
                .map();
    }

    @Override
    public String toString() {
        return "block of " + QuantityText.forPeople(Kind.LENGTH, length) + " at "
                + QuantityText.forPeople(Kind.SPEED, meanFeed()) + ", " + limit.label();
    }
}
