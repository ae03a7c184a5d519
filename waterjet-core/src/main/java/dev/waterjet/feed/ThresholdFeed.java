package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * The power law with a threshold pressure of Blickwedel et al. (10th Int. Symp. on Jet Cutting Technology, 1990; form from
 * memory): {@code h = C_s (p - p_thr) / v^(0.86 + 2.09/v)}.
 *
 * <p>Symbols: h depth in m; C_s coefficient in m/Pa for v = 1; p gauge pressure at the orifice in Pa; p_thr threshold
 * pressure in Pa, below which nothing is cut; v feed, a bare number in the unit of the fit. Neither coefficient, threshold
 * nor that unit are known from the literature, so this model exists only as calibrated: for one material, and for the
 * orifice, tube and flow of abrasive of the test cuts. With a jet of other size it answers with a warning.
 */
public final class ThresholdFeed implements FeedModel {

    private static final long serialVersionUID = 1L;

    private static final double SAME = 1e-6;

    private final String materialId;
    private final AbrasiveJet jet;
    private final double coefficient;
    private final double thresholdPa;
    private final double unitMPerS;
    private final double modelUncertainty;
    private final Evidence evidence;

    private ThresholdFeed(
            String materialId,
            AbrasiveJet jet,
            double coefficient,
            double thresholdPa,
            double unitMPerS,
            double modelUncertainty,
            Evidence evidence) {
        this.materialId = Objects.requireNonNull(materialId, "material");
        this.jet = Objects.requireNonNull(jet, "jet");
        this.coefficient = Require.positive("coefficient C_s", coefficient, Units.ONE);
        this.thresholdPa = Require.notNegative("threshold pressure", thresholdPa, Units.MEGAPASCAL);
        this.unitMPerS = Require.positive("unit of feed", unitMPerS, Units.METRE_PER_SECOND);
        this.modelUncertainty = Settings.uncertainty(modelUncertainty);
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * The model with calibrated coefficients.
     *
     * @param material the material of the test cuts
     * @param jet a jet of the test cuts: its orifice, tube and flow of abrasive count
     * @param coefficient C_s in m/Pa, at the feed that counts as 1
     * @param threshold gauge pressure below which nothing is cut, zero or more
     * @param unitFeed the feed that counts as 1, such as 1 mm/min
     * @return the model, with a scatter of 20 percent (assumed) until {@link #withModelUncertainty} states another
     */
    public static ThresholdFeed of(
            Material material,
            AbrasiveJet jet,
            double coefficient,
            Quantity<Pressure> threshold,
            Quantity<Speed> unitFeed) {
        return new ThresholdFeed(
                material.id(),
                jet,
                coefficient,
                Kind.PRESSURE.si(threshold),
                Kind.SPEED.si(unitFeed),
                0.2,
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("coefficients stated by the caller"))
                        .withNote("Form of Blickwedel et al., 10th ISJCT (1990), from memory."));
    }

    /**
     * This model with a scatter and evidence of its own, as found from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed, zero or more
     * @param evidence what speaks for it
     * @return the model
     */
    public ThresholdFeed withModelUncertainty(double relativeUncertainty, Evidence evidence) {
        return new ThresholdFeed(materialId, jet, coefficient, thresholdPa, unitMPerS, relativeUncertainty, evidence);
    }

    /**
     * Gauge pressure below which nothing is cut.
     *
     * @return the pressure, in Pa
     */
    public Quantity<Pressure> threshold() {
        return Kind.PRESSURE.of(thresholdPa);
    }

    /**
     * The coefficient C_s.
     *
     * @return the coefficient in m/Pa
     */
    public double coefficient() {
        return coefficient;
    }

    @Override
    public String name() {
        return "threshold pressure";
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        return depth(material, jet.pressureSi(), feedMPerS);
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        return feed(material, jet.pressureSi(), depthM);
    }

    private double depth(Material material, double pressurePa, double feedMPerS) {
        if (!material.id().equals(materialId)) {
            throw new UnsuitedMaterialException(this, material, "it was calibrated with " + materialId);
        }
        return PhysicsKernel.thresholdDepth(coefficient, pressurePa - thresholdPa, feedMPerS / unitMPerS);
    }

    private double feed(Material material, double pressurePa, double depthM) {
        return pressurePa <= thresholdPa
                ? 0
                : FallingKernel.inverse(feed -> depth(material, pressurePa, feed), depthM, 100 * unitMPerS);
    }

    @Override
    public double relativeUncertainty(Material material) {
        return modelUncertainty;
    }

    @Override
    public List<Caution> cautions(JetSettings other, Material material, double depthM, double feedMPerS) {
        boolean isSame = isClose(other.orificeBoreSi(), jet.orificeBoreSi())
                && isClose(other.tubeBoreSi(), jet.tubeBoreSi())
                && isClose(other.abrasiveFlowSi(), jet.abrasiveFlowSi());
        return isSame
                ? List.of()
                : List.of(Caution.warning(
                        "other-jet",
                        "the threshold-pressure law was calibrated with " + jet
                                + "; it knows nothing of another orifice," + " tube or flow of abrasive"));
    }

    private static boolean isClose(double one, double other) {
        return Math.abs(one - other) <= SAME * other;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ThresholdFeed that
                && materialId.equals(that.materialId)
                && jet.equals(that.jet)
                && coefficient == that.coefficient
                && thresholdPa == that.thresholdPa
                && unitMPerS == that.unitMPerS
                && modelUncertainty == that.modelUncertainty
                && evidence.equals(that.evidence);
    }

    @Override
    public int hashCode() {
        return Objects.hash(materialId, jet, coefficient, thresholdPa, unitMPerS, modelUncertainty, evidence);
    }

    @Override
    public String toString() {
        return name() + " above " + QuantityText.print(Kind.PRESSURE, threshold(), Units.MEGAPASCAL, 4) + " in "
                + materialId;
    }
}
