package dev.waterjet.kerf;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class HeadTiltTest {

    private static Vector3D axis(HeadTilt tilt) {
        return new Vector3D(tilt.axisX(), tilt.axisY(), tilt.axisZ());
    }

    private static Vector3D turned(Vector3D vector, Vector3D about, double angle) {
        return new Rotation(about, angle, RotationConvention.VECTOR_OPERATOR).applyTo(vector);
    }

    @Property(tries = 300, seed = "71")
    void theAxisHasTheLengthOne(
            @ForAll @DoubleRange(min = -2, max = 2) double x, @ForAll @DoubleRange(min = -2, max = 2) double y) {
        assertThat(axis(HeadTilt.ofSi(x, y)).getNorm()).isCloseTo(1, within(1e-15));
    }

    @Property(tries = 300, seed = "72")
    void theRotationsOfAGimbalTurnTheVerticalIntoTheAxis(
            @ForAll @DoubleRange(min = -2, max = 2) double x, @ForAll @DoubleRange(min = -2, max = 2) double y) {
        HeadTilt tilt = HeadTilt.ofSi(x, y);
        Vector3D byB = turned(Vector3D.PLUS_K, Vector3D.PLUS_J, Kind.ANGLE.si(tilt.gimbalB()));
        Vector3D byBoth = turned(byB, Vector3D.PLUS_I, Kind.ANGLE.si(tilt.gimbalA()));

        assertThat(byBoth.distance(axis(tilt))).isLessThan(1e-14);
    }

    @Property(tries = 300, seed = "73")
    void theRotationsOfAForkTurnTheVerticalIntoTheAxis(
            @ForAll @DoubleRange(min = -2, max = 2) double x, @ForAll @DoubleRange(min = 0.01, max = 2) double y) {
        HeadTilt tilt = HeadTilt.ofSi(x, y);
        Vector3D leaning = turned(Vector3D.PLUS_K, Vector3D.PLUS_J, Kind.ANGLE.si(tilt.inclination()));
        Vector3D byBoth =
                turned(leaning, Vector3D.PLUS_K, Kind.ANGLE.si(tilt.forkC().orElseThrow()));

        assertThat(byBoth.distance(axis(tilt))).isLessThan(1e-14);
    }

    @Test
    void anUprightHeadHasNoAzimuth() {
        assertThat(HeadTilt.upright().azimuth()).isEmpty();
    }

    @Test
    void aSideTiltMovesTheJetTowardsThePart() {
        HeadTilt tilt = HeadTilt.along(degrees(2), degrees(0), 1, 0, Side.LEFT);

        assertThat(tilt.displacementY()).isCloseTo(Math.tan(Math.toRadians(2)), within(1e-15));
    }

    @Test
    void aLeadMovesTheJetForward() {
        HeadTilt tilt = HeadTilt.along(degrees(0), degrees(3), 0, 1, Side.RIGHT);

        assertThat(tilt.displacementY()).isCloseTo(Math.tan(Math.toRadians(3)), within(1e-15));
    }

    @Test
    void aHeadThatLeansToTheSideHasItsTipThere() {
        HeadTilt tilt = HeadTilt.along(degrees(5), degrees(0), 1, 0, Side.LEFT);

        Point tip = tilt.pointOnAxis(Point.millimetres(10, 10), millimetres(2));

        assertThat(tip.ySi()).isCloseTo(0.010 - 0.002 * Math.sin(Math.toRadians(5)), within(1e-15));
    }

    @Property(tries = 100, seed = "74")
    void aLimitKeepsTheDirectionOfTheLean(
            @ForAll @DoubleRange(min = -2, max = 2) double x, @ForAll @DoubleRange(min = 0.2, max = 2) double y) {
        HeadTilt tilt = HeadTilt.ofSi(x, y);
        HeadTilt limited = tilt.within(degrees(5));

        assertThat(Math.toDegrees(Kind.ANGLE.si(limited.inclination()))).isCloseTo(5, within(1e-12));
        assertThat(Kind.ANGLE.si(limited.azimuth().orElseThrow()))
                .isCloseTo(Kind.ANGLE.si(tilt.azimuth().orElseThrow()), within(1e-12));
    }

    @Property(tries = 100, seed = "75")
    void theResidualLagIsThatOfAScanOverTheDepth(@ForAll @DoubleRange(min = 0, max = 2) double lead) {
        double most = 0;
        for (int i = 0; i <= 20_000; i++) {
            double z = i / 20_000.0;
            most = Math.max(most, Math.abs(z * z - lead * z));
        }

        assertThat(HeadTilt.residualLagSi(1, lead)).isCloseTo(most, within(1e-8));
    }

    @Test
    void theBestLeadLeavesAsMuchAtTheExitAsWithin() {
        double a = HeadTilt.MINIMAX_LEAD;

        assertThat(1 - a).isCloseTo(a * a / 4, within(1e-15));
        assertThat(HeadTilt.residualLagSi(1, a)).isCloseTo(3 - 2 * Math.sqrt(2), within(1e-15));
    }
}
