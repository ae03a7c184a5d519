package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.PierceModel;
import dev.waterjet.surface.RoughnessModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import javax.measure.quantity.Length;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Models fitted to measured widths, drag lines, roughness and pierces. */
class MeasurementsTest {

    private static final KerfModel STANDARD = KerfModel.standard();

    private static CutConditions steel(double standOffMm) {
        AbrasiveJet jet = CalibrationTest.jet(380, 400);
        return CutConditions.of(
                jet.withHead(jet.head().withStandOff(millimetres(standOffMm))),
                Workpiece.of(Materials.standard().get("mild-steel"), millimetres(20)),
                MachinabilityFeed.published());
    }

    private static Estimate<Length> depth(double index) {
        return Estimate.withinFactor(Kind.LENGTH, index * 0.02, 0, List.of());
    }

    /** Widths that a true model gives, read to some micrometres. */
    private static List<KerfMeasurement> widths(KerfModel truth) {
        double[] noise = {0.004, -0.006, 0.002, 0.005, -0.003, -0.004, 0.006, -0.002};
        List<KerfMeasurement> cuts = new ArrayList<>();
        int i = 0;
        for (double standOff : new double[] {1.5, 4}) {
            for (double index : new double[] {1.4, 8}) {
                Kerf kerf = truth.kerf(steel(standOff), depth(index));
                cuts.add(KerfMeasurement.of(steel(standOff), millimetres(20 * index))
                        .withEntryWidth(millimetres(kerf.entryWidth().to(Units.MILLIMETRE) + noise[i++]))
                        .withExitWidth(millimetres(kerf.exitWidth().to(Units.MILLIMETRE) + noise[i++])));
            }
        }
        return cuts;
    }

    private static final KerfModel TRUTH = STANDARD.withDoseSpread(0.31, 0.1, STANDARD.evidence())
            .withHalfAngle(degrees(1.8), 0.1, STANDARD.evidence());

