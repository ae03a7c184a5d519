package dev.waterjet.motion;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A limit along a direction is the largest value whose components keep every limit; the limit that is named is used up. */
class DynamicLimitsTest {

    private static final double FREE = Double.POSITIVE_INFINITY;
    private static final double TIGHT = 1e-12;

    private static AxisLimits axis(Random random) {
        return new AxisLimits(some(random), some(random), some(random));
    }

    private static double some(Random random) {
        return random.nextInt(6) == 0 ? FREE : 0.1 + random.nextDouble();
    }

    private static DynamicLimits limits(Random random) {
        return new DynamicLimits(
                axis(random),
                axis(random),
                new PathLimits(0.1 + random.nextDouble(), some(random), some(random), some(random)),
                CornerRule.arc(1e-5));
    }

    /** Whether a component uses its limit up. */
    private static boolean isUsedUp(double value, double component, double limit) {
        return value * Math.abs(component) > limit * (1 - TIGHT);
    }

    private static void requireLargest(double value, double tx, double ty, double ofX, double ofY, double ofPath) {
        boolean isFree = value == FREE;
        if (isFree) {
            assertThat(ofPath).isInfinite();
            return;
        }
        assertThat(value * Math.abs(tx)).isLessThanOrEqualTo(ofX * (1 + TIGHT));
        assertThat(value * Math.abs(ty)).isLessThanOrEqualTo(ofY * (1 + TIGHT));
        assertThat(value).isLessThanOrEqualTo(ofPath * (1 + TIGHT));
        assertThat(isUsedUp(value, tx, ofX) || isUsedUp(value, ty, ofY) || isUsedUp(value, 1, ofPath))
                .isTrue();
    }

