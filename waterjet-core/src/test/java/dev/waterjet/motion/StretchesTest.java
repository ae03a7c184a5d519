package dev.waterjet.motion;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a path is cut, what caps each stretch and each node, and how pieces lie. */
class StretchesTest {

    private static final double FREE = Double.POSITIVE_INFINITY;
    private static final DynamicLimits PLAIN =
            new DynamicLimits(AxisLimits.NONE, AxisLimits.NONE, PathLimits.ofAcceleration(1), CornerRule.arc(1e-5));
    private static final DynamicLimits WITH_AXES =
            PLAIN.withAxes(AxisLimits.NONE.withSpeed(0.3), AxisLimits.NONE.withSpeed(0.4));

    private static Stretches of(PathPieces pieces, FeedCaps caps, DynamicLimits limits) {
        return new Stretches(pieces, caps, limits);
    }

    private static double[] starts(Stretches stretches) {
        double[] starts = new double[stretches.count() + 1];
        for (int i = 0; i < starts.length; i++) {
            starts[i] = stretches.startM(i);
        }
        return starts;
    }

    /** Places followed by summing up small steps. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void directionsOfPiecesAreThoseOfTheWay(long seed) {
        Random random = new Random(seed);
        PathPieces pieces = new PathPieces(1);
        double length = 0;
        double[] lengths = new double[20];
        for (int i = 0; i < 20; i++) {
            double heading = 7 * random.nextDouble();
            double tx = Math.cos(heading);
            double ty = Math.sin(heading);
            if (i % 2 == 0) {
                double own = 0.1 + random.nextDouble();
                pieces.line(own * tx, own * ty);
                lengths[i] = own;
                assertThat(pieces.curvature(i)).isZero();
                assertThat(pieces.endDirectionX(i)).isCloseTo(tx, within(1e-12));
                assertThat(pieces.endDirectionY(i)).isCloseTo(ty, within(1e-12));
            } else {
                double radius = 0.1 + random.nextDouble();
                double sweep = 6 * (random.nextDouble() - 0.5);
                pieces.arc(tx, ty, radius, sweep);
                lengths[i] = radius * Math.abs(sweep);
                assertThat(pieces.curvature(i)).isCloseTo(Math.signum(sweep) / radius, within(1e-12));
                assertThat(pieces.endDirectionX(i)).isCloseTo(Math.cos(heading + sweep), within(1e-12));
                assertThat(pieces.endDirectionY(i)).isCloseTo(Math.sin(heading + sweep), within(1e-12));
                double middle = pieces.headingAt(i, length + lengths[i] / 2) - heading - sweep / 2;
                assertThat(Math.sin(middle)).isCloseTo(0, within(1e-12));
                assertThat(Math.cos(middle)).isCloseTo(1, within(1e-12));
            }
            assertThat(pieces.startM(i)).isCloseTo(length, within(1e-12));
            assertThat(pieces.lengthM(i)).isCloseTo(lengths[i], within(1e-12));
            assertThat(pieces.directionX(i)).isCloseTo(tx, within(1e-12));
            assertThat(pieces.directionY(i)).isCloseTo(ty, within(1e-12));
            length += lengths[i];
        }
        assertThat(pieces.lengthM()).isCloseTo(length, within(1e-12));
        assertThat(pieces.count()).isEqualTo(20);
    }

    @Test
    void piecesHaveALength() {
        assertRefused(() -> new PathPieces(1).line(0, 0), "must-be-above");
        assertRefused(() -> new PathPieces(1).arc(1, 0, 0.1, 0), "must-be-above");
        assertRefused(() -> of(new PathPieces(0), FeedCaps.same(1, 0), PLAIN), "must-be-at-least");
    }

    @Test
    void collinearLinesAndArcsOfOneCircleAreOneStretch() {
        PathPieces pieces = new PathPieces(8)
                .line(0.3, 0.4)
                .line(0.6, 0.8)
                .arc(0.6, 0.8, 2, 0.5)
                .arc(Math.cos(Math.atan2(0.8, 0.6) + 0.5), Math.sin(Math.atan2(0.8, 0.6) + 0.5), 2, 0.25);
        Stretches stretches = of(pieces, FeedCaps.same(0.2, 3), PLAIN);

        assertThat(starts(stretches)).containsExactly(new double[] {0, 1.5, 3}, within(1e-12));
        assertThat(stretches.curvature(0)).isZero();
        assertThat(stretches.curvature(1)).isEqualTo(0.5);
        assertThat(stretches.lengthM(1)).isCloseTo(1.5, within(1e-12));
        assertThat(stretches.isTurning(1)).isFalse();
        assertThat(stretches.pointSquare(0)).isZero();
        assertThat(stretches.pointSquare(2)).isZero();
        assertThat(stretches.pointWhy(0)).isEqualTo(GoverningLimit.REST.code());
        assertThat(stretches.pointWhy(2)).isEqualTo(GoverningLimit.REST.code());
    }

    @Test
    void aCapCutsAPieceAndOneWithoutLengthCapsANode() {
        FeedCaps caps = new FeedCaps()
                .until(0.2, 0.1, 1)
                .until(0.5, 0.1, 1)
                .until(0.5, 0.03, 2)
                .until(0.5, 0.05, 9)
                .until(0.7, 0.3, 4)
                .until(1, 0.3, 5);
        Stretches stretches = of(new PathPieces(1).line(1, 0), caps, PLAIN);

        assertThat(starts(stretches)).containsExactly(new double[] {0, 0.5, 0.7, 1}, within(1e-12));
        assertThat(stretches.capSquare(0)).isCloseTo(0.01, within(1e-15));
        assertThat(stretches.capSquare(2)).isCloseTo(0.09, within(1e-15));
        assertThat(new byte[] {stretches.capWhy(0), stretches.capWhy(1), stretches.capWhy(2)})
                .containsExactly(1, 4, 5);
        assertThat(stretches.pointSquare(1)).isCloseTo(0.0009, within(1e-15));
        assertThat(stretches.pointWhy(1)).isEqualTo((byte) 2);
        assertThat(stretches.pointSquare(2)).isInfinite();
        assertThat(stretches.squareAt(0)).isZero();
        assertThat(stretches.squareAt(1)).isCloseTo(0.0009, within(1e-15));
        assertThat(stretches.squareAt(2)).isCloseTo(0.09, within(1e-15));
        assertThat(stretches.squareAt(3)).isZero();
    }

    @Test
    void theNodeBetweenTwoStretchesHasTheLowerCap() {
        FeedCaps caps = new FeedCaps().until(0.5, 0.1, 1).until(0.7, 0.3, 2).until(1, 0.2, 3);
        Stretches stretches = of(new PathPieces(1).line(1, 0), caps, PLAIN);

        assertThat(stretches.squareAt(1)).isCloseTo(0.01, within(1e-15));
        assertThat(stretches.squareAt(2)).isCloseTo(0.04, within(1e-15));
    }

    @Test
    void capsHaveToCoverThePath() {
        PathPieces line = new PathPieces(1).line(1, 0);

        assertRefused(() -> of(line, new FeedCaps(), PLAIN), "must-be-at-least");
        assertRefused(() -> of(line, new FeedCaps().until(0.999, 1, 1), PLAIN), "must-be-at-least");
        assertThat(of(line, new FeedCaps().until(1 - 1e-12, 1, 1), PLAIN).count())
                .isEqualTo(1);
        assertRefused(() -> new FeedCaps().until(1, 0, 1), "must-be-above");
        assertRefused(() -> new FeedCaps().until(1, 1, 1).until(0.9, 1, 1), "must-be-at-least");
        assertRefused(() -> new FeedCaps().until(-1, 1, 1), "must-be-at-least");
        FeedCaps many = new FeedCaps();
        for (int i = 0; i < 20; i++) {
            many.until(i, 1 + i, i);
        }
        assertThat(many.count()).isEqualTo(20);
        assertThat(many.untilM(17)).isEqualTo(17);
        assertThat(many.feedMPerS(17)).isEqualTo(18);
        assertThat(many.code(17)).isEqualTo((byte) 17);
    }

    /** With limits of the axes an arc is cut where one axis stands still. */
    @ParameterizedTest
    @CsvSource({"0.3, 5", "-2.5, 4", "0, 3.2", "1, -5", "0, -3.2", "-3, -1.5", "1.5707963267948966, 6"})
    void arcsAreCutAtQuartersOfATurn(double heading, double sweep) {
        double radius = 0.25;
        PathPieces pieces = new PathPieces(1).arc(Math.cos(heading), Math.sin(heading), radius, sweep);
        Stretches cut = of(pieces, FeedCaps.same(0.2, 1), WITH_AXES);
        Stretches whole = of(pieces, FeedCaps.same(0.2, 1), PLAIN);

        assertThat(whole.count()).isEqualTo(1);
        double low = Math.min(heading, heading + sweep) / (Math.PI / 2);
        double high = Math.max(heading, heading + sweep) / (Math.PI / 2);
        int inside = (int) (Math.ceil(high - 1e-9) - Math.floor(low + 1e-9)) - 1;
        assertThat(cut.count()).isEqualTo(inside + 1);
        for (int i = 1; i < cut.count(); i++) {
            double at = heading + Math.signum(sweep) * cut.startM(i) / radius;
            assertThat(Math.sin(2 * at)).isCloseTo(0, within(1e-9));
            assertThat(cut.pointSquare(i)).isInfinite();
        }
        assertThat(cut.startM(cut.count())).isEqualTo(pieces.lengthM());
        assertThat(cut.isTurning(0)).isTrue();
        assertThat(Math.sin(cut.headingAt(0, 0) - heading)).isCloseTo(0, within(1e-12));
    }