    @Test
    void measuredWidthsGiveTheNumbersBack() {
        FittedModel<KerfModel> fitted = KerfMeasurement.fit(widths(TRUTH));

        assertThat(fitted.model().doseRatio()).isCloseTo(0.31, within(0.01));
        assertThat(Kind.ANGLE.si(fitted.model().halfAngle())).isCloseTo(Math.toRadians(1.8), within(0.003));
        assertThat(fitted.model().evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
        assertThat(fitted.fit().observations()).isEqualTo(8);
    }

    @Test
    void aWidthInsideThePlateIsReadFromACrossSection() {
        Kerf kerf = TRUTH.kerf(steel(2), depth(3));
        List<KerfMeasurement> cuts = widths(TRUTH);
        cuts.add(KerfMeasurement.of(steel(2), millimetres(60))
                .withWidthAt(millimetres(10), Kind.LENGTH.of(2 * kerf.halfWidthSi(0.010))));

        FittedModel<KerfModel> fitted = KerfMeasurement.fit(cuts);
        assertThat(fitted.fit().observations()).isEqualTo(9);
        assertThat(fitted.model().doseRatio()).isCloseTo(0.31, within(0.01));
    }

    @Test
    void aFittedKerfIsMoreCertainAndHasNoCautionAmongItsCuts() {
        Kerf own = KerfMeasurement.fit(widths(TRUTH)).model().kerf(steel(2), depth(2.5));
        Kerf assumed = STANDARD.kerf(steel(2), depth(2.5));

        assertThat(own.exitWidth().standardUncertaintySi())
                .isLessThan(assumed.exitWidth().standardUncertaintySi() / 3);
        assertThat(own.cautions()).isEmpty();
        assertThat(assumed.cautions()).extracting(Caution::code).contains("kerf-not-fitted");
        CutConditions thick = steel(2).withWorkpiece(steel(2).workpiece().withThickness(millimetres(30)));
        assertThat(own.model()
                        .kerf(thick, Estimate.withinFactor(Kind.LENGTH, 0.09, 0, List.of()))
                        .cautions())
                .extracting(Caution::code)
                .containsExactly("kerf-outside-range");
    }

    /** Errors of the fit are the uncertainties of the model: the entry width d + 2 S tan(alpha) depends on the slope alone. */
    @Test
    void aFittedKerfKeepsTheErrorsOfTheFit() {
        FittedModel<KerfModel> fitted = KerfMeasurement.fit(widths(TRUTH));
        double slope = fitted.fit().value("slope of the edge of the jet");
        double byWidths = fitted.fit().standardError("slope of the edge of the jet") / slope;
        double relative = ((Number)
                        Objects.requireNonNull(fitted.model().describe().get("half_angle_relative_uncertainty")))
                .doubleValue();
        double moved = 0.004 * slope * Math.sinh(relative);

        // no less than what the cuts show, each left out in turn
        assertThat(relative).isBetween(byWidths, 0.2);
        assertThat(byWidths).isGreaterThan(1e-4);
        assertThat(Math.tan(Kind.ANGLE.si(fitted.model().halfAngle()))).isCloseTo(slope, within(1e-15));
        assertThat(fitted.model().kerf(steel(2), depth(3)).entryWidth().standardUncertaintySi())
                .isCloseTo(Math.hypot(moved, fitted.fit().residualDeviation()), within(1e-12));
    }

    @Test
    void theFeedModelGivesTheSeparationDepthOfACut() {
        CutConditions cut = steel(2);

        assertThat(Kind.LENGTH.si(
                        KerfMeasurement.atFeed(cut, millimetresPerMinute(60)).separationDepth()))
                .isEqualTo(cut.depth(millimetresPerMinute(60)).si());
        assertThat(Refusals.of(() -> KerfMeasurement.atFeed(cut, millimetresPerMinute(6000))))
                .isEqualTo("must-be-at-least");
    }

    private static LagMeasurement line(double... lagsMm) {
        return LagMeasurement.of(millimetres(40))
                .withLags(
                        QuantityArray.of(Kind.LENGTH, new double[] {5, 10, 15, 20}, Units.MILLIMETRE),
                        QuantityArray.of(Kind.LENGTH, lagsMm, Units.MILLIMETRE));
    }

    /** k z^2/H with k = 0.3 and H = 40 mm is 0.1875, 0.75, 1.6875 and 3 mm; read to some hundredths. */
    @Test
    void dragLinesGiveTheCoefficientBack() {
        FittedModel<LagModel> fitted = LagMeasurement.fit(List.of(line(0.20, 0.76, 1.68, 3.01)));

        assertThat(fitted.model().coefficient()).isCloseTo(0.3, within(0.003));
        // one line does not show how lines differ: 30 % is assumed without a fit
        assertThat(fitted.model().relativeUncertainty()).isBetween(0.3, 0.301);
        assertThat(fitted.model().evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
    }

    /** Lines with coefficients of 0.24, 0.3 and 0.375: logarithms -0.2231, 0 and 0.2231 about that of 0.3. */
    private static List<LagMeasurement> lines(int points) {
        List<LagMeasurement> lines = new ArrayList<>();
        for (double k : new double[] {0.24, 0.3, 0.375}) {
            double[] depths = new double[points];
            double[] lags = new double[points];
            for (int i = 0; i < points; i++) {
                depths[i] = 0.02 * (i + 1) / points;
                lags[i] = k * depths[i] * depths[i] / 0.04 * (i % 2 == 0 ? 1.001 : 0.999);
            }
            lines.add(LagMeasurement.of(millimetres(40))
                    .withLags(QuantityArray.ofSi(Kind.LENGTH, depths), QuantityArray.ofSi(Kind.LENGTH, lags)));
        }
        return lines;
    }

    /** One more line: 0.2231 sqrt(1 + 1/3), however many points of each line were read. */
    @Test
    void aLineIsOneObservation() {
        double expected = Math.log(1.25) * Math.sqrt(1 + 1 / 3.0);
        for (int points : new int[] {4, 10, 1000}) {
            FittedModel<LagModel> fitted = LagMeasurement.fit(lines(points));

            assertThat(fitted.model().coefficient()).isCloseTo(0.3, within(0.001));
            assertThat(fitted.model().relativeUncertainty()).isCloseTo(expected, within(0.001));
            assertThat(fitted.fit().observations()).isEqualTo(3);
        }
        assertThat(Refusals.of(() -> LagMeasurement.fit(List.of(line(0, 0, 0, 0), line(0.2, 0.76, 1.68, 3)))))
                .isEqualTo("line-without-lag");
    }

    /** Surfaces that differ by a factor: reading each of them twice as often shows nothing new about the next one. */
    @Test
    void moreReadingsOfTheSameSurfacesDoNotNarrowTheModel() {
        List<RoughnessMeasurement> once = new ArrayList<>();
        List<RoughnessMeasurement> twice = new ArrayList<>();
        for (double factor : new double[] {0.8, 1, 1.1, 1.25}) {
            RoughnessMeasurement surface = RoughnessMeasurement.of(CalibrationTest.jet(380, 400), millimetres(20));
            QuantityArray<Length> depths =
                    QuantityArray.of(Kind.LENGTH, new double[] {1, 4, 8, 12, 16, 20}, Units.MILLIMETRE);
            double[] ra = {3.1, 3.5, 4.2, 12, 30, 45};
            QuantityArray<Length> scaled = QuantityArray.of(
                    Kind.LENGTH, Arrays.stream(ra).map(r -> factor * r).toArray(), Units.MICROMETRE);
            once.add(surface.withRa(depths, scaled));
            twice.add(surface.withRa(depths, scaled).withRa(depths, scaled));
        }
        RoughnessModel one = RoughnessMeasurement.fit(once).model();
        RoughnessModel two = RoughnessMeasurement.fit(twice).model();

        assertThat(two.textureRatio()).isCloseTo(one.textureRatio(), within(1e-6 * one.textureRatio()));
        assertThat(texture(two)).isCloseTo(texture(one), within(0.02 * texture(one)));
        // the standard deviation of the logarithms of the factors over the root of 4
        assertThat(texture(one)).isCloseTo(0.19 / 2, within(0.03));
        assertThat(texture(RoughnessMeasurement.fit(once.subList(0, 2)).model()))
                .isCloseTo(Math.log(1.5), within(1e-9));
    }

    private static double texture(RoughnessModel model) {
        return (double) Objects.requireNonNull(model.describe().get("texture_ratio_relative_uncertainty"));
    }

    @Test
    void measuredRoughnessGivesTheNumbersBack() {
        RoughnessMeasurement surface = RoughnessMeasurement.of(CalibrationTest.jet(380, 400), millimetres(20))
                .withRa(
                        QuantityArray.of(Kind.LENGTH, new double[] {1, 4, 8, 12, 16, 20}, Units.MILLIMETRE),
                        QuantityArray.of(Kind.LENGTH, new double[] {3.1, 3.5, 4.2, 12, 30, 45}, Units.MICROMETRE));
        FittedModel<RoughnessModel> fitted = RoughnessMeasurement.fit(List.of(surface));

        assertThat(fitted.model().textureRatio() * 180).isCloseTo(2.9, within(0.3));
        assertThat(fitted.model().striationGrowth() * 0.9).isCloseTo(0.083, within(0.01));
        assertThat(fitted.fit().residualDeviation()).isLessThan(0.15);
        assertThat(fitted.model().evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
    }

    /** Scatter of ten per cent in time, alternating, so that slope and level hardly move. */
    private static List<PierceMeasurement> pierces() {
        List<PierceMeasurement> pierces = new ArrayList<>();
        double[] times = {0.5, 1, 2, 4, 8, 16};
        for (int i = 0; i < times.length; i++) {
            double depth = 0.003 * Math.pow(times[i] * (i % 2 == 0 ? 1.1 : 1 / 1.1), 0.6);
            pierces.add(PierceMeasurement.of(Kind.LENGTH.of(depth), seconds(times[i])));
        }
        return pierces;
    }

    @Test
    void timedPiercesGiveTheNumbersBack() {
        PierceModel own = PierceMeasurement.fitPowerForm(pierces()).model();

        assertThat(own.exponentAt(millimetres(5))).isCloseTo(0.6, within(0.03));
        assertThat(Kind.LENGTH.si(own.depthAfterOneSecond())).isCloseTo(0.003, within(0.0001));
        assertThat(own.relativeUncertainty()).isBetween(0.05, 0.2);
        assertThat(own.evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
        assertThat(own.time(millimetres(5)).cautions()).isEmpty();
    }

    /** Commons Math, simple regression of ln t over ln h: slope 1/b, intercept -ln(a)/b, root of the mean square error. */
    @Test
    void pierceTimesFollowTheRegressionLine() {
        PierceModel own = PierceMeasurement.fitPowerForm(pierces()).model();
        SimpleRegression line = new SimpleRegression();
        pierces()
                .forEach(pierce ->
                        line.addData(Math.log(Kind.LENGTH.si(pierce.depth())), Math.log(Kind.TIME.si(pierce.time()))));

        assertThat(own.exponentAt(millimetres(5))).isCloseTo(1 / line.getSlope(), within(1e-9));
        assertThat(Kind.LENGTH.si(own.depthAfterOneSecond()))
                .isCloseTo(Math.exp(-line.getIntercept() / line.getSlope()), within(1e-12));
        assertThat(own.relativeUncertainty()).isCloseTo(Math.sqrt(line.getMeanSquareError()), within(1e-9));
    }

    /** Without noise both numbers come back, whatever their size; a factor of the times is a factor of the rate. */
    @ParameterizedTest
    @CsvSource({"2, 7.5, 1", "0.3, 20, 1", "40, 1.2, 1", "2, 7.5, 60"})
    void dampedPiercesGiveTheirNumbersBack(double rateMmPerS, double dampingMm, double factor) {
        PierceModel model = PierceModel.damped(
                Kind.SPEED.of(rateMmPerS * 1e-3),
                millimetres(dampingMm),
                0.1,
                KerfModel.standard().evidence());
        List<PierceMeasurement> exact = DoubleStream.of(3, 8, 20, 45)
                .mapToObj(mm -> PierceMeasurement.of(
                        millimetres(mm),
                        seconds(factor * model.time(millimetres(mm)).si())))
                .toList();
        PierceModel own = PierceMeasurement.fit(exact).model();

        assertThat(Kind.SPEED.si(own.rate().orElseThrow()))
                .isCloseTo(rateMmPerS * 1e-3 / factor, withinPercentage(1e-4));
        assertThat(Kind.LENGTH.si(own.damping().orElseThrow())).isCloseTo(dampingMm * 1e-3, withinPercentage(1e-4));
    }

    /** Times proportional to depth, one depth alone, or two pierces tell no damping: the given one is kept. */
    @Test
    void theTypicalDampingIsKeptWhereThePiercesTellNone() {
        List<PierceMeasurement> straight = DoubleStream.of(2, 4, 8, 16)
                .mapToObj(mm -> PierceMeasurement.of(millimetres(mm), seconds(mm)))
                .toList();
        List<PierceMeasurement> alike = DoubleStream.of(9, 10, 11)
                .mapToObj(s -> PierceMeasurement.of(millimetres(12), seconds(s)))
                .toList();

        assertThat(dampingMm(straight, 7.5)).isCloseTo(7.5, within(1e-12));
        PierceModel own = PierceMeasurement.fit(alike, millimetres(8)).model();
        assertThat(dampingMm(alike, 8)).isCloseTo(8, within(1e-12));
        // the geometric mean of the times
        assertThat(own.time(millimetres(12)).si()).isCloseTo(Math.cbrt(9 * 10 * 11), within(1e-9));
        assertThat(dampingMm(alike.subList(0, 2), 8)).isCloseTo(8, within(1e-12));
    }

    private static double dampingMm(List<PierceMeasurement> pierces, double typicalMm) {
        PierceModel own = PierceMeasurement.fit(pierces, millimetres(typicalMm)).model();
        return 1e3 * Kind.LENGTH.si(own.damping().orElseThrow());
    }

    @Test
    void piercesWithoutALineAreRefused() {
        PierceMeasurement shallow = PierceMeasurement.of(millimetres(1), seconds(3));
        PierceMeasurement deep = PierceMeasurement.of(millimetres(3), seconds(1));

        assertThat(Refusals.of(() -> PierceMeasurement.fit(List.of(shallow)))).isEqualTo("too-few-pierces");
        assertThat(Refusals.of(() -> PierceMeasurement.fitPowerForm(List.of(shallow, deep))))
                .isEqualTo("too-few-pierces");
        assertThat(Refusals.of(() -> PierceMeasurement.fit(List.of(shallow, deep, deep))))
                .isEqualTo("pierces-not-rising");
        assertThat(Refusals.of(() -> PierceMeasurement.fitPowerForm(List.of(deep, deep, deep))))
                .isEqualTo("pierces-not-rising");
        assertThat(Refusals.of(() -> PierceMeasurement.fit(List.of(shallow, deep), millimetres(0))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> PierceMeasurement.of(millimetres(0), seconds(1))))
                .isEqualTo("must-be-above");
    }

    @Test
    void tooFewReadingsDetermineNothing() {
        KerfMeasurement cut = KerfMeasurement.of(steel(2), millimetres(60)).withEntryWidth(millimetres(1));

        assertThat(Refusals.of(() -> KerfMeasurement.fit(List.of(cut)))).isEqualTo("undetermined-parameters");
        assertThat(Refusals.of(() -> LagMeasurement.fit(List.of(LagMeasurement.of(millimetres(40))))))
                .isEqualTo("undetermined-parameters");
        assertThat(Refusals.of(() -> RoughnessMeasurement.fit(List.of()))).isEqualTo("undetermined-parameters");
    }

    @Test
    void readingsLieOnTheCutSurface() {
        KerfMeasurement cut = KerfMeasurement.of(steel(2), millimetres(60));
        QuantityArray<Length> one = QuantityArray.ofSi(Kind.LENGTH, 1e-3);
        QuantityArray<Length> deep = QuantityArray.ofSi(Kind.LENGTH, 41e-3);

        assertThat(Refusals.of(() -> KerfMeasurement.of(steel(2), millimetres(19))))
                .isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> cut.withWidthAt(millimetres(21), millimetres(1))))
                .isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> cut.withEntryWidth(millimetres(0)))).isEqualTo("must-be-above");
        LagMeasurement line = LagMeasurement.of(millimetres(40));
        assertThat(Refusals.of(() -> line.withLags(deep, one))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> line.withLags(one, QuantityArray.ofSi(Kind.LENGTH, -1e-3))))
                .isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> line.withLags(one, QuantityArray.ofSi(Kind.LENGTH))))
                .isEqualTo("unequal-readings");
        RoughnessMeasurement surface = RoughnessMeasurement.of(steel(2).jet(), millimetres(40));
        assertThat(Refusals.of(() -> surface.withRa(deep, one))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> surface.withRa(one, QuantityArray.ofSi(Kind.LENGTH, 0))))
                .isEqualTo("must-be-above");
    }

    @Test
    void measurementsAreTheirReadings() {
        ValueContract.of(() -> line(0.20, 0.76, 1.68, 3.01))
                .differs("lags", line(0.21, 0.76, 1.68, 3.01))
                .differs(
                        "more",
                        line(0.20, 0.76, 1.68, 3.01)
                                .withLags(QuantityArray.ofSi(Kind.LENGTH, 1e-3), QuantityArray.ofSi(Kind.LENGTH, 0)))
                .check();
        ValueContract.of(() -> widths(TRUTH).get(0))
                .differs("index", widths(TRUTH).get(1))
                .differs("widths", widths(STANDARD).get(0))
                .check();
        ValueContract.of(() -> KerfMeasurement.fit(widths(TRUTH)))
                .differs("widths", KerfMeasurement.fit(widths(STANDARD)))
                .check();
    }
}
