package dev.waterjet.motion;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.part.Point;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Stretch of a path where the jet runs slower than the edge alone would allow. The jet stays longer, so the kerf is wider
 * there; a kerf model gives the amount for both feed rates.
 *
 * @param edge index of the edge on which the jet is slowest
 * @param place point at which it is slowest
 * @param startsAt distance along the path at which the stretch starts
 * @param endsAt distance at which it ends
 * @param minimumFeed lowest feed rate; zero where the path starts or ends
 * @param nominalFeed feed rate that the edge alone would allow
 * @param time time in the stretch
 * @param limit limit that governs at the slowest place
 */
public record SlowZone(
        int edge,
        Point place,
        Quantity<Length> startsAt,
        Quantity<Length> endsAt,
        Quantity<Speed> minimumFeed,
        Quantity<Speed> nominalFeed,
        Quantity<Time> time,
        FeedLimit limit)
        implements Described {

    /**
     * Checks the components.
     *
     * @param edge index of the edge on which the jet is slowest
     * @param place point at which it is slowest
     * @param startsAt distance along the path at which the stretch starts
     * @param endsAt distance at which it ends
     * @param minimumFeed lowest feed rate
     * @param nominalFeed feed rate that the edge alone would allow
     * @param time time in the stretch
     * @param limit limit that governs at the slowest place
     */
    public SlowZone {
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(startsAt, "startsAt");
        Objects.requireNonNull(endsAt, "endsAt");
        Objects.requireNonNull(minimumFeed, "minimumFeed");
        Objects.requireNonNull(nominalFeed, "nominalFeed");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(limit, "limit");
    }

    /** {@return the length of the stretch over its time: what a kerf model needs where the jet comes to rest} */
    public Quantity<Speed> meanFeed() {
        return Kind.SPEED.of((Kind.LENGTH.si(endsAt) - Kind.LENGTH.si(startsAt)) / Kind.TIME.si(time));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("slow zone")
                .put("edge", edge)
                .put("x", Kind.LENGTH, place.xSi())
                .put("y", Kind.LENGTH, place.ySi())
                .put("starts_at", Kind.LENGTH, Kind.LENGTH.si(startsAt))
                .put("ends_at", Kind.LENGTH, Kind.LENGTH.si(endsAt))
                .put("minimum_feed", Kind.SPEED, Kind.SPEED.si(minimumFeed))
                .put("nominal_feed", Kind.SPEED, Kind.SPEED.si(nominalFeed))
                .put("time", Kind.TIME, Kind.TIME.si(time))
                .put("limit", limit)
                .map();
    }

    @Override
    public String toString() {
        return "slow zone at " + place + ", " + QuantityText.forPeople(Kind.SPEED, minimumFeed) + ", " + limit.label();
    }
}
