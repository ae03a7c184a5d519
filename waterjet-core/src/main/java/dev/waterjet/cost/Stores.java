package dev.waterjet.cost;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/**
 * Stores of a cutting table: abrasive in the hopper, and volume for sludge in the catcher tank.
 *
 * <p>Settled sludge has more volume than its solids. The solid share, about 0.55 for settled sand (common practice, no source),
 * is an input.
 */
public final class Stores implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double DEFAULT_SOLID_SHARE = 0.55;

    private final double hopperKg;
    private final double catcherM3;
    private final double solidShare;

    private Stores(double hopperKg, double catcherM3, double solidShare) {
        this.hopperKg = Require.notNegative("abrasive in the hopper", hopperKg, Units.KILOGRAM);
        this.catcherM3 = Require.notNegative("volume for sludge in the catcher tank", catcherM3, Units.LITRE);
        this.solidShare = Require.positive("solid share of settled sludge", solidShare, Units.ONE);
        Require.atMost("solid share of settled sludge", solidShare, 1, Units.ONE, "");
    }

    /**
     * Returns a hopper and a catcher tank.
     *
     * @param hopper mass of abrasive in the hopper, zero or more
     * @param catcher volume available for sludge, 0 or more
     * @return the stores
     */
    public static Stores of(Quantity<Mass> hopper, Quantity<Volume> catcher) {
        return new Stores(Kind.MASS.si(hopper), Kind.VOLUME.si(catcher), DEFAULT_SOLID_SHARE);
    }

    /**
     * Returns these stores with another solid share of settled sludge.
     *
     * @param share volume of the solids over that of the settled sludge, above 0 to 1
     * @return the stores with that share
     */
    public Stores withSolidShare(double share) {
        return new Stores(hopperKg, catcherM3, share);
    }

    /**
     * Returns the jet-on time until the hopper is empty.
     *
     * @param jet the jet that it feeds
     * @param heads number of such jets, 1 or more
     * @return jet-on time
     */
    public Quantity<Time> timeToEmptyHopper(AbrasiveJet jet, int heads) {
        Require.atLeast("number of heads", heads, 1, Units.ONE, "");
        return Kind.TIME.of(hopperKg / (jet.abrasiveFlowSi() * heads));
    }

    /**
     * Returns the share of the catcher tank that a consumption fills.
     *
     * @param consumption consumption since the tank was emptied
     * @param abrasiveGrain density of an abrasive particle
     * @param material density of the material removed
     * @return the share: above 1 the catcher must be emptied meanwhile
     */
    public double catcherFillRatio(
            Consumption consumption, Quantity<Density> abrasiveGrain, Quantity<Density> material) {
        double grain = Require.positive(
                "density of the abrasive", Kind.DENSITY.si(abrasiveGrain), Units.KILOGRAM_PER_CUBIC_METRE);
        double removed = Require.positive(
                "density of the material removed", Kind.DENSITY.si(material), Units.KILOGRAM_PER_CUBIC_METRE);
        double solidM3 = consumption.abrasiveSi() / grain + consumption.removedSi() / removed;
        return solidM3 / solidShare / Require.positive("volume for sludge in the catcher tank", catcherM3, Units.LITRE);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("stores")
                .put("hopper", Kind.MASS, hopperKg)
                .put("catcher", Kind.VOLUME, catcherM3)
                .put("solid_share", solidShare)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Stores that
                && hopperKg == that.hopperKg
                && catcherM3 == that.catcherM3
                && solidShare == that.solidShare;
    }

    @Override
    public int hashCode() {
        return Objects.hash(hopperKg, catcherM3, solidShare);
    }

    @Override
    public String toString() {
        return hopperKg + " kg of abrasive, " + catcherM3 * 1000 + " L for sludge";
    }
}
