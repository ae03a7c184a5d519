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
import dev.waterjet.measure.QuantityArray;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleBinaryOperator;
import javax.measure.quantity.Length;

/**
 * Machinability feed rate model of Zeng, Kim and Wallace.
 *
 * <pre>{@code
 * FeedModel model = MachinabilityFeed.published();
 * Estimate<Speed> feed = model.feed(jet, plate, CutQuality.MEDIUM);
 * FeedModel own = MachinabilityFeed.published().withExponent(FeedExponent.PRESSURE, 1.5).withModelUncertainty(0.1);
 * }</pre>
 *
 * <p>Orifice form: u = (f<sub>a</sub> N<sub>m</sub> p<sup>1.594</sup> d<sub>o</sub><sup>1.374</sup> m<sub>a</sub><sup>0.343</sup> / (C q h d<sub>f</sub><sup>0.618</sup>))<sup>1.15</sup>, with {@code C} = 788 for
 * u in mm/min, p in MPa, lengths in mm, m<sub>a</sub> in g/min. Water-flow form: u = (f<sub>a</sub> N<sub>m</sub> p<sup>1.25</sup> m<sub>w</sub><sup>0.687</sup> m<sub>a</sub><sup>0.343</sup> /
 * (8800 q h d<sub>f</sub><sup>0.618</sup>))<sup>1.15</sup> with u in mm/s, m<sub>w</sub> in L/min, m<sub>a</sub> in g/s. The two agree where the discharge coefficient is
 * 0.69.
 *
 * <p>Symbols: u feed rate; f<sub>a</sub> cutting factor of the abrasive, 1 for garnet; N<sub>m</sub> machinability number; p gauge pressure at
 * the orifice; d<sub>o</sub> bore of the orifice; m<sub>a</sub> abrasive flow rate; m<sub>w</sub> water flow rate; q quality index; h thickness; d<sub>f</sub> bore
 * of the focusing tube, of a worn one that at its exit (derived: the jet leaves with that diameter).
 *
 * <p>Exponents of a shop, found by a calibration, replace the published ones by {@link #withExponent}.
 *
 * <p>The model has no threshold pressure, no optimum of the abrasive flow rate and no stand-off distance, and its feed rate
 * grows without bound in thin sheet. Its range and its scatter are not published; the relative standard uncertainty of 0.15
 * is assumed, and increases by that of the material.
 *
 * <p>Worked number: mild steel (87.6) of 10 mm, index 1, 345 MPa, orifice 0.35 mm, tube 1.0 mm, 600 g/min: 603 mm/min.
 */
public final class MachinabilityFeed implements FeedModel {

    private static final long serialVersionUID = 1L;

    private static final double ASSUMED_UNCERTAINTY = 0.15;

