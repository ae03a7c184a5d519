package dev.waterjet.kerf;

import static dev.waterjet.kerf.Kerfs.JET;
import static dev.waterjet.kerf.Kerfs.MODEL;
import static dev.waterjet.kerf.Kerfs.kerf;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.hours;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Taper compensation, minimum features and offset drift of a kerf. */
class KerfUseTest {

    private static final Quantity<Speed> GROWTH = Kind.SPEED.of(1e-6 / 3600, Units.MICROMETRE_PER_HOUR);

    /**
     * Shanmugam et al., IJMTM 48 (2008) 1527: taper of alumina is nearly linear in the tilt of the head, zero at 4 to 5
     * degrees. Assumed here: plate 5 mm, cut little slower than it separates.
     */
    @Test
    void aluminaIsSquaredByFourToFiveDegrees() {
        CutConditions cut = Kerfs.cut(JET, "alumina-ad90", 5);
        Estimate<Length> depth =
                MODEL.separationDepthForTaper(cut, degrees(4.5)).orElseThrow();
        Kerf kerf = MODEL.kerf(cut, depth);

        assertThat(kerf.index()).isBetween(1.001, 1.5);
        assertThat(Kind.ANGLE.si(TaperCompensation.forSquarePartSide(kerf).tilt()))
                .isBetween(Math.toRadians(4), Math.toRadians(5));
        double upright = TaperCompensation.of(kerf, degrees(0)).partSideTaper().si();
        for (double tilt = 0; tilt <= 8; tilt++) {
            assertThat(TaperCompensation.of(kerf, degrees(tilt)).partSideTaper().si())
                    .isCloseTo(upright - Math.toRadians(tilt), within(1e-12));
        }
    }

    @Test
    void aTiltTakesFromThePartSideAndGivesToTheScrapSide() {
        Kerf kerf = kerf(5, 1.3);
        double taper = kerf.taperPerSide().si();
        TaperCompensation square = TaperCompensation.forSquarePartSide(kerf);
        TaperCompensation limited = square.within(degrees(2));

        assertThat(square.partSideTaper().si()).isZero();
        assertThat(square.scrapSideTaper().si()).isCloseTo(2 * taper, within(1e-15));
        assertThat(Kind.ANGLE.si(limited.tilt())).isEqualTo(Math.toRadians(2));
        assertThat(limited.partSideTaper().si())
                .isCloseTo(taper - Math.toRadians(2), within(1e-15))
                .isPositive();
        assertThat(Kind.LENGTH.si(limited.pathShift(millimetres(100))))
                .isCloseTo(0.1 * Math.tan(Math.toRadians(2)), within(1e-12));
        assertThat(Kind.LENGTH.si(limited.pathShift(millimetres(0)))).isZero();
    }

