package dev.waterjet.feed;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Erosion model of Hashish (1989) for ductile materials: particles at glancing angles cut material from the upper part of
 * the cut front, particles that strike its bottom remove material by deformation, and the depths add up.
 *
 * <pre>
 * h   = h_c + h_d
 * h_c = d_j (V_0 / C_k) (14 m_a / (pi u d_j^2 rho_p))^(2/5)        C_k = sqrt(3 sigma_f R_f^(3/5) / rho_p)
 * 1/h_d = pi d_j sigma_f u / (2 C_1 m_a (V_0 - V_e)^2) + (C_f / d_j) V_0 / (V_0 - V_e)
 * </pre>
 *
 * <p>Symbols: h depth in m; d_j bore of the focusing tube at its exit in m; V_0 particle speed in m/s; m_a abrasive flow rate
 * in kg/s; rho_p density of a particle in kg/m3; u feed rate in m/s; sigma_f flow strength in Pa; R_f roundness of the
 * particles, 0.35 to 0.4; C_1 share of the particles that deform, about 1; C_f friction coefficient of the wall, 0.002; V_e
 * threshold speed of the particles in m/s, not published, 0 here as is common for metals.
 *
 * <p>The form is re-derived from memory of the paper: a derived model, whose strengths and factors a shop should calibrate.
 * It applies to materials with a known flow strength only. With {@code sigma_f = E/14} and a mixing efficiency of 0.7 it is
 * 20 to 60 percent above the machinability model for aluminium, steel and titanium; the depth is about proportional to the
 * square of the particle speed, so that each percent of mixing efficiency counts twice.
 *
 * <p>Worked number: steel (E 200 GPa), abrasive at 474 m/s and 600 g/min, tube 1.0 mm, 2 mm/s, R_f 0.4: 6.0 mm by cutting
 * and 45.5 mm by deformation.
 */
public final class ErosionFeed implements FeedModel {

    private static final long serialVersionUID = 1L;

    private static final double ROUNDNESS = 0.4;
    private static final double FRICTION = 0.002;
    private static final double ASSUMED_UNCERTAINTY = 0.4;
    private static final double GUESS_M_PER_S = 2e-3;