    @Test
    void aStretchIsCappedByTheMachineWhereThatIsSlower() {
        PathLimits path = new PathLimits(1, 0.5, FREE, 20);
        DynamicLimits limits = WITH_AXES.withPath(path);
        PathPieces pieces = new PathPieces(4)
                .line(0.6, 0.8)
                .arc(0.6, 0.8, 0.02, 0.1)
                .line(1, 0)
                .arc(0.6, 0.8, 1e-4, 0.1);
        Stretches fast = of(pieces, FeedCaps.same(2, 7), limits);
        Stretches slow = of(pieces, FeedCaps.same(0.001, 7), limits);

        // 0.3/0.6 = 0.4/0.8, then 0.3/1
        assertThat(fast.capSquare(0)).isCloseTo(0.25, within(1e-12));
        assertThat(fast.capWhy(0)).isEqualTo(GoverningLimit.X_SPEED.code());
        assertThat(fast.capSquare(1)).isCloseTo(0.5 * 0.02, within(1e-12));
        assertThat(fast.capWhy(1)).isEqualTo(GoverningLimit.CENTRIPETAL.code());
        assertThat(fast.capSquare(2)).isCloseTo(0.09, within(1e-12));
        // the jerk of the steady arc: v^3 = j R^2
        int last = fast.count() - 1;
        assertThat(Math.pow(fast.capSquare(last), 1.5)).isCloseTo(20 * 1e-8, within(1e-15));
        assertThat(fast.capWhy(last)).isEqualTo(GoverningLimit.ARC_JERK.code());
        for (int i = 0; i < slow.count(); i++) {
            assertThat(slow.capSquare(i)).isCloseTo(1e-6, within(1e-18));
            assertThat(slow.capWhy(i)).isEqualTo((byte) 7);
        }
    }

