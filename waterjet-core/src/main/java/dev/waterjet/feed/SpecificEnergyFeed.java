package dev.waterjet.feed;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.EnergyDensity;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.Quantity;

/**
 * The balance of energy: the power of the abrasive removes the kerf, volume by volume.
 *
 * <p>{@code u = P_a / (w d_f D)}, {@code P_a = m_a v_a^2 / 2}: u feed in m/s; P_a power of the abrasive in W, m_a its flow
 * in kg/s, v_a its speed in m/s; w specific cutting energy in J/m3; d_f bore of the focusing tube in m, taken for the width
 * of the kerf; D depth in m, thickness times index.
 *
 * <p>The specific energy is stated for one material and carried over to others by their machinability, {@code w N_m =}
 * constant (derived: both models give a depth, one with N_m, the other with 1/w). Only the stated material rests on a
 * source. The feed goes with D to the power -1, not -1.15 as in the machinability model: the two cross somewhere.
 *
 * <p>Worked number: 1285 W, 13.4 J/mm3, tube 1.0 mm, 10 mm deep: 9.6 mm/s.
 */
public final class SpecificEnergyFeed implements FeedModel {

    private static final long serialVersionUID = 1L;

    private static final double STEEL_J_PER_M3 = 13.4e9;
    private static final double STEEL_MACHINABILITY = 87.6;
    private static final double ASSUMED_UNCERTAINTY = 0.3;

    private static final SpecificEnergyFeed USUAL = new SpecificEnergyFeed(
            STEEL_J_PER_M3,
            STEEL_MACHINABILITY,
            ASSUMED_UNCERTAINTY,
            Evidence.of(
                            EvidenceGrade.DERIVED,
                            Source.of("IIT Kharagpur, Non-conventional machining, Module 9, Lesson 37")
                                    .at("steel 13.4 J/mm3"))
                    .withNote("The figure of steel from memory; other materials in inverse proportion to their"
                            + " machinability (derived). The scatter of 30 percent is assumed."));

    private final double energyJPerM3;
    private final double atMachinability;
    private final double modelUncertainty;
    private final Evidence evidence;

    private SpecificEnergyFeed(
            double energyJPerM3, double atMachinability, double modelUncertainty, Evidence evidence) {
        this.energyJPerM3 = Require.positive("specific cutting energy", energyJPerM3, Units.JOULE_PER_CUBIC_MILLIMETRE);
        this.atMachinability = atMachinability;
        this.modelUncertainty = Settings.uncertainty(modelUncertainty);
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * The model with 13.4 J/mm3 for mild steel.
     *
     * @return the model
     */
    public static SpecificEnergyFeed ofSteel() {
        return USUAL;
    }

    /**
     * The model with the specific energy of a material, as measured or calibrated.
     *
     * @param material the material
     * @param energy its specific cutting energy, above zero
     * @param relativeUncertainty relative standard uncertainty of a feed, zero or more
     * @param evidence what speaks for it
     * @return the model
     */
    public static SpecificEnergyFeed of(
            Material material, Quantity<EnergyDensity> energy, double relativeUncertainty, Evidence evidence) {
        return new SpecificEnergyFeed(
                Kind.ENERGY_DENSITY.si(energy), material.machinabilitySi(), relativeUncertainty, evidence);
    }

    /**
     * Specific energy that another model implies: power of the abrasive over the volume that it removes in a time.
     *
     * @param model the other model
     * @param jet the jet
     * @param piece the workpiece, just separated
     * @return the specific energy; its uncertainty is that of the feed and of the power together
     */
    public static Estimate<EnergyDensity> impliedBy(FeedModel model, AbrasiveJet jet, Workpiece piece) {
        double feed = model.separationFeedSi(jet, piece.material(), piece.thicknessSi());
        double power = jet.abrasivePower().si();
        return Estimate.withinFactor(
                        Kind.ENERGY_DENSITY,
                        power / (feed * piece.thicknessSi() * jet.head().tube().boreSi()),
                        Math.hypot(
                                model.relativeUncertainty(piece.material()),
                                jet.abrasivePower().relativeUncertainty()),
                        jet.cautions())
                .with(piece.material().cautions());
    }

    /**
     * Specific cutting energy of a material.
     *
     * @param material the material
     * @return the specific energy
     */
    public Estimate<EnergyDensity> specificEnergy(Material material) {
        return Estimate.withinFactor(
                Kind.ENERGY_DENSITY, energySi(material), relativeUncertainty(material), material.cautions());
    }

    private double energySi(Material material) {
        return energyJPerM3 * atMachinability / material.machinabilitySi();
    }

    @Override
    public String name() {
        return "specific energy";
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        return areaRate(jet, material) / depthM;
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        return areaRate(jet, material) / feedMPerS;
    }

    private double areaRate(JetSettings jet, Material material) {
        return PhysicsKernel.areaRate(
                jet.abrasiveFlowSi(), jet.particleSpeedSi(), energySi(material), jet.tubeBoreSi());
    }

    @Override
    public double relativeUncertainty(Material material) {
        return material.machinabilitySi() == atMachinability
                ? modelUncertainty
                : Math.hypot(modelUncertainty, material.relativeUncertainty());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SpecificEnergyFeed that
                && energyJPerM3 == that.energyJPerM3
                && atMachinability == that.atMachinability
                && modelUncertainty == that.modelUncertainty
                && evidence.equals(that.evidence);
    }

    @Override
    public int hashCode() {
        return Objects.hash(energyJPerM3, atMachinability, modelUncertainty, evidence);
    }

    @Override
    public String toString() {
        return name();
    }
}
