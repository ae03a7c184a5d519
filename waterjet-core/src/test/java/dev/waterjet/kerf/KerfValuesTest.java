package dev.waterjet.kerf;

import dev.waterjet.ValueContract;
import dev.waterjet.calibrate.KerfFit;
import dev.waterjet.calibrate.KerfMeasurement;
import dev.waterjet.calibrate.LagMeasurement;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.hours;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

/** What the values of this package hold, and the uncertainties that follow from them by hand. */
class KerfValuesTest {

    private static final FeedModel FEEDS = MachinabilityFeed.published();
    private static final KerfModel MODEL = KerfModel.standard();
    private static final AbrasiveJet JET = KerfTest.jet(0.33, 1, 2, 400, 380);
    private static final Evidence OWN = Evidence.of(EvidenceGrade.FITTED, Source.of("test cuts of Hollow Ridge"));

    /** A model whose numbers are known exactly, so that only the scatter of a width is left. */
    private static final KerfModel EXACT = MODEL.withDoseSpread(0.27, 0, OWN).withHalfAngle(degrees(1), 0, OWN);

    private static Kerf kerf(KerfModel model, double thicknessMm, double index, double depthRelative) {
        return model.kerf(
                JET,
                KerfTest.steel(thicknessMm),
                Estimate.withinFactor(Kind.LENGTH, index * thicknessMm / 1000, depthRelative, List.of()));
    }

    private static Kerf kerf(double thicknessMm, double index) {
        return kerf(MODEL, thicknessMm, index, 0.15);
    }

    private static double uncertaintyMm(Estimate<Length> estimate) {
        return 1000 * estimate.standardUncertaintySi();
    }

    @Test
    void offsetsAreHalfOfTheWidthWhereThePartIsMeasured() {
        Kerf kerf = kerf(20, 3);

        assertThat(kerf.offset(MeasuringPlane.ENTRY).si())
                .isCloseTo(kerf.entryWidth().si() / 2, within(1e-15));
        assertThat(kerf.offset(MeasuringPlane.EXIT).si())
                .isCloseTo(kerf.exitWidth().si() / 2, within(1e-15));
        assertThat(kerf.offset(MeasuringPlane.MIDDLE).si())
                .isCloseTo(kerf.halfWidthSi(0.010), within(1e-15))
                .isCloseTo(kerf.widthAt(millimetres(10)).si() / 2, within(1e-15));
        assertThat(kerf.offset(MeasuringPlane.WIDEST).si())
                .isCloseTo(kerf.largestWidth().si() / 2, within(1e-15));
        assertThat(kerf.offset().si())
                .isEqualTo(kerf.offset(MeasuringPlane.ENTRY).si());
        assertThat(Arrays.stream(MeasuringPlane.values()).map(MeasuringPlane::label))
                .containsExactly("entry face", "half thickness", "exit face", "widest place");
    }

    /** The standard scatter of a width, 0.03 mm, alone: half of it for an offset, over sqrt 2 for one wall of two. */
    @Test
    void theScatterOfAWidthGoesIntoEveryAnswer() {
        Kerf kerf = kerf(EXACT, 20, 3, 0);

        assertThat(uncertaintyMm(kerf.entryWidth())).isCloseTo(0.03, within(1e-12));
        assertThat(uncertaintyMm(kerf.exitWidth())).isCloseTo(0.03, within(1e-12));
        assertThat(uncertaintyMm(kerf.widthAt(millimetres(7)))).isCloseTo(0.03, within(1e-12));
        assertThat(uncertaintyMm(kerf.offset(MeasuringPlane.EXIT))).isCloseTo(0.015, within(1e-12));
        assertThat(uncertaintyMm(kerf.wallDeviation(millimetres(1)))).isCloseTo(0.03 / Math.sqrt(2), within(1e-12));
        double scatter = Math.atan(0.03 / (Math.sqrt(2) * 20));
        assertThat(kerf.taperPerSide().standardUncertaintySi()).isCloseTo(scatter, within(1e-12));
        assertThat(kerf.includedAngle().standardUncertaintySi()).isCloseTo(2 * scatter, within(1e-12));
        assertThat(kerf.includedAngle().si()).isCloseTo(2 * kerf.taperPerSide().si(), within(1e-15));
        MinimumFeatures smallest = MinimumFeatures.of(kerf);
        assertThat(uncertaintyMm(smallest.trepannedHole())).isCloseTo(0.06, within(1e-12));
        assertThat(uncertaintyMm(smallest.remainingWeb(millimetres(3)))).isCloseTo(0.03, within(1e-12));
    }

