package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Test cut with measured kerf widths. A list of them gives the numbers of a kerf model.
 *
 * <pre>{@code
 * KerfMeasurement slow = KerfMeasurement.atFeed(cut, millimetresPerMinute(60))
 *         .withEntryWidth(millimetres(1.10))
 *         .withExitWidth(millimetres(0.98));
 * KerfModel own = KerfMeasurement.fit(List.of(slow, fast)).model();
 * }</pre>
 *
 * @param cut conditions of the cut
 * @param separationDepth depth that the jet just separates at the feed rate of the cut, at least the thickness
 * @param depths depth below the top side at which each width was measured, from 0 to the thickness
 * @param widths measured widths, each above 0
 */
public record KerfMeasurement(
        CutConditions cut, Quantity<Length> separationDepth, QuantityArray<Length> depths, QuantityArray<Length> widths)
        implements Described, Serializable {

    private static final String DOSE = "spread of the dose over the bore";
    private static final String SLOPE = "slope of the edge of the jet";

    private static final int MIN_CUTS = 3;

    /** From this slope on, 45 degrees, no jet can be meant. */
    private static final double MAX_SLOPE = 1;

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the separation depth is below the thickness, a width is not above 0, its
     *     depth not on the cut surface, or there are more of one than of the other
     * @param cut conditions of the cut
     * @param separationDepth depth that the jet just separates at the feed rate of the cut, at least the thickness
     * @param depths depth below the top side at which each width was measured, from 0 to the thickness
     * @param widths measured widths, each above 0
     */
    public KerfMeasurement {
        double thicknessM = Objects.requireNonNull(cut, "cut").thicknessSi();
        separationDepth = Kind.LENGTH.of(Require.atLeast(
                "separation depth",
                Kind.LENGTH.si(separationDepth),
                thicknessM,
                Units.MILLIMETRE,
                "the thickness of the workpiece that it cut"));
        Readings.requireDepths(depths, thicknessM, "the thickness of the workpiece");
        Readings.requirePairs(depths, widths, "widths");
        widths.stream().forEach(width -> Require.positive("measured width", width, Units.MILLIMETRE));
    }

    /**
     * Returns a cut with a known separation depth, as from a wedge, without widths.
     *
     * @param cut conditions of the cut
     * @param separationDepth depth that the jet just separates at the feed rate, at least the thickness
     * @return the cut
     */
    public static KerfMeasurement of(CutConditions cut, Quantity<Length> separationDepth) {
        Objects.requireNonNull(separationDepth, "separationDepth");
        return new KerfMeasurement(cut, separationDepth, Readings.NONE, Readings.NONE);
    }

    /**
     * Returns a cut at a feed rate, whose separation depth the feed model predicts, without widths.
     *
     * @param cut conditions of the cut
     * @param feed feed rate, at most the one that just separates the workpiece
     * @return the cut
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece at that feed rate
     */
    public static KerfMeasurement atFeed(CutConditions cut, Quantity<Speed> feed) {
        return of(cut, KerfModel.standard().kerf(cut, feed).separationDepth().value());
    }

    /** {@return the jet} */
    public AbrasiveJet jet() {
        return cut.jet();
    }

    /** {@return the workpiece} */
    public Workpiece workpiece() {
        return cut.workpiece();
    }

    /**
     * Returns this cut with its width at the top side.
     *
     * @param width measured width, above 0
     * @return the cut with that width
     */
    public KerfMeasurement withEntryWidth(Quantity<Length> width) {
        return withWidthAt(Kind.LENGTH.of(0), width);
    }

    /**
     * Returns this cut with its width at the bottom side.
     *
     * @param width measured width, above 0
     * @return the cut with that width
     */
    public KerfMeasurement withExitWidth(Quantity<Length> width) {
        return withWidthAt(workpiece().thickness(), width);
    }

    /**
     * Returns this cut with its width at a depth, as from a cross-section.
     *
     * @param depth depth below the top side, from 0 to the thickness
     * @param width measured width, above 0
     * @return the cut with that width
     */
    public KerfMeasurement withWidthAt(Quantity<Length> depth, Quantity<Length> width) {
        return new KerfMeasurement(
                cut,
                separationDepth,
                Readings.append(depths, Kind.LENGTH.si(depth)),
                Readings.append(widths, Kind.LENGTH.si(width)));
    }

    /**
     * Fits a kerf model to measured widths by least squares: the spread of the dose, the half-angle of the jet, and the
     * scatter of a width about the model.
     *
     * <p>Widths at both sides, at two stand-off distances or more and at high and low feed rates, determine both numbers. An
     * error of the separation depths goes into the spread of the dose: predict with the feed model that was used for the fit.
     *
     * <p>The widths of a cut are not independent. From three cuts on, if the others can do without each of them, the uncertainties of the
     * model are no smaller than those from leaving out each cut in turn; fewer cuts do not show how cuts differ.
     *
     * @param measurements test cuts with at least three widths in all
     * @return the model and its fit; residuals are in m
     * @throws NoSolutionException if the widths do not determine both numbers
     */
    public static FittedModel<KerfModel> fit(List<KerfMeasurement> measurements) {
        KerfModel start = KerfModel.standard();
        Fit fit = least(measurements);
        double[] relative = relative(measurements, fit);
        DoubleSummaryStatistics bores = measurements.stream()
                .mapToDouble(
                        measured -> measured.cut.thicknessSi() / measured.jet().tubeExitBoreSi())
                .summaryStatistics();
        Evidence evidence = Evidence.of(
                        EvidenceGrade.FITTED, Source.of("test cuts of the user").at(fit.observations() + " widths"))
                .withNote(
                        "Spread of the dose and half-angle by least squares; the separation depths are taken as exact.")
                .withRanges(KerfModel.thicknessRange(bores.getMin(), bores.getMax()));
        KerfModel model = start.withDoseSpread(fit.value(DOSE), relative[0], evidence)
                .withHalfAngle(angle(fit.value(SLOPE)), relative[1], evidence)
                .withCorrelation(fit.correlation(DOSE, SLOPE))
                .withWidthScatter(Kind.LENGTH.of(fit.residualDeviation()));
        return new FittedModel<>(model, fit);
    }

    private static Fit least(List<KerfMeasurement> measurements) {
        List<Reading> readings = new ArrayList<>();
        for (KerfMeasurement measured : measurements) {
            for (int i = 0; i < measured.widths.size(); i++) {
                readings.add(new Reading(measured, i));
            }
        }
        KerfModel start = KerfModel.standard();
        return LeastSquares.of((i, numbers) -> readings.get(i).predicted(numbers))
                .withPositiveParameter(DOSE, start.doseRatio())
                .withPositiveParameter(SLOPE, Math.tan(Kind.ANGLE.si(start.halfAngle())))
                .fit(readings.stream().mapToDouble(Reading::widthM).toArray());
    }

    /** Relative uncertainties: those of the widths, and no less than what the cuts show. */
    private static double[] relative(List<KerfMeasurement> measurements, Fit fit) {
        double[] byWidths = {relative(fit, DOSE), relative(fit, SLOPE)};
        if (measurements.size() < MIN_CUTS) {
            return byWidths;
        }
        try {
            double[] byCuts = Lines.leaveOneOutErrors(measurements.size(), left -> {
                List<KerfMeasurement> others = new ArrayList<>(measurements);
                others.remove(left);
                Fit without = least(others);
                return new double[] {Math.log(without.value(DOSE)), Math.log(without.value(SLOPE))};
            });
            return new double[] {Math.max(byWidths[0], byCuts[0]), Math.max(byWidths[1], byCuts[1])};
        } catch (NoSolutionException e) {
            // without one of the cuts the others do not determine both numbers
            return byWidths;
        }
    }

    /** One width of one cut. */
    private record Reading(KerfMeasurement measured, int index) {

        double widthM() {
            return measured.widths.si(index);
        }

        double predicted(double[] numbers) {
            if (!(numbers[0] < Double.MAX_VALUE && numbers[1] < MAX_SLOPE)) {
                return Double.NaN;
            }
            KerfModel start = KerfModel.standard();
            KerfModel tried = start.withDoseSpread(numbers[0], 0, start.evidence())
                    .withHalfAngle(angle(numbers[1]), 0, start.evidence());
            return 2
                    * tried.halfWidthSi(
                            measured.cut, Kind.LENGTH.si(measured.separationDepth), measured.depths.si(index));
        }
    }

    private static Quantity<Angle> angle(double slope) {
        return Kind.ANGLE.of(Math.atan(slope));
    }

    private static double relative(Fit fit, String parameter) {
        return fit.standardError(parameter) / fit.value(parameter);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("kerf measurement")
                .put("jet", jet())
                .put("workpiece", workpiece())
                .put("separation_depth", Kind.LENGTH, Kind.LENGTH.si(separationDepth))
                .put("depths", depths)
                .put("widths", widths)
                .map();
    }

    @Override
    public String toString() {
        return widths.size() + " kerf widths in " + workpiece() + ", separation depth "
                + QuantityText.forPeople(Kind.LENGTH, separationDepth);
    }
}
