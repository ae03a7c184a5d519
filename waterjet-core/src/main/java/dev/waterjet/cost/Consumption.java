package dev.waterjet.cost;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Density;
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
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/**
 * Consumption of a jet over its jet-on time: water, abrasive, energy from the mains, and dry mass of sludge.
 *
 * <p>Sludge is the abrasive and the material removed.
 */
public final class Consumption implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double DEFAULT_SOLID_SHARE = 0.55;

    /** Checked content, and the serial form. */
    private record Values(double timeS, double waterM3, double abrasiveKg, double energyJ, double removedKg)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            timeS = Require.notNegative("jet-on time", timeS, Units.SECOND);
            waterM3 = Require.notNegative("volume of water", waterM3, Units.LITRE);
            abrasiveKg = Require.notNegative("mass of abrasive", abrasiveKg, Units.KILOGRAM);
            energyJ = Require.notNegative("energy", energyJ, Units.ONE);
            removedKg = Require.notNegative("mass of the material removed", removedKg, Units.KILOGRAM);
        }

        private Object readResolve() {
            return new Consumption(this);
        }
    }

    private final transient Values values;

    private Consumption(Values values) {
        this.values = values;
    }

    /**
     * Returns the consumption of a jet over a time.
     *
     * @param jet the jet
     * @param time jet-on time, 0 or more
     * @param pumpEfficiency hydraulic power over power from the mains, above 0 to 1: typically 0.6 to 0.7 for intensifiers,
     *     0.85 to 0.95 for direct-drive pumps (common practice, no source)
     * @return the consumption
     */
    public static Consumption of(AbrasiveJet jet, Quantity<Time> time, double pumpEfficiency) {
        Objects.requireNonNull(jet, "jet");
        double timeS = Kind.TIME.si(Objects.requireNonNull(time, "time"));
        double efficiency = Prices.requireEfficiency(pumpEfficiency);
        return new Consumption(new Values(
                timeS,
                jet.waterVolumeFlowSi() * timeS,
                jet.abrasiveFlowSi() * timeS,
                Kind.POWER.si(jet.water().ratedHydraulicPower()) / efficiency * timeS,
                0));
    }

    /**
     * Returns this consumption with the material removed, which adds to the sludge.
     *
     * @param removed mass of the material removed, 0 or more
     * @return the consumption with that mass
     */
    public Consumption withRemoved(Quantity<Mass> removed) {
        return new Consumption(new Values(
                values.timeS,
                values.waterM3,
                values.abrasiveKg,
                values.energyJ,
                Kind.MASS.si(Objects.requireNonNull(removed, "removed"))));
    }

    /**
     * Returns the sum of this and another consumption.
     *
     * @param other other consumption
     * @return the sum
     */
    public Consumption plus(Consumption other) {
        Values more = Objects.requireNonNull(other, "other").values;
        return new Consumption(new Values(
                values.timeS + more.timeS,
                values.waterM3 + more.waterM3,
                values.abrasiveKg + more.abrasiveKg,
                values.energyJ + more.energyJ,
                values.removedKg + more.removedKg));
    }

    /**
     * Returns this consumption multiplied by a factor.
     *
     * @param factor factor, 0 or more
     * @return the product
     */
    public Consumption times(double factor) {
        Require.notNegative("number of times", factor, Units.ONE);
        return new Consumption(new Values(
                values.timeS * factor,
                values.waterM3 * factor,
                values.abrasiveKg * factor,
                values.energyJ * factor,
                values.removedKg * factor));
    }

    /**
     * Returns the jet-on time until the hopper is empty.
     *
     * @param jet jet that it feeds
     * @param heads number of such jets, 1 or more
     * @param hopper mass of abrasive in the hopper, 0 or more
     * @return the time with all jets on
     */
    public static Quantity<Time> timeToEmptyHopper(AbrasiveJet jet, int heads, Quantity<Mass> hopper) {
        Objects.requireNonNull(jet, "jet");
        Require.atLeast("number of heads", heads, 1, Units.ONE, "");
        Objects.requireNonNull(hopper, "hopper");
        double hopperKg = Require.notNegative("abrasive in the hopper", Kind.MASS.si(hopper), Units.KILOGRAM);
        return Kind.TIME.of(hopperKg / (jet.abrasiveFlowSi() * heads));
    }

    /**
     * Returns the share of the catcher tank that the settled sludge of this consumption fills, with a solid share of 0.55, as
     * of settled sand (common practice, no source).
     *
     * @param catcher volume for sludge in the catcher tank, above 0
     * @param abrasiveParticle density of an abrasive particle, above 0
     * @param material density of the material removed, above 0
     * @return the share: above 1 the catcher tank must be emptied in between
     */
    public double catcherFillRatio(
            Quantity<Volume> catcher, Quantity<Density> abrasiveParticle, Quantity<Density> material) {
        return catcherFillRatio(catcher, abrasiveParticle, material, DEFAULT_SOLID_SHARE);
    }

    /**
     * Returns the share of the catcher tank that the settled sludge of this consumption fills.
     *
     * @param catcher volume for sludge in the catcher tank, above 0
     * @param abrasiveParticle density of an abrasive particle, above 0
     * @param material density of the material removed, above 0
     * @param solidShare volume of the particles over that of the settled sludge, above 0 to 1
     * @return the share: above 1 the catcher tank must be emptied in between
     */
    public double catcherFillRatio(
            Quantity<Volume> catcher,
            Quantity<Density> abrasiveParticle,
            Quantity<Density> material,
            double solidShare) {
        Objects.requireNonNull(catcher, "catcher");
        Objects.requireNonNull(abrasiveParticle, "abrasiveParticle");
        Objects.requireNonNull(material, "material");
        double particle = Require.positive(
                "density of the abrasive", Kind.DENSITY.si(abrasiveParticle), Units.KILOGRAM_PER_CUBIC_METRE);
        double removed = Require.positive(
                "density of the material removed", Kind.DENSITY.si(material), Units.KILOGRAM_PER_CUBIC_METRE);
        Require.positive("solid share of settled sludge", solidShare, Units.ONE);
        Require.atMost("solid share of settled sludge", solidShare, 1, Units.ONE, "");
        double solidM3 = values.abrasiveKg / particle + values.removedKg / removed;
        return solidM3
                / solidShare
                / Require.positive("volume for sludge in the catcher tank", Kind.VOLUME.si(catcher), Units.LITRE);
    }

    /**
     * Returns the jet-on time.
     *
     * @return the time, in s
     */
    public Quantity<Time> time() {
        return Kind.TIME.of(values.timeS);
    }

    /**
     * Returns the volume of water at ambient density.
     *
     * @return the volume, in m3
     */
    public Quantity<Volume> water() {
        return Kind.VOLUME.of(values.waterM3);
    }

    /**
     * Returns the mass of abrasive.
     *
     * @return the mass, in kg
     */
    public Quantity<Mass> abrasive() {
        return Kind.MASS.of(values.abrasiveKg);
    }

    /**
     * Returns the energy from the mains.
     *
     * @return the energy, in J
     */
    public Quantity<Energy> energy() {
        return Kind.ENERGY.of(values.energyJ);
    }

    /**
     * Returns the dry mass of sludge: abrasive and material removed.
     *
     * @return the mass, in kg
     */
    public Quantity<Mass> sludge() {
        return Kind.MASS.of(sludgeSi());
    }

    double timeSi() {
        return values.timeS;
    }

    double waterSi() {
        return values.waterM3;
    }

    double abrasiveSi() {
        return values.abrasiveKg;
    }

    double energySi() {
        return values.energyJ;
    }

    double sludgeSi() {
        return values.abrasiveKg + values.removedKg;
    }

    double removedSi() {
        return values.removedKg;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("consumption")
                .put("time", Kind.TIME, values.timeS)
                .put("water", Kind.VOLUME, values.waterM3)
                .put("abrasive", Kind.MASS, values.abrasiveKg)
                .put("energy", Kind.ENERGY, values.energyJ)
                .put("sludge", Kind.MASS, sludgeSi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Consumption that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return QuantityText.round(values.waterM3 * 1000, 3) + " L of water, " + QuantityText.round(values.abrasiveKg, 3)
                + " kg of abrasive, " + QuantityText.round(values.energyJ / 3.6e6, 3) + " kWh";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