    @Test
    void tiltsAreLimitedToBothSides() {
        Kerf kerf = kerf(10, 3);

        assertThat(TaperCompensation.of(kerf, degrees(-5)).within(degrees(2)))
                .isEqualTo(TaperCompensation.of(kerf, degrees(-2)));
        assertThat(TaperCompensation.of(kerf, degrees(1)).within(degrees(2)))
                .isEqualTo(TaperCompensation.of(kerf, degrees(1)));
        ValueContract.of(() -> TaperCompensation.of(kerf, degrees(1)))
                .differs("tilt", TaperCompensation.of(kerf, degrees(2)))
                .differs("kerf", TaperCompensation.of(kerf(11, 3), degrees(1)))
                .check();
        assertThat(Refusals.of(() -> TaperCompensation.of(kerf, degrees(90)))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> TaperCompensation.of(kerf, degrees(1)).within(degrees(-1))))
                .isEqualTo("must-be-at-least");
    }

    @Test
    void minimumFeaturesFollowTheMaximumWidth() {
        Kerf kerf = kerf(100, 6);
        MinimumFeatures minimum = MinimumFeatures.of(kerf);
        double widest = kerf.maximumWidth().si();

        assertThat(widest).isGreaterThan(kerf.entryWidth().si());
        assertThat(minimum.innerRadius().si()).isCloseTo(widest / 2, within(1e-15));
        assertThat(minimum.slot().si()).isEqualTo(widest);
        assertThat(minimum.piercedHole().si()).isEqualTo(widest);
        assertThat(minimum.trepannedHole().si()).isEqualTo(2 * widest);
        assertThat(minimum.trepannedHole().standardUncertaintySi())
                .isEqualTo(2 * kerf.maximumWidth().standardUncertaintySi());
        assertThat(minimum.web().cautions()).extracting(Caution::code).contains("web-by-practice");
        assertThat(minimum.piercedHole().cautions()).extracting(Caution::code).contains("pierce-widens");
    }

    @Test
    void kerfsOverlapWhereNoWebRemains() {
        MinimumFeatures minimum = MinimumFeatures.of(kerf(10, 3));
        Estimate<Length> width = kerf(10, 3).maximumWidth();

        assertThat(minimum.kerfsOverlapAt(width.value())).isTrue();
        assertThat(minimum.kerfsOverlapAt(Kind.LENGTH.of(1.01 * width.si()))).isFalse();
        assertThat(minimum.remainingWeb(millimetres(3)).si()).isCloseTo(0.003 - width.si(), within(1e-15));
        assertThat(minimum.remainingWeb(millimetres(3)).standardUncertaintySi())
                .isEqualTo(width.standardUncertaintySi());
        assertThat(minimum).isEqualTo(MinimumFeatures.of(kerf(10, 3))).isNotEqualTo(MinimumFeatures.of(kerf(10, 4)));
    }

    @ParameterizedTest
    @EnumSource(MeasuringPlane.class)
    void wearMovesTheOffsetUntilTheToleranceIsUsedUp(MeasuringPlane plane) {
        OffsetDrift drift = OffsetDrift.of(kerf(10, 3), plane, GROWTH);
        var time = drift.timeUntil(millimetres(0.05));

        assertThat(drift.driftAfter(time.value()).si()).isCloseTo(5e-5, within(1e-10));
    }

    /** At the entry the offset grows by half of the bore: 0.05 mm at 1 um/h and half of it take 100 h. */
    @Test
    void theOffsetAtTheEntryGrowsByHalfOfTheBore() {
        OffsetDrift entry = OffsetDrift.of(kerf(10, 3), MeasuringPlane.ENTRY, GROWTH);

        assertThat(entry.timeUntil(millimetres(0.05)).to(Units.HOUR)).isCloseTo(100, within(1e-6));
        assertThat(entry.offsetAfter(hours(40)).si() - kerf(10, 3).offset().si())
                .isCloseTo(20e-6, within(1e-12));
        assertThat(entry.offsetAfter(hours(0))).isEqualTo(kerf(10, 3).offset());
        assertThat(entry.driftAfter(hours(40)).si()).isCloseTo(20e-6, within(1e-12));
        assertThat(entry.driftAfter(hours(40)).standardUncertaintySi()).isCloseTo(0, within(1e-15));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.1, 1.5, 4})
    void wearAtTheExitIsSlowerAndLessCertain(double index) {
        OffsetDrift once = OffsetDrift.of(kerf(10, index), MeasuringPlane.EXIT, GROWTH);
        OffsetDrift twice = OffsetDrift.of(kerf(10, index), MeasuringPlane.EXIT, GROWTH.multiply(2));
        var time = once.timeUntil(millimetres(0.02));

        assertThat(once.driftAfter(time.value()).si()).isCloseTo(2e-5, within(1e-11));
        assertThat(once.driftAfter(time.value()).standardUncertaintySi()).isPositive();
        assertThat(time.to(Units.HOUR)).isGreaterThan(40);
        assertThat(time.standardUncertaintySi()).isPositive();
        // a tube that wears twice as fast takes half of the time, with half of the uncertainty
        assertThat(twice.timeUntil(millimetres(0.02)).si()).isCloseTo(time.si() / 2, within(1e-6 * time.si()));
        assertThat(twice.timeUntil(millimetres(0.02)).standardUncertaintySi())
                .isCloseTo(time.standardUncertaintySi() / 2, within(1e-4 * time.standardUncertaintySi()));
    }

    @Test
    void aDriftIsItsKerfPlaneAndGrowth() {
        OffsetDrift drift = OffsetDrift.of(kerf(10, 3), MeasuringPlane.EXIT, GROWTH);

        ValueContract.of(() -> OffsetDrift.of(kerf(10, 3), MeasuringPlane.EXIT, GROWTH))
                .differs("kerf", OffsetDrift.of(kerf(10, 4), MeasuringPlane.EXIT, GROWTH))
                .differs("plane", OffsetDrift.of(kerf(10, 3), MeasuringPlane.ENTRY, GROWTH))
                .differs("growth", OffsetDrift.of(kerf(10, 3), MeasuringPlane.EXIT, GROWTH.multiply(2)))
                .check();
        assertThat(Refusals.of(() -> drift.driftAfter(hours(-1)))).isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> drift.timeUntil(millimetres(0)))).isEqualTo("must-be-above");
        OffsetDrift closed = OffsetDrift.of(kerf(10, 1), MeasuringPlane.EXIT, GROWTH);
        assertThat(Refusals.of(() -> closed.timeUntil(millimetres(0.05)))).isEqualTo("must-be-above");
    }
}
