package dev.waterjet.calibrate;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.evidence.ValidityRange;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.ForwardingFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Feed model calibrated by test cuts. It can replace a published one anywhere.
 *
 * <p>A feed rate in its own {@linkplain #material() material} is as uncertain as one more test cut: the scatter of the cuts
 * about the fit, and the covariance of the fitted parameters. An answer far from the cuts is therefore less certain than one
 * among them. Outside the depths, pressures and abrasive flow rates of the cuts it has a caution, and for any other material
 * too; a {@link CalibrationSet} selects the calibration by the material.
 */
public final class CalibratedFeed implements Described, ForwardingFeed {

    private static final long serialVersionUID = 1L;

    private static final String DEPTH = "depth";
    private static final String PRESSURE = "pressure";
    private static final String ABRASIVE_FLOW = "abrasive flow rate";
    private static final String ORIFICE = "orifice bore";
    private static final String TUBE = "focusing-tube bore";

    /** Relative uncertainty of a feed model in a material with which it was not calibrated: assumed, as of the published ones. */
    private static final double FOREIGN = 0.15;

    /** Checked content, and the serial form; all else follows from it. */
    private record Values(CutFit fit) implements Serializable {

        Values {
            Objects.requireNonNull(fit, "fit");
        }

        private Object readResolve() {
            return new CalibratedFeed(this);
        }
    }

    /** Bores of the cuts. */
    private record Bores(double minimumM, double maximumM) {

        static Bores of(List<TestCut> cuts, ToDoubleFunction<JetSettings> bore) {
            DoubleSummaryStatistics bores = cuts.stream()
                    .mapToDouble(cut -> bore.applyAsDouble(cut.jet()))
                    .summaryStatistics();
            return new Bores(bores.getMin(), bores.getMax());
        }

        double distance(double boreM) {
            return Math.max(0, Math.max(Math.log(minimumM / boreM), Math.log(boreM / maximumM)));
        }
    }

    /** Model and material with the fitted parameters. */
    private record Calibrated(
            FeedModel model, Material material, double scatter, Evidence evidence, Bores orifices, Bores tubes) {

        static Calibrated of(CutFit fit) {
            Family family = fit.spec().family();
            List<TestCut> cuts = fit.cuts();
            double[] parameters = fit.values();
            double slope = fit.slope(FitPoint.of(cuts.get(0)));
            double scatter = slope * Math.hypot(fit.scatter(), fit.plateScatter());
            Evidence evidence = Evidence.of(EvidenceGrade.FITTED, Source.of("fitted from " + cuts.size() + " cuts"))
                    .withNote("Scatter of a cut about the fit: " + QuantityText.round(100 * scatter, 2)
                            + " % of the feed rate.")
                    .withRanges(
                            range(DEPTH, Kind.LENGTH, cuts, TestCut::separationDepthSi),
                            range(
                                    PRESSURE,
                                    Kind.PRESSURE,
                                    cuts,
                                    cut -> cut.jet().pressureSi()),
                            range(
                                    ABRASIVE_FLOW,
                                    Kind.MASS_FLOW,
                                    cuts,
                                    cut -> cut.jet().abrasiveFlowSi()),
                            range(ORIFICE, Kind.LENGTH, cuts, cut -> cut.jet().orificeBoreSi()),
                            range(TUBE, Kind.LENGTH, cuts, cut -> cut.jet().tubeBoreSi()));
            String first = fit.names().get(0);
            double relative = fit.standardError(first) / fit.value(first);
            return new Calibrated(
                    family.model(parameters, scatter, evidence),
                    family.material(parameters, relative, evidence),
                    scatter,
                    evidence,
                    Bores.of(cuts, JetSettings::orificeBoreSi),
                    Bores.of(cuts, JetSettings::tubeBoreSi));
        }
    }

    private final transient Values values;
    private final transient Calibrated calibrated;

    private CalibratedFeed(Values values) {
        this.values = values;
        this.calibrated = Calibrated.of(values.fit);
    }

    static CalibratedFeed of(CutFit fit) {
        return new CalibratedFeed(new Values(fit));
    }

    private static <Q extends Quantity<Q>> ValidityRange<Q> range(
            String input, Kind<Q> kind, List<TestCut> cuts, ToDoubleFunction<TestCut> value) {
        double minimum = cuts.stream().mapToDouble(value).min().orElse(0);
        double maximum = cuts.stream().mapToDouble(value).max().orElse(0);
        return ValidityRange.of(input, kind, kind.of(minimum), kind.of(maximum));
    }

    /**
     * Returns the fit behind this model: parameters, intervals, scatter, residuals, leverages.
     *
     * @return the fit
     */
    public CutFit fit() {
        return values.fit;
    }

    /** {@return the test cuts, in the order of the residuals of the fit} */
    public List<TestCut> cuts() {
        return values.fit.cuts();
    }

    /** {@return the material of the cuts, with its fitted machinability where that was a parameter} */
    public Material material() {
        return calibrated.material;
    }

    /** {@return the model with the fitted parameters, without their covariance} */
    @Override
    public FeedModel model() {
        return calibrated.model;
    }

    /** {@return the relative standard deviation of a feed rate on a new plate: scatter of a cut and spread between plates} */
    public double scatter() {
        return calibrated.scatter;
    }

    /**
     * Returns the cautions of this calibration itself.
     *
     * @return the cautions: few cuts, outliers, cuts that determine a parameter alone or move the fit, few plates, wide intervals, a
     *     prior that dominates or conflicts with the cuts
     */
    public List<Caution> remarks() {
        return FitRemarks.of(values.fit);
    }

    @Override
    public String name() {
        return calibrated.model.name() + ", fitted";
    }

    @Override
    public Evidence evidence() {
        return calibrated.evidence;
    }

    /**
     * {@inheritDoc}
     *
     * <p>In the material of the calibration the estimate is that of one more cut, on a new plate: the scatter of the cuts, the
     * spread between plates where the fit has it, and the uncertainty of the parameters, with their degrees of freedom. With an
     * orifice or a focusing tube larger or smaller than those of the cuts it is wider: by 0.3 of the logarithm of the ratio in
     * depth, the uncertainty of an exponent (assumed).
     */
    @Override
    public Estimate<Speed> feed(AbrasiveJet jet, Workpiece workpiece, double index) {
        Estimate<Speed> plain = ForwardingFeed.super.feed(jet, workpiece, index);
        if (!workpiece.material().equals(calibrated.material)) {
            return plain;
        }
        FitPoint point = new FitPoint(jet, workpiece.thicknessSi(), index);
        double[] logFeed = values.fit.logFeed(point, Solution.Part.NEW_PLATE, -1);
        logFeed[1] = Math.hypot(logFeed[1], values.fit.slope(point) * CutPrior.EXPONENT * distance(jet));
        return estimate(logFeed, plain);
    }

    /** Distance of orifice and focusing tube from those of the cuts, in logarithms; 0 among them. */
    double distance(JetSettings jet) {
        return Math.hypot(
                calibrated.orifices.distance(jet.orificeBoreSi()), calibrated.tubes.distance(jet.tubeBoreSi()));
    }

    /**
     * {@inheritDoc}
     *
     * <p>In another material than that of the calibration it has 15 % of the feed model in addition (assumed): the scatter of
     * cuts in one material does not show how well the model holds in another.
     */
    @Override
    public double relativeUncertainty(Material material) {
        double plain = calibrated.model.relativeUncertainty(material);
        return material.equals(calibrated.material) ? plain : Math.hypot(plain, FOREIGN);
    }

    /** The limit of the model holds for the fitted value too. */
    private Estimate<Speed> estimate(double[] logFeed, Estimate<Speed> plain) {
        double feed = Math.min(Math.exp(logFeed[0]), maximumFeedSi());
        return Estimate.withinFactor(Kind.SPEED, feed, logFeed[1], plain.cautions())
                .withDegreesOfFreedom(Math.max(1, logFeed[2]));
    }

    /**
     * Returns the feed rate of one more cut on a plate that was among the cuts.
     *
     * @param jet the jet
     * @param thickness thickness of the plate
     * @param index quality index, 1 or more
     * @param plate name of the plate
     * @return the feed rate
     * @throws TextException if no cut was on that plate, or the fit has no plates; code {@code unknown-plate}
     */
    public Estimate<Speed> feedOnPlate(AbrasiveJet jet, Quantity<Length> thickness, double index, String plate) {
        List<String> groups = values.fit.spec().group() == null
                ? List.of()
                : values.fit.spec().groups(cuts());
        int cut = groups.indexOf(plate);
        if (cut < 0) {
            throw new TextException(Message.of("unknown-plate", "no test cut of this fit is on plate {plate}")
                    .withInput("plate", plate));
        }
        Workpiece workpiece = Workpiece.of(calibrated.material, thickness);
        FitPoint point = new FitPoint(jet, workpiece.thicknessSi(), index);
        int place = values.fit.spec().places(cuts())[cut];
        return estimate(
                values.fit.logFeed(point, Solution.Part.THIS_PLATE, place),
                ForwardingFeed.super.feed(jet, workpiece, index));
    }

    /**
     * Returns the mean feed rate: without the scatter of a cut and the spread between plates, as uncertain as the parameters.
     *
     * @param jet the jet
     * @param thickness thickness of the plate
     * @param index quality index, 1 or more
     * @return the feed rate
     */
    public Estimate<Speed> meanFeed(AbrasiveJet jet, Quantity<Length> thickness, double index) {
        Workpiece workpiece = Workpiece.of(calibrated.material, thickness);
        FitPoint point = new FitPoint(jet, workpiece.thicknessSi(), index);
        return estimate(
                values.fit.logFeed(point, Solution.Part.MEAN, -1), ForwardingFeed.super.feed(jet, workpiece, index));
    }

    /**
     * Returns the feed rate that separates a new plate with a probability.
     *
     * @param jet the jet
     * @param thickness thickness of the plate
     * @param probability probability above 0.5 and below 1, such as 0.95
     * @return the feed rate
     */
    public Quantity<Speed> feedThatSeparates(AbrasiveJet jet, Quantity<Length> thickness, double probability) {
        Require.above("probability", probability, 0.5, Units.ONE, "an even chance");
        return feed(jet, Workpiece.of(calibrated.material, thickness), 1).lower(Require.coverage(2 * probability - 1));
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        List<Caution> cautions = new ArrayList<>(calibrated.model.cautions(jet, material, depthM, feedMPerS));
        if (!material.equals(calibrated.material)) {
            cautions.add(Caution.warning(Message.of(
                            "not-the-calibrated-material",
                            "this feed model was calibrated with {calibrated}, not with this {material}; use the"
                                    + " material of the calibration, or a set of calibrations")
                    .with("calibrated", calibrated.material.name())
                    .with("material", material.name())));
        }
        for (ValidityRange<?> range : calibrated.evidence.ranges()) {
            switch (range.input()) {
                case DEPTH -> check(range, Kind.LENGTH, depthM, cautions);
                case PRESSURE -> check(range, Kind.PRESSURE, jet.pressureSi(), cautions);
                case ORIFICE -> check(range, Kind.LENGTH, jet.orificeBoreSi(), cautions);
                case TUBE -> check(range, Kind.LENGTH, jet.tubeBoreSi(), cautions);
                default -> check(range, Kind.MASS_FLOW, jet.abrasiveFlowSi(), cautions);
            }
        }
        return List.copyOf(cautions);
    }

    /**
     * {@inheritDoc}
     *
     * <p>A model whose feed exponent was fitted to shallow grooves alone has no caution for such grooves.
     */
    @Override
    public Estimate<Length> depth(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        Estimate<Length> plain = ForwardingFeed.super.depth(jet, material, feed);
        if (!isOfShallowGrooves()) {
            return plain;
        }
        List<Caution> cautions = plain.cautions().stream()
                .filter(caution -> !caution.code().equals("shallow-groove"))
                .toList();
        return Estimate.withinFactor(Kind.LENGTH, plain.si(), plain.relativeUncertainty(), cautions);
    }

    private boolean isOfShallowGrooves() {
        return values.fit.names().contains(FeedExponent.FEED.label())
                && cuts().stream().allMatch(FitRemarks::isShallow);
    }

    private static void check(ValidityRange<?> range, Kind<?> kind, double si, List<Caution> into) {
        if (!range.contains(si)) {
            Unit<?> unit = Kind.LENGTH.equals(kind)
                    ? Units.MILLIMETRE
                    : Kind.PRESSURE.equals(kind) ? Units.MEGAPASCAL : Units.GRAM_PER_MINUTE;
            into.add(Caution.notice(Message.of("outside-test-cuts", "{input} {value} is outside that of the test cuts")
                    .with("input", range.input())
                    .with("value", kind, si, unit)));
        }
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("calibrated feed")
                .put("model", name())
                .put("material", calibrated.material)
                .put("scatter", calibrated.scatter)
                .put("evidence", calibrated.evidence)
                .put("fit", values.fit)
                .put("cuts", cuts())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CalibratedFeed that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return name() + " from " + cuts().size() + " cuts";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
