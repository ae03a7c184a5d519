package dev.waterjet.pierce;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;

/**
 * What a shop can do, and knows, when it pierces.
 *
 * <p>The pressure in a blind hole is about half the supply's: 180 of 345 MPa were measured (Liu, Schubert, IJAMT 42 (2009)),
 * falling with depth. A brittle or laminated plate is therefore safe, as derived from this, where half the supply pressure
 * lies below the strength that keeps it whole: the strength between the layers of a laminate, the tensile strength of glass
 * or stone. Only the shop knows that strength; without it the plate is treated as delicate.
 */
public final class PierceSettings implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Pressure in the hole over supply, from 180 of 345 MPa, rounded as the literature tells it: about half. */
    private static final double HOLE_SHARE = 0.5;

    /** Part of the safe pressure that is used. Assumed. */
    private static final double MARGIN = 0.8;

    private static final double USUAL_LOWEST_PA = 70e6;
    private static final double USUAL_RAMP_S = 3;
    private static final double USUAL_DRILL_S = 30;
    private static final double UNKNOWN = 0;

    private final double lowestPressurePa;
    private final double strengthPa;
    private final double roomM;
    private final double rampS;
    private final double drillS;

    private PierceSettings(double lowestPressurePa, double strengthPa, double roomM, double rampS, double drillS) {
        this.lowestPressurePa = Require.positive("lowest pressure of the pump", lowestPressurePa, Units.MEGAPASCAL);
        this.strengthPa = strengthPa;
        this.roomM = Require.notNegative("room for a moving pierce", roomM, Units.MILLIMETRE);
        this.rampS = Require.notNegative("time to raise the pressure", rampS, Units.SECOND);
        this.drillS = Require.notNegative("time to drill a hole", drillS, Units.SECOND);
    }

    /**
     * The usual practice: a pump that goes down to 70 MPa and takes 3 s to come up again, 30 s to drill a hole, no room for a
     * moving pierce, strength not known. These numbers are assumed: a shop states its own.
     *
     * @return the practice
     */
    public static PierceSettings defaults() {
        return new PierceSettings(USUAL_LOWEST_PA, UNKNOWN, 0, USUAL_RAMP_S, USUAL_DRILL_S);
    }

    /**
     * This practice with another lowest pressure.
     *
     * @param pressure lowest gauge pressure at which the pump runs steadily, above zero
     * @return the practice with that pressure
     */
    public PierceSettings withMinimumPressure(Quantity<Pressure> pressure) {
        return new PierceSettings(Kind.PRESSURE.si(pressure), strengthPa, roomM, rampS, drillS);
    }

    /**
     * This practice with a known strength of the plate.
     *
     * @param strength strength between the layers of a laminate, tensile strength of a brittle plate; above zero
     * @return the practice with that strength
     */
    public PierceSettings withStrength(Quantity<Pressure> strength) {
        double pa = Require.positive("strength of the plate", Kind.PRESSURE.si(strength), Units.MEGAPASCAL);
        return new PierceSettings(lowestPressurePa, pa, roomM, rampS, drillS);
    }

    /**
     * This practice with room for the jet to move while it pierces.
     *
     * @param room free width of scrap around the pierce point, zero or more
     * @return the practice with that room
     */
    public PierceSettings withPierceClearance(Quantity<Length> room) {
        return new PierceSettings(lowestPressurePa, strengthPa, Kind.LENGTH.si(room), rampS, drillS);
    }

    /**
     * This practice with another time to raise the pressure again after a pierce at low pressure.
     *
     * @param time time to full pressure, zero or more
     * @return the practice with that time
     */
    public PierceSettings withRampTime(Quantity<Time> time) {
        return new PierceSettings(lowestPressurePa, strengthPa, roomM, Kind.TIME.si(time), drillS);
    }

    /**
     * This practice with another time to drill a hole.
     *
     * @param time time a drilled hole takes, zero if it is drilled elsewhere
     * @return the practice with that time
     */
    public PierceSettings withDrillTime(Quantity<Time> time) {
        return new PierceSettings(lowestPressurePa, strengthPa, roomM, rampS, Kind.TIME.si(time));
    }

    /**
     * Pressure that stands in a blind hole, at its greatest.
     *
     * @param supply gauge pressure at the orifice, above zero
     * @return gauge pressure in the hole
     */
    public static Quantity<Pressure> blindHolePressure(Quantity<Pressure> supply) {
        return Kind.PRESSURE.of(
                HOLE_SHARE * Require.positive("supply pressure", Kind.PRESSURE.si(supply), Units.MEGAPASCAL));
    }

    /**
     * Highest supply pressure that leaves a plate of the known strength whole, with a margin of a fifth.
     *
     * @return gauge pressure at the orifice, or nothing if the strength is not known
     */
    public Optional<Quantity<Pressure>> safePressure() {
        return isStrengthKnown() ? Optional.of(Kind.PRESSURE.of(safePressureSi())) : Optional.empty();
    }

    public boolean isStrengthKnown() {
        return strengthPa > UNKNOWN;
    }

    double safePressureSi() {
        return MARGIN * strengthPa / HOLE_SHARE;
    }

    public double minimumPressureSi() {
        return lowestPressurePa;
    }

    public double strengthSi() {
        return strengthPa;
    }

    public double pierceClearanceSi() {
        return roomM;
    }

    public double rampSi() {
        return rampS;
    }

    public double drillSi() {
        return drillS;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("pierce practice")
                .put("lowest_pressure", Kind.PRESSURE, lowestPressurePa)
                .put("room", Kind.LENGTH, roomM)
                .put("ramp_time", Kind.TIME, rampS)
                .put("drill_time", Kind.TIME, drillS);
        return (isStrengthKnown() ? description.put("strength", Kind.PRESSURE, strengthPa) : description).map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PierceSettings that
                && lowestPressurePa == that.lowestPressurePa
                && strengthPa == that.strengthPa
                && roomM == that.roomM
                && rampS == that.rampS
                && drillS == that.drillS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(lowestPressurePa, strengthPa, roomM, rampS, drillS);
    }

    @Override
    public String toString() {
        return "pierce practice " + describe();
    }
}