    /** Entry width d + 2 S tan(alpha); alpha within half of itself, moved up and down by exp(0.5). */
    @Test
    void theHalfAngleGoesIntoTheEntryWidth() {
        double moved = 2 * 2 * Math.tan(Math.toRadians(1)) * (Math.exp(0.5) - Math.exp(-0.5)) / 2;

        assertThat(uncertaintyMm(kerf(10, 3).entryWidth())).isCloseTo(Math.hypot(moved, 0.03), within(1e-9));
    }

    @Test
    void theSeparationDepthGoesIntoTheExitWidth() {
        double moved = (kerf(EXACT, 10, 3 * Math.exp(0.15), 0).exitWidth().si()
                        - kerf(EXACT, 10, 3 / Math.exp(0.15), 0).exitWidth().si())
                / 2;

        assertThat(uncertaintyMm(kerf(EXACT, 10, 3, 0.15).exitWidth()))
                .isCloseTo(Math.hypot(1000 * moved, 0.03), within(1e-9));
    }

    /** Numbers that are themselves moved: half of x exp(r) - x exp(-r) is x sinh(r); JCGM 100, equation 13, for the sum. */
    @Test
    void uncertaintiesAddAsTheGuideSays() {
        KerfShape shape = new KerfShape(0.010, 0.030, 0.001, 0.002, 0.27, 0.02);
        KerfSpread spread = new KerfSpread(0.1, 0.2, 0.4, 0.5, 0);
        double depth = 0.030 * Math.sinh(0.1);
        double dose = 0.27 * Math.sinh(0.2);
        double slope = 0.02 * Math.sinh(0.4);

        assertThat(spread.of(shape, KerfShape::separationDepthM)).isCloseTo(depth, within(1e-15));
        assertThat(spread.of(shape, KerfShape::doseRatio)).isCloseTo(dose, within(1e-15));
        assertThat(spread.of(shape, KerfShape::spreadSlope)).isCloseTo(slope, within(1e-15));
        ToDoubleFunction<KerfShape> sum = at -> at.separationDepthM() + at.doseRatio() + 5 * at.spreadSlope();
        assertThat(spread.of(shape, sum))
                .isCloseTo(
                        Math.sqrt(depth * depth + dose * dose + 25 * slope * slope + 2 * 0.5 * dose * 5 * slope),
                        within(1e-12));
        assertThat(spread.of(shape, KerfShape::thicknessM)).isZero();
    }

    @ParameterizedTest
    @CsvSource({"5, 0, 0, separation depth", "0, 5, 0, dose's spread", "0, 0, 5, jet's half-angle"})
    void aKerfOfNumbersKnownToNoUseIsRefused(double depth, double dose, double slope, String name) {
        assertThatThrownBy(() -> new KerfSpread(depth, dose, slope, 0, 0))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("relative uncertainty of the " + name + " is 5");
    }

    @Test
    void theWidestPlaceIsFoundExactly() {
        for (double index : new double[] {4, 6, 10}) {
            Kerf barrel = kerf(100, index);
            double depth = Kind.LENGTH.si(barrel.depthOfLargestWidth());
            double widest = 0;
            for (int i = 0; i <= 20_000; i++) {
                widest = Math.max(widest, 2 * barrel.halfWidthSi(0.1 * i / 20_000));
            }

            assertThat(depth).isBetween(0.001, 0.099);
            assertThat(barrel.wallSlopeSi(depth)).isCloseTo(0, within(1e-7));
            assertThat(barrel.largestWidth().si())
                    .isGreaterThanOrEqualTo(widest)
                    .isCloseTo(widest, within(1e-9));
        }
        assertThat(Kind.LENGTH.si(kerf(10, 100).depthOfLargestWidth())).isEqualTo(0.010);
        assertThat(kerf(10, 100).smallestWidth().si())
                .isEqualTo(kerf(10, 100).entryWidth().si());
        assertThat(kerf(10, 1.5).smallestWidth().si())
                .isEqualTo(kerf(10, 1.5).exitWidth().si());
    }