    private static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.FROM_MEMORY,
                    Source.of("Zeng, Kim, Wallace, ASME PED-58 (1992) 169-179; Zeng, Kim, 7th American Water Jet Conf."
                            + " (1993) 175-189"))
            .withNote("Form, exponents and constants from memory; its metric and US constants agree within 0.3 percent."
                    + " No range is published; the model scatter of 15 percent is assumed.");

    private enum Form {
        ORIFICE,
        WATER_FLOW
    }

    /** Checked content, and the serial form. */
    private record Values(Form form, double modelUncertainty, ExponentChanges changes, Evidence evidence)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(form, "form");
            modelUncertainty = Settings.uncertainty(modelUncertainty);
            Objects.requireNonNull(changes, "changes");
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new MachinabilityFeed(this);
        }
    }

    private final transient Values values;
    private final transient boolean isPublished;
    private final transient double feedExponent;

    private MachinabilityFeed(Values values) {
        this.values = values;
        this.isPublished = values.changes.isNone();
        this.feedExponent = FeedExponent.FEED.published() + values.changes.feed();
    }

    /** {@return the model as published, in its orifice form} */
    public static MachinabilityFeed published() {
        return of(Form.ORIFICE);
    }

    /** {@return the model as published, in its water-flow form, for a shop that measures its water flow rate} */
    public static MachinabilityFeed publishedByWaterFlow() {
        return of(Form.WATER_FLOW);
    }

    private static MachinabilityFeed of(Form form) {
        return new MachinabilityFeed(new Values(form, ASSUMED_UNCERTAINTY, ExponentChanges.NONE, EVIDENCE));
    }

    /**
     * Returns this model with another scatter, as found from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed rate with an exact machinability number, 0 to 3
     * @return the model with that scatter
     */
    public MachinabilityFeed withModelUncertainty(double relativeUncertainty) {
        return new MachinabilityFeed(new Values(values.form, relativeUncertainty, values.changes, values.evidence));
    }

    /**
     * Returns this model with another exponent, as found by a calibration. The feed rate at the reference setting of that
     * exponent stays the same.
     *
     * @param exponent exponent to change
     * @param value its value in the terms of the orifice form, -10 to 10, that of the feed rate 0.1 to 10; in the water-flow
     *     form the published exponents are changed by as much
     * @return the model with that exponent
     */
    public MachinabilityFeed withExponent(FeedExponent exponent, double value) {
        Objects.requireNonNull(exponent, "exponent");
        double change = exponent.require(value) - exponent.published();
        return new MachinabilityFeed(new Values(
                values.form, values.modelUncertainty, values.changes.with(exponent, change), values.evidence));
    }

    /**
     * Returns this model with other evidence, as after a calibration.
     *
     * @param evidence evidence for the model
     * @return the model with that evidence
     */
    public MachinabilityFeed withEvidence(Evidence evidence) {
        return new MachinabilityFeed(new Values(values.form, values.modelUncertainty, values.changes, evidence));
    }

    /**
     * Returns an exponent.
     *
     * @param exponent exponent
     * @return its value in the terms of the orifice form
     */
    public double exponent(FeedExponent exponent) {
        Objects.requireNonNull(exponent, "exponent");
        return exponent.published() + values.changes.get(exponent);
    }

    @Override
    public String name() {
        return values.form == Form.ORIFICE ? "machinability" : "machinability by water flow";
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return MachinabilityKernel.feed(ability(jet, material), depthM, feedExponent);
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return MachinabilityKernel.depth(ability(jet, material), feedMPerS, feedExponent);
    }

    /** Four of the five powers of the formula belong to the jet. */
    @Override
    public DoubleBinaryOperator feedsSi(JetSettings jet, Material material) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        double ability = ability(jet, material);
        double exponent = feedExponent;
        return (thicknessM, index) -> MachinabilityKernel.feed(ability, Settings.index(index) * thicknessM, exponent);
    }

    private double ability(JetSettings jet, Material material) {
        double pressurePa = jet.pressureSi();
        double orificeM = jet.orificeBoreSi();
        double tubeM = jet.tubeExitBoreSi();
        double abrasiveKgPerS = jet.abrasiveFlowSi();
        double machinability = jet.abrasive().cuttingFactor() * material.machinabilitySi();
        double published = values.form == Form.ORIFICE
                ? MachinabilityKernel.orificeForm(machinability, pressurePa, orificeM, abrasiveKgPerS, tubeM)
                : MachinabilityKernel.flowForm(
                        machinability, pressurePa, jet.waterVolumeFlowSi(), abrasiveKgPerS, tubeM);
        return isPublished ? published : published * values.changes.factor(pressurePa, orificeM, tubeM, abrasiveKgPerS);
    }

    @Override
    public double relativeUncertainty(Material material) {
        Objects.requireNonNull(material, "material");
        // the feed rate is proportional to the machinability number to the power 1.15, or the exponent of a calibration
        double ofMaterial = feedExponent * material.relativeUncertainty();
        return Math.sqrt(values.modelUncertainty * values.modelUncertainty + ofMaterial * ofMaterial);
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        List<Caution> common = FeedModel.super.cautions(jet, material, depthM, feedMPerS);
        if (jet.abrasive().name().equals("garnet")) {
            return common;
        }
        List<Caution> all = new ArrayList<>(common);
        all.add(Caution.notice(Message.of(
                        "abrasive-factor",
                        "the model was established with garnet; the cutting factor {factor} of {abrasive} is that of"
                                + " the caller")
                .with("factor", jet.abrasive().cuttingFactor())
                .with("abrasive", jet.abrasive().name())));
        return List.copyOf(all);
    }

    /**
     * {@inheritDoc}
     *
     * <p>A feed rate of a curve agrees with the same one computed alone to fourteen figures: the exponent 1.15 is
     * 23/20 here, and the nearest double there.
     */
    @Override
    public FeedCurve curve(AbrasiveJet jet, Material material, double index, QuantityArray<Length> thicknesses) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        Settings.index(index);
        Objects.requireNonNull(thicknesses, "thicknesses");
        double[] depthsM = thicknesses.toSi();
        for (int i = 0; i < depthsM.length; i++) {
            depthsM[i] = index * FeedCurve.requireThickness(depthsM[i]);
        }
        double[] feeds = MachinabilityKernel.feeds(ability(jet, material), depthsM, feedExponent);
        double maximum = maximumFeedSi();
        for (int i = 0; i < feeds.length; i++) {
            feeds[i] = Math.min(feeds[i], maximum);
        }
        return new FeedCurve(thicknesses, QuantityArray.ofSi(Kind.SPEED, feeds), relativeUncertainty(material));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MachinabilityFeed that && values.equals(that.values);
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
