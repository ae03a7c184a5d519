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
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Power;

/**
 * Energy balance model: the power of the abrasive removes the volume of the kerf.
 *
 * <p>u = P<sub>a</sub> / (w d<sub>f</sub> D), P<sub>a</sub> = m<sub>a</sub> v<sub>a</sub><sup>2</sup> / 2: u feed rate in m/s; P<sub>a</sub> power of the abrasive in W, m<sub>a</sub>
 * abrasive flow rate in kg/s, v<sub>a</sub> particle speed in m/s; w specific cutting energy in J/m3; d<sub>f</sub> bore of the focusing tube at
 * its exit in m, taken for the width of the kerf; D depth in m, thickness times quality index.
 *
 * <p>The specific energy is given for one material and transferred to others by their machinability numbers, w N<sub>m</sub> =
 * constant (derived: both models give a depth, one with N<sub>m</sub>, the other with 1/w). Only the given material rests on a
 * source. The feed rate is proportional to D to the power -1, not -1.15 as in the machinability model: the two cross
 * somewhere.
 *
 * <p>Worked number: 1285 W, 13.4 J/mm3, tube 1.0 mm, 10 mm deep: 9.6 mm/s.
 */
public final class SpecificEnergyFeed implements FeedModel {

    private static final long serialVersionUID = 1L;

    private static final double STEEL_J_PER_M3 = 13.4e9;
    private static final double STEEL_MACHINABILITY = 87.6;
    private static final double ASSUMED_UNCERTAINTY = 0.3;

    private static final SpecificEnergyFeed OF_STEEL = new SpecificEnergyFeed(new Values(
            STEEL_J_PER_M3,
            STEEL_MACHINABILITY,
            ASSUMED_UNCERTAINTY,
            Evidence.of(
                            EvidenceGrade.DERIVED,
                            Source.of("IIT Kharagpur, Non-conventional machining, Module 9, Lesson 37")
                                    .at("steel 13.4 J/mm3"))
                    .withNote("The figure of steel from memory; other materials in inverse proportion to their"
                            + " machinability (derived). The scatter of 30 percent is assumed.")));

    /** Checked content, and the serial form. */
    private record Values(
            double energyJPerM3, double referenceMachinability, double modelUncertainty, Evidence evidence)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            energyJPerM3 = Require.positive("specific cutting energy", energyJPerM3, Units.JOULE_PER_CUBIC_MILLIMETRE);
            referenceMachinability = Require.positive("machinability number", referenceMachinability, Units.ONE);
            modelUncertainty = Settings.uncertainty(modelUncertainty);
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new SpecificEnergyFeed(this);
        }
    }

    private final transient Values values;

    private SpecificEnergyFeed(Values values) {
        this.values = values;
    }

    /** {@return the model with 13.4 J/mm<sup>3</sup> for mild steel} */
    public static SpecificEnergyFeed ofSteel() {
        return OF_STEEL;
    }

    /**
     * Returns the model with the specific cutting energy of a material, as measured or calibrated.
     *
     * @param material material
     * @param energy its specific cutting energy, above 0
     * @param relativeUncertainty relative standard uncertainty of a feed rate, 0 to 3
     * @param evidence evidence for it
     * @return the model
     */
    public static SpecificEnergyFeed of(
            Material material, Quantity<EnergyDensity> energy, double relativeUncertainty, Evidence evidence) {
        Objects.requireNonNull(material, "material");
        Objects.requireNonNull(energy, "energy");
        return new SpecificEnergyFeed(
                new Values(Kind.ENERGY_DENSITY.si(energy), material.machinabilitySi(), relativeUncertainty, evidence));
    }

    /**
     * Returns the specific cutting energy implied by another model: power of the abrasive over the volume removed in a time.
     *
     * @param model other model
     * @param jet jet
     * @param workpiece workpiece, just separated
     * @return the specific energy; its uncertainty is that of the feed rate and of the power together
     * @throws NoSolutionException if the jet does not cut the material at all
     */
    public static Estimate<EnergyDensity> impliedBy(FeedModel model, AbrasiveJet jet, Workpiece workpiece) {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(workpiece, "workpiece");
        Material material = workpiece.material();
        double feed = model.separationFeedSi(jet, material, workpiece.thicknessSi());
        if (feed == 0) {
            throw FeedCautions.noCut(material);
        }
        Estimate<Power> power = jet.abrasivePower();
        return Estimate.withinFactor(
                        Kind.ENERGY_DENSITY,
                        power.si() / (feed * workpiece.thicknessSi() * jet.tubeExitBoreSi()),
                        Math.hypot(model.relativeUncertainty(material), power.relativeUncertainty()),
                        jet.cautions())
                .with(material.cautions());
    }

    /**
     * Returns the specific cutting energy of a material.
     *
     * @param material material
     * @return the specific energy
     */
    public Estimate<EnergyDensity> specificEnergy(Material material) {
        Objects.requireNonNull(material, "material");
        return Estimate.withinFactor(
                Kind.ENERGY_DENSITY, energySi(material), relativeUncertainty(material), material.cautions());
    }

    private double energySi(Material material) {
        return values.energyJPerM3 * values.referenceMachinability / material.machinabilitySi();
    }

    @Override
    public String name() {
        return "specific energy";
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return areaRate(jet, material) / depthM;
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return areaRate(jet, material) / feedMPerS;
    }

    private double areaRate(JetSettings jet, Material material) {
        return PhysicsKernel.areaRate(
                jet.abrasiveFlowSi(), jet.particleSpeedSi(), energySi(material), jet.tubeExitBoreSi());
    }

    @Override
    public double relativeUncertainty(Material material) {
        Objects.requireNonNull(material, "material");
        return material.machinabilitySi() == values.referenceMachinability
                ? values.modelUncertainty
                : Math.hypot(values.modelUncertainty, material.relativeUncertainty());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SpecificEnergyFeed that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return name();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
