package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.jet.PlainJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Cutting of a soft material by pure water, scaled from a cut of the shop: h = h<sub>1</sub> (d/d<sub>1</sub>)<sup>&alpha;</sup> ((p c - p<sub>0</sub>)/(p<sub>1</sub> c<sub>1</sub> -
 * p<sub>0</sub>))<sup>&beta;</sup> (u<sub>1</sub>/u)<sup>n</sup>.
 *
 * <p>Symbols: h depth in m; d orifice bore in m; p gauge pressure in Pa; c pressure on the axis of the jet at the stand-off distance
 * over that at the orifice, as {@link PlainJet}; p<sub>0</sub> threshold pressure of the material; u feed rate in m/s; index 1 the reference
 * cut. Constant specific energy gives alpha 1, beta 1.5, n 1 (derived); saturation pulls n down to 0.4 to 0.9 (from memory), so the
 * defaults are 1, 1.5 and 0.9. No constants of a material are published for this form: there is no default material.
 *
 * <p>Of the settings of a jet only pressure, orifice bore and stand-off distance count, the last from the orifice. Focusing tube
 * and abrasive are ignored: the answers hold for a head without them, and say so. Stacks, wetting and the direction of fibres are
 * not in it.
 */
@Experimental
public final class PlainWaterFeed implements FeedModel, Described {

    private static final long serialVersionUID = 1L;

    private static final double ASSUMED_UNCERTAINTY = 0.25;
    private static final double BORE_EXPONENT = 1;
    private static final double PRESSURE_EXPONENT = 1.5;
    private static final double FEED_EXPONENT = 0.9;

    /** Diameter of the contracted jet over the bore of a sharp orifice with a discharge coefficient of 0.65. */
    private static final double JET_OVER_BORE = 0.828;

    private static final double FAR_PRESSURE = 1.5;
    private static final double FAR_FEED = 3;

    private static final Caution NO_ABRASIVE = Caution.warning(Message.of(
            "pure-waterjet",
            "this feed rate holds for a head without abrasive and without focusing tube; it is scaled from one cut of"
                    + " the shop"));

    private static final Caution FAR = Caution.warning(Message.of(
            "far-from-reference-cut",
            "pressure or feed rate is far from that of the reference cut; cut there before this feed rate is used"));

