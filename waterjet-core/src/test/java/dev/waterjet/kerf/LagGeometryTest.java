package dev.waterjet.kerf;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LagGeometryTest {

    /** R = 4 mm, L = 3 mm: the hypotenuse is 5 mm. */
    @Test
    void theTangentSwingsWideByTheHypotenuseLessTheRadius() {
        assertThat(LagGeometry.TANGENT.arcErrorSi(0.003, 0.004)).isCloseTo(0.001, within(1e-18));
        assertThat(LagGeometry.TANGENT.arcLagSi(0.001, 0.004)).isCloseTo(0.003, within(1e-18));
        assertThat(LagGeometry.TANGENT
                        .allowedLag(millimetres(4), millimetres(1))
                        .map(Kind.LENGTH::si))
                .hasValueSatisfying(lag -> assertThat(lag).isCloseTo(0.003, within(1e-15)));
    }

    @Property(tries = 200, seed = "7")
    void allowedLagIsTheInverseOfTheError(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 500) double radiusMm,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.9) double errorOverRadius) {
        double radius = radiusMm / 1000;
        double error = errorOverRadius * radius;

        for (LagGeometry geometry : new LagGeometry[] {LagGeometry.TANGENT, LagGeometry.TRACTRIX}) {
            assertThat(geometry.arcErrorSi(geometry.arcLagSi(error, radius), radius))
                    .isCloseTo(error, within(1e-12));
        }
    }

    @Test
    void aSmallLagKeepsItsDigitsOnALargeArc() {
        // e = L^2 / 2R to first order
        assertThat(LagGeometry.TANGENT.arcErrorSi(1e-6, 1)).isCloseTo(5e-13, within(1e-24));
        assertThat(LagGeometry.TRACTRIX.arcErrorSi(1e-6, 1)).isCloseTo(5e-13, within(1e-24));
    }

    @Test
    void aTractrixIsNoLongerThanTheRadius() {
        assertThat(LagGeometry.TRACTRIX.arcErrorSi(2, 1)).isEqualTo(1);
        assertThat(LagGeometry.TRACTRIX.arcErrorSi(1, 1)).isEqualTo(1);
        assertThat(LagGeometry.TRACTRIX.arcLagSi(1, 1)).isInfinite();
        assertThat(LagGeometry.TRACTRIX.arcLagSi(Math.nextDown(1.0), 1)).isCloseTo(1, within(1e-9));
        assertThat(LagGeometry.TRACTRIX.allowedLag(millimetres(5), millimetres(5)))
                .isEmpty();
    }

    @Test
    void aFrontThatFollowsThePathMissesNothing() {
        assertThat(LagGeometry.FOLLOWING.arcErrorSi(0.003, 0.004)).isZero();
        assertThat(LagGeometry.FOLLOWING.cornerErrorSi(0.003, 1)).isZero();
        assertThat(LagGeometry.FOLLOWING.allowedLag(millimetres(5), millimetres(0.1)))
                .isEmpty();
    }

    @Test
    void theTangentPassesACornerByTheSineAndFromARightAngleOnByTheWholeLag() {
        assertThat(LagGeometry.TANGENT.cornerErrorSi(0.002, Math.toRadians(30))).isCloseTo(0.001, within(1e-18));
        assertThat(LagGeometry.TANGENT.cornerErrorSi(0.002, Math.toRadians(90))).isEqualTo(0.002);
        assertThat(LagGeometry.TANGENT.cornerErrorSi(0.002, Math.toRadians(150)))
                .isEqualTo(0.002);
    }

    /** The path on which the exit is drawn round a corner is a tractrix; here it is stepped along by Euler's rule. */
    @Test
    void theDistanceFromACornerAgreesWithTheTractrixStepByStep() {
        for (double turn : new double[] {30, 60, 90, 100, 135, 170}) {
            double lag = 1;
            double x = -lag * Math.cos(Math.toRadians(turn));
            double y = -lag * Math.sin(Math.toRadians(turn));
            double nearest = lag;
            double step = 1e-5;
            for (double head = step; head < 5; head += step) {
                double distance = Math.hypot(head - x, y);
                x = head - (head - x) / distance * lag;
                y = y / distance * lag;
                nearest = Math.min(nearest, Math.hypot(x, y));
            }
            assertThat(LagGeometry.TRACTRIX.cornerErrorSi(lag, Math.toRadians(turn)))
                    .isCloseTo(nearest, within(2e-4));
        }
        assertThat(LagGeometry.TRACTRIX.cornerErrorSi(2, Math.PI)).isEqualTo(2);
    }

    /**
     * In the tractrix geometry the bottom cuts an outside corner off by less than half of what an inside corner is taken to
     * lose in the tangent geometry, up to a right angle: the path is followed step by step.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1, 10, 30, 45, 60, 75, 90})
    void aTractrixCutsOffLessThanHalf(double degrees) {
        double turn = Math.toRadians(degrees);
        double lost = cutOff(turn);
        double taken = LagGeometry.TANGENT.cornerErrorSi(1, turn);

        assertThat(lost).isBetween(0.36 * taken, 0.5 * taken);
        if (degrees == 1) {
            assertThat(lost).isCloseTo(Math.sin(turn) / Math.E, within(1e-3 * taken));
        }
        if (degrees == 90) {
            assertThat(lost).isCloseTo(0.48, within(5e-3));
        }
    }

    /** Distance of a lag of 1 from both edges; the new edge runs along x, the old one ends at the origin. */
    private static double cutOff(double turn) {
        double x = -Math.cos(turn);
        double y = -Math.sin(turn);
        int steps = 20_000;
        double worst = 0;
        for (int i = 1; i <= steps; i++) {
            double head = 6.0 * i / steps;
            double apart = Math.hypot(head - x, y);
            x += (head - x) * (1 - 1 / apart);
            y -= y * (1 - 1 / apart);
            double along = x * Math.cos(turn) + y * Math.sin(turn);
            double fromOld = along < 0 ? Math.abs(y * Math.cos(turn) - x * Math.sin(turn)) : Math.hypot(x, y);
            double fromNew = x > 0 ? -y : Math.hypot(x, y);
            worst = Math.max(worst, Math.min(fromOld, fromNew));
        }
        return worst;
    }

    @Test
    void lengthsOfAnArcAreAboveZero() {
        assertThat(Refusals.of(() -> LagGeometry.TANGENT.allowedLag(millimetres(0), millimetres(1))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> LagGeometry.TANGENT.allowedLag(millimetres(1), millimetres(0))))
                .isEqualTo("must-be-above");
        assertThat(Arrays.stream(LagGeometry.values()).map(LagGeometry::label))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
    }
}
