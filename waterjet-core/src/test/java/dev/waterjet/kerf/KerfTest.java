package dev.waterjet.kerf;

import static dev.waterjet.kerf.Kerfs.FEEDS;
import static dev.waterjet.kerf.Kerfs.JET;
import static dev.waterjet.kerf.Kerfs.MODEL;
import static dev.waterjet.kerf.Kerfs.OWN;
import static dev.waterjet.kerf.Kerfs.kerf;
import static dev.waterjet.kerf.Kerfs.steel;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.inches;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KerfTest {

    /** A model whose numbers are known exactly, so that only the scatter of a width is left. */
    private static final KerfModel EXACT = MODEL.withDoseSpread(0.27, 0, OWN).withHalfAngle(degrees(1), 0, OWN);

    private static double uncertaintyMm(Estimate<Length> estimate) {
        return 1000 * estimate.standardUncertaintySi();
    }

    @Property(tries = 300, seed = "5")
    void wallsKeepWithinTheJetAndCloseFromBelow(
            @ForAll @Scale(6) @DoubleRange(min = 0.2, max = 200) double thicknessMm,
            @ForAll @Scale(6) @DoubleRange(min = 1.0001, max = 1000) double index) {
        Kerf kerf = kerf(thicknessMm, index);
        Kerf faster = kerf(thicknessMm, 1 + (index - 1) / 2);
        for (int i = 0; i <= 20; i++) {
            double depth = Math.min(thicknessMm / 1000, i / 20.0 * thicknessMm / 1000);
            double halfWidth = kerf.halfWidthSi(depth);
            assertThat(halfWidth).isPositive().isLessThanOrEqualTo(kerf.shape().jetRadius(depth));
            assertThat(faster.halfWidthSi(depth)).isLessThanOrEqualTo(halfWidth);
        }
        assertThat(kerf.taperPerSide().si()).isLessThan(faster.taperPerSide().si());
        assertThat(kerf.maximumWidth().si())
                .isGreaterThanOrEqualTo(
                        Math.max(kerf.entryWidth().si(), kerf.exitWidth().si()));
        assertThat(kerf.minimumWidth().si())
                .isLessThanOrEqualTo(
                        Math.min(kerf.entryWidth().si(), kerf.exitWidth().si()));
        assertThat(kerf.taperPerSide().standardUncertaintySi()).isFinite().isPositive();
    }

    @Property(tries = 300, seed = "6")
    void theSlopeIsTheDerivativeOfTheWall(
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 100) double thicknessMm,
            @ForAll @Scale(6) @DoubleRange(min = 1.01, max = 100) double index,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 0.99) double part) {
        Kerf kerf = kerf(thicknessMm, index);
        double depth = part * thicknessMm / 1000;
        double step = 1e-5 * depth;
        double difference = (kerf.halfWidthSi(depth + step) - kerf.halfWidthSi(depth - step)) / (2 * step);

        assertThat(kerf.wallSlopeSi(depth)).isCloseTo(difference, within(1e-6 + 1e-5 * Math.abs(difference)));
    }

    @Test
    void oneFormulaGivesAllRegimes() {
        assertThat(kerf(10, 1.5).regime()).isEqualTo(KerfRegime.NARROWING);
        double square = MODEL.shape(steel(1), 0.001, 0.001).zeroTaperDepth() / 0.001;
        assertThat(kerf(1, square).regime()).isEqualTo(KerfRegime.PARALLEL);
        assertThat(kerf(10, 100).regime()).isEqualTo(KerfRegime.WIDENING);
        Kerf thick = kerf(100, 6);
        assertThat(thick.regime()).isEqualTo(KerfRegime.BARREL);
        assertThat(Kind.LENGTH.si(thick.depthOfMaximumWidth())).isBetween(0.001, 0.099);
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
    void widthsWithinTwoPerCentAreEqual(double entry, double exit, double maximum, KerfRegime regime) {
        assertThat(KerfRegime.of(entry, exit, maximum)).isEqualTo(regime);
    }

    @Test
    void theMaximumWidthIsFoundExactly() {
        for (double index : new double[] {4, 6, 10}) {
            Kerf barrel = kerf(100, index);
            double depth = Kind.LENGTH.si(barrel.depthOfMaximumWidth());
            double widest = 0;
            for (int i = 0; i <= 20_000; i++) {
                widest = Math.max(widest, 2 * barrel.halfWidthSi(0.1 * i / 20_000));
            }

            assertThat(depth).isBetween(0.001, 0.099);
            assertThat(barrel.wallSlopeSi(depth)).isCloseTo(0, within(1e-7));
            assertThat(barrel.maximumWidth().si())
                    .isGreaterThanOrEqualTo(widest)
                    .isCloseTo(widest, within(1e-9));
        }
    }

    @Test
    void aWallThatOnlyWidensOrNarrowsHasItsWidthsAtTheEnds() {
        assertThat(Kind.LENGTH.si(kerf(10, 100).depthOfMaximumWidth())).isEqualTo(0.010);
        assertThat(kerf(10, 100).minimumWidth().si())
                .isEqualTo(kerf(10, 100).entryWidth().si());
        assertThat(kerf(10, 1.5).minimumWidth().si())
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
                .isCloseTo(kerf.maximumWidth().si() / 2, within(1e-15));
        assertThat(kerf.offset()).isEqualTo(kerf.offset(MeasuringPlane.ENTRY));
        assertThat(kerf.minimumInnerRadius()).isEqualTo(kerf.offset(MeasuringPlane.WIDEST));
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
    }

    /** Entry width d + 2 S tan(alpha); alpha within half of itself, moved up and down by exp(0.5). */
    @Test
    void theHalfAngleGoesIntoTheEntryWidth() {
        double moved = 2 * 2 * Math.tan(Math.toRadians(1.38)) * Math.sinh((1.81 - 0.95) / (2 * 1.96) / 1.38);

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

    @Test
    void inchesAndMillimetresGiveTheSameKerf() {
        CutConditions metric = steel(12.7);
        CutConditions imperial = metric.withWorkpiece(Workpiece.of(metric.material(), inches(0.5)));
        Estimate<Length> depth = Estimate.withinFactor(Kind.LENGTH, Kind.LENGTH.si(inches(1.5)), 0.1, List.of());

        assertThat(MODEL.kerf(imperial, depth).exitWidth().si())
                .isCloseTo(kerf(12.7, 3).exitWidth().si(), within(1e-15));
    }

    @Test
    void aFeedRateTooHighToSeparateIsRefused() {
        CutConditions cut = steel(10);
        Quantity<Speed> fastest = cut.feed(1).value();

        assertThat(MODEL.kerf(cut, fastest).exitWidth().to(Units.MILLIMETRE)).isCloseTo(0, within(1e-3));
        assertThat(Refusals.of(() -> MODEL.kerf(cut, fastest.multiply(1.1)))).isEqualTo("must-be-at-least");
        Estimate<Length> unknown = Estimate.withinFactor(Kind.LENGTH, 0.03, 5, List.of());
        assertThat(Refusals.of(() -> MODEL.kerf(cut, unknown))).isEqualTo("must-be-at-most");
    }

    @Test
    void depthsLieInTheWorkpiece() {
        assertThat(Refusals.of(() -> kerf(10, 3).widthAt(millimetres(11)))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> kerf(10, 3).halfWidthSi(-1e-3))).isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> kerf(10, 3).wallDeviation(millimetres(5)))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> kerf(10, 3).wallSlopeSi(0))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> kerf(10, 1).wallSlopeSi(0.010))).isEqualTo("must-be-at-most");
    }

    @ParameterizedTest
    @CsvSource({
        "1, 1, kerf-thin-sheet",
        "1, 4.9, kerf-thin-sheet",
        "1, 5, ''",
        "1, 12.5, ''",
        "1, 12.6, kerf-thick-plate",
        "0.3, 2, kerf-small-bore",
    })
    void aKerfOutsideTheRangeOfTheModelHasACaution(double tubeMm, double thicknessMm, String expected) {
        Kerf kerf = MODEL.kerf(
                Kerfs.cut(Kerfs.jet(tubeMm / 3, tubeMm, 1, 100, 300), "mild-steel", thicknessMm),
                Estimate.withinFactor(Kind.LENGTH, 3 * thicknessMm / 1000, 0.1, List.of()));

        assertThat(kerf.cautions()).extracting(Caution::code).contains("kerf-not-fitted");
        assertThat(kerf.cautions())
                .extracting(Caution::code)
                .filteredOn(code -> !code.equals("kerf-not-fitted"))
                .containsExactlyElementsOf(expected.isEmpty() ? List.of() : List.of(expected));
        assertThat(kerf.exitWidth().cautions()).isEqualTo(kerf.cautions());
    }

    @ParameterizedTest
    @CsvSource({"1, 0.03", "0.5, 0.03", "0.3, 0.018", "0.4, 0.024"})
    void theAssumedScatterOfAMicroHeadGoesWithItsBore(double tubeMm, double scatterMm) {
        KerfModel exact = MODEL.withDoseSpread(MODEL.doseRatio(), 0, MODEL.evidence())
                .withHalfAngle(MODEL.halfAngle(), 0, MODEL.evidence());
        var cut = Kerfs.cut(Kerfs.jet(tubeMm / 3, tubeMm, 1, 100, 300), "mild-steel", 6 * tubeMm);
        Estimate<Length> depth = Estimate.of(Kind.LENGTH, 18e-3 * tubeMm, 0);

        assertThat(exact.kerf(cut, depth).entryWidth().standardUncertaintySi())
                .isCloseTo(scatterMm * 1e-3, within(1e-9));
        // what was measured or stated holds for every bore
        assertThat(exact.withWidthScatter(millimetres(0.03))
                        .kerf(cut, depth)
                        .entryWidth()
                        .standardUncertaintySi())
                .isCloseTo(0.03e-3, within(1e-9));
    }

    @Test
    void aFittedKerfOutsideTheMeasuredThicknessesHasACaution() {
        KerfModel fitted = MODEL.withDoseSpread(0.3, 0.1, OWN.withRanges(KerfModel.thicknessRange(8, 20)));

        assertThat(kerf(fitted, 10, 3, 0.1).cautions()).isEmpty();
        assertThat(kerf(fitted, 6, 3, 0.1).cautions()).extracting(Caution::code).containsExactly("kerf-outside-range");
    }

    @Test
    void aKerfIsItsModelJetWorkpieceAndSeparationDepth() {
        ValueContract.of(() -> kerf(10, 3))
                .has("thickness", Kerf::thickness, millimetres(10))
                .has("index", Kerf::index, 3.0)
                .has("regime", Kerf::regime, KerfRegime.BARREL)
                .differs("thickness", kerf(11, 3))
                .differs("index", kerf(10, 4))
                .differs("uncertainty of the depth", kerf(MODEL, 10, 3, 0.2))
                .differs("lag", kerf(MODEL.withLag(LagModel.of(0.3, 0.1, OWN)), 10, 3, 0.15))
                .check();
        assertThat(kerf(10, 3).separationDepth().cautions()).isEmpty();
    }

    @Test
    void namesOfRegimesAndPlanesDiffer() {
        assertThat(Arrays.stream(KerfRegime.values()).map(KerfRegime::label))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
        assertThat(Arrays.stream(MeasuringPlane.values()).map(MeasuringPlane::label))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
    }

    @Test
    void theFeedModelGivesTheSeparationDepth() {
        CutConditions cut = steel(10);

        assertThat(MODEL.kerf(cut, cut.feed(3).value()).separationDepth())
                .isEqualTo(FEEDS.depth(JET, cut.material(), cut.feed(3).value()));
    }
}