    /** Checked content, and the serial form. */
    private record Values(
            String materialId,
            double boreM,
            double pressurePa,
            double standOffM,
            double depthM,
            double feedMPerS,
            PlainWaterParameters parameters)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(materialId, "materialId");
            boreM = Require.positive("orifice bore", boreM, Units.MILLIMETRE);
            pressurePa = Require.positive("pressure of the reference cut", pressurePa, Units.MEGAPASCAL);
            standOffM = Require.notNegative("stand-off distance of the reference cut", standOffM, Units.MILLIMETRE);
            depthM = Require.positive("depth of the reference cut", depthM, Units.MILLIMETRE);
            feedMPerS = Require.positive("feed rate of the reference cut", feedMPerS, Units.MILLIMETRE_PER_MINUTE);
            Objects.requireNonNull(parameters, "parameters");
            Require.above(
                    "pressure of the reference cut on the axis",
                    pressurePa * PlainJet.axisPressureRatioSi(standOffM, JET_OVER_BORE * boreM),
                    parameters.thresholdPa(),
                    Units.MEGAPASCAL,
                    "the threshold pressure");
        }

        private Object readResolve() {
            return new PlainWaterFeed(this);
        }
    }

    private final transient Values values;

    private PlainWaterFeed(Values values) {
        this.values = values;
    }

    /**
     * Returns the model scaled from a reference cut, with a threshold of 0 and the default exponents.
     *
     * @param material material of the cut
     * @param jet jet of the cut
     * @param standOff distance from the orifice to the workpiece, 0 or more
     * @param depth depth that the cut just separated, above 0
     * @param feed feed rate of the cut, above 0
     * @return the model, with a scatter of 25 % (assumed) until {@link #withModelUncertainty} gives another
     */
    public static PlainWaterFeed of(
            Material material, WaterJet jet, Quantity<Length> standOff, Quantity<Length> depth, Quantity<Speed> feed) {
        Objects.requireNonNull(material, "material");
        Objects.requireNonNull(jet, "jet");
        Evidence evidence = Evidence.of(EvidenceGrade.ASSUMED, Source.of("reference cut stated by the caller"))
                .withNote("Exponents derived from constant specific energy; that of the feed rate from memory.");
        return new PlainWaterFeed(new Values(
                material.id(),
                jet.orifice().boreSi(),
                jet.pressureSi(),
                Kind.LENGTH.si(Objects.requireNonNull(standOff, "standOff")),
                Kind.LENGTH.si(Objects.requireNonNull(depth, "depth")),
                Kind.SPEED.si(Objects.requireNonNull(feed, "feed")),
                new PlainWaterParameters(
                        0, BORE_EXPONENT, PRESSURE_EXPONENT, FEED_EXPONENT, ASSUMED_UNCERTAINTY, evidence)));
    }

    private PlainWaterFeed with(PlainWaterParameters parameters) {
        return new PlainWaterFeed(new Values(
                values.materialId,
                values.boreM,
                values.pressurePa,
                values.standOffM,
                values.depthM,
                values.feedMPerS,
                parameters));
    }

    /**
     * Returns this model with a threshold pressure, found from cuts at two pressures or more.
     *
     * @param threshold gauge pressure on the axis below which nothing is cut, 0 to that of the reference cut
     * @return the model
     */
    public PlainWaterFeed withThreshold(Quantity<Pressure> threshold) {
        return with(values.parameters.withThreshold(Kind.PRESSURE.si(Objects.requireNonNull(threshold, "threshold"))));
    }

    /**
     * Returns this model with other exponents, found from cuts that vary bore, pressure and feed rate.
     *
     * @param bore exponent of the orifice bore, above 0 to 5
     * @param pressure exponent of the pressure above the threshold, above 0 to 5
     * @param feed exponent of the feed rate, above 0 to 5
     * @return the model
     */
    public PlainWaterFeed withExponents(double bore, double pressure, double feed) {
        return with(values.parameters.withExponents(bore, pressure, feed));
    }

    /**
     * Returns this model with another scatter and evidence, as found from test cuts.
     *
     * @param relativeUncertainty relative standard uncertainty of a feed rate, 0 to 3
     * @param evidence evidence for it
     * @return the model
     */
    public PlainWaterFeed withModelUncertainty(double relativeUncertainty, Evidence evidence) {
        return with(values.parameters.withUncertainty(relativeUncertainty, evidence));
    }

    /**
     * Returns the pressure on the axis of a jet at the workpiece, which this model compares with the threshold.
     *
     * @param jet water jet
     * @param standOff distance from the orifice to the workpiece, 0 or more
     * @return the gauge pressure, in Pa
     */
    public static double axisPressureSi(WaterJet jet, Quantity<Length> standOff) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(standOff, "standOff");
        return axisPa(jet.pressureSi(), Kind.LENGTH.si(standOff), jet.orifice().boreSi());
    }

    /** {@return the gauge pressure on the axis below which nothing is cut} */
    public Quantity<Pressure> threshold() {
        return Kind.PRESSURE.of(values.parameters.thresholdPa());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pure-water feed")
                .put("material", values.materialId)
                .put("orifice_bore", Kind.LENGTH, values.boreM)
                .put("pressure", Kind.PRESSURE, values.pressurePa)
                .put("stand_off", Kind.LENGTH, values.standOffM)
                .put("depth", Kind.LENGTH, values.depthM)
                .put("feed", Kind.SPEED, values.feedMPerS)
                .put("threshold", Kind.PRESSURE, values.parameters.thresholdPa())
                .put("bore_exponent", values.parameters.boreExponent())
                .put("pressure_exponent", values.parameters.pressureExponent())
                .put("feed_exponent", values.parameters.feedExponent())
                .put("relative_uncertainty", values.parameters.uncertainty())
                .put("evidence", values.parameters.evidence())
                .map();
    }

    @Override
    public String name() {
        return "pure water";
    }

    @Override
    public Evidence evidence() {
        return values.parameters.evidence();
    }

    /**
     * Returns the feed rate of a pure waterjet, without a cutting head for abrasive.
     *
     * @param jet water jet
     * @param standOff distance from the orifice to the workpiece, 0 or more
     * @param workpiece workpiece of the material of the reference cut, not a stack
     * @param index quality index, 1 or more: 1 is the reference cut
     * @return the feed rate, at most {@link #maximumFeedSi}
     * @throws NoSolutionException if the jet does not cut ({@code no-cut}), the material is another one ({@code other-material})
     *     or the workpiece is a stack ({@code stack-by-pure-water})
     */
    public Estimate<Speed> feed(WaterJet jet, Quantity<Length> standOff, Workpiece workpiece, double index) {
        Objects.requireNonNull(workpiece, "workpiece");
        if (workpiece.layers().size() > 1) {
            throw new NoSolutionException(Message.of(
                    "stack-by-pure-water", "the pure-water model holds for one sheet; it has no answer for a stack"));
        }
        double strength = strength(jet, standOff, workpiece.material());
        double unlimited = feed(strength, Settings.index(index) * workpiece.thicknessSi());
        double feed = Math.min(unlimited, maximumFeedSi());
        Estimate<Speed> estimate = Estimate.withinFactor(
                Kind.SPEED, feed, values.parameters.uncertainty(), cautions(jet.pressureSi(), feed));
        return feed < unlimited ? estimate.with(FeedCautions.ofLimit(unlimited, feed)) : estimate;
    }

    /**
     * Returns the depth that a pure waterjet just separates at a feed rate.
     *
     * @param jet water jet
     * @param standOff distance from the orifice to the workpiece, 0 or more
     * @param material material of the reference cut
     * @param feed feed rate, above 0
     * @return the depth
     * @throws NoSolutionException as {@link #feed(WaterJet, Quantity, Workpiece, double)}
     */
    public Estimate<Length> depth(WaterJet jet, Quantity<Length> standOff, Material material, Quantity<Speed> feed) {
        double feedMPerS = Settings.feed(feed);
        double depthM = depth(strength(jet, standOff, material), feedMPerS);
        return Estimate.withinFactor(
                Kind.LENGTH,
                depthM,
                values.parameters.uncertainty() * values.parameters.feedExponent(),
                cautions(jet.pressureSi(), feedMPerS));
    }

    private double strength(WaterJet jet, Quantity<Length> standOff, Material material) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        double standOffM = Require.notNegative(
                "stand-off distance", Kind.LENGTH.si(Objects.requireNonNull(standOff, "standOff")), Units.MILLIMETRE);
        FeedCautions.requireCalibrated("pure-water", values.materialId, material);
        double strength = strength(jet.pressureSi(), standOffM, jet.orifice().boreSi());
        if (strength == 0) {
            throw FeedCautions.noCut(material);
        }
        return strength;
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        return depth(strength(jet, material), feedMPerS);
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        return feed(strength(jet, material), depthM);
    }

    private double depth(double strength, double feedMPerS) {
        return values.depthM * strength * Math.pow(values.feedMPerS / feedMPerS, values.parameters.feedExponent());
    }

    private double feed(double strength, double depthM) {
        return values.feedMPerS * Math.pow(values.depthM / depthM * strength, 1 / values.parameters.feedExponent());
    }

    private double strength(JetSettings jet, Material material) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        FeedCautions.requireCalibrated("pure-water", values.materialId, material);
        return strength(jet.pressureSi(), jet.standOffSi(), jet.orificeBoreSi());
    }

    /** Depth over that of the reference cut at its feed rate. */
    private double strength(double pressurePa, double standOffM, double boreM) {
        PlainWaterParameters parameters = values.parameters;
        double above = axisPa(pressurePa, standOffM, boreM) - parameters.thresholdPa();
        if (above <= 0) {
            return 0;
        }
        double reference = axisPa(values.pressurePa, values.standOffM, values.boreM) - parameters.thresholdPa();
        return Math.pow(boreM / values.boreM, parameters.boreExponent())
                * Math.pow(above / reference, parameters.pressureExponent());
    }

    private static double axisPa(double pressurePa, double standOffM, double boreM) {
        return pressurePa * PlainJet.axisPressureRatioSi(standOffM, JET_OVER_BORE * boreM);
    }

    @Override
    public double relativeUncertainty(Material material) {
        Objects.requireNonNull(material, "material");
        return values.parameters.uncertainty();
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        List<Caution> all = new ArrayList<>(List.of(NO_ABRASIVE));
        all.addAll(cautions(jet.pressureSi(), feedMPerS));
        return List.copyOf(all);
    }

    private List<Caution> cautions(double pressurePa, double feedMPerS) {
        double pressures = Math.abs(Math.log(pressurePa / values.pressurePa));
        double feeds = Math.abs(Math.log(feedMPerS / values.feedMPerS));
        if (pressures > Math.log(FAR_PRESSURE) || feeds > Math.log(FAR_FEED)) {
            return List.of(FAR);
        }
        return List.of();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PlainWaterFeed that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return name() + " in " + values.materialId + ", "
                + QuantityText.forPeople(Kind.LENGTH, values.depthM) + " at "
                + QuantityText.forPeople(Kind.SPEED, Kind.SPEED.of(values.feedMPerS));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
