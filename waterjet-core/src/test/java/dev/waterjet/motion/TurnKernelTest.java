package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Speeds at corners against the geometry of an arc, and against a pulse of acceleration integrated over small times. */
class TurnKernelTest {

    private static final double FREE = Double.POSITIVE_INFINITY;

    /** Effect of a pulse across a corner that lasts from -h to h and rises and falls at the jerk, up to the acceleration. */
    private record Pulse(double velocityChange, double deviation) {
        static Pulse of(double acceleration, double jerk, double half) {
            int n = 40_000;
            double dt = half / n;
            double velocity = 0;
            double way = 0;
            for (int i = 0; i < n; i++) {
                double fromStart = (i + 0.5) * dt;
                double now = Math.min(acceleration, jerk * Math.min(fromStart, 2 * half - fromStart));
                way += velocity * dt + now * dt * dt / 2;
                velocity += now * dt;
            }
            // relative to the first edge the pulse moves the path sideways by `way` up to the middle
            return new Pulse(2 * velocity, way);
        }
    }

    /** The half duration that gives a speed, with the room and the deviation that it takes. */
    @ParameterizedTest
    @CsvSource({"2, 50, 0.01", "2, 50, 0.03", "2, 50, 0.05", "2, 50, 0.3", "0.5, 3, 0.1", "0.5, 3, 0.2", "0.5, 3, 1.5"})
    void aPulseUsesUpTheDeviationOrTheRoom(double acceleration, double jerk, double half) {
        Pulse pulse = Pulse.of(acceleration, jerk, half);
        for (double turnDeg : new double[] {1, 40, 90, 150, 180}) {
            double sine = Math.sin(Math.toRadians(turnDeg) / 2);
            double speed = pulse.velocityChange / (2 * sine);
            double room = speed * half;

            assertThat(TurnKernel.pulseCornerSpeed(acceleration, jerk, pulse.deviation, FREE, sine))
                    .isCloseTo(speed, within(1e-4 * speed));
            assertThat(TurnKernel.pulseCornerSpeed(acceleration, jerk, FREE, room, sine))
                    .isCloseTo(speed, within(1e-4 * speed));
            assertThat(TurnKernel.pulseCornerSpeed(acceleration, jerk, pulse.deviation, room * 1.1, sine))
                    .isCloseTo(speed, within(1e-4 * speed));
            assertThat(TurnKernel.pulseCornerSpeed(acceleration, jerk, pulse.deviation * 1.1, room, sine))
                    .isCloseTo(speed, within(1e-4 * speed));
            assertThat(TurnKernel.pulseCornerSpeed(acceleration, jerk, pulse.deviation, room * 0.9, sine))
                    .isLessThan(speed * 0.99);
        }
    }

    @Test
    void withoutALimitThePulseIsAParabolaAKinkOrNone() {
        assertThat(TurnKernel.pulseCornerSpeed(FREE, FREE, 1e-5, 1e-3, 0.5)).isInfinite();
        // v = sqrt(2 a e)/sin
        assertThat(TurnKernel.pulseCornerSpeed(2, FREE, 1e-5, FREE, 0.5))
                .isCloseTo(Math.sqrt(2 * 2 * 1e-5) / 0.5, within(1e-12));
        // with the room r: h = r/v and v s = a h
        assertThat(TurnKernel.pulseCornerSpeed(2, FREE, FREE, 1e-3, 0.5))
                .isCloseTo(Math.sqrt(2 * 1e-3 / 0.5), within(1e-12));
        // jerk alone: e = j h^3/6, 2 v s = j h^2
        double half = Math.cbrt(6 * 1e-5 / 40);
        assertThat(TurnKernel.pulseCornerSpeed(FREE, 40, 1e-5, FREE, 0.5)).isCloseTo(40 * half * half, within(1e-12));
        // v h = r and 2 v s = j h^2
        half = Math.cbrt(2 * 0.5 * 1e-3 / 40);
        assertThat(TurnKernel.pulseCornerSpeed(FREE, 40, FREE, 1e-3, 0.5)).isCloseTo(1e-3 / half, within(1e-12));
    }

