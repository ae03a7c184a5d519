package dev.waterjet.circuit;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;

/**
 * Motion of the valve of a head or of a dump valve: from its begin on, the open share of the flow area changes linearly from what
 * it was to another value.
 *
 * @param begin time at which the valve begins to move, 0 or more
 * @param duration time that it takes, 0 or more
 * @param opening open share of the flow area at the end, 0 to 1
 */
public record ValveEvent(Quantity<Time> begin, Quantity<Time> duration, double opening)
        implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /**
     * Checks the components.
     *
     * @param begin time at which the valve begins to move, 0 or more
     * @param duration time that it takes, 0 or more
     * @param opening open share of the flow area at the end, 0 to 1
     * @throws dev.waterjet.measure.DomainException if one of them is out of range
     */
    public ValveEvent {
        Objects.requireNonNull(begin, "begin");
        Objects.requireNonNull(duration, "duration");
        begin = Kind.TIME.of(Require.notNegative("begin of the valve motion", Kind.TIME.si(begin), Units.SECOND));
        duration =
                Kind.TIME.of(Require.notNegative("duration of the valve motion", Kind.TIME.si(duration), Units.SECOND));
        opening = Require.between("opening of the valve", opening, 0, 1, Units.ONE, "");
    }

    /**
     * Returns the motion of a valve that shuts.
     *
     * @param begin time at which it begins to move, 0 or more
     * @param duration time that it takes, 0 or more
     * @return the motion
     */
    public static ValveEvent closing(Quantity<Time> begin, Quantity<Time> duration) {
        return new ValveEvent(begin, duration, 0);
    }

    /**
     * Returns the motion of a valve that opens in full.
     *
     * @param begin time at which it begins to move, 0 or more
     * @param duration time that it takes, 0 or more
     * @return the motion
     */
    public static ValveEvent opening(Quantity<Time> begin, Quantity<Time> duration) {
        return new ValveEvent(begin, duration, 1);
    }

    double beginS() {
        return Kind.TIME.si(begin);
    }

    double durationS() {
        return Kind.TIME.si(duration);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("valve event")
                .put("begin", Kind.TIME, beginS())
                .put("duration", Kind.TIME, durationS())
                .put("opening", opening)
                .map();
    }

    @Override
    public String toString() {
        return "valve to " + QuantityText.round(opening, 3) + " within "
                + QuantityText.forPeople(Kind.TIME, durationS()) + " at " + QuantityText.forPeople(Kind.TIME, beginS());
    }
}
