package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.hydraulics.JetContraction;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Pure waterjet in air: how its mean stagnation pressure on the axis falls with the distance from the orifice.
 *
 * <p>With the diameter <i>d</i> of the jet the pressure is full up to <i>x</i><sub>c</sub> = 100 <i>d</i> (coherent jet), then
 * <i>p x</i><sub>c</sub>/<i>x</i> up to <i>x</i><sub>b</sub> = 500 <i>d</i>, then <i>p x</i><sub>c</sub> <i>x</i><sub>b</sub>/<i>x</i><sup>2</sup>
 * (drops). Values from memory: cores of 70 to 135 diameters (Yanaida, Ohashi 1974 to 1980), decay by Rajaratnam et al., J. Hydraul.
 * Res. 1994. The flow upstream decides: a long straight run about doubles the coherent length, a swirl halves it (common
 * practice, no source). Single drops strike with far more than the mean pressure.
 *
 * @param water the jet at the orifice
 * @param diameter diameter of the contracted jet
 */
public record PlainJet(WaterJet water, Quantity<Length> diameter) implements Described {

    private static final double COHERENT_DIAMETERS = 100;
    private static final double COHERENT_LOG = 0.35;
    private static final double DROP_DIAMETERS = 500;
    private static final double DROP_LOG = 0.7;
    private static final double SHARP_JEWEL = 0.98;

    private static final double SKIN_PA = 0.7e6;
    private static final double AIR_KG_PER_M3 = 1.2041;
    private static final double WATER_KG_PER_M3 = 998.2;

    private static final Caution INJECTION = Caution.danger(Message.of(
            "jet-injection",
            "a jet injures at any distance computed here and beyond, also without pain; guards and distances follow the"
                    + " machine's manual and the standards for high-pressure water machines"));

    /** Zones of a jet in air. */
    public enum Zone {
        /** Full pressure on the axis. */
        COHERENT,
        /** Pressure falls as the inverse of the distance. */
        MAIN,
        /** Drops: pressure falls as the inverse square of the distance. */
        DROPS
    }

    /**
     * Checks the components.
     *
     * @param water the jet at the orifice
     * @param diameter diameter of the contracted jet, above 0
     */
    public PlainJet {
        Objects.requireNonNull(water, "water");
        Objects.requireNonNull(diameter, "diameter");
        Require.positive("diameter of the jet", Kind.LENGTH.si(diameter), Units.MILLIMETRE);
    }

    /**
     * Returns the jet of a sharp jewel with a velocity coefficient of 0.98 (value from memory).
     *
     * @param water the jet at the orifice
     * @return the jet in air
     */
    public static PlainJet of(WaterJet water) {
        Objects.requireNonNull(water, "water");
        return new PlainJet(water, JetContraction.of(water, SHARP_JEWEL).diameter());
    }

    /** {@return the distance from the orifice up to which the jet is coherent} */
    public Estimate<Length> coherentLength() {
        return Estimate.withinFactor(
                Kind.LENGTH, COHERENT_DIAMETERS * Kind.LENGTH.si(diameter), COHERENT_LOG, List.of(INJECTION));
    }

    /**
     * Returns the zone at a distance.
     *
     * @param distance distance from the orifice, 0 or more
     * @return the zone
     */
    public Zone zoneAt(Quantity<Length> distance) {
        double diameters = diameters(distance);
        if (diameters <= COHERENT_DIAMETERS) {
            return Zone.COHERENT;
        }
        return diameters <= DROP_DIAMETERS ? Zone.MAIN : Zone.DROPS;
    }

    /**
     * Returns the mean stagnation pressure on the axis at a distance.
     *
     * @param distance distance from the orifice, 0 or more
     * @return the gauge pressure
     */
    public Estimate<Pressure> corePressure(Quantity<Length> distance) {
        double ratio = pressureRatio(diameters(distance), COHERENT_DIAMETERS, DROP_DIAMETERS);
        double log = switch (zoneAt(distance)) {
            case COHERENT -> 0;
            case MAIN -> COHERENT_LOG;
            case DROPS -> Math.hypot(COHERENT_LOG, DROP_LOG);
        };
        return Estimate.withinFactor(Kind.PRESSURE, ratio * water.pressureSi(), log, List.of(INJECTION));
    }

    private double diameters(Quantity<Length> distance) {
        Objects.requireNonNull(distance, "distance");
        double distanceM = Require.notNegative("distance from the orifice", Kind.LENGTH.si(distance), Units.MILLIMETRE);
        return distanceM / Kind.LENGTH.si(diameter);
    }

    /**
     * Returns the depth of water in a catcher at which the jet has slowed down to a speed: a round turbulent jet in water at rest, axis
     * speed 6.2 &radic;(4 <i>M</i>/(&pi; &rho;))/<i>x</i> (form by Albertson et al. 1950, constant from memory). Air that the jet carries down
     * makes it deeper by a factor of 1 to 2.
     *
     * @param remaining speed on the axis, above 0; 2 m/s is usual (assumed)
     * @return the depth, within a factor of 1.5, with the caution {@code dwelling-jet}
     */
    public Estimate<Length> catcherDepth(Quantity<Speed> remaining) {
        return StoppedJet.depth(Kind.FORCE.si(water.reactionForce()), remaining);
    }

    /**
     * Returns a cautious reach of the jet in air: the distance up to which a coherent jet, or drops and air together, could strike with
     * 0.7 MPa, the pressure that secondary sources quote for breaking skin. It is a danger zone. No distance is safe: drops of higher
     * speed, ricochets and particles fly farther.
     *
     * @return the distance, with the caution {@code jet-injection}
     */
    public Estimate<Length> dangerZone() {
        double coherent = COHERENT_DIAMETERS * Kind.LENGTH.si(diameter) * water.pressureSi() / SKIN_PA;
        double drops = DragKernel.submergedDistance(
                Kind.FORCE.si(water.reactionForce()), AIR_KG_PER_M3, Math.sqrt(2 * SKIN_PA / WATER_KG_PER_M3));
        return Estimate.withinFactor(Kind.LENGTH, Math.max(coherent, drops), COHERENT_LOG, List.of(INJECTION));
    }

    /**
     * Returns the mean stagnation pressure on the axis over that at the orifice, for models on SI numbers.
     *
     * @param distanceM distance from the orifice in m, 0 or more; not checked
     * @param diameterM diameter of the jet in m, above 0; not checked
     * @return the ratio, above 0 to 1
     */
    public static double axisPressureRatioSi(double distanceM, double diameterM) {
        return pressureRatio(distanceM / diameterM, COHERENT_DIAMETERS, DROP_DIAMETERS);
    }

    /** Pressure over that at the orifice, at a distance in diameters. */
    static double pressureRatio(double diameters, double coherent, double drops) {
        if (diameters <= coherent) {
            return 1;
        }
        double main = coherent / diameters;
        return diameters <= drops ? main : main * drops / diameters;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("plain jet")
                .put("water", water)
                .put("diameter", Kind.LENGTH, Kind.LENGTH.si(diameter))
                .put("coherent_length", coherentLength())
                .map();
    }

    @Override
    public String toString() {
        return "pure waterjet of " + QuantityText.forPeople(Kind.LENGTH, diameter) + " diameter";
    }
}
