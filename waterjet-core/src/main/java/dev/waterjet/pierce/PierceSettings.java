package dev.waterjet.pierce;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;

/**
 * Settings of a shop for piercing: limits of the pump, strength of the plate, clearance, and times.
 *
 * <pre>{@code
 * PierceSettings settings = PierceSettings.defaults()
 *         .withMinimumPressure(megapascals(60))
 *         .withPierceClearance(millimetres(6));
 * }</pre>
 *
 * <p>The pressure in a blind hole is about half of the supply pressure: 180 of 345 MPa (measured and extrapolated: Liu,
 * Schubert, IJAMT 42 (2009)), falling with depth. A brittle or laminated plate is therefore safe, as derived from this, where
 * half of the supply pressure is below the strength that keeps it whole: the strength between the layers of a laminate, the
 * tensile strength of glass or stone. The shop states its own; else the handbook value of the catalogue is taken, where there is
 * one, with the lower end of its 90 % interval where it would raise the pressure. A brittle plate that bears less is not refused: glass and stone are pierced at the minimum pressure of the pump by common
 * practice, since the uncut material around a shallow hole supports it, and the danger is the first blow.
 */
public final class PierceSettings implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Pressure in the hole over supply pressure, from 180 of 345 MPa, rounded. */
    private static final double HOLE_SHARE = 0.5;

    /** Part of the safe pressure that is used. Assumed. */
    private static final double MARGIN = 0.8;

    private static final PierceSettings DEFAULTS = new PierceSettings(new Values(70e6, null, 0, 2e-3, 3, 30));

    /** Checked content, and the serial form; an unknown strength is null. */
    private record Values(
            double minimumPressurePa,
            @Nullable Double strengthPa,
            double clearanceM,
            double lowPressureDepthM,
            double rampS,
            double drillS)
            implements Serializable {

        Values {
            minimumPressurePa = Require.positive("minimum pressure of the pump", minimumPressurePa, Units.MEGAPASCAL);
            if (strengthPa != null) {
                strengthPa = Require.positive("strength of the plate", strengthPa, Units.MEGAPASCAL);
            }
            clearanceM = Require.notNegative("pierce clearance", clearanceM, Units.MILLIMETRE);
            lowPressureDepthM =
                    Require.positive("depth of the low-pressure pierce", lowPressureDepthM, Units.MILLIMETRE);
            rampS = Require.notNegative("time to raise the pressure", rampS, Units.SECOND);
            drillS = Require.notNegative("time to drill a hole", drillS, Units.SECOND);
        }

        private Object readResolve() {
            return new PierceSettings(this);
        }

        Values withPressure(double pa) {
            return new Values(pa, strengthPa, clearanceM, lowPressureDepthM, rampS, drillS);
        }

        Values withStrength(double pa) {
            return new Values(minimumPressurePa, pa, clearanceM, lowPressureDepthM, rampS, drillS);
        }

        Values withLengths(double clearance, double lowPressureDepth) {
            return new Values(minimumPressurePa, strengthPa, clearance, lowPressureDepth, rampS, drillS);
        }

        Values withTimes(double ramp, double drill) {
            return new Values(minimumPressurePa, strengthPa, clearanceM, lowPressureDepthM, ramp, drill);
        }
    }

    private final transient Values values;

    private PierceSettings(Values values) {
        this.values = values;
    }

    /**
     * Returns the defaults: a pump that runs down to 70 MPa and takes 3 s to full pressure, low pressure for the first 2 mm,
     * 30 s to drill a hole, no clearance for a moving pierce, strength not stated. These numbers are assumed: a shop states its
     * own.
     *
     * @return the settings
     */
    public static PierceSettings defaults() {
        return DEFAULTS;
    }

    /**
     * Returns these settings with another minimum pressure.
     *
     * @param pressure minimum gauge pressure at which the pump runs steadily, above 0
     * @return the settings with that pressure
     */
    public PierceSettings withMinimumPressure(Quantity<Pressure> pressure) {
        Objects.requireNonNull(pressure, "pressure");
        double pa = Kind.PRESSURE.si(pressure);
        return new PierceSettings(values.withPressure(pa));
    }

    /**
     * Returns these settings with the strength of the plate.
     *
     * @param strength strength between the layers of a laminate, tensile strength of a brittle plate; above 0
     * @return the settings with that strength
     */
    public PierceSettings withStrength(Quantity<Pressure> strength) {
        Objects.requireNonNull(strength, "strength");
        double pa = Kind.PRESSURE.si(strength);
        return new PierceSettings(values.withStrength(pa));
    }

    /**
     * Returns these settings with a clearance in which the jet can move while it pierces.
     *
     * @param clearance width of scrap around the pierce point, 0 or more
     * @return the settings with that clearance
     */
    public PierceSettings withPierceClearance(Quantity<Length> clearance) {
        Objects.requireNonNull(clearance, "clearance");
        double m = Kind.LENGTH.si(clearance);
        return new PierceSettings(values.withLengths(m, values.lowPressureDepthM));
    }

    /**
     * Returns these settings with another depth that a delicate plate is pierced at low pressure, before the pressure is raised.
     * A depth of the thickness or more keeps the low pressure all the way.
     *
     * @param depth depth, above 0
     * @return the settings with that depth
     */
    public PierceSettings withLowPressureDepth(Quantity<Length> depth) {
        Objects.requireNonNull(depth, "depth");
        double m = Kind.LENGTH.si(depth);
        return new PierceSettings(values.withLengths(values.clearanceM, m));
    }

    /**
     * Returns these settings with another time to raise the pressure after a low-pressure pierce.
     *
     * @param time time to full pressure, 0 or more
     * @return the settings with that time
     */
    public PierceSettings withRampTime(Quantity<Time> time) {
        Objects.requireNonNull(time, "time");
        double s = Kind.TIME.si(time);
        return new PierceSettings(values.withTimes(s, values.drillS));
    }

    /**
     * Returns these settings with another time to drill a hole.
     *
     * @param time time of a drilled hole, 0 if it is drilled elsewhere
     * @return the settings with that time
     */
    public PierceSettings withDrillTime(Quantity<Time> time) {
        Objects.requireNonNull(time, "time");
        double s = Kind.TIME.si(time);
        return new PierceSettings(values.withTimes(values.rampS, s));
    }

    /** {@return the minimum gauge pressure at which the pump runs steadily} */
    public Quantity<Pressure> minimumPressure() {
        return Kind.PRESSURE.of(values.minimumPressurePa);
    }

    /** {@return the strength that keeps the plate whole; empty if it is unknown} */
    public Optional<Quantity<Pressure>> strength() {
        return Optional.ofNullable(values.strengthPa).map(Kind.PRESSURE::of);
    }

    /** {@return the width of scrap around the pierce point} */
    public Quantity<Length> pierceClearance() {
        return Kind.LENGTH.of(values.clearanceM);
    }

    /** {@return the depth that a delicate plate is pierced at low pressure, before the pressure is raised} */
    public Quantity<Length> lowPressureDepth() {
        return Kind.LENGTH.of(values.lowPressureDepthM);
    }

    /** {@return the time to raise the pressure after a low-pressure pierce} */
    public Quantity<Time> rampTime() {
        return Kind.TIME.of(values.rampS);
    }

    /** {@return the time of a drilled hole} */
    public Quantity<Time> drillTime() {
        return Kind.TIME.of(values.drillS);
    }

    /**
     * Returns the maximum pressure in a blind hole.
     *
     * @param supply gauge pressure at the orifice, above 0
     * @return gauge pressure in the hole
     */
    public static Quantity<Pressure> blindHolePressure(Quantity<Pressure> supply) {
        Objects.requireNonNull(supply, "supply");
        return Kind.PRESSURE.of(
                HOLE_SHARE * Require.positive("supply pressure", Kind.PRESSURE.si(supply), Units.MEGAPASCAL));
    }

    /**
     * Returns the maximum supply pressure that leaves a plate of the given strength whole, with a margin of a fifth.
     *
     * @return gauge pressure at the orifice; empty if the strength is unknown
     */
    public Optional<Quantity<Pressure>> safePressure() {
        return Optional.ofNullable(values.strengthPa).map(pa -> Kind.PRESSURE.of(safePressure(pa)));
    }

    /** Maximum supply pressure that leaves a plate of a strength whole, in Pa. */
    static double safePressure(double strengthPa) {
        return MARGIN * strengthPa / HOLE_SHARE;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("pierce settings")
                .put("minimum_pressure", Kind.PRESSURE, values.minimumPressurePa)
                .put("pierce_clearance", Kind.LENGTH, values.clearanceM)
                .put("low_pressure_depth", Kind.LENGTH, values.lowPressureDepthM)
                .put("ramp_time", Kind.TIME, values.rampS)
                .put("drill_time", Kind.TIME, values.drillS);
        strength().ifPresent(known -> description.put("strength", Kind.PRESSURE, Kind.PRESSURE.si(known)));
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PierceSettings that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "minimum pressure " + QuantityText.forPeople(Kind.PRESSURE, values.minimumPressurePa)
                + ", pierce clearance " + QuantityText.forPeople(Kind.LENGTH, values.clearanceM) + ", strength "
                + strength()
                        .map(known -> QuantityText.forPeople(Kind.PRESSURE, known))
                        .orElse("unknown");
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
