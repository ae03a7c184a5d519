package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.fit.Response;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * Calibration of a feed model by test cuts. Immutable.
 *
 * <pre>{@code
 * CalibratedFeed own = Calibration.ofMachinability(titanium, MachinabilityFeed.published()).fit(cuts);
 * CutConditions cut = CutConditions.of(jet, Workpiece.of(own.material(), millimetres(8)), own);
 * Estimate<Speed> feed = cut.feed(CutQuality.FINE);
 * }</pre>
 */
public final class Calibration {

    /** A standard error of an exponent above this shows that the cuts do not determine it. */
    private static final double MAX_EXPONENT_ERROR = 1;

    private static final Evidence UNDER_WAY = Evidence.of(EvidenceGrade.ASSUMED, Source.of("a fit under way"));

    private final Family family;
    private final boolean isRobust;

    private Calibration(Family family, boolean isRobust) {
        this.family = family;
        this.isRobust = isRobust;
    }

    /**
     * Returns a calibration of the machinability of a material, and of exponents of the machinability model.
     *
     * @param start the material, with a machinability at which the search starts
     * @param model the model, in either form
     * @param freed exponents to be fitted too; each requires cuts that vary its setting
     * @return the calibration
     */
    public static Calibration ofMachinability(Material start, MachinabilityFeed model, FeedExponent... freed) {
        return new Calibration(new MachinabilityFamily(start, model, List.of(freed)), false);
    }

    /**
     * Returns a calibration of the specific cutting energy of a material.
     *
     * @param material the material
     * @return the calibration
     */
    public static Calibration ofSpecificEnergy(Material material) {
        return new Calibration(new RivalFamily.Energy(material), false);
    }

    /**
     * Returns a calibration of the flow strength of a material in the erosion model.
     *
     * @param material the material
     * @param model the model, whose other constants are kept
     * @return the calibration
     */
    public static Calibration ofErosion(Material material, ErosionFeed model) {
        return new Calibration(new RivalFamily.Erosion(material, model), false);
    }

    /**
     * Returns a calibration of coefficient and threshold of the threshold-pressure model; the cuts must vary the pressure.
     *
     * @param material the material
     * @param jet a jet of the cuts; orifice, tube and abrasive flow rate should be the same in all
     * @param unitFeed the feed rate that counts as 1 in the model, such as 1 mm/min
     * @return the calibration
     */
    public static Calibration ofThreshold(Material material, AbrasiveJet jet, Quantity<Speed> unitFeed) {
        return new Calibration(new RivalFamily.Threshold(material, jet, Kind.SPEED.si(unitFeed)), false);
    }

    /**
     * Returns a calibration of machinability and the exponent of the declination model; the cuts must have cut surfaces of
     * several quality indices.
     *
     * @param start the material, with a machinability at which the search starts
     * @return the calibration
     */
    public static Calibration ofDeclination(Material start) {
        return new Calibration(new RivalFamily.Declination(start), false);
    }

    /** {@return this calibration with a fit in which outliers lose their weight} */
    public Calibration withRobustWeights() {
        return new Calibration(family, true);
    }

    /**
     * Fits the parameters to test cuts.
     *
     * @param cuts the cuts
     * @return the calibrated model
     * @throws NoSolutionException if there are no cuts, code {@code no-test-cuts}, or they do not determine the parameters,
     *     code {@code undetermined-parameters}
     */
    public CalibratedFeed fit(List<TestCut> cuts) {
        if (cuts.isEmpty()) {
            throw new NoSolutionException(Message.of("no-test-cuts", "there are no test cuts to fit"));
        }
        double[] observed = new double[cuts.size()];
        double[] deviations = new double[cuts.size()];
        for (int i = 0; i < observed.length; i++) {
            TestCut cut = cuts.get(i);
            observed[i] = Math.log(cut.test() == TestCut.Test.DEPTH ? cut.thicknessSi() : cut.feedSi());
            deviations[i] = cut.relativeDeviation();
        }
        LeastSquares plain = family.withParameters(LeastSquares.of(new Prediction(family, cuts)), cuts);
        Fit fit = (isRobust ? plain.withRobustWeights() : plain).fit(observed, deviations);
        requireDetermined(fit, cuts);
        return CalibratedFeed.of(family, fit, cuts);
    }

    /** Prediction of a family; it keeps the model of the last parameters, as they come in runs. */
    private static final class Prediction implements Response {

        private final Family family;
        private final List<TestCut> cuts;
        private double[] last = new double[0];
        private FeedModel model = MachinabilityFeed.published();
        private Material material;

        Prediction(Family family, List<TestCut> cuts) {
            this.family = family;
            this.cuts = cuts;
            this.material = Material.of("none", 1, 0, MaterialClass.DUCTILE);
        }

        @Override
        public double at(int observation, double[] parameters) {
            if (!Arrays.equals(last, parameters)) {
                if (!isPossible(parameters)) {
                    return Double.NaN;
                }
                try {
                    model = family.model(parameters, 0, UNDER_WAY);
                    material = family.material(parameters, 0, UNDER_WAY);
                } catch (DomainException e) {
                    // the search tries values that no model accepts
                    last = new double[0];
                    return Double.NaN;
                }
                last = parameters.clone();
            }
            return predicted(model, material, cuts.get(observation));
        }

        /** A search may wander to where numbers overflow. */
        private static boolean isPossible(double[] parameters) {
            return Arrays.stream(parameters).allMatch(p -> Double.isFinite(p) && p != 0);
        }
    }

    static double predicted(FeedModel model, Material material, TestCut cut) {
        return Math.log(
                cut.test() == TestCut.Test.DEPTH
                        ? model.separationDepthSi(cut.jet(), material, cut.feedSi())
                        : model.feedSi(cut.jet(), material, cut.thicknessSi(), cut.index()));
    }

    private static void requireDetermined(Fit fit, List<TestCut> cuts) {
        for (FeedExponent exponent : FeedExponent.values()) {
            if (fit.names().contains(exponent.label()) && fit.standardError(exponent.label()) > MAX_EXPONENT_ERROR) {
                throw new NoSolutionException(Message.of(
                                "undetermined-parameters",
                                "{cuts} test cuts do not determine the {parameters}: {value} with a standard error of"
                                        + " {standard_error}; vary its setting more")
                        .with("cuts", cuts.size())
                        .with("parameters", exponent.label())
                        .with("value", fit.value(exponent.label()))
                        .with("standard_error", fit.standardError(exponent.label())));
            }
        }
    }
}
