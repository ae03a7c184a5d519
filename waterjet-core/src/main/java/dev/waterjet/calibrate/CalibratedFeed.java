package dev.waterjet.calibrate;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.evidence.ValidityRange;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.ForwardingFeed;
import dev.waterjet.fit.Fit;
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
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.Unit;
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

    /** Step of a derivative by a parameter, relative. */
    private static final double STEP = 1e-5;

    private static final double FEW = 6;
    private static final double OUTLIER = 3;
    private static final double HIGH_LEVERAGE = 0.9;

    private static final String DEPTH = "depth";
    private static final String PRESSURE = "pressure";
    private static final String ABRASIVE_FLOW = "abrasive flow rate";

    /** Checked content, and the serial form; all else follows from it. */
    private record Values(Family family, Fit fit, List<TestCut> cuts) implements Serializable {

        Values {
            Objects.requireNonNull(family, "family");
            Objects.requireNonNull(fit, "fit");
            cuts = List.copyOf(cuts);
            Require.between(
                    "number of test cuts",
                    cuts.size(),
                    fit.observations(),
                    fit.observations(),
                    Units.ONE,
                    "the observations of the fit");
            Calibrated.of(family, fit, cuts);
        }

        private Object readResolve() {
            return new CalibratedFeed(this);
        }
    }

    /** Model and material with the fitted parameters. */
    private record Calibrated(FeedModel model, Material material, double scatter, Evidence evidence) {

        static Calibrated of(Family family, Fit fit, List<TestCut> cuts) {
            Evidence plain = Evidence.of(EvidenceGrade.FITTED, Source.of("fitted from " + cuts.size() + " cuts"));
            double[] parameters = fit.values();
            double scatter = Require.finite(
                    "scatter of the test cuts",
                    deviation(family.model(parameters, 0, plain), family.material(parameters, 0, plain), cuts, fit),
                    Units.ONE);
            Evidence evidence = plain.withNote("Scatter of a cut about the fit: " + QuantityText.round(100 * scatter, 2)
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
                                    cut -> cut.jet().abrasiveFlowSi()));
            String first = fit.names().get(0);
            double relative = fit.standardError(first) / fit.value(first);
            return new Calibrated(
                    family.model(parameters, scatter, evidence),
                    family.material(parameters, relative, evidence),
                    scatter,
                    evidence);
        }
    }

    private final transient Values values;
    private final transient Calibrated calibrated;

    private CalibratedFeed(Values values) {
        this.values = values;
        this.calibrated = Calibrated.of(values.family, values.fit, values.cuts);
    }

    static CalibratedFeed of(Family family, Fit fit, List<TestCut> cuts) {
        return new CalibratedFeed(new Values(family, fit, cuts));
    }

    private static <Q extends Quantity<Q>> ValidityRange<Q> range(
            String input, Kind<Q> kind, List<TestCut> cuts, ToDoubleFunction<TestCut> value) {
        double minimum = cuts.stream().mapToDouble(value).min().orElse(0);
        double maximum = cuts.stream().mapToDouble(value).max().orElse(0);
        return ValidityRange.of(input, kind, kind.of(minimum), kind.of(maximum));
    }

    /**
     * Standard deviation of the logarithm of the cuts' feed rates about the fit; the depth of a groove counts by the feed rate
     * that fits it.
     */
    private static double deviation(FeedModel model, Material material, List<TestCut> cuts, Fit fit) {
        double[] weights = fit.weights();
        double sum = 0;
        double freedom = -fit.names().size();
        for (int i = 0; i < weights.length; i++) {
            TestCut cut = cuts.get(i);
            double off = Math.log(cut.feedSi() / model.feedSi(cut.jet(), material, cut.thicknessSi(), cut.index()));
            sum += weights[i] * off * off;
            freedom += weights[i];
        }
        return Math.sqrt(sum / Math.max(1, freedom));
    }

    /**
     * Returns the fit behind this model: parameters, intervals, covariance, residuals, leverage.
     *
     * @return the fit; residuals are of logarithms, so 0.1 is about 10 %
     */
    public Fit fit() {
        return values.fit;
    }

    /** {@return the test cuts, in the order of the residuals of the fit} */
    public List<TestCut> cuts() {
        return values.cuts;
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

    /** {@return the scatter of the cuts about the fit: relative standard deviation of a feed rate} */
    public double scatter() {
        return calibrated.scatter;
    }

    /** {@return the cautions of this calibration itself: few cuts, outliers, cuts that determine a parameter alone} */
    public List<Caution> remarks() {
        List<Caution> remarks = new ArrayList<>();
        if (values.cuts.size() < FEW) {
            remarks.add(Caution.notice(Message.of(
                            "few-cuts", "the fit rests on {cuts} cuts; its intervals are wide, more cuts narrow them")
                    .with("cuts", values.cuts.size())));
        }
        double[] residuals = values.fit.studentizedResiduals();
        double[] leverages = values.fit.leverages();
        for (int i = 0; i < residuals.length; i++) {
            if (Math.abs(residuals[i]) > OUTLIER) {
                remarks.add(Caution.warning(Message.of(
                                "outlier",
                                "{cut} is {deviations} standard deviations from the fit; check it, or fit with robust"
                                        + " weights")
                        .with("cut", label(i))
                        .with("deviations", Math.rint(100 * Math.abs(residuals[i])) / 100)));
            }
            if (values.fit.names().size() > 1 && leverages[i] > HIGH_LEVERAGE) {
                remarks.add(Caution.notice(Message.of(
                                "leverage",
                                "{cut} determines a parameter almost alone; repeat it before you rely on the fit")
                        .with("cut", label(i))));
            }
        }
        return List.copyOf(remarks);
    }

    private String label(int cut) {
        String label = values.cuts.get(cut).label();
        return label.isEmpty() ? "cut " + (cut + 1) : label;
    }

    @Override
    public String name() {
        return calibrated.model.name() + ", fitted";
    }

    @Override
    public Evidence evidence() {
        return calibrated.evidence;
    }

    @Override
    public Estimate<Speed> feed(AbrasiveJet jet, Workpiece workpiece, double index) {
        Estimate<Speed> plain = ForwardingFeed.super.feed(jet, workpiece, index);
        return workpiece.material().equals(calibrated.material)
                ? Estimate.withinFactor(
                        Kind.SPEED,
                        plain.si(),
                        Math.hypot(calibrated.scatter, parameterUncertainty(jet, workpiece, index)),
                        plain.cautions())
                : plain;
    }

    /** Root of g C g, with g the derivatives of the logarithm of the feed rate by the parameters and C their covariance. */
    private double parameterUncertainty(AbrasiveJet jet, Workpiece workpiece, double index) {
        double[] parameters = values.fit.values();
        double[] slopes = new double[parameters.length];
        for (int j = 0; j < slopes.length; j++) {
            double step = STEP * Math.abs(parameters[j]);
            double more = logFeed(moved(j, step), jet, workpiece, index);
            slopes[j] = (more - logFeed(moved(j, -step), jet, workpiece, index)) / (2 * step);
        }
        List<String> names = values.fit.names();
        double variance = 0;
        for (int i = 0; i < slopes.length; i++) {
            for (int j = 0; j < slopes.length; j++) {
                variance += slopes[i] * slopes[j] * values.fit.covariance(names.get(i), names.get(j));
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    private double[] moved(int parameter, double step) {
        double[] parameters = values.fit.values();
        parameters[parameter] += step;
        return parameters;
    }

    private double logFeed(double[] parameters, AbrasiveJet jet, Workpiece workpiece, double index) {
        Family family = values.family;
        return Math.log(family.model(parameters, 0, calibrated.evidence)
                .feedSi(jet, family.material(parameters, 0, calibrated.evidence), workpiece.thicknessSi(), index));
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
                default -> check(range, Kind.MASS_FLOW, jet.abrasiveFlowSi(), cautions);
            }
        }
        return List.copyOf(cautions);
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
                .put("cuts", values.cuts)
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
        return name() + " from " + values.cuts.size() + " cuts";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
