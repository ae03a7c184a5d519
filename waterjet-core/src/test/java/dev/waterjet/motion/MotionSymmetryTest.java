package dev.waterjet.motion;

import static dev.waterjet.measure.Measures.metresPerSecond;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The time of a path does not depend on how its drawing lies: a path turned by half a turn, mirrored, with both axes and their limits
 * exchanged, run backwards, or as large with speeds, accelerations and jerks as large takes the same time for the same reasons.
 */
class MotionSymmetryTest {

    private static final double FEED = 0.4;

    /** Limits of x and y, with what rules corners; every length, speed, acceleration and jerk times a scale. */
    private enum Machine {
        BY_DEVIATION(false),
        BY_PULSE(false),
        BY_JUMP(false),
        STOPPING(false),
        BY_DEVIATION_WITH_JERK(true),
        BY_PULSE_WITH_JERK(true),
        STOPPING_WITH_JERK(true);

        private final boolean hasJerk;

        Machine(boolean hasJerk) {
            this.hasJerk = hasJerk;
        }

        MachineLimits limits(boolean isSwapped, double scale) {
            MachineLimits limits = MachineLimits.of(metresPerSecond(scale), Kind.ACCELERATION.of(scale))
                    .withAxisSpeeds(speed(isSwapped ? 0.33 : 0.21, scale), speed(isSwapped ? 0.21 : 0.33, scale))
                    .withAxisAccelerations(
                            Kind.ACCELERATION.of(scale * (isSwapped ? 1.7 : 1)),
                            Kind.ACCELERATION.of(scale * (isSwapped ? 1 : 1.7)));
            if (hasJerk) {
                limits = limits.withAxisJerks(
                        Kind.JERK.of(scale * (isSwapped ? 37 : 21)), Kind.JERK.of(scale * (isSwapped ? 21 : 37)));
            }
            return switch (this) {
                case BY_DEVIATION, BY_DEVIATION_WITH_JERK -> limits.withCornerDeviation(Kind.LENGTH.of(2e-5 * scale));
                case BY_PULSE, BY_PULSE_WITH_JERK -> limits.withCornerPulse(Kind.LENGTH.of(2e-5 * scale));
                case BY_JUMP ->
                    limits.withCornerJump(speed(isSwapped ? 0.02 : 0.01, scale), speed(isSwapped ? 0.01 : 0.02, scale));
                // the deviation rules where an arc begins
                case STOPPING, STOPPING_WITH_JERK ->
                    limits.withCornerDeviation(Kind.LENGTH.of(2e-5 * scale)).withStopAtCorners();
            };
        }

        private static Quantity<Speed> speed(double metresPerSecond, double scale) {
            return metresPerSecond(scale * metresPerSecond);
        }

        /** Without a limit of jerk lines are closed forms and arcs are stepped finely; with one the times are those of a grid. */
        double tolerance() {
            return hasJerk ? 2e-4 : 5e-7;
        }
    }

    /** A point of the path, from the one drawn. */
    private interface Place {
        Point of(double x, double y);
    }

    private static Contour path(Place place, boolean isMirrored) {
        Side left = isMirrored ? Side.RIGHT : Side.LEFT;
        ContourBuilder path = Contour.from(place.of(0, 0))
                .lineTo(place.of(60, 0))
                .arcTo(place.of(80, 20), place.of(60, 20), left)
                .lineTo(place.of(80, 50))
                .lineTo(place.of(45, 38))
                .arcTo(place.of(33, 50), place.of(45, 50), left.opposite())
                .lineTo(place.of(31, 90))
                .lineTo(place.of(-10, 40));
        return path.open();
    }

    private static Point drawn(double x, double y) {
        return Point.millimetres(x, y);
    }

    private static FeedPlan plan(MachineLimits machine, Contour path, double feed) {
        return FeedPlanner.withoutLag(machine, QualityFeeds.same(metresPerSecond(feed)))
                .plan(path, Side.LEFT);
    }

    private static FeedPlan asDrawn(Machine machine) {
        return plan(machine.limits(false, 1), path(MotionSymmetryTest::drawn, false), FEED);
    }

    private static void assertAlike(FeedPlan one, FeedPlan other, double tolerance) {
        double time = Kind.TIME.si(one.time());
        assertThat(Kind.TIME.si(other.time())).isCloseTo(time, within(tolerance * time));
        // a node more or less of a grid moves a share from one reason to another
        double share = (tolerance > 1e-6 ? 0.05 : 1e-5) * time;
        for (FeedLimit limit : FeedLimit.values()) {
            assertThat(Kind.TIME.si(other.timeLimitedBy(limit)))
                    .as(limit.label())
                    .isCloseTo(Kind.TIME.si(one.timeLimitedBy(limit)), within(share));
        }
    }

    @ParameterizedTest
    @EnumSource
    void turnedByHalfATurn(Machine machine) {
        FeedPlan turned = plan(machine.limits(false, 1), path((x, y) -> drawn(-x, -y), false), FEED);

        assertAlike(asDrawn(machine), turned, machine.tolerance());
    }

    @ParameterizedTest
    @EnumSource
    void mirroredInAnAxis(Machine machine) {
        FeedPlan inX = plan(machine.limits(false, 1), path((x, y) -> drawn(-x, y), true), FEED);
        FeedPlan inY = plan(machine.limits(false, 1), path((x, y) -> drawn(x, -y), true), FEED);

        assertAlike(asDrawn(machine), inX, machine.tolerance());
        assertAlike(asDrawn(machine), inY, machine.tolerance());
    }

    @ParameterizedTest
    @EnumSource
    void withBothAxesExchanged(Machine machine) {
        FeedPlan exchanged = plan(machine.limits(true, 1), path((x, y) -> drawn(y, x), true), FEED);

        assertAlike(asDrawn(machine), exchanged, machine.tolerance());
    }

    @ParameterizedTest
    @EnumSource
    void runBackwards(Machine machine) {
        Contour path = path(MotionSymmetryTest::drawn, false).reversed();

        assertAlike(asDrawn(machine), plan(machine.limits(false, 1), path, FEED), machine.tolerance());
    }

    @ParameterizedTest
    @EnumSource
    void threeTimesAsLarge(Machine machine) {
        Contour path = path((x, y) -> drawn(3 * x, 3 * y), false);

        assertAlike(asDrawn(machine), plan(machine.limits(false, 3), path, 3 * FEED), machine.tolerance());
    }

    @ParameterizedTest
    @EnumSource
    void placeAndTimeAreEachOthersInverse(Machine machine) {
        FeedPlan plan = asDrawn(machine);
        double time = Kind.TIME.si(plan.time());
        double before = 0;
        for (int i = 0; i <= 2000; i++) {
            double now = Math.min(time, time * i / 2000);
            double at = plan.distanceAtSi(now);
            assertThat(at).isGreaterThanOrEqualTo(before - 1e-12);
            assertThat(plan.timeAtSi(at)).isCloseTo(now, within(1e-6 * time));
            assertThat(plan.feedAtSi(at)).isBetween(0.0, Math.hypot(0.21, 0.33) + 1e-9);
            before = at;
        }
        assertThat(before).isCloseTo(plan.contour().lengthSi(), within(1e-9));
    }
}
