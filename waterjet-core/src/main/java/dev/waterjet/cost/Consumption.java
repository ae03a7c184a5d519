package dev.waterjet.cost;

import dev.waterjet.jet.AbrasiveJet;
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

    private final double timeS;
    private final double waterM3;
    private final double abrasiveKg;
    private final double energyJ;
    private final double removedKg;

    private Consumption(double timeS, double waterM3, double abrasiveKg, double energyJ, double removedKg) {
        this.timeS = timeS;
        this.waterM3 = waterM3;
        this.abrasiveKg = abrasiveKg;
        this.energyJ = energyJ;
        this.removedKg = removedKg;
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
        double timeS = Require.notNegative("jet-on time", Kind.TIME.si(time), Units.SECOND);
        Require.positive("efficiency of the pump", pumpEfficiency, Units.ONE);
        Require.atMost("efficiency of the pump", pumpEfficiency, 1, Units.ONE, "efficiency cannot exceed 1");
        return new Consumption(
                timeS,
                jet.water().volumeFlowSi() * timeS,
                jet.abrasiveFlowSi() * timeS,
                Kind.POWER.si(jet.water().ratedHydraulicPower()) / pumpEfficiency * timeS,
                0);
    }

    /**
     * Returns this consumption with the material removed, which adds to the sludge.
     *
     * @param removed mass of the material removed, zero or more
     * @return the consumption with that mass
     */
    public Consumption withRemoved(Quantity<Mass> removed) {
        return new Consumption(
                timeS,
                waterM3,
                abrasiveKg,
                energyJ,
                Require.notNegative("mass of the material removed", Kind.MASS.si(removed), Units.KILOGRAM));
    }

    /**
     * Returns the sum of this and another consumption.
     *
     * @param other the other
     * @return the sum
     */
    public Consumption plus(Consumption other) {
        return new Consumption(
                timeS + other.timeS,
                waterM3 + other.waterM3,
                abrasiveKg + other.abrasiveKg,
                energyJ + other.energyJ,
                removedKg + other.removedKg);
    }

    /**
     * Returns this consumption multiplied by a factor.
     *
     * @param factor factor, 0 or more
     * @return the product
     */
    public Consumption times(double factor) {
        Require.notNegative("number of times", factor, Units.ONE);
        return new Consumption(
                timeS * factor, waterM3 * factor, abrasiveKg * factor, energyJ * factor, removedKg * factor);
    }

    /**
     * Returns the jet-on time.
     *
     * @return the time, in s
     */
    public Quantity<Time> time() {
        return Kind.TIME.of(timeS);
    }

    /**
     * Returns the volume of water at ambient density.
     *
     * @return the volume, in m3
     */
    public Quantity<Volume> water() {
        return Kind.VOLUME.of(waterM3);
    }

    /**
     * Returns the mass of abrasive.
     *
     * @return the mass, in kg
     */
    public Quantity<Mass> abrasive() {
        return Kind.MASS.of(abrasiveKg);
    }

    /**
     * Returns the energy from the mains.
     *
     * @return the energy, in J
     */
    public Quantity<Energy> energy() {
        return Kind.ENERGY.of(energyJ);
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
        return timeS;
    }

    double waterSi() {
        return waterM3;
    }

    double abrasiveSi() {
        return abrasiveKg;
    }

    double energySi() {
        return energyJ;
    }

    double sludgeSi() {
        return abrasiveKg + removedKg;
    }

    double removedSi() {
        return removedKg;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("consumption")
                .put("time", Kind.TIME, timeS)
                .put("water", Kind.VOLUME, waterM3)
                .put("abrasive", Kind.MASS, abrasiveKg)
                .put("energy", Kind.ENERGY, energyJ)
                .put("sludge", Kind.MASS, sludgeSi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Consumption that
                && timeS == that.timeS
                && waterM3 == that.waterM3
                && abrasiveKg == that.abrasiveKg
                && energyJ == that.energyJ
                && removedKg == that.removedKg;
    }

    @Override
    public int hashCode() {
        return Objects.hash(timeS, waterM3, abrasiveKg, energyJ, removedKg);
    }

    @Override
    public String toString() {
        return QuantityText.round(waterM3 * 1000, 3) + " L of water, " + QuantityText.round(abrasiveKg, 3)
                + " kg of abrasive, " + QuantityText.round(energyJ / 3.6e6, 3) + " kWh";
    }
}