    @Test
    void aWallThatOnlyNarrowsDeviatesByItsEnds() {
        Kerf kerf = kerf(10, 1.5);

        assertThat(kerf.wallDeviation(millimetres(2)).si())
                .isCloseTo(kerf.halfWidthSi(0.002) - kerf.halfWidthSi(0.008), within(1e-9));
        assertThat(kerf.wallDeviation(millimetres(4.9)).si())
                .isLessThan(kerf.wallDeviation(millimetres(4)).si());
    }

    @Test
    void theLeastDepthJustMeetsALimit() {
        var taper = MODEL.separationDepthForTaper(JET, KerfTest.steel(10), degrees(0.7))
                .orElseThrow();
        assertThat(MODEL.kerf(JET, KerfTest.steel(10), taper).taperPerSide().to(Units.DEGREE))
                .isCloseTo(0.7, within(1e-8));
        var wall = MODEL.separationDepthForDeviationSi(JET, KerfTest.steel(10), 0.6e-3, 0.08e-3)
                .orElseThrow();
        assertThat(MODEL.kerf(JET, KerfTest.steel(10), wall)
                        .wallDeviation(millimetres(0.6))
                        .to(Units.MILLIMETRE))
                .isCloseTo(0.08, within(1e-7));
        // a fifth of doubt in the dose's spread, a half in the angle
        assertThat(taper.relativeUncertainty()).isBetween(0.1, 2.0);
        assertThat(wall.relativeUncertainty()).isBetween(0.1, 2.0);
        assertThat(MODEL.separationDepthForTaper(JET, KerfTest.steel(10), degrees(80))
                        .orElseThrow()
                        .si())
                .isEqualTo(0.010);
        KerfModel straight = MODEL.withHalfAngle(degrees(0), 0, MODEL.evidence());
        assertThat(straight.separationDepthForTaper(JET, KerfTest.steel(10), degrees(0)))
                .isEmpty();
        assertThatThrownBy(() -> MODEL.separationDepthForDeviationSi(JET, KerfTest.steel(10), 0.005, 1e-4))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("height left out at an edge is 5 mm");
    }

    /** ln(H/h) = y_J(h)^2 / (2 s^2 ((y_J(h)/y_J(0))^8 - 1)^(1/4)), in mm: bore 1, stand-off 2, plate 10. */
    private static double logDepth(double dose, double slope) {
        double entry = 0.5 + 2 * slope;
        double exit = 0.5 + 12 * slope;
        return exit * exit / (2 * dose * dose * Math.pow(Math.pow(exit / entry, 8) - 1, 0.25));
    }

    @Test
    void theFeedOfZeroTaperCarriesTheDoubtOfBothNumbers() {
        KerfModel model = MODEL.withDoseSpread(0.27, 0.02, OWN).withHalfAngle(degrees(2), 0.03, OWN);
        var feed = model.feedOfZeroTaper(JET, KerfTest.steel(10), FEEDS).orElseThrow();
        double slope = Math.tan(Math.toRadians(2));
        double byDose = (logDepth(0.27 * Math.exp(0.02), slope) - logDepth(0.27 / Math.exp(0.02), slope)) / 2;
        double bySlope = (logDepth(0.27, slope * Math.exp(0.03)) - logDepth(0.27, slope / Math.exp(0.03))) / 2;

        assertThat(Math.log(FEEDS.feed(JET, KerfTest.steel(10), 1).si() / feed.si()))
                .isCloseTo(1.15 * logDepth(0.27, slope), within(1e-6));
        assertThat(feed.relativeUncertainty())
                .isCloseTo(
                        Math.hypot(
                                FEEDS.relativeUncertainty(KerfTest.steel(10).material()),
                                1.15 * Math.hypot(byDose, bySlope)),
                        within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 0.98, 1, PARALLEL",
        "0.98, 1, 1, PARALLEL",
        "0.98, 0.98, 1, PARALLEL",
        "0.979, 0.979, 1, BARREL",
        "1, 0.979, 1, NARROWING",
        "0.979, 1, 1, WIDENING",
        "1, 1, 1, PARALLEL",
    })
    void widthsWithinTwoPerCentAreEqual(double entry, double exit, double largest, KerfRegime regime) {
        assertThat(KerfRegime.of(entry, exit, largest)).isEqualTo(regime);
    }

