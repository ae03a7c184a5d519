package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * The machinability-based feed model of Zeng, Kim and Wallace.
 *
 * <p>Orifice form: {@code u = (f_a N_m p^1.594 d_o^1.374 m_a^0.343 / (C q h d_f^0.618))^1.15}, with {@code C} = 788 for
 * u in mm/min, p in MPa, lengths in mm, m_a in g/min. Water-flow form: {@code u = (f_a N_m p^1.25 m_w^0.687 m_a^0.343 /
 * (8800 q h d_f^0.618))^1.15} with u in mm/s, m_w in L/min, m_a in g/s. The two agree where the discharge coefficient is
 * 0.69.
 *
 * <p>Symbols: u feed; f_a cutting factor of the abrasive, 1 for garnet; N_m machinability; p gauge pressure at the
 * orifice; d_o bore of the orifice; m_a flow of abrasive; m_w flow of water; q quality index; h thickness; d_f bore of
 * the focusing tube.
 *
 * <p>A shop's own exponents, as a calibration finds them, replace the published ones by {@link #withExponent}.
 *
 * <p>The model knows no threshold pressure, no best flow of abrasive and no stand-off, and its feed grows without bound in
 * thin sheet. Its range and its scatter are not published; the relative standard uncertainty of 0.15 that it starts with
 * is assumed, and grows by that of the material.
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

    private final Form form;
    private final double modelUncertainty;
    private final ExponentChanges changes;
    private final boolean isPublished;
    private final double feedExponent;
    private final Evidence evidence;

    private MachinabilityFeed(Form form, double modelUncertainty, ExponentChanges changes, Evidence evidence) {
        this.form = form;
        this.changes = changes;
        this.isPublished = changes.isNone();
        this.evidence = evidence;
        this.feedExponent = Require.atLeast(
                FeedExponent.FEED.label(),
                FeedExponent.FEED.published() + changes.feed(),
                0.1,
                Units.ONE,
                "the feed falls with depth");
        this.modelUncertainty = Settings.uncertainty(modelUncertainty);
    }

    /**
     * The model in its orifice form.
     *
     * @return the model as published
     */
    public static MachinabilityFeed published() {
        return new MachinabilityFeed(Form.ORIFICE, ASSUMED_UNCERTAINTY, ExponentChanges.NONE, EVIDENCE);
    }

    /**
     * The model in its water-flow form, for a shop that measures its flow of water.
     *
     * @return the model as published
     */
    public static MachinabilityFeed publishedByWaterFlow() {
        return new MachinabilityFeed(Form.WATER_FLOW, ASSUMED_UNCERTAINTY, ExponentChanges.NONE, EVIDENCE);
    }

    /**
     * This model with another scatter of its own, as a shop finds it from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed when the machinability is exact, zero or more
     * @return the model with that scatter
     */
    public MachinabilityFeed withModelUncertainty(double relativeUncertainty) {
        return new MachinabilityFeed(form, relativeUncertainty, changes, evidence);
    }

    /**
     * This model with another exponent, as a calibration finds it. The feed at the reference setting of that exponent
     * stays the same.
     *
     * @param exponent which exponent
     * @param value its value in the terms of the orifice form, -10 to 10, that of the feed 0.1 to 10; in the water-flow form the published exponents are changed
     *     by as much
     * @return the model with that exponent
     */
    public MachinabilityFeed withExponent(FeedExponent exponent, double value) {
        Require.between(exponent.label(), value, -10, 10, Units.ONE, "no cut depends on a setting so steeply");
        double change = value - exponent.published();
        return new MachinabilityFeed(form, modelUncertainty, changes.with(exponent, change), evidence);
    }

    /**
     * This model with other evidence, as after a calibration.
     *
     * @param evidence what speaks for it
     * @return the model with that evidence
     */
    public MachinabilityFeed withEvidence(Evidence evidence) {
        return new MachinabilityFeed(form, modelUncertainty, changes, Objects.requireNonNull(evidence, "evidence"));
    }

    /**
     * An exponent as it is.
     *
     * @param exponent which exponent
     * @return its value in the terms of the orifice form
     */
    public double exponent(FeedExponent exponent) {
        return exponent.published() + changes.get(exponent);
    }

    @Override
    public String name() {
        return form == Form.ORIFICE ? "machinability" : "machinability by water flow";
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        return MachinabilityKernel.feed(ability(jet, material), depthM, feedExponent);
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        return MachinabilityKernel.depth(ability(jet, material), feedMPerS, feedExponent);
    }

    private double ability(JetSettings jet, Material material) {
        double pressurePa = jet.pressureSi();
        double orificeM = jet.orificeBoreSi();
        double tubeM = jet.tubeBoreSi();
        double abrasiveKgPerS = jet.abrasiveFlowSi();
        double machinability = jet.abrasive().cuttingFactor() * material.machinabilitySi();
        double published = form == Form.ORIFICE
                ? MachinabilityKernel.orificeForm(machinability, pressurePa, orificeM, abrasiveKgPerS, tubeM)
                : MachinabilityKernel.flowForm(
                        machinability, pressurePa, jet.waterVolumeFlowSi(), abrasiveKgPerS, tubeM);
        return isPublished ? published : published * changes.factor(pressurePa, orificeM, tubeM, abrasiveKgPerS);
    }

    @Override
    public double relativeUncertainty(Material material) {
        // the feed goes with the machinability to the power 1.15, or what a calibration puts in its place
        double ofMaterial = feedExponent * material.relativeUncertainty();
        return Math.sqrt(modelUncertainty * modelUncertainty + ofMaterial * ofMaterial);
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        return jet.abrasive().name().equals("garnet")
                ? List.of()
                : List.of(Caution.notice(
                        "abrasive-factor",
                        "the model was established with garnet; the cutting factor of "
                                + jet.abrasive().name() + " is the caller's"));
    }

    @Override
    public FeedCurve curve(AbrasiveJet jet, Material material, double index, QuantityArray<Length> thicknesses) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        double ability = ability(jet, material);
        double highest = maximumFeedSi();
        return FeedCurve.of(
                thicknesses,
                thicknesses.map(
                        Kind.SPEED,
                        thickness -> Math.min(
                                MachinabilityKernel.feed(
                                        ability,
                                        index * Require.positive("thickness", thickness, Units.MILLIMETRE),
                                        feedExponent),
                                highest)),
                relativeUncertainty(material));
    }

    /**
     * Pressure that a feed needs.
     *
     * @param jet the jet, of which all but the pressure is kept
     * @param piece the workpiece
     * @param index quality index, 1 or more
     * @param feed the feed wanted, above zero
     * @return the gauge pressure at the orifice, whatever a pump can deliver
     */
    public Estimate<Pressure> pressureFor(AbrasiveJet jet, Workpiece piece, double index, Quantity<Speed> feed) {
        double published = form == Form.ORIFICE
                ? MachinabilityKernel.PRESSURE_EXPONENT
                // the flow of water goes with the root of the pressure
                : MachinabilityKernel.FLOW_FORM_PRESSURE_EXPONENT + MachinabilityKernel.WATER_FLOW_EXPONENT / 2;
        double exponent = published + changes.pressure();
        double factor = Math.pow(shortfall(jet, piece, index, feed), 1 / exponent);
        return Estimate.withinFactor(
                        Kind.PRESSURE,
                        jet.water().pressureSi() * factor,
                        abilityUncertainty(piece.material()) / exponent,
                        jet.cautions())
                .with(piece.material().cautions());
    }

    /**
     * Flow of abrasive that a feed needs. The model knows no best flow: beyond a loading ratio of about 0.25 more abrasive
     * cuts less, and the answer then carries a caution.
     *
     * @param jet the jet, of which all but the flow of abrasive is kept
     * @param piece the workpiece
     * @param index quality index, 1 or more
     * @param feed the feed wanted, above zero
     * @return the mass flow
     */
    public Estimate<MassFlow> abrasiveFlowFor(AbrasiveJet jet, Workpiece piece, double index, Quantity<Speed> feed) {
        double exponent = exponent(FeedExponent.ABRASIVE_FLOW);
        double factor = Math.pow(shortfall(jet, piece, index, feed), 1 / exponent);
        double flow = jet.abrasiveFlowSi() * factor;
        return Estimate.withinFactor(
                        Kind.MASS_FLOW,
                        flow,
                        abilityUncertainty(piece.material()) / exponent,
                        jet.withAbrasiveFlow(Kind.MASS_FLOW.of(flow)).cautions())
                .with(piece.material().cautions());
    }

    /** Ability needed over ability at hand. */
    private double shortfall(AbrasiveJet jet, Workpiece piece, double index, Quantity<Speed> feed) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        double feedSi = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        return MachinabilityKernel.ability(index * piece.thicknessSi(), feedSi, feedExponent)
                / ability(jet, piece.material());
    }

    private double abilityUncertainty(Material material) {
        return relativeUncertainty(material) / feedExponent;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MachinabilityFeed that
                && form == that.form
                && modelUncertainty == that.modelUncertainty
                && changes.equals(that.changes)
                && evidence.equals(that.evidence);
    }

    @Override
    public int hashCode() {
        return Objects.hash(form, modelUncertainty, changes, evidence);
    }

    @Override
    public String toString() {
        return name();
    }
}
