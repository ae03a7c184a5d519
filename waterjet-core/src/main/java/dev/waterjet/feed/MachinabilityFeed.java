package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
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

    private MachinabilityFeed(Form form, double modelUncertainty) {
        this.form = form;
        this.modelUncertainty =
                Require.notNegative("relative uncertainty of the model", modelUncertainty, Units.PERCENT);
    }

    /**
     * The model in its orifice form.
     *
     * @return the model as published
     */
    public static MachinabilityFeed published() {
        return new MachinabilityFeed(Form.ORIFICE, ASSUMED_UNCERTAINTY);
    }

    /**
     * The model in its water-flow form, for a shop that measures its flow of water.
     *
     * @return the model as published
     */
    public static MachinabilityFeed publishedByWaterFlow() {
        return new MachinabilityFeed(Form.WATER_FLOW, ASSUMED_UNCERTAINTY);
    }

    /**
     * This model with another scatter of its own, as a shop finds it from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed when the machinability is exact, zero or more
     * @return the model with that scatter
     */
    public MachinabilityFeed withModelUncertainty(double relativeUncertainty) {
        return new MachinabilityFeed(form, relativeUncertainty);
    }

    @Override
    public String name() {
        return form == Form.ORIFICE ? "machinability" : "machinability by water flow";
    }

    @Override
    public Evidence evidence() {
        return EVIDENCE;
    }

    @Override
    public double separationFeedSi(AbrasiveJet jet, Material material, double depthM) {
        return MachinabilityKernel.feed(ability(jet, material), depthM);
    }

    @Override
    public double separationDepthSi(AbrasiveJet jet, Material material, double feedMPerS) {
        return MachinabilityKernel.depth(ability(jet, material), feedMPerS);
    }

    private double ability(AbrasiveJet jet, Material material) {
        double machinability = jet.abrasive().cuttingFactor() * material.machinabilitySi();
        double pressurePa = jet.water().pressureSi();
        double tubeM = jet.head().tube().boreSi();
        return form == Form.ORIFICE
                ? MachinabilityKernel.orificeForm(
                        machinability, pressurePa, jet.head().orifice().boreSi(), jet.abrasiveFlowSi(), tubeM)
                : MachinabilityKernel.flowForm(
                        machinability, pressurePa, jet.water().volumeFlowSi(), jet.abrasiveFlowSi(), tubeM);
    }

    @Override
    public double relativeUncertainty(Material material) {
        // the feed goes with the machinability to the power 1.15
        return Math.hypot(modelUncertainty, MachinabilityKernel.FEED_EXPONENT * material.relativeUncertainty());
    }

    @Override
    public List<Caution> cautions(AbrasiveJet jet, Material material, double depthM, double feedMPerS) {
        return jet.abrasive().name().equals("garnet")
                ? List.of()
                : List.of(Caution.notice(
                        "abrasive-factor",
                        "the model was established with garnet; the cutting factor of "
                                + jet.abrasive().name() + " is the caller's"));
    }

    @Override
    public SpeedCurve curve(AbrasiveJet jet, Material material, double index, QuantityArray<Length> thicknesses) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        double[] thicknessM = thicknesses.toSi();
        for (double thickness : thicknessM) {
            Require.positive("thickness", thickness, Units.MILLIMETRE);
        }
        double[] feeds = new double[thicknessM.length];
        MachinabilityKernel.feeds(ability(jet, material), index, thicknessM, feeds);
        return SpeedCurve.of(thicknesses, QuantityArray.ofSi(Kind.SPEED, feeds), relativeUncertainty(material));
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
        double exponent = form == Form.ORIFICE
                ? MachinabilityKernel.PRESSURE_EXPONENT
                // the flow of water goes with the root of the pressure
                : MachinabilityKernel.FLOW_FORM_PRESSURE_EXPONENT + MachinabilityKernel.WATER_FLOW_EXPONENT / 2;
        double factor = Math.pow(shortfall(jet, piece, index, feed), 1 / exponent);
        return Estimate.withinFactor(
                Kind.PRESSURE,
                jet.water().pressureSi() * factor,
                abilityUncertainty(piece.material()) / exponent,
                jet.cautions());
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
        double factor = Math.pow(shortfall(jet, piece, index, feed), 1 / MachinabilityKernel.ABRASIVE_EXPONENT);
        double flow = jet.abrasiveFlowSi() * factor;
        return Estimate.withinFactor(
                Kind.MASS_FLOW,
                flow,
                abilityUncertainty(piece.material()) / MachinabilityKernel.ABRASIVE_EXPONENT,
                jet.withAbrasiveFlow(Kind.MASS_FLOW.of(flow)).cautions());
    }

    /** Ability needed over ability at hand. */
    private double shortfall(AbrasiveJet jet, Workpiece piece, double index, Quantity<Speed> feed) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        double feedSi = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        return MachinabilityKernel.ability(index * piece.thicknessSi(), feedSi) / ability(jet, piece.material());
    }

    private double abilityUncertainty(Material material) {
        return relativeUncertainty(material) / MachinabilityKernel.FEED_EXPONENT;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MachinabilityFeed that
                && form == that.form
                && modelUncertainty == that.modelUncertainty;
    }

    @Override
    public int hashCode() {
        return Objects.hash(form, modelUncertainty);
    }

    @Override
    public String toString() {
        return name();
    }
}
