package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;

/**
 * Pierce of a plate: the method that was selected, its reason, and the time that it takes.
 *
 * @param method the method
 * @param pressure gauge pressure at the orifice during the pierce, above 0; with a drilled hole, that at which the cut starts
 * @param time jet-on time until the jet is through; 0 with a drilled hole
 * @param idleTime further time with the jet off or stationary, 0 or more: raising the pressure, or drilling
 * @param reason reason for the method
 * @param cautions cautions for the shop
 */
public record Pierce(
        PierceMethod method,
        Quantity<Pressure> pressure,
        Estimate<Time> time,
        Quantity<Time> idleTime,
        Message reason,
        List<Caution> cautions)
        implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the pressure is not above 0, or a time is below 0
     * @param method the method
     * @param pressure gauge pressure at the orifice during the pierce, above 0; with a drilled hole, that at which the cut starts
     * @param time jet-on time until the jet is through; 0 with a drilled hole
     * @param idleTime further time with the jet off or stationary, 0 or more: raising the pressure, or drilling
     * @param reason reason for the method
     * @param cautions cautions for the shop
     */
    public Pierce {
        Objects.requireNonNull(cautions, "cautions");
        Objects.requireNonNull(idleTime, "idleTime");
        Objects.requireNonNull(pressure, "pressure");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(method, "method");
        pressure = Kind.PRESSURE.of(Require.positive("pierce pressure", Kind.PRESSURE.si(pressure), Units.MEGAPASCAL));
        Require.notNegative("pierce time", time.si(), Units.SECOND);
        idleTime = Kind.TIME.of(Require.notNegative("idle time of a pierce", Kind.TIME.si(idleTime), Units.SECOND));
        Objects.requireNonNull(reason, "reason");
        cautions = List.copyOf(cautions);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pierce")
                .put("method", method)
                .put("pressure", Kind.PRESSURE, Kind.PRESSURE.si(pressure))
                .put("time", time)
                .put("idle_time", Kind.TIME, Kind.TIME.si(idleTime))
                .put("reason", reason)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        if (method == PierceMethod.PRE_DRILLED) {
            return "pre-drilled hole, started at " + QuantityText.forPeople(Kind.PRESSURE, pressure);
        }
        return method.label() + " pierce at " + QuantityText.forPeople(Kind.PRESSURE, pressure) + ", "
                + QuantityText.forPeople(Kind.TIME, time.si());
    }
}