    @Test
    void accelerationAndJerkAreThoseOfTheDirection() {
        DynamicLimits limits = new DynamicLimits(
                new AxisLimits(FREE, 2, 30),
                new AxisLimits(FREE, 1, 40),
                new PathLimits(9, FREE, 99, FREE),
                CornerRule.arc(1e-5));
        Stretches stretches = of(new PathPieces(2).line(0.8, 0.6).arc(1, 0, 1, 1), FeedCaps.same(1, 0), limits);

        assertThat(stretches.tangentialAcceleration(0, 0.4)).isCloseTo(1 / 0.6, within(1e-12));
        assertThat(stretches.tangentialJerk(0, 0.4)).isCloseTo(30 / 0.8, within(1e-12));
        for (double along : new double[] {0, 0.3, 0.9}) {
            double byX = 2 / Math.cos(along);
            double byY = 1 / Math.sin(along);
            assertThat(stretches.tangentialAcceleration(1, 1 + along))
                    .isCloseTo(Math.min(9, Math.min(byX, byY)), within(1e-9));
            assertThat(stretches.tangentialJerk(1, 1 + along))
                    .isCloseTo(Math.min(99, Math.min(30 / Math.cos(along), 40 / Math.sin(along))), within(1e-9));
        }
        assertThat(stretches.directionX(0)).isCloseTo(0.8, within(1e-12));
        assertThat(stretches.directionY(0)).isCloseTo(0.6, within(1e-12));
    }

    /** On an arc far smaller than the place on a long path is exact, quarters are passed over. */
    @Test
    void arcsOfNanometresFarAlongAPathEnd() {
        PathPieces pieces = new PathPieces(3).line(100, 0).arc(1, 0, 1e-11, 6).line(1, 0);

        assertThat(of(pieces, FeedCaps.same(1, 0), WITH_AXES).count()).isBetween(3, 8);
    }
}