    @Test
    void wearGoesByHalfOfTheBoreAtTheEntry() {
        Quantity<Speed> growth = Kind.SPEED.of(1e-6 / 3600, Units.MICROMETRE_PER_HOUR);
        OffsetDrift entry = OffsetDrift.of(kerf(10, 3), MeasuringPlane.ENTRY, growth);

        assertThat(entry.offsetAfter(hours(40)).si()
                        - kerf(10, 3).offset().si())
                .isCloseTo(20e-6, within(1e-12));
        assertThat(entry.driftAfter(hours(40)).si()).isCloseTo(20e-6, within(1e-12));
        assertThat(entry.driftAfter(hours(40)).standardUncertaintySi()).isCloseTo(0, within(1e-15));
        assertThat(entry).hasToString("drift of the offset at the entry face");
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.1, 1.5, 4})
    void wearAtTheExitIsSlowerAndLessSure(double index) {
        Quantity<Speed> slow = Kind.SPEED.of(1e-6 / 3600, Units.MICROMETRE_PER_HOUR);
        OffsetDrift once = OffsetDrift.of(kerf(10, index), MeasuringPlane.EXIT, slow);
        OffsetDrift twice = OffsetDrift.of(kerf(10, index), MeasuringPlane.EXIT, slow.multiply(2));
        var time = once.timeUntil(millimetres(0.02));

        assertThat(once.driftAfter(time.value()).si()).isCloseTo(2e-5, within(1e-11));
        assertThat(once.driftAfter(time.value()).standardUncertaintySi()).isPositive();
        assertThat(time.to(Units.HOUR)).isGreaterThan(40);
        assertThat(time.standardUncertaintySi()).isPositive();
        // a tube that wears twice as fast takes half of the time, and half of the doubt
        assertThat(twice.timeUntil(millimetres(0.02)).si()).isCloseTo(time.si() / 2, within(1e-6 * time.si()));
        assertThat(twice.timeUntil(millimetres(0.02)).standardUncertaintySi())
                .isCloseTo(time.standardUncertaintySi() / 2, within(1e-4 * time.standardUncertaintySi()));
    }

    @Test
    void aFitKeepsItsOwnErrors() {
        List<KerfMeasurement> cuts = new java.util.ArrayList<>();
        double[] noise = {0.004, -0.006, 0.002, 0.005, -0.003, -0.004, 0.006, -0.002};
        int i = 0;
        for (double standOff : new double[] {1.5, 4}) {
            for (double index : new double[] {1.4, 8}) {
                AbrasiveJet jet = KerfTest.jet(0.33, 1, standOff, 400, 380);
                Kerf kerf = MODEL.kerf(
                        jet, KerfTest.steel(20), Estimate.withinFactor(Kind.LENGTH, index * 0.02, 0, List.of()));
                cuts.add(KerfMeasurement.of(jet, KerfTest.steel(20), millimetres(20 * index))
                        .withEntryWidth(millimetres(kerf.entryWidth().to(Units.MILLIMETRE) + noise[i++]))
                        .withExitWidth(millimetres(kerf.exitWidth().to(Units.MILLIMETRE) + noise[i++])));
            }
        }
        KerfFit fit = KerfFit.of(cuts);
        KerfSpread spread = kerf(fit.model(), 20, 3, 0).spread();

        assertThat(spread.doseRelative())
                .isCloseTo(
                        fit.fit().standardError("spread of the dose over the bore")
                                / fit.model().doseRatio(),
                        within(1e-12))
                .isBetween(1e-4, 0.1);
        assertThat(spread.slopeRelative())
                .isCloseTo(
                        fit.fit().standardError("slope of the jet's edge")
                                / fit.model().spreadSlope(),
                        within(1e-12))
                .isBetween(1e-4, 0.2);
        assertThat(fit.toString()).isEqualTo(fit.fit().toString()).isNotBlank();
    }

    @Test
    void aKerfIsItsShapeSpreadLagAndCautions() {
        ValueContract.of(() -> kerf(10, 3))
                .tells("thickness", Kerf::thickness, millimetres(10))
                .tells("index", Kerf::index, 3.0)
                .tells("regime", Kerf::regime, KerfRegime.NARROWING)
                .differs("thickness", kerf(11, 3))
                .differs("index", kerf(10, 4))
                .differs("doubt of the depth", kerf(MODEL, 10, 3, 0.2))
                .differs("lag", kerf(MODEL.withLag(LagModel.of(0.3, 0.1, OWN)), 10, 3, 0.15))
                .says("kerf ", " at the entry, ", " at the exit, narrowing downwards")
                .check();
        assertThat(kerf(10, 3).describe())
                .containsEntry("thickness_m", 0.01)
                .containsKeys("entry_width", "exit_width", "taper_per_side", "lag", "cautions", "regime");
        assertThat(MODEL.toString()).startsWith("kerf model, dose spread 0.27 bores, half-angle 1");
        assertThat(Arrays.stream(KerfRegime.values()).map(KerfRegime::label))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
    }

    @Test
    void tiltsGoToBothSides() {
        Kerf kerf = kerf(10, 3);

        assertThat(TaperCompensation.of(kerf, degrees(-5))
                        .within(degrees(2))
                        .tilt()
                        .getValue()
                        .doubleValue())
                .isCloseTo(Math.toRadians(-2), within(1e-15));
        assertThat(TaperCompensation.of(kerf, degrees(1))
                        .within(degrees(2))
                        .tilt()
                        .getValue()
                        .doubleValue())
                .isCloseTo(Math.toRadians(1), within(1e-15));
        assertThat(TaperCompensation.of(kerf, degrees(3)).toString()).startsWith("side tilt of 3");
        assertThat(TaperCompensation.of(kerf, degrees(3)).describe()).containsEntry("type", "side tilt");
        assertThatThrownBy(() -> TaperCompensation.of(kerf, degrees(90)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("tilt is 90 deg");
        assertThatThrownBy(() -> TaperCompensation.of(kerf, degrees(1)).within(degrees(-1)))
                .hasMessageContaining("tilt limit of the machine is -1 deg");
    }

    @Test
    void kerfsTouchWhenNothingIsLeft() {
        MinimumFeatures smallest = MinimumFeatures.of(kerf(10, 3));

        assertThat(smallest.kerfsOverlapAt(kerf(10, 3).largestWidth().value())).isTrue();
        assertThat(smallest.remainingWeb(millimetres(3)).si())
                .isCloseTo(0.003 - kerf(10, 3).largestWidth().si(), within(1e-15));
        assertThat(smallest.piercedHole().si())
                .isEqualTo(kerf(10, 3).largestWidth().si());
        assertThat(smallest.piercedHole().cautions())
                .anyMatch(caution -> caution.code().equals("pierce-widens"));
        assertThat(smallest.describe()).isNotEmpty();
        assertThat(smallest).hasToString("smallest features of a " + kerf(10, 3));
    }

    @Test
    void wearIsDescribed() {
        OffsetDrift drift =
                OffsetDrift.of(kerf(10, 3), MeasuringPlane.EXIT, Kind.SPEED.of(1e-6 / 3600, Units.MICROMETRE_PER_HOUR));

        assertThat(drift.describe()).containsKeys("kerf", "datum").containsEntry("type", "compensation drift");
        assertThatThrownBy(() -> drift.driftAfter(hours(-1))).hasMessageContaining("cutting time is -1 h");
        assertThatThrownBy(() -> drift.timeUntil(millimetres(0))).hasMessageContaining("tolerance per side is 0 mm");
    }

    @Test
    void linesAndDepthsLieOnTheFace() {
        LagMeasurement line = LagMeasurement.of(millimetres(40));

        assertThatThrownBy(() -> line.withDepths(QuantityArray.of(Kind.LENGTH, new double[] {41}, Units.MILLIMETRE)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("depth on the lag line is 41 mm");
        assertThatThrownBy(() -> line.withLags(QuantityArray.of(Kind.LENGTH, new double[] {-1}, Units.MILLIMETRE)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("lag is -1 mm");
        assertThatThrownBy(() -> kerf(10, 3).wallSlopeSi(0)).hasMessageContaining("the wall starts there");
        assertThatThrownBy(() -> kerf(10, 1).wallSlopeSi(0.010)).hasMessageContaining("the walls meet");
    }
}