    private static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.DERIVED, Source.of("Hashish, J. Eng. Mater. Technol. 111 (1989) 154-162"))
            .withNote("Re-derived from memory of the paper; roundness 0.4, friction 0.002, deforming share 1, threshold"
                    + " speed 0. The scatter of 40 percent is assumed.");

    private static final ErosionFeed STANDARD =
            new ErosionFeed(new Values(FlowStrengths.standard(), ROUNDNESS, 1, 0, ASSUMED_UNCERTAINTY, EVIDENCE));

    /** Checked content, and the serial form. */
    private record Values(
            FlowStrengths strengths,
            double roundness,
            double deformingShare,
            double thresholdMPerS,
            double modelUncertainty,
            Evidence evidence)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(strengths, "strengths");
            roundness = Require.between("roundness of the particles", roundness, 0.01, 1, Units.ONE, "1 is a sphere");
            deformingShare = Require.positive("deforming share of the particles", deformingShare, Units.ONE);
            thresholdMPerS =
                    Require.notNegative("threshold speed of the particles", thresholdMPerS, Units.METRE_PER_SECOND);
            modelUncertainty = Settings.uncertainty(modelUncertainty);
            Objects.requireNonNull(evidence, "evidence");
        }

        Values withThreshold(double speedMPerS) {
            return new Values(strengths, roundness, deformingShare, speedMPerS, modelUncertainty, evidence);
        }

        private Object readResolve() {
            return new ErosionFeed(this);
        }
    }

    private final transient Values values;

    private ErosionFeed(Values values) {
        this.values = values;
    }

    /**
     * {@return the model with its standard factors and flow strengths}
     */
    public static ErosionFeed standard() {
        return STANDARD;
    }

    /**
     * Returns this model with other flow strengths.
     *
     * @param strengths flow strengths
     * @return the model
     */
    public ErosionFeed withStrengths(FlowStrengths strengths) {
        return new ErosionFeed(new Values(
                strengths,
                values.roundness,
                values.deformingShare,
                values.thresholdMPerS,
                values.modelUncertainty,
                values.evidence));
    }

    /**
     * Returns this model with another particle shape.
     *
     * @param roundness R_f, 0.01 to 1; 0.35 to 0.4 for garnet
     * @return the model
     */
    public ErosionFeed withRoundness(double roundness) {
        return new ErosionFeed(new Values(
                values.strengths,
                roundness,
                values.deformingShare,
                values.thresholdMPerS,
                values.modelUncertainty,
                values.evidence));
    }

    /**
     * Returns this model with another share of particles that deform.
     *
     * @param share C_1, above 0; about 1
     * @return the model
     */
    public ErosionFeed withDeformingShare(double share) {
        return new ErosionFeed(new Values(
                values.strengths,
                values.roundness,
                share,
                values.thresholdMPerS,
                values.modelUncertainty,
                values.evidence));
    }

    /**
     * Returns this model with a threshold speed, below which a particle removes nothing by deformation.
     *
     * @param threshold V_e, 0 or more
     * @return the model
     */
    public ErosionFeed withThreshold(Quantity<Speed> threshold) {
        return new ErosionFeed(values.withThreshold(Kind.SPEED.si(Objects.requireNonNull(threshold, "threshold"))));
    }

    /**
     * Returns this model with another scatter and evidence, as found from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed rate, 0 to 3
     * @param evidence evidence for it
     * @return the model
     */
    public ErosionFeed withModelUncertainty(double relativeUncertainty, Evidence evidence) {
        return new ErosionFeed(new Values(
                values.strengths,
                values.roundness,
                values.deformingShare,
                values.thresholdMPerS,
                relativeUncertainty,
                evidence));
    }

    /**
     * Returns the depth removed by particles at glancing angles.
     *
     * @param jet jet
     * @param material material
     * @param feed feed rate, above 0
     * @return h_c
     */
    public Quantity<Length> cuttingWear(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        return Kind.LENGTH.of(cuttingWear(Objects.requireNonNull(jet, "jet"), strength(material), Settings.feed(feed)));
    }

    /**
     * Returns the depth removed by deformation.
     *
     * @param jet jet
     * @param material material
     * @param feed feed rate, above 0
     * @return h_d
     */
    public Quantity<Length> deformationWear(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        return Kind.LENGTH.of(
                deformationWear(Objects.requireNonNull(jet, "jet"), strength(material), Settings.feed(feed)));
    }

    private double cuttingWear(JetSettings jet, double strengthPa, double feedMPerS) {
        double particleKgPerM3 = Kind.DENSITY.si(jet.abrasive().density());
        return PhysicsKernel.cuttingWear(
                jet.tubeExitBoreSi(),
                jet.particleSpeedSi(),
                PhysicsKernel.characteristicSpeed(strengthPa, values.roundness, particleKgPerM3),
                jet.abrasiveFlowSi(),
                feedMPerS,
                particleKgPerM3);
    }

    private double deformationWear(JetSettings jet, double strengthPa, double feedMPerS) {
        return PhysicsKernel.deformationWear(
                jet.tubeExitBoreSi(),
                jet.particleSpeedSi(),
                values.thresholdMPerS,
                strengthPa,
                values.deformingShare,
                jet.abrasiveFlowSi(),
                feedMPerS,
                FRICTION);
    }

    private double strength(Material material) {
        OptionalDouble strengthPa = values.strengths.strengthSi(Objects.requireNonNull(material, "material"));
        if (strengthPa.isEmpty()) {
            throw new NoSolutionException(Message.of(
                            "no-flow-strength",
                            "the erosion model has no flow strength of {material}; state one, or calibrate it from"
                                    + " test cuts")
                    .with("material", material.name()));
        }
        return strengthPa.getAsDouble();
    }

    @Override
    public String name() {
        return "erosion";
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        double strengthPa = strength(material);
        return cuttingWear(jet, strengthPa, feedMPerS) + deformationWear(jet, strengthPa, feedMPerS);
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        return LogRoot.ofDecreasing(feed -> separationDepthSi(jet, material, feed), depthM, GUESS_M_PER_S);
    }

    @Override
    public double relativeUncertainty(Material material) {
        Objects.requireNonNull(material, "material");
        return values.modelUncertainty;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ErosionFeed that && values.equals(that.values);
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
