package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Speeds over joints, by each rule of a control, with the directions of the corner written out. */
class TurnLimitsTest {

    private static final double FREE = Double.POSITIVE_INFINITY;
    private static final double DEVIATION = 2e-5;

    private static DynamicLimits limits(CornerRule rule) {
        return new DynamicLimits(
                new AxisLimits(1, 2, 60), new AxisLimits(1, 3, 50), new PathLimits(1.5, 2.2, 90, 55), rule);
    }

    /** A line of 30 mm in one direction and one of 50 mm in another. */
    private static TurnLimits corner(double from, double turn, CornerRule rule, double fastest) {
        double to = from + turn;
        PathPieces pieces = new PathPieces(2)
                .line(0.03 * Math.cos(from), 0.03 * Math.sin(from))
                .line(0.05 * Math.cos(to), 0.05 * Math.sin(to));
        TurnLimits limits = new TurnLimits(pieces, limits(rule));
        limits.at(1, fastest);
        return limits;
    }

    /** Acceleration along the bisector of a corner. */
    private static double acceleration(double from, double turn) {
        double bisector = from + turn / 2 + Math.PI / 2;
        return Math.min(2.2, Math.min(2 / Math.abs(Math.cos(bisector)), 3 / Math.abs(Math.sin(bisector))));
    }

    private static double jerk(double angle) {
        return Math.min(55, Math.min(60 / Math.abs(Math.cos(angle)), 50 / Math.abs(Math.sin(angle))));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.4, -0.4, 1.5707, -2, 2.9})
    void eachRuleTakesTheLimitsAlongTheBisector(double turn) {
        double sine = Math.sin(Math.abs(turn) / 2);
        double cosine = Math.cos(turn / 2);
        double room = 0.015;
        for (double from : new double[] {0.2, 1.3, 4}) {
            double a = acceleration(from, turn);
            double arc = TurnKernel.arcCornerSpeed(a, DEVIATION, room, sine, cosine);
            assertThat(corner(from, turn, CornerRule.arc(DEVIATION), 9).speed()).isCloseTo(arc, within(1e-9));
            double j = jerk(from + turn / 2 + Math.PI / 2);
            assertThat(corner(from, turn, CornerRule.pulse(DEVIATION), 9).speed())
                    .isCloseTo(TurnKernel.pulseCornerSpeed(a, j, DEVIATION, room, sine), within(1e-9));
            double dx = Math.abs(Math.cos(from + turn) - Math.cos(from));
            double dy = Math.abs(Math.sin(from + turn) - Math.sin(from));
            assertThat(corner(from, turn, CornerRule.jump(DEVIATION, 0.02, 0.03), 9)
                            .speed())
                    .isCloseTo(Math.min(0.02 / dx, 0.03 / dy), within(1e-9));
            double rounded = TurnKernel.arcCornerSpeed(Math.min(a, 1.5), DEVIATION, room, sine, cosine);
            assertThat(corner(from, turn, CornerRule.stop(DEVIATION), rounded * 1.001)
                            .speed())
                    .isZero();
            assertThat(corner(from, turn, CornerRule.stop(DEVIATION), rounded * 0.999)
                            .speed())
                    .isInfinite();
            assertThat(corner(from, turn, CornerRule.arc(DEVIATION), 9).limit()).isEqualTo(GoverningLimit.CORNER);
            assertThat(corner(from, turn, CornerRule.arc(DEVIATION), 9).isSmooth())
                    .isFalse();
        }
    }

    @Test
    void aReversalIsATurn() {
        assertThat(corner(0, Math.PI, CornerRule.arc(DEVIATION), 9).speed()).isCloseTo(0, within(1e-6));
        assertThat(corner(0, Math.PI, CornerRule.arc(DEVIATION), 9).isSmooth()).isFalse();
        assertThat(corner(0, Math.PI, CornerRule.jump(DEVIATION, 0.02, 0.03), 9).speed())
                .isCloseTo(0.01, within(1e-9));
    }

    @Test
    void aTurnOfRoundingIsNone() {
        assertThat(corner(0.3, 5e-10, CornerRule.arc(DEVIATION), 9).isSmooth()).isTrue();
        assertThat(corner(0.3, 5e-10, CornerRule.arc(DEVIATION), 9).speed()).isInfinite();
        assertThat(corner(0.3, 2e-9, CornerRule.arc(DEVIATION), 9).isSmooth()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 1.3, 4})
    void aJumpOfTheCurvatureTakesTheJerkAcrossThePath(double heading) {
        double tx = Math.cos(heading);
        double ty = Math.sin(heading);
        PathPieces pieces = new PathPieces(3)
                .line(0.03 * tx, 0.03 * ty)
                .arc(tx, ty, 0.02, 1)
                .arc(Math.cos(heading + 1), Math.sin(heading + 1), 0.02, -1);
        TurnLimits turns = new TurnLimits(pieces, limits(CornerRule.arc(DEVIATION)));

        turns.at(1, 9);
        double j = jerk(heading + Math.PI / 2);
        assertThat(turns.speed()).isCloseTo(TurnKernel.curvatureJumpSpeed(j, DEVIATION, 50, 0.02), within(1e-9));
        assertThat(turns.limit()).isEqualTo(GoverningLimit.CURVATURE_JUMP);
        assertThat(turns.isSmooth()).isFalse();
        turns.at(2, 9);
        double other = jerk(heading + 1 + Math.PI / 2);
        assertThat(turns.speed()).isCloseTo(TurnKernel.curvatureJumpSpeed(other, DEVIATION, 100, 0.02), within(1e-9));
    }

    @Test
    void aShortNeighbourShortensTheTransitionAndTheRoom() {
        PathPieces pieces =
                new PathPieces(3).line(1e-4, 0).arc(1, 0, 0.02, 1).line(1e-4 * Math.cos(2.5), 1e-4 * Math.sin(2.5));
        DynamicLimits large =
                new DynamicLimits(AxisLimits.NONE, AxisLimits.NONE, new PathLimits(1, 1, FREE, 40), CornerRule.arc(1));
        TurnLimits turns = new TurnLimits(pieces, large);
        turns.at(1, 9);
        assertThat(turns.speed()).isCloseTo(Math.cbrt(40 * 1e-4 / 50), within(1e-12));

        // a corner with a jump of the curvature: the slower one rules
        turns.at(2, 9);
        double byJump = Math.cbrt(40 * 1e-4 / 50);
        double byCorner = TurnKernel.arcCornerSpeed(1, 1, 5e-5, Math.sin(0.75), Math.cos(0.75));
        assertThat(byCorner).isLessThan(byJump);
        assertThat(turns.speed()).isCloseTo(byCorner, within(1e-12));
        assertThat(turns.limit()).isEqualTo(GoverningLimit.CORNER);
    }
}