    @Test
    void thePulseChangesSmoothlyWhereItReachesTheAcceleration() {
        double rise = 2.0 / 50;
        double deviation = 2 * rise * rise / 6;
        double room = 2 * rise * rise / 2;
        for (double by : new double[] {1 - 1e-9, 1, 1 + 1e-9}) {
            assertThat(TurnKernel.pulseCornerSpeed(2, 50, deviation * by, FREE, 1))
                    .isCloseTo(2 * rise / 2, within(1e-8));
            assertThat(TurnKernel.pulseCornerSpeed(2, 50, FREE, room * by, 1)).isCloseTo(2 * rise / 2, within(1e-8));
        }
    }

    /** The arc touches both edges; its middle is the deviation off the corner, its ends the tangent length. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.5, 1.2, Math.PI / 2, 2.5, 3})
    void anArcKeepsDeviationAndRoom(double turn) {
        double radius = 0.003;
        double tangent = radius * Math.tan(turn / 2);
        double deviation = Math.hypot(radius, tangent) - radius;
        double speed = Math.sqrt(1.7 * radius);
        double sine = Math.sin(turn / 2);
        double cosine = Math.cos(turn / 2);

        assertThat(TurnKernel.arcCornerSpeed(1.7, deviation, FREE, sine, cosine))
                .isCloseTo(speed, within(1e-9));
        assertThat(TurnKernel.arcCornerSpeed(1.7, FREE, tangent, sine, cosine)).isCloseTo(speed, within(1e-9));
        assertThat(TurnKernel.arcCornerSpeed(1.7, deviation * 2, tangent, sine, cosine))
                .isCloseTo(speed, within(1e-9));
        assertThat(TurnKernel.arcCornerSpeed(1.7, deviation, tangent * 2, sine, cosine))
                .isCloseTo(speed, within(1e-9));
    }

    @Test
    void aJumpIsKeptByBothAxes() {
        assertThat(TurnKernel.jumpCornerSpeed(0.02, 0.03, -0.5, 0.1)).isCloseTo(0.04, within(1e-15));
        assertThat(TurnKernel.jumpCornerSpeed(0.02, 0.03, 0.1, -0.5)).isCloseTo(0.06, within(1e-15));
        assertThat(TurnKernel.jumpCornerSpeed(0.02, 0.03, 0, 0.5)).isCloseTo(0.06, within(1e-15));
    }

    /** On a circle the acceleration v^2/R turns at the rate v/R. */
    @Test
    void aSteadyArcHasTheJerkOfItsTurningAcceleration() {
        double speed = TurnKernel.steadyArcSpeed(30, -1 / 0.02);

        assertThat(speed * speed / 0.02 * speed / 0.02).isCloseTo(30, within(1e-9));
    }

    /** The lateral offset y'' = dk s/L between two halves of a transition, integrated over small lengths. */
    @Test
    void aJumpOfTheCurvatureIsSpreadOverATransition() {
        double change = 80;
        double length = 0.004;
        int n = 4000;
        double ds = length / n;
        double slope = 0;
        double offset = 0;
        for (int i = 0; i < n; i++) {
            // transition less the jump in its middle
            double s = (i + 0.5) * ds;
            double curvature = change * (s / length - (s > length / 2 ? 1 : 0));
            offset += slope * ds;
            slope += curvature * ds;
        }
        // the curves before and behind are shifted against one another by L^2 dk/24
        assertThat(Math.abs(offset)).isCloseTo(length * length * change / 24, within(1e-3 * Math.abs(offset)));
        double speed = TurnKernel.curvatureJumpSpeed(30, Math.abs(offset), change, FREE);
        assertThat(speed * speed * speed * change / length).isCloseTo(30, within(0.05));
        assertThat(TurnKernel.curvatureJumpSpeed(30, 1, change, length))
                .isCloseTo(Math.cbrt(30 * length / change), within(1e-12));
        assertThat(TurnKernel.curvatureJumpSpeed(30, 1e-5, change, FREE))
                .isCloseTo(Math.cbrt(30 * Math.sqrt(24e-5 / change) / change), within(1e-12));
    }
}
