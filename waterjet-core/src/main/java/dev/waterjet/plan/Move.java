package dev.waterjet.plan;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedLimit;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Move of the machine, as a post-processor writes it: a line, an arc, or a pierce at one place. Cutting moves have the feed
 * rate that takes their planned time, so that a program of their feed rates takes the time of the plan.
 *
 * @param purpose purpose of the move
 * @param cut index of the cut in the plan, from 0: of a rapid traverse the one that follows
 * @param edge index of the edge, from 0: of the part contour, or of the blocks of the cut in a program; -1 for what belongs to
 *     none
 * @param quality cut quality required on its edge; empty for rapid traverse, pierces and leads
 * @param start point at which it starts
 * @param end point at which it ends
 * @param centre centre of an arc; empty for a line
 * @param turn side to which an arc turns; empty for a line
 * @param length length, 0 for a pierce
 * @param feed feed rate; 0 for a pierce
 * @param time time of the move; of a pierce the planned one
 * @param limit limit that governs the feed rate; empty for rapid traverse and pierces
 * @param tilt tilt of the head, which turns within the move; empty without a tilting head and in rapid traverse
 */
public record Move(
        Purpose purpose,
        int cut,
        int edge,
        Optional<CutQuality> quality,
        Point start,
        Point end,
        Optional<Point> centre,
        Optional<Side> turn,
        Quantity<Length> length,
        Quantity<Speed> feed,
        Quantity<Time> time,
        Optional<FeedLimit> limit,
        Optional<MoveTilt> tilt)
        implements Described {

    /** Purpose of a move. */
    public enum Purpose {
        /** Rapid traverse with the jet off. */
        RAPID,
        /** Pierce at one place: the jet is switched on before and stays on. */
        PIERCE,
        /** Cut in scrap from the pierce point to the contour. */
        LEAD_IN,
        /** Cut along the part. */
        CUT,
        /** Second cut over the start of a contour. */
        OVERCUT,
        /** Cut in scrap away from the contour. */
        LEAD_OUT;

        /** {@return the name for people, in lower case} */
        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /** {@return whether the jet is on} */
        public boolean isJetOn() {
            return this != RAPID;
        }
    }

    /**
     * Checks the components.
     *
     * @param purpose purpose of the move
     * @param cut index of the cut in the plan
     * @param edge index of the edge, or -1
     * @param quality cut quality required on its edge
     * @param start point at which it starts
     * @param end point at which it ends
     * @param centre centre of an arc
     * @param turn side to which an arc turns
     * @param length length
     * @param feed feed rate
     * @param time time of the move
     * @param limit limit that governs the feed rate
     * @param tilt tilt of the head
     */
    public Move {
        Objects.requireNonNull(purpose, "purpose");
        Require.atLeast("index of a cut", cut, 0, Units.ONE, "");
        Require.atLeast("index of an edge", edge, -1, Units.ONE, "-1 stands for none");
        Objects.requireNonNull(quality, "quality");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(end, "end");
        Objects.requireNonNull(centre, "centre");
        Objects.requireNonNull(turn, "turn");
        Objects.requireNonNull(length, "length");
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(tilt, "tilt");
    }

    /** {@return the tip of the nozzle at the start, seen from above: the point of the path, moved along a tilted axis} */
    public Point nozzleStart() {
        return tilt.map(lean -> lean.start().pointOnAxis(start, lean.standOff()))
                .orElse(start);
    }

    /** {@return the tip of the nozzle at the end, seen from above} */
    public Point nozzleEnd() {
        return tilt.map(lean -> lean.end().pointOnAxis(end, lean.standOff())).orElse(end);
    }

    /** {@return whether it is an arc} */
    public boolean isArc() {
        return centre.isPresent();
    }

    @Override
    public Map<String, Object> describe() {
        Description description =
                Description.of("move").put("purpose", purpose).put("cut", cut).put("edge", edge);
        quality.ifPresent(required -> description.put("quality", required));
        description
                .put("start_x", Kind.LENGTH, start.xSi())
                .put("start_y", Kind.LENGTH, start.ySi())
                .put("end_x", Kind.LENGTH, end.xSi())
                .put("end_y", Kind.LENGTH, end.ySi());
        centre.ifPresent(point ->
                description.put("centre_x", Kind.LENGTH, point.xSi()).put("centre_y", Kind.LENGTH, point.ySi()));
        turn.ifPresent(side -> description.put("turn", side));
        description
                .put("length", Kind.LENGTH, Kind.LENGTH.si(length))
                .put("feed", Kind.SPEED, Kind.SPEED.si(feed))
                .put("time", Kind.TIME, Kind.TIME.si(time));
        limit.ifPresent(governing -> description.put("limit", governing));
        tilt.ifPresent(lean -> description
                .put("tilt", lean)
                .put("nozzle_start_x", Kind.LENGTH, nozzleStart().xSi())
                .put("nozzle_start_y", Kind.LENGTH, nozzleStart().ySi())
                .put("nozzle_end_x", Kind.LENGTH, nozzleEnd().xSi())
                .put("nozzle_end_y", Kind.LENGTH, nozzleEnd().ySi()));
        return description.map();
    }

    @Override
    public String toString() {
        return purpose.label() + " to " + end + " at " + QuantityText.forPeople(Kind.SPEED, feed);
    }
}
