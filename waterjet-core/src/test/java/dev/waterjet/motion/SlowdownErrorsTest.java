package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.reference.CornerCase;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Errors of a slowdown against doses summed up along the pass, and feeds against a search through many of them. */
class SlowdownErrorsTest {

    private static final double THICKNESS = 0.025;
    private static final KerfProfile PROFILE = CornerCase.profile(THICKNESS);
    private static final CutFront FRONT = PROFILE.front();
    private static final double SEPARATION = FRONT.separationFeedSi(THICKNESS);
    private static final double SIGMA = PROFILE.spreadSi();
    private static final double RADIUS = PROFILE.jetRadiusSi(THICKNESS);

    private static double straight(double index) {
        return FRONT.separationFeedSi(index * THICKNESS);
    }

    private static SlowdownErrors errors(double index) {
        return new SlowdownErrors(PROFILE, straight(index), RemainingLag.upright(FRONT));
    }

    /** Dose in the middle of a pass from -a to a at one feed, between passes at another, over that of a straight pass of 1 m/s. */
    private static double dose(double slow, double fast, double a) {
        int n = 40_000;
        double reach = 10 * SIGMA;
        double step = 2 * reach / n;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double x = -reach + (i + 0.5) * step;
            sum += Math.exp(-x * x / (2 * SIGMA * SIGMA)) / (Math.abs(x) < a ? slow : fast);
        }
        return sum * step / (SIGMA * Math.sqrt(2 * Math.PI));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 1, 3, 40})
    void theEffectiveFeedLeavesTheDoseOfTheZone(double spreads) {
        double fast = straight(3);
        for (double ratio : new double[] {0.05, 0.5, 0.99}) {
            assertThat(1 / errors(3).effectiveFeed(ratio * fast, spreads * SIGMA))
                    .isCloseTo(dose(ratio * fast, fast, spreads * SIGMA), within(1e-3 / fast));
        }
    }

    /** The kerf grows most at one of nine depths from a fiftieth of the thickness to all of it. */
    @ParameterizedTest
    @CsvSource({"0.1, 0.001", "0.5, 0.01", "0.9, 0.0003", "0.05, 0.1"})
    void theGrowthIsTheLargestOverTheDepths(double ratio, double zone) {
        double fast = straight(3);
        double slow = errors(3).effectiveFeed(ratio * fast, zone);
        double most = 0;
        for (int i = 0; i < 9; i++) {
            double depth = THICKNESS * (0.02 + 0.98 * i / 8);
            most = Math.max(most, PROFILE.halfWidthSi(depth, slow) - PROFILE.halfWidthSi(depth, fast));
        }
        assertThat(errors(3).growth(ratio * fast, zone)).isCloseTo(most, within(1e-12));
        assertThat(errors(3).growthAtCorner(ratio * fast))
                .isCloseTo(errors(3).growth(ratio * fast, FRONT.exitLagSi(ratio * fast)), within(1e-15));
        assertThat(errors(3).growth(fast, zone)).isZero();
        assertThat(errors(3).growth(2 * fast, zone)).isZero();
    }

    /** Share of the dose of an endless pass, left at a place x beyond the end of one of a length. */
    private static double share(double x, double length) {
        double scale = SIGMA * Math.sqrt(2);
        return (Erf.erf((x + length) / scale) - Erf.erf(x / scale)) / 2;
    }

    @ParameterizedTest
    @CsvSource({"0.1, 1", "0.3, 1", "0.49, 1", "0.6, 1", "0.9, 1", "0.99, 1", "0.3, 0.002", "0.6, 0.002", "0.3, 0.0004"
    })
    void theReachIsWhereTheDoseSeparatesTheBottom(double ratio, double length) {
        double feed = ratio * SEPARATION;
        double found = errors(3).reach(feed, length);
        double low = -length / 2;
        double high = 20 * SIGMA;
        assertThat(share(low, length)).isGreaterThan(ratio);
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            low = share(middle, length) > ratio ? middle : low;
            high = share(middle, length) > ratio ? high : middle;
        }
        double expected = low > 0 ? KerfProfile.smoothMinimumSi(low, RADIUS) : low;
        assertThat(found).isCloseTo(expected, within(1e-9));
        assertThat(found > 0).isEqualTo(share(0, length) > ratio);
    }

    @Test
    void aPassThatDoesNotSeparateReachesToItsMiddle() {
        assertThat(errors(3).reach(1.01 * SEPARATION, 0.004)).isEqualTo(-0.002);
        assertThat(errors(3).reach(SEPARATION * share(-0.0001, 0.0002) * 1.01, 0.0002))
                .isEqualTo(-0.0001);
        // in the middle of a long pass the dose counts as whole; the end is sought within twelve spreads
        assertThat(errors(3).reach(SEPARATION * (1 - 1e-15), 1)).isBetween(-12 * SIGMA * (1 + 1e-12), -5 * SIGMA);
    }

    /** The new pass starts one lag behind the corner on the new edge; its rim is where the dose separates the bottom. */
    @ParameterizedTest
    @CsvSource({"0.2, 0.3", "0.5, 0.3", "0.3, 1", "0.6, 1", "0.3, 1.5", "0.1, 0.05", "0.9, 1.2"})
    void theNotchIsTheFarthestPointOfTheRimPastTheOldWall(double ratio, double turn) {
        SlowdownErrors errors = errors(1 / ratio * 0.9);
        double feed = ratio * SEPARATION * 0.999;
        double lag = FRONT.exitLagSi(feed);
        double length = feed < straight(1 / ratio * 0.9) ? 2 * lag : 1;
        double reach = Math.max(0, errors.reach(feed, length));
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= 4000; i++) {
            double along = -reach + (reach + 3 * SIGMA) * i / 4000;
            double dose = (Erf.erf(along / (SIGMA * Math.sqrt(2))) + Erf.erf((length - along) / (SIGMA * Math.sqrt(2))))
                    / 2
                    * SEPARATION
                    / feed;
            double before = Math.min(along, 0);
            double distance = dose > 0 ? 2 * SIGMA * SIGMA * Math.log(dose) + before * before : 0;
            double rim = distance > 0 ? KerfProfile.smoothMinimumSi(Math.sqrt(distance), RADIUS) : 0;
            double halfWidth = Math.sqrt(Math.max(0, rim * rim - before * before));
            most = Math.max(most, (lag - along) * Math.sin(turn) + halfWidth * Math.cos(turn));
        }
        double expected = most - PROFILE.halfWidthSi(THICKNESS, straight(1 / ratio * 0.9));
        assertThat(errors.notch(feed, turn)).isBetween(expected - 0.01 * RADIUS, expected + 1e-9);
    }

    @Test
    void fromARightAngleOnTheNotchIsLagAndReachLessTheHalfWidth() {
        SlowdownErrors errors = errors(3);
        for (double ratio : new double[] {0.2, 0.7, 1}) {
            double feed = ratio * straight(3);
            double length = ratio < 1 ? 2 * FRONT.exitLagSi(feed) : 1;
            double expected =
                    FRONT.exitLagSi(feed) + errors.reach(feed, length) - PROFILE.halfWidthSi(THICKNESS, straight(3));
            for (double turn : new double[] {Math.PI / 2, 2, Math.PI}) {
                assertThat(errors.notch(feed, turn)).isCloseTo(expected, within(1e-15));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.2, 0.8, 1})
    void eachGeometryHasItsErrors(double ratio) {
        SlowdownErrors errors = errors(3);
        double feed = ratio * straight(3);
        double lag = FRONT.exitLagSi(feed);
        double growth = errors.growthAtCorner(feed);
        double turn = 1.1;
        double factor = TractrixCorner.factor(turn);
        assertThat(errors.insideCorner(turn, LagGeometry.TANGENT).applyAsDouble(feed))
                .isEqualTo(Math.max(errors.notch(feed, turn), growth));
        assertThat(errors.insideCorner(turn, LagGeometry.TRACTRIX).applyAsDouble(feed))
                .isEqualTo(Math.max(factor * lag, growth));
        assertThat(errors.insideCorner(turn, LagGeometry.FOLLOWING).applyAsDouble(feed))
                .isEqualTo(growth);
        assertThat(errors.outsideCorner(turn, LagGeometry.TRACTRIX).applyAsDouble(feed))
                .isCloseTo(factor * lag + growth, within(1e-15));
        assertThat(errors.outsideCorner(turn, LagGeometry.TANGENT).applyAsDouble(feed))
                .isEqualTo(growth);
        for (LagGeometry geometry : LagGeometry.values()) {
            for (double length : new double[] {1e-4, 4e-4, 0.01}) {
                assertThat(errors.arc(feed, 0.006, length, geometry))
                        .isCloseTo(
                                geometry.arcErrorSi(lag, 0.006) + errors.growth(feed, lag + length / 2), within(1e-15));
            }
        }
        double excess = feed * Math.hypot(1, lag / 0.006) - SEPARATION;
        assertThat(errors.excessOnArc(feed, 0.006)).isCloseTo(excess, within(1e-15));
        assertThat(errors.isSeparatedOnArc(feed, 0.006)).isEqualTo(excess <= 0);
        assertThat(errors.uncutBottom(feed, turn))
                .isCloseTo(
                        lag - errors.reach(feed, 1) - PROFILE.halfWidthSi(THICKNESS, feed) / Math.sin(turn),
                        within(1e-15));
        assertThat(errors.uncutBottom(feed, 3)).isEqualTo(errors.uncutBottom(feed, Math.PI / 2));
    }

    /** The fastest feed that keeps a goal, by a search through 4000 feeds from the straight one down. */
    private static double fastest(DoubleUnaryOperator error, double goal, double straight) {
        for (int i = 0; i <= 4000; i++) {
            double feed = straight * Math.pow(20, -i / 4000.0);
            if (error.applyAsDouble(feed) <= goal) {
                return feed;
            }
        }
        return straight / 20;
    }

    private static SlowdownPolicy policy(double index, double tolerance, boolean isSeparating) {
        return new SlowdownPolicy(
                PROFILE,
                straight(index),
                tolerance,
                SlowdownSettings.upright(SlowdownRules.cautious().withSeparation(isSeparating)));
    }

    @ParameterizedTest
    @CsvSource({
        "3, 0.00005, 0.3, true",
        "3, 0.0005, 1.2, true",
        "3, 0.00065, 1.5, false",
        "5, 0.0001, 2, false",
        "2, 0.0002, 1, true",
        "8, 0.00003, 0.1, true",
        "3, 0.004, 1, true"
    })
    void theFeedAtACornerIsTheFastestOneWithinTheGoal(double index, double tolerance, double turn, boolean isInside) {
        double straight = straight(index);
        SlowdownErrors errors = errors(index);
        DoubleUnaryOperator error = isInside
                ? errors.insideCorner(turn, LagGeometry.TANGENT)
                : errors.outsideCorner(turn, LagGeometry.TRACTRIX);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 40; i++) {
            least = Math.min(least, error.applyAsDouble(straight * Math.pow(20, -i / 40.0)));
        }
        double goal = Math.max(tolerance, 1.1 * least);
        double feed = error.applyAsDouble(straight) <= tolerance ? straight : fastest(error, goal, straight);
        Slowdown found = policy(index, tolerance, false).corner(turn, isInside);

        assertThat(found.feedMPerS()).isBetween(feed * (1 - 1e-9), feed * 1.001);
        assertThat(found.predictedErrorM()).isCloseTo(error.applyAsDouble(found.feedMPerS()), within(1e-12));
        assertThat(found.toleranceM()).isEqualTo(tolerance);
        SlowdownReason reason = feed == straight && error.applyAsDouble(straight) <= tolerance
                ? SlowdownReason.STRAIGHT_FEED
                : goal > tolerance ? SlowdownReason.LEAST_ERROR : SlowdownReason.TOLERANCE;
        assertThat(found.reason()).isEqualTo(reason);
        double separating = fastest(each -> errors.uncutBottom(each, turn), 0, straight);
        Slowdown cut = policy(index, tolerance, true).corner(turn, isInside);
        assertThat(cut.feedMPerS())
                .isBetween(Math.min(feed, separating) * (1 - 1e-9), Math.min(feed, separating) * 1.001);
    }

    @ParameterizedTest
    @CsvSource({"1.2, 0.004, 0.006", "1.2, 0.002, 0.001", "1.05, 0.02, 0.03", "3, 0.003, 0.004", "1.01, 0.001, 0.2"})
    void anArcIsSeparatedLikeItsFrontOrItsCorner(double index, double radius, double length) {
        double straight = straight(index);
        SlowdownErrors errors = errors(index);
        Slowdown free = policy(index, 0.01, false).arc(radius, length, true);
        Slowdown found = policy(index, 0.01, true).arc(radius, length, true);
        double turn = Math.min(length / radius, Math.PI);
        double byCorner = fastest(each -> errors.uncutBottom(each, turn), 0, straight);
        double byFront = fastest(each -> errors.excessOnArc(each, radius), 0, straight);
        double expected = errors.isSeparatedOnArc(free.feedMPerS(), radius)
                ? free.feedMPerS()
                : Math.min(free.feedMPerS(), Math.max(byCorner, byFront));

        assertThat(found.feedMPerS()).isBetween(expected * (1 - 1e-9), expected * 1.001);
        if (found.feedMPerS() < free.feedMPerS()) {
            assertThat(found.reason()).isEqualTo(SlowdownReason.SEPARATION);
            double error = Math.min(
                    errors.arc(found.feedMPerS(), radius, length, LagGeometry.TANGENT),
                    errors.insideCorner(turn, LagGeometry.TANGENT).applyAsDouble(found.feedMPerS()));
            assertThat(found.predictedErrorM()).isCloseTo(error, within(1e-12));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.02, 1.5, 3, 8})
    void anEndIsSeparatedAtARightAngle(double index) {
        double straight = straight(index);
        SlowdownErrors errors = errors(index);
        double separating = fastest(each -> errors.uncutBottom(each, Math.PI / 2), 0, straight);
        Slowdown end = policy(index, 0.001, true).end();

        assertThat(end.feedMPerS()).isBetween(separating * (1 - 1e-9), separating * 1.001);
        assertThat(end.predictedErrorM()).isEqualTo(errors.growthAtCorner(end.feedMPerS()));
        assertThat(end.reason())
                .isEqualTo(separating < straight ? SlowdownReason.SEPARATION : SlowdownReason.STRAIGHT_FEED);
        assertThat(policy(index, 0.001, false).end().feedMPerS()).isEqualTo(straight);
        assertThat(policy(index, 0.001, false).end().zoneM()).isZero();
    }

    /** Turns are rounded up to a 64th of a degree; above a right angle one answer holds. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aTableRoundsTurnsUp(boolean isInside) {
        SlowdownPolicy policy = policy(3, 0.0003, true);
        SlowdownTable table = new SlowdownTable(policy, SIGMA);
        for (int steps : new int[] {1, 7, 640, 5759, 5760}) {
            Slowdown expected = policy.corner(Math.toRadians(steps / 64.0), isInside);
            assertThat(table.corner(Math.toRadians(steps / 64.0), isInside)).isEqualTo(expected);
            assertThat(table.corner(Math.toRadians((steps - 0.5) / 64.0), isInside))
                    .isEqualTo(expected);
        }
        assertThat(table.corner(1e-9, isInside)).isEqualTo(policy.corner(Math.toRadians(1 / 64.0), isInside));
        assertThat(table.corner(3, isInside)).isEqualTo(policy.corner(Math.PI / 2, isInside));
        assertThat(table.end()).isEqualTo(policy.end());
    }

    /** Long arcs that turn by a right angle or more are alike; shorter turns are not. */
    @Test
    void longArcsOfOneRadiusShareTheirSlowdown() {
        SlowdownTable table = new SlowdownTable(policy(3, 0.0003, true), SIGMA);
        double long12 = 12 * SIGMA;

        assertThat(table.arc(0.02, 0.032, true)).isSameAs(table.arc(0.02, 0.2, true));
        assertThat(table.arc(0.02, 0.031, true)).isNotSameAs(table.arc(0.02, 0.032, true));
        assertThat(table.arc(0.02, 0.01, true)).isNotSameAs(table.arc(0.02, 0.012, true));
        assertThat(table.arc(long12 / 4, long12 * 1.01, true)).isSameAs(table.arc(long12 / 4, long12 * 2, true));
        assertThat(table.arc(long12 / 4, long12 * 0.9, true)).isNotSameAs(table.arc(long12 / 4, long12 * 2, true));
        assertThat(table.arc(0.02, 0.2, true)).isNotSameAs(table.arc(0.02, 0.2, false));
    }

    @ParameterizedTest
    @CsvSource({"0.004, 0.003", "0.0007, 0.004", "0.03, 0.0001", "0.004, 0.05", "0.5, 2"})
    void aTableRoundsRadiiDownAndTurnsOfArcsUp(double radius, double length) {
        SlowdownPolicy policy = policy(3, 0.0003, true);
        SlowdownTable table = new SlowdownTable(policy, SIGMA);
        double rounded = Math.pow(2, Math.floor(256 * Math.log(radius) / Math.log(2)) / 256);
        double turn = Math.pow(2, Math.ceil(16 * Math.log(length / radius) / Math.log(2)) / 16);
        boolean isLong = length > 12 * SIGMA && length > radius * Math.PI / 2;
        double longest = Math.max(12 * SIGMA, rounded * Math.PI);
        for (boolean isInside : new boolean[] {true, false}) {
            Slowdown expected = policy.arc(rounded, isLong ? longest : rounded * turn, isInside);
            assertThat(table.arc(radius, length, isInside).feedMPerS())
                    .isCloseTo(expected.feedMPerS(), within(1e-9 * expected.feedMPerS()));
            assertThat(table.arc(rounded * 1.0001, length * 1.0001, isInside).feedMPerS())
                    .isCloseTo(expected.feedMPerS(), within(0.03 * expected.feedMPerS()));
            assertThat(table.arc(radius, length, isInside)).isSameAs(table.arc(radius, length, isInside));
        }
    }
}
