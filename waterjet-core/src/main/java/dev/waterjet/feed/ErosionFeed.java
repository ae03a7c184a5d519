package dev.waterjet.feed;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * The erosion model of Hashish (1989) for ductile materials: grains that glance along the upper face cut it away, grains
 * that strike the bottom deform it away, and the depths add up.
 *
 * <pre>
 * h   = h_c + h_d
 * h_c = d_j (V_0 / C_k) (14 m_a / (pi u d_j^2 rho_p))^(2/5)        C_k = sqrt(3 sigma_f R_f^(3/5) / rho_p)
 * 1/h_d = pi d_j sigma_f u / (2 C_1 m_a (V_0 - V_e)^2) + (C_f / d_j) V_0 / (V_0 - V_e)
 * </pre>
 *
 * <p>Symbols: h depth in m; d_j bore of the focusing tube in m; V_0 speed of the abrasive in m/s; m_a its flow in kg/s;
 * rho_p density of a grain in kg/m3; u feed in m/s; sigma_f flow strength in Pa; R_f roundness of the grains, 0.35 to 0.4;
 * C_1 share of the grains that deform, about 1; C_f friction on the wall, 0.002; V_e threshold speed of the grains in m/s,
 * not published, 0 here as is often done for metals.
 *
 * <p>The form is re-derived from a recollection of the paper: a derived model, whose strengths and factors a shop should
 * calibrate. It answers for materials with a known flow strength only. With {@code sigma_f = E/14} and a mixing efficiency of
 * 0.7 it lies 20 to 60 percent above the machinability model for aluminium, steel and titanium; it goes with the square
 * of the speed of the grains, so that each percent of mixing efficiency counts twice.
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

    private static final ErosionFeed USUAL =
            new ErosionFeed(FlowStrengths.standard(), ROUNDNESS, 1, 0, ASSUMED_UNCERTAINTY, EVIDENCE);

    private final FlowStrengths strengths;
    private final double roundness;
    private final double deformingShare;
    private final double thresholdMPerS;
    private final double modelUncertainty;
    private final Evidence evidence;

    private ErosionFeed(
            FlowStrengths strengths,
            double roundness,
            double deformingShare,
            double thresholdMPerS,
            double modelUncertainty,
            Evidence evidence) {
        this.strengths = Objects.requireNonNull(strengths, "strengths");
        this.roundness = Require.between("roundness of the grains", roundness, 0.01, 1, Units.ONE, "1 is a ball");
        this.deformingShare = Require.positive("deforming share of the grains", deformingShare, Units.ONE);
        this.thresholdMPerS =
                Require.notNegative("threshold speed of the grains", thresholdMPerS, Units.METRE_PER_SECOND);
        this.modelUncertainty = Settings.uncertainty(modelUncertainty);
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * The model with its usual factors and the standard flow strengths.
     *
     * @return the model
     */
    public static ErosionFeed standard() {
        return USUAL;
    }

    /**
     * This model with other flow strengths.
     *
     * @param strengths the flow strengths
     * @return the model
     */
    public ErosionFeed withStrengths(FlowStrengths strengths) {
        return new ErosionFeed(strengths, roundness, deformingShare, thresholdMPerS, modelUncertainty, evidence);
    }

    /**
     * This model with other grains.
     *
     * @param roundness R_f, 0.01 to 1; 0.35 to 0.4 for garnet
     * @return the model
     */
    public ErosionFeed withRoundness(double roundness) {
        return new ErosionFeed(strengths, roundness, deformingShare, thresholdMPerS, modelUncertainty, evidence);
    }

    /**
     * This model with another share of grains that deform.
     *
     * @param share C_1, above zero; about 1
     * @return the model
     */
    public ErosionFeed withDeformingShare(double share) {
        return new ErosionFeed(strengths, roundness, share, thresholdMPerS, modelUncertainty, evidence);
    }

    /**
     * This model with a threshold speed, below which a grain deforms nothing away.
     *
     * @param threshold V_e, zero or more
     * @return the model
     */
    public ErosionFeed withThreshold(Quantity<Speed> threshold) {
        return new ErosionFeed(
                strengths, roundness, deformingShare, Kind.SPEED.si(threshold), modelUncertainty, evidence);
    }

    /**
     * This model with a scatter and evidence of its own, as a shop finds them from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed, zero or more
     * @param evidence what speaks for it
     * @return the model
     */
    public ErosionFeed withModelUncertainty(double relativeUncertainty, Evidence evidence) {
        return new ErosionFeed(strengths, roundness, deformingShare, thresholdMPerS, relativeUncertainty, evidence);
    }

    /**
     * Depth that grains cut by glancing along the face.
     *
     * @param jet the jet
     * @param material the material
     * @param feed the feed, above zero
     * @return h_c, in m
     */
    public Quantity<Length> cuttingWear(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        return Kind.LENGTH.of(cuttingWear(jet, strength(material), Kind.SPEED.si(feed)));
    }

    /**
     * Depth that grains remove by striking the bottom.
     *
     * @param jet the jet
     * @param material the material
     * @param feed the feed, above zero
     * @return h_d, in m
     */
    public Quantity<Length> deformationWear(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        return Kind.LENGTH.of(deformationWear(jet, strength(material), Kind.SPEED.si(feed)));
    }

    private double cuttingWear(JetSettings jet, double strengthPa, double feedMPerS) {
        double grainKgPerM3 = Kind.DENSITY.si(jet.abrasive().density());
        return PhysicsKernel.cuttingWear(
                jet.tubeBoreSi(),
                jet.particleSpeedSi(),
                PhysicsKernel.characteristicSpeed(strengthPa, roundness, grainKgPerM3),
                jet.abrasiveFlowSi(),
                feedMPerS,
                grainKgPerM3);
    }

    private double deformationWear(JetSettings jet, double strengthPa, double feedMPerS) {
        return PhysicsKernel.deformationWear(
                jet.tubeBoreSi(),
                jet.particleSpeedSi(),
                thresholdMPerS,
                strengthPa,
                deformingShare,
                jet.abrasiveFlowSi(),
                feedMPerS,
                FRICTION);
    }

    private double strength(Material material) {
        return strengths
                .strengthSi(material)
                .orElseThrow(() -> new UnsuitedMaterialException(
                        this, material, "it has no flow strength for it; state one, or calibrate it from test cuts"));
    }

    @Override
    public String name() {
        return "erosion";
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        double strengthPa = strength(material);
        return cuttingWear(jet, strengthPa, feedMPerS) + deformationWear(jet, strengthPa, feedMPerS);
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        return FallingKernel.inverse(feed -> separationDepthSi(jet, material, feed), depthM, GUESS_M_PER_S);
    }

    @Override
    public double relativeUncertainty(Material material) {
        return modelUncertainty;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ErosionFeed that
                && strengths.equals(that.strengths)
                && roundness == that.roundness
                && deformingShare == that.deformingShare
                && thresholdMPerS == that.thresholdMPerS
                && modelUncertainty == that.modelUncertainty
                && evidence.equals(that.evidence);
    }

    @Override
    public int hashCode() {
        return Objects.hash(strengths, roundness, deformingShare, thresholdMPerS, modelUncertainty, evidence);
    }

    @Override
    public String toString() {
        return name();
    }
}
