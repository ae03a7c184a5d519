package dev.waterjet.sheet;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import org.junit.jupiter.api.Test;

class SlatsTest {

    private static final Slats SLATS = Slats.of(millimetres(50), millimetres(4));

    private static Part strip(double width, double height) {
        return Part.of(Contour.rectangle(
                Point.millimetres(0, 0), Point.millimetres(width, height), EdgeRequirement.defaults()));
    }

    private static Part disc(double radius) {
        return Part.of(Contour.circle(Point.millimetres(0, 0), millimetres(radius), EdgeRequirement.defaults()));
    }

    @Test
    void values() {
        ValueContract.of(() -> SLATS)
                .differs("pitch", Slats.of(millimetres(40), millimetres(4)))
                .differs("thickness", Slats.of(millimetres(50), millimetres(5)))
                .differs("direction", SLATS.withDirection(degrees(0)))
                .prints("slats every 50 mm")
                .check();
        assertThatExceptionOfType(DomainException.class).isThrownBy(() -> Slats.of(millimetres(4), millimetres(4)));
        assertThatExceptionOfType(DomainException.class).isThrownBy(() -> Slats.of(millimetres(0), millimetres(0)));
        assertThatExceptionOfType(DomainException.class).isThrownBy(() -> Slats.of(millimetres(4), millimetres(-1)));
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> SLATS.withDirection(Kind.ANGLE.of(Double.POSITIVE_INFINITY)));
    }

    @Test
    void partsFallTipOrRest() {
        assertThat(SLATS.check(strip(40, 300)).code()).isEqualTo("slats-fall");
        assertThat(SLATS.check(strip(40, 300)).remedies())
                .anyMatch(remedy -> remedy.code().equals("rotate-part"));
        assertThat(SLATS.check(strip(80, 300)).code()).isEqualTo("slats-tip");
        assertThat(SLATS.check(strip(101, 30)).code()).isEqualTo("slats-rest");
        assertThat(SLATS.withDirection(degrees(0)).check(strip(101, 30)).code()).isEqualTo("slats-fall");
        assertThat(SLATS.suggestRotation(disc(10))).isEmpty();
    }

    /** A slat of 4 mm every 50 mm leaves gaps of 46 mm: what extends that far to both sides lies on a slat on both. */
    @Test
    void theGapDecidesNotThePitch() {
        assertThat(SLATS.check(disc(45.9)).isSatisfied()).isFalse();
        assertThat(SLATS.check(disc(46.1)).isSatisfied()).isTrue();
        Finding narrow = SLATS.check(strip(45.9, 300));
        assertThat(narrow.code()).isEqualTo("slats-fall");
        assertThat(narrow.message().parameters()).containsEntry("gap_m", 0.05 - 0.004);
        assertThat(SLATS.check(strip(46.1, 300)).code()).isEqualTo("slats-tip");
    }

    /** Where a part lies on the sheet does not change whether the slats bear it. */
    @Test
    void slatsBearAPartWhereverItLiesAndTurns() {
        for (Point by : new Point[] {Point.ofSi(0, 0), Point.ofSi(7, -3), Point.ofSi(-2, 9)}) {
            Part part = strip(80, 300).translatedBy(by);

            assertThat(SLATS.check(part).code()).isEqualTo("slats-tip");
            assertThat((double) java.util.Objects.requireNonNull(
                            SLATS.check(part).message().parameters().get("reach_m")))
                    .isCloseTo(0.04, within(1e-12));
            assertThat(SLATS.withDirection(degrees(0)).check(part).isSatisfied())
                    .isTrue();
            // turned by t the half width across is 40 cos t + 150 sin t: 5 degrees give 52.9 mm
            assertThat(Kind.ANGLE.si(SLATS.suggestRotation(part).orElseThrow()))
                    .isCloseTo(Math.toRadians(5), within(1e-12));
        }
    }

    /** A gap of 3 / 64 m between slats along x; sizes in powers of two of a metre, so that they meet the gap in doubles. */
    @Test
    void anExtentOfJustTheGapNeitherFallsNorTips() {
        Slats slats =
                Slats.of(Kind.LENGTH.of(4.0 / 64), Kind.LENGTH.of(1.0 / 64)).withDirection(degrees(0));

        assertThat(slats.check(across(3.0 / 64)).code()).isEqualTo("slats-tip");
        assertThat(slats.check(across(6.0 / 64)).code()).isEqualTo("slats-rest");
        assertThat(slats.suggestRotation(across(6.0 / 64)).map(Kind.ANGLE::si)).contains(0.0);
    }

    private static Part across(double heightM) {
        return Part.of(Contour.rectangle(Point.ofSi(0, 0), Point.ofSi(1, heightM), EdgeRequirement.defaults()));
    }

    /**
     * A strip of 60 mm by 300 mm reaches 30 cos t + 150 sin t across the slats when it leans by t, the gap of 46 mm from 6.2
     * degrees. One that leans clockwise by 4 degrees leans by 1, 6 and 11 after turns by 5, 10 and 15.
     */
    @Test
    void aTurnIsCounterClockwise() {
        Part leaning = Part.of(strip(60, 300).outline().rotatedBy(degrees(-4)));

        double turn = Kind.ANGLE.si(SLATS.suggestRotation(leaning).orElseThrow());

        assertThat(turn).isCloseTo(Math.toRadians(15), within(1e-12));
        Part turned = Part.of(leaning.outline().rotatedBy(Kind.ANGLE.of(turn)));
        assertThat(SLATS.check(turned).isSatisfied()).isTrue();
    }
}
