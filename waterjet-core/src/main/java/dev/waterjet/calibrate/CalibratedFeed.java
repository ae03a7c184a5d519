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
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Speed;

/**
 * A feed model calibrated from test cuts. It stands wherever a published one may.
 *
 * <p>A feed of its own {@linkplain #material() material} is as uncertain as one more test cut: the scatter of the cuts about
 * the fit, and what the fitted parameters' covariance makes of the question. So an answer far from the cuts is less
 * certain than one among them. Outside the thicknesses, pressures and flows of the cuts it carries a caution.
 */
public final class CalibratedFeed implements Described, ForwardingFeed {

    private static final long serialVersionUID = 1L;

    /** Step of a derivative by a parameter, relative. */
    private static final double STEP = 1e-5;

    private static final double FEW = 6;
    private static final double OUTLIER = 3;

    private final Family family;
    private final Fit fit;
    private final List<TestCut> cuts;
    private final FeedModel model;
    private final Material material;
    private final double scatter;
    private final Evidence evidence;

    private CalibratedFeed(
            Family family,
            Fit fit,
            List<TestCut> cuts,
            FeedModel model,
            Material material,
            double scatter,
            Evidence evidence) {
        this.family = family;
        this.fit = fit;
        this.cuts = cuts;
        this.model = model;
        this.material = material;
        this.scatter = scatter;
        this.evidence = evidence;
    }

    static CalibratedFeed of(Family family, Fit fit, List<TestCut> cuts) {
        Evidence plain = Evidence.of(EvidenceGrade.FITTED, Source.of("fitted from " + cuts.size() + " cuts"));
        double[] parameters = fit.values();
        double scatter = scatter(
                family.model(parameters, 0, plain), family.material(parameters, 0, plain), fit.weights(), cuts, fit);
        Evidence evidence = plain.withNote(
                        "Scatter of a cut about the fit: " + QuantityText.round(100 * scatter, 2) + " % of the feed.")
                .withRanges(
                        range("depth", Kind.LENGTH, cuts, cut -> cut.index() * cut.thicknessSi()),
                        range(
                                "pressure",
                                Kind.PRESSURE,
                                cuts,
                                cut -> cut.jet().water().pressureSi()),
                        range(
                                "abrasive flow",
                                Kind.MASS_FLOW,
                                cuts,
                                cut -> cut.jet().abrasiveFlowSi()));
        String first = fit.names().get(0);
        double relative = fit.standardError(first) / fit.value(first);
        return new CalibratedFeed(
                family,
                fit,
                List.copyOf(cuts),
                family.model(parameters, scatter, evidence),
                family.material(parameters, relative, evidence),
                scatter,
                evidence);
    }

    private static <Q extends Quantity<Q>> ValidityRange<Q> range(
            String input, Kind<Q> kind, List<TestCut> cuts, ToDoubleFunction<TestCut> value) {
        double lowest = cuts.stream().mapToDouble(value).min().orElse(0);
        double highest = cuts.stream().mapToDouble(value).max().orElse(0);
        return ValidityRange.of(input, kind, kind.of(lowest), kind.of(highest));
    }

