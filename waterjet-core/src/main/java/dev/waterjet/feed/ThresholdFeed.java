package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Power law with a threshold pressure of Blickwedel et al. (10th Int. Symp. on Jet Cutting Technology, 1990; form from
 * memory): h = C<sub>s</sub> (p - p<sub>thr</sub>) / v<sup>0.86 + 2.09/v</sup>.
 *
 * <p>Symbols: h depth in m; C<sub>s</sub> coefficient in m/Pa for v = 1; p gauge pressure at the orifice in Pa; p<sub>thr</sub> threshold
 * pressure in Pa, below which nothing is cut; v feed rate, a bare number in the unit of the fit. Neither coefficient,
 * threshold nor that unit are known from the literature, so this model exists only as calibrated: for one material, and for
 * the orifice, focusing tube and abrasive flow rate of the test cuts. For another jet its answers have a warning.
 */
public final class ThresholdFeed implements FeedModel {

    private static final long serialVersionUID = 1L;

    private static final double ASSUMED_UNCERTAINTY = 0.2;
    private static final double SAME = 1e-6;

    /** Checked content, and the serial form. */
    private record Values(
            String materialId,
            AbrasiveJet jet,
            double coefficient,
            double thresholdPa,
            double unitMPerS,
            double modelUncertainty,
            Evidence evidence)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(materialId, "materialId");
            Objects.requireNonNull(jet, "jet");
            coefficient = Require.positive("coefficient C_s", coefficient, Units.ONE);
            thresholdPa = Require.notNegative("threshold pressure", thresholdPa, Units.MEGAPASCAL);
            unitMPerS = Require.positive("unit of feed rate", unitMPerS, Units.METRE_PER_SECOND);
            modelUncertainty = Settings.uncertainty(modelUncertainty);
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new ThresholdFeed(this);
        }
    }

    private final transient Values values;

    private ThresholdFeed(Values values) {
        this.values = values;
    }

    /**
     * Returns the model with calibrated coefficients.
     *
     * @param material material of the test cuts
     * @param jet a jet of the test cuts: its orifice, focusing tube and abrasive flow rate count
     * @param coefficient C<sub>s</sub> in m/Pa, at the feed rate that counts as 1; above 0
     * @param threshold gauge pressure below which nothing is cut, 0 or more
     * @param unitFeed feed rate that counts as 1, such as 1 mm/min
     * @return the model, with a scatter of 20 percent (assumed) until {@link #withModelUncertainty} gives another
     */
    public static ThresholdFeed of(
            Material material,
            AbrasiveJet jet,
            double coefficient,
            Quantity<Pressure> threshold,
            Quantity<Speed> unitFeed) {
        Objects.requireNonNull(material, "material");
        Objects.requireNonNull(jet, "jet");
        return new ThresholdFeed(new Values(
                material.id(),
                jet,
                coefficient,
                Kind.PRESSURE.si(Objects.requireNonNull(threshold, "threshold")),
                Kind.SPEED.si(Objects.requireNonNull(unitFeed, "unitFeed")),
                ASSUMED_UNCERTAINTY,
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("coefficients stated by the caller"))
                        .withNote("Form of Blickwedel et al., 10th ISJCT (1990), from memory.")));
    }

    /**
     * Returns this model with another scatter and evidence, as found from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed rate, 0 to 3
     * @param evidence evidence for it
     * @return the model
     */
    public ThresholdFeed withModelUncertainty(double relativeUncertainty, Evidence evidence) {
        return new ThresholdFeed(new Values(
                values.materialId,
                values.jet,
                values.coefficient,
                values.thresholdPa,
                values.unitMPerS,
                relativeUncertainty,
                evidence));
    }

    /** {@return the gauge pressure below which nothing is cut} */
    public Quantity<Pressure> threshold() {
        return Kind.PRESSURE.of(values.thresholdPa);
    }

    /** {@return the coefficient C_s in m/Pa} */
    public double coefficient() {
        return values.coefficient;
    }

    @Override
    public String name() {
        return "threshold pressure";
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        FeedCautions.requireCalibrated("threshold-pressure", values.materialId, material);
        return depth(jet.pressureSi(), feedMPerS);
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        FeedCautions.requireCalibrated("threshold-pressure", values.materialId, material);
        double pressurePa = jet.pressureSi();
        return pressurePa <= values.thresholdPa
                ? 0
                : LogRoot.ofDecreasing(feed -> depth(pressurePa, feed), depthM, 100 * values.unitMPerS);
    }

    private double depth(double pressurePa, double feedMPerS) {
        return PhysicsKernel.thresholdDepth(
                values.coefficient, pressurePa - values.thresholdPa, feedMPerS / values.unitMPerS);
    }

    @Override
    public double relativeUncertainty(Material material) {
        Objects.requireNonNull(material, "material");
        return values.modelUncertainty;
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        List<Caution> common = FeedModel.super.cautions(jet, material, depthM, feedMPerS);
        boolean isSame = isClose(jet.orificeBoreSi(), values.jet.orificeBoreSi())
                && isClose(jet.tubeBoreSi(), values.jet.tubeBoreSi())
                && isClose(jet.abrasiveFlowSi(), values.jet.abrasiveFlowSi());
        if (isSame) {
            return common;
        }
        List<Caution> all = new ArrayList<>(common);
        all.add(Caution.warning(Message.of(
                        "other-jet",
                        "the threshold-pressure model is calibrated with {jet}; it does not depend on orifice,"
                                + " focusing tube or abrasive flow rate")
                .with("jet", values.jet.toString())));
        return List.copyOf(all);
    }

    private static boolean isClose(double one, double other) {
        return Math.abs(one - other) <= SAME * other;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ThresholdFeed that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return name() + " above " + QuantityText.forPeople(Kind.PRESSURE, values.thresholdPa) + " in "
                + values.materialId;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
