package dev.waterjet.calibrate;

import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * Calibration of a feed model by test cuts. Immutable.
 *
 * <pre>{@code
 * CalibratedFeed own = Calibration.ofMachinability(titanium, MachinabilityFeed.published())
 *         .withPrior(CutPrior.catalogue(titanium))
 *         .fit(threeCuts);
 * Estimate<Speed> feed = own.feed(jet, Workpiece.of(own.material(), millimetres(8)), CutQuality.FINE);
 * }</pre>
 *
 * <p>Without a prior the cuts speak alone: least squares with Student's intervals for measured cuts, the likelihood for
 * intervals and trials. With a prior three cuts are enough for an interval that is not absurdly wide.
 */
public final class Calibration {

    /** A standard error of an exponent above this shows that the cuts do not determine it. */
    private static final double MAX_EXPONENT_ERROR = 1;

    private static final double MIN_FREEDOM = 1;

    private final CalibrationSpec spec;

    private Calibration(CalibrationSpec spec) {
        this.spec = spec;
    }

    private static Calibration of(Family family) {
        return new Calibration(new CalibrationSpec(family, null, null, 0));
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
        Objects.requireNonNull(freed, "freed");
        return of(new MachinabilityFamily(start, model, List.of(freed)));
    }

    /**
     * Returns a calibration of the specific cutting energy of a material.
     *
     * @param material the material
     * @return the calibration
     */
    public static Calibration ofSpecificEnergy(Material material) {
        return of(new RivalFamily.Energy(material));
    }

    /**
     * Returns a calibration of the flow strength of a material in the erosion model.
     *
     * @param material the material
     * @param model the model, whose other constants are kept
     * @return the calibration
     */
    public static Calibration ofErosion(Material material, ErosionFeed model) {
        return of(new RivalFamily.Erosion(material, model));
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
        Objects.requireNonNull(unitFeed, "unitFeed");
        return of(new RivalFamily.Threshold(material, jet, Kind.SPEED.si(unitFeed)));
    }

    /**
     * Returns a calibration of machinability and the exponent of the declination model; the cuts must have cut surfaces of
     * several quality indices.
     *
     * @param start the material, with a machinability at which the search starts
     * @return the calibration
     */
    public static Calibration ofDeclination(Material start) {
        return of(new RivalFamily.Declination(start));
    }

    /**
     * Returns this calibration with a prior. The threshold model takes none, as no catalogue has its coefficient.
     *
     * @param prior what is known before the cuts
     * @return the calibration, whose intervals and predictions are those of the posterior
     * @throws NoSolutionException if the model takes no prior; code {@code no-prior-for-model}
     */
    public Calibration withPrior(CutPrior prior) {
        Objects.requireNonNull(prior, "prior");
        if (spec.family() instanceof RivalFamily.Threshold) {
            throw new NoSolutionException(Message.of(
                    "no-prior-for-model", "the threshold model takes no prior: no catalogue has its coefficient"));
        }
        return new Calibration(new CalibrationSpec(spec.family(), prior, spec.group(), spec.tailFreedom()));
    }

    /** {@return this calibration with a random effect of the plate of each cut} */
    public Calibration withPlates() {
        return withGroups(TestCut.PLATE);
    }

    /**
     * Returns this calibration with a random effect: cuts with the same text in an attribute are more alike than others.
     *
     * @param attribute name of the attribute, such as plate, batch or day
     * @return the calibration; a cut without the attribute is a group by itself
     */
    public Calibration withGroups(String attribute) {
        Objects.requireNonNull(attribute, "attribute");
        return new Calibration(new CalibrationSpec(spec.family(), spec.prior(), attribute, spec.tailFreedom()));
    }

    /**
     * Returns this calibration with Student's distribution of the scatter, so that a wrong cut loses its weight. It protects
     * against single slips, not against a bad series: it breaks down where one cut in {@code freedom + 1} is wrong to the same
     * side, one in five for 4 degrees of freedom, and a wrong cut that alone determines a slope is not found at all. It uses the
     * cuts without plates, and no prior.
     *
     * @param freedom degrees of freedom of the scatter, 1 or more; 4 by common practice, no source
     * @return the calibration
     */
    public Calibration withStudentErrors(double freedom) {
        Require.atLeast("degrees of freedom of the scatter", freedom, MIN_FREEDOM, Units.ONE, "");
        return new Calibration(new CalibrationSpec(spec.family(), null, spec.group(), freedom));
    }

    /**
     * Returns this calibration with Student's distribution of the scatter, whose degrees of freedom the cuts themselves show. It
     * withstands more wrong cuts than a stated number does, up to about 30 % of 20, and requires more cuts to be of use: about 10.
     *
     * @return the calibration; {@link CutFit#tailDegreesOfFreedom()} of its fit is between 0.5 and 200
     */
    public Calibration withStudentErrors() {
        return new Calibration(new CalibrationSpec(spec.family(), null, spec.group(), CalibrationSpec.ESTIMATED));
    }

    /**
     * Returns this calibration with weights that leave out far cuts, for a suspected bad series: it withstands wrong cuts up to nearly
     * half of all, at settings that the others share ({@link CutFit#withstoodCuts()} has the number). It takes measured cuts
     * alone, without plates, prior and known deviations, and at least three cuts more than have one setting in common. Which of two
     * equally large groups is the wrong one no method can find.
     *
     * @return the calibration
     */
    public Calibration withHighBreakdown() {
        return new Calibration(new CalibrationSpec(spec.family(), null, spec.group(), CalibrationSpec.HIGH_BREAKDOWN));
    }

    /**
     * Fits the parameters to test cuts.
     *
     * @param cuts the cuts, of one material
     * @return the calibrated model
     * @throws NoSolutionException if there are no cuts, code {@code no-test-cuts}; they do not determine the parameters, code
     *     {@code undetermined-parameters}, or the scatter, code {@code undetermined-scatter} or {@code only-a-bound}; they are of
     *     {@code several-materials}; or, with Student's scatter, form {@code two-groups}
     */
    public CalibratedFeed fit(List<TestCut> cuts) {
        if (cuts.isEmpty()) {
            throw new NoSolutionException(Message.of("no-test-cuts", "there are no test cuts to fit"));
        }
        CutFit fit = new CutFit(spec, cuts);
        requireDetermined(fit);
        return CalibratedFeed.of(fit);
    }

    CalibrationSpec spec() {
        return spec;
    }

    private static void requireDetermined(CutFit fit) {
        for (FeedExponent exponent : FeedExponent.values()) {
            if (fit.names().contains(exponent.label()) && fit.standardError(exponent.label()) > MAX_EXPONENT_ERROR) {
                throw new NoSolutionException(Message.of(
                                "undetermined-parameters",
                                "{cuts} test cuts do not determine the {parameters}: {value} with a standard error of"
                                        + " {standard_error}; vary its setting more")
                        .with("cuts", fit.observations())
                        .with("parameters", exponent.label())
                        .with("value", fit.value(exponent.label()))
                        .with("standard_error", fit.standardError(exponent.label())));
            }
        }
    }
}