    /** Standard deviation of the logarithm of the cuts' feeds about the fit; a groove's depth counts by the feed that fits it. */
    private static double scatter(FeedModel model, Material material, double[] weights, List<TestCut> cuts, Fit fit) {
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
     * The fit behind this model: parameters, intervals, covariance, residuals, leverage. Residuals are of logarithms, so 0.1
     * stands for about 10 percent.
     *
     * @return the fit
     */
    public Fit fit() {
        return fit;
    }

    /**
     * The cuts.
     *
     * @return the cuts, in the order of the fit's residuals
     */
    public List<TestCut> cuts() {
        return cuts;
    }

    /**
     * The material of the cuts, with its machinability as fitted where that was sought.
     *
     * @return the material
     */
    public Material material() {
        return material;
    }

    /**
     * The model with the fitted parameters, without their covariance.
     *
     * @return the model
     */
    @Override
    public FeedModel model() {
        return model;
    }

    /**
     * Scatter of the cuts about the fit.
     *
     * @return relative standard deviation of a feed
     */
    public double scatter() {
        return scatter;
    }

    /**
     * What the user of this calibration should look at: few cuts, cuts far off, cuts that the fit hangs on.
     *
     * @return the cautions; empty if there are none
     */
    public List<Caution> remarks() {
        List<Caution> remarks = new ArrayList<>();
        if (cuts.size() < FEW) {
            remarks.add(Caution.notice(
                    "few-cuts",
                    "the fit rests on " + cuts.size() + " cuts; its intervals are wide, more cuts narrow them"));
        }
        double[] residuals = fit.studentizedResiduals();
        double[] leverages = fit.leverages();
        for (int i = 0; i < residuals.length; i++) {
            String label = cuts.get(i).label().isEmpty()
                    ? "cut " + (i + 1)
                    : cuts.get(i).label();
            if (Math.abs(residuals[i]) > OUTLIER) {
                remarks.add(Caution.warning(
                        "outlier",
                        label + " lies " + QuantityText.round(Math.abs(residuals[i]), 2)
                                + " standard deviations from the fit; look at it again, or fit with robust weights"));
            }
            if (fit.names().size() > 1 && leverages[i] > 0.9) {
                remarks.add(Caution.notice(
                        "leverage",
                        label + " determines a parameter almost alone; repeat it before you trust the fit"));
            }
        }
        return List.copyOf(remarks);
    }

    @Override
    public String name() {
        return model.name() + ", fitted";
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public Estimate<Speed> feed(AbrasiveJet jet, Workpiece piece, double index) {
        Estimate<Speed> plain = ForwardingFeed.super.feed(jet, piece, index);
        return piece.material().equals(material)
                ? Estimate.withinFactor(
                        Kind.SPEED,
                        plain.si(),
                        Math.hypot(scatter, parameterUncertainty(jet, piece, index)),
                        plain.cautions())
                : plain;
    }

    /** Root of g C g, with g the derivatives of the logarithm of the feed by the parameters and C their covariance. */
    private double parameterUncertainty(AbrasiveJet jet, Workpiece piece, double index) {
        double[] parameters = fit.values();
        double[] slopes = new double[parameters.length];
        for (int j = 0; j < slopes.length; j++) {
            double step = STEP * Math.abs(parameters[j]);
            slopes[j] = (logFeed(j, step, jet, piece, index) - logFeed(j, -step, jet, piece, index)) / (2 * step);
        }
        double variance = 0;
        for (int i = 0; i < slopes.length; i++) {
            for (int j = 0; j < slopes.length; j++) {
                variance += slopes[i]
                        * slopes[j]
                        * fit.covariance(fit.names().get(i), fit.names().get(j));
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    private double logFeed(int moved, double step, AbrasiveJet jet, Workpiece piece, double index) {
        double[] parameters = fit.values();
        parameters[moved] += step;
        return Math.log(family.model(parameters, 0, evidence)
                .feedSi(jet, family.material(parameters, 0, evidence), piece.thicknessSi(), index));
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        List<Caution> cautions = new ArrayList<>(model.cautions(jet, material, depthM, feedMPerS));
        for (ValidityRange<?> range : evidence.ranges()) {
            switch (range.input()) {
                case "depth" -> check(range, depthM, Units.MILLIMETRE, cautions);
                case "pressure" -> check(range, jet.pressureSi(), Units.MEGAPASCAL, cautions);
                default -> check(range, jet.abrasiveFlowSi(), Units.GRAM_PER_MINUTE, cautions);
            }
        }
        return List.copyOf(cautions);
    }

    private static void check(ValidityRange<?> range, double si, Unit<?> unit, List<Caution> into) {
        if (!range.contains(si)) {
            into.add(Caution.notice(
                    "outside-range",
                    range.input() + " " + QuantityText.round(Units.fromSi(si, unit), 4) + " " + Units.symbol(unit)
                            + " lies outside that of the test cuts"));
        }
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("calibrated feed")
                .put("material", material)
                .put("scatter", scatter)
                .put("cuts", cuts.size())
                .put("fit", fit)
                .map();
    }

    @Override
    public String toString() {
        return name() + " from " + cuts.size() + " cuts";
    }
}