    private static void requireNamed(GoverningLimit name, double value, double tx, double ty, double[] limits) {
        String axis = name.name().substring(0, 1);
        double component = axis.equals("X") ? tx : axis.equals("Y") ? ty : 1;
        double limit = axis.equals("X") ? limits[0] : axis.equals("Y") ? limits[1] : limits[2];
        assertThat(value == FREE || isUsedUp(value, component, limit)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void theLargestValueKeepsEveryComponent(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            DynamicLimits limits = limits(random);
            double angle = random.nextInt(5) == 0 ? Math.PI / 2 * random.nextInt(4) : 7 * random.nextDouble();
            double tx = i % 10 == 0 ? 1 : Math.cos(angle);
            double ty = i % 10 == 0 ? 0 : Math.sin(angle);
            AxisLimits x = limits.x();
            AxisLimits y = limits.y();
            PathLimits path = limits.path();

            double speed = limits.axisSpeed(tx, ty);
            requireLargest(speed, tx, ty, x.speedMPerS(), y.speedMPerS(), FREE);
            requireNamed(
                    limits.axisSpeedLimit(tx, ty), speed, tx, ty, new double[] {x.speedMPerS(), y.speedMPerS(), FREE});
            double[] a = {x.accelerationMPerS2(), y.accelerationMPerS2(), path.accelerationMPerS2()};
            double acceleration = limits.tangentialAcceleration(tx, ty);
            requireLargest(acceleration, tx, ty, a[0], a[1], a[2]);
            requireNamed(limits.tangentialAccelerationLimit(tx, ty), acceleration, tx, ty, a);
            double[] j = {x.jerkMPerS3(), y.jerkMPerS3(), path.jerkMPerS3()};
            double jerk = limits.tangentialJerk(tx, ty);
            requireLargest(jerk, tx, ty, j[0], j[1], j[2]);
            requireNamed(limits.tangentialJerkLimit(tx, ty), jerk, tx, ty, j);
            requireLargest(limits.normalAcceleration(tx, ty), tx, ty, a[0], a[1], path.centripetalMPerS2());
            requireLargest(limits.normalJerk(tx, ty), tx, ty, j[0], j[1], path.vectorJerkMPerS3());
        }
    }

    @Test
    void ofEqualLimitsThePathIsNamedBeforeXAndXBeforeY() {
        double root = Math.sqrt(0.5);
        AxisLimits axis = new AxisLimits(1, 1, 1);
        DynamicLimits bare = new DynamicLimits(axis, axis, PathLimits.NONE, CornerRule.arc(1));
        DynamicLimits level =
                bare.withPath(PathLimits.NONE.withAcceleration(1 / root).withJerk(1 / root));

        assertThat(bare.axisSpeedLimit(root, root)).isEqualTo(GoverningLimit.X_SPEED);
        assertThat(bare.tangentialAccelerationLimit(root, root)).isEqualTo(GoverningLimit.X_ACCELERATION);
        assertThat(bare.tangentialJerkLimit(root, root)).isEqualTo(GoverningLimit.X_JERK);
        assertThat(level.tangentialAccelerationLimit(root, root)).isEqualTo(GoverningLimit.PATH_ACCELERATION);
        assertThat(level.tangentialJerkLimit(root, root)).isEqualTo(GoverningLimit.PATH_JERK);
    }

    @Test
    void someLimitOfAccelerationIsNeededInEveryDirection() {
        AxisLimits none = AxisLimits.NONE;
        AxisLimits some = none.withAcceleration(2);
        CornerRule rule = CornerRule.arc(1);

        assertRefused(() -> new DynamicLimits(none, none, PathLimits.NONE, rule), "must-be-below");
        assertRefused(() -> new DynamicLimits(some, none, PathLimits.NONE, rule), "must-be-below");
        assertRefused(() -> new DynamicLimits(none, some, PathLimits.NONE, rule), "must-be-below");
        assertThat(new DynamicLimits(some, some, PathLimits.NONE, rule).hasJerk())
                .isFalse();
        assertThat(new DynamicLimits(none, none, PathLimits.ofAcceleration(3), rule).hasAxisLimits())
                .isFalse();
    }

    @Test
    void aLimitOfJerkOrOfAnAxisIsSeenWhereverItIs() {
        AxisLimits none = AxisLimits.NONE;
        DynamicLimits bare = new DynamicLimits(none, none, PathLimits.ofAcceleration(3), CornerRule.arc(1));

        assertThat(bare.withAxes(none.withJerk(1), none).hasJerk()).isTrue();
        assertThat(bare.withAxes(none, none.withJerk(1)).hasJerk()).isTrue();
        assertThat(bare.withPath(bare.path().withJerk(1)).hasJerk()).isTrue();
        assertThat(bare.withPath(bare.path().withVectorJerk(1)).hasJerk()).isFalse();
        for (AxisLimits one : new AxisLimits[] {none.withSpeed(1), none.withAcceleration(1), none.withJerk(1)}) {
            assertThat(bare.withAxes(one, none).hasAxisLimits()).isTrue();
            assertThat(bare.withAxes(none, one).hasAxisLimits()).isTrue();
        }
        assertThat(bare.withCorner(CornerRule.stop(2)).corner().deviationM()).isEqualTo(2);
    }

    @Test
    void eachLimitIsAboveZero() {
        for (double bad : new double[] {0, -1, Double.NaN}) {
            assertRefused(() -> AxisLimits.NONE.withSpeed(bad), "must-be-above");
            assertRefused(() -> AxisLimits.NONE.withAcceleration(bad), "must-be-above");
            assertRefused(() -> AxisLimits.NONE.withJerk(bad), "must-be-above");
            assertRefused(() -> PathLimits.NONE.withAcceleration(bad), "must-be-above");
            assertRefused(() -> PathLimits.NONE.withCentripetal(bad), "must-be-above");
            assertRefused(() -> PathLimits.NONE.withJerk(bad), "must-be-above");
            assertRefused(() -> PathLimits.NONE.withVectorJerk(bad), "must-be-above");
            assertRefused(() -> CornerRule.arc(bad), "must-be-above");
            assertRefused(() -> CornerRule.jump(1, bad, 1), "must-be-above");
            assertRefused(() -> CornerRule.jump(1, 1, bad), "must-be-above");
        }
        assertThat(AxisLimits.NONE.withSpeed(Double.MIN_VALUE).isLimited()).isTrue();
        assertThat(PathLimits.NONE.withCentripetal(0.3)).isEqualTo(new PathLimits(FREE, 0.3, FREE, FREE));
        assertThat(AxisLimits.NONE.withSpeed(2).speed().getValue().doubleValue())
                .isCloseTo(2, within(1e-15));
    }

    @Test
    void settingsAreKeptWithinTheirRange() {
        MotionSettings settings = MotionSettings.defaults();

        assertThat(settings.withStepsPerJerkTime(4).stepsPerJerkTime()).isEqualTo(4);
        assertThat(settings.withStepsPerJerkTime(64).stepsPerJerkTime()).isEqualTo(64);
        assertThat(settings.withWindowNodes(200).windowNodes()).isEqualTo(200);
        assertThat(settings.withArcStep(0.1).arcStepRad()).isEqualTo(0.1);
        assertRefused(() -> settings.withStepsPerJerkTime(3.99), "must-be-at-least");
        assertRefused(() -> settings.withStepsPerJerkTime(64.01), "must-be-at-most");
        assertRefused(() -> settings.withWindowNodes(199), "must-be-at-least");
        assertRefused(() -> settings.withArcStep(0), "must-be-above");
        assertRefused(() -> settings.withArcStep(0.101), "must-be-at-most");
    }
}
