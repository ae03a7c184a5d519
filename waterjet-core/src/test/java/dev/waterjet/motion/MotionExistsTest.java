package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Every path has a motion under any limits that are finite: blocks down to a nanometre between long ones, reversals, arcs of
 * a micrometre, caps that jump, jerk that is tiny or huge beside the acceleration. The system property
 * {@code waterjet.random.motions} sets how many paths, for a longer search.
 */
class MotionExistsTest {

    private static final int PATHS = Integer.getInteger("waterjet.random.motions", 200);

    /** Excess over a limit that rounding explains in rows of differences over a nanometre. */
    private static final double TOLERANCE = 1e-5;

    @Test
    void anyPathHasAMotionWithinItsLimits() {
        for (long seed = 1; seed <= PATHS; seed++) {
            Random random = new Random(104_729 * seed);
            boolean hasAxes = random.nextInt(3) == 0;
            DynamicLimits limits = limits(random, hasAxes);
            PathPieces pieces = pieces(random);
            FeedCaps caps = caps(random, pieces.lengthM());
            MotionCurve motion = MotionSolver.solve(pieces, caps, limits, MotionSettings.defaults());
            assertThat(motion.lengthM()).as("seed %d", seed).isCloseTo(pieces.lengthM(), within(1e-9));
            assertThat(motion.square(motion.intervals())).as("seed %d", seed).isZero();
            assertThat(motion.timeS()).as("seed %d", seed).isPositive().isFinite();
            requireCaps(motion, caps, seed);
            if (!hasAxes) {
                requireLimits(motion, limits.path(), seed);
            }
        }
    }

    @Test
    void aCapOverANanometreIsACapOfAPlace() {
        DynamicLimits limits = new DynamicLimits(
                AxisLimits.NONE,
                AxisLimits.NONE,
                PathLimits.ofAcceleration(1.998).withJerk(1.2527),
                CornerRule.stop(1e-5));
        for (double nanometres : new double[] {0.1, 4.11, 50}) {
            double there = timeWithCap(limits, nanometres * 1e-9);

            assertThat(there).as("%s nm", nanometres).isCloseTo(timeWithCap(limits, 0), within(1e-3 * there));
        }
    }

    private static double timeWithCap(DynamicLimits limits, double lengthM) {
        PathPieces pieces = new PathPieces(1).line(0.0085, 0);
        FeedCaps caps = new FeedCaps()
                .until(0.003, 0.0507, 1)
                .until(0.003 + lengthM, 0.0159, 2)
                .until(Double.POSITIVE_INFINITY, 0.02485, 3);
        return MotionSolver.solve(pieces, caps, limits, MotionSettings.defaults())
                .timeS();
    }

    @Test
    void anIntervalFromRestToRestTakesTheTimeOfConstantJerk() {
        double length = 1e-6;
        DynamicLimits limits = new DynamicLimits(
                AxisLimits.NONE, AxisLimits.NONE, PathLimits.ofAcceleration(50).withJerk(1), CornerRule.stop(1e-9));
        PathPieces pieces = new PathPieces(1).line(0.01, 0).line(-length, 0).line(0.01, 0);
        MotionCurve motion = MotionSolver.solve(pieces, FeedCaps.same(1, 1), limits, MotionSettings.defaults());
        double there = motion.timeAt(0.01 + length) - motion.timeAt(0.01);

        // a quarter of the time at each of +j, -j, -j, +j: t = (32 s/j)^(1/3)
        assertThat(there).isCloseTo(Math.cbrt(32 * length), within(0.05 * there));
    }

    private static void requireCaps(MotionCurve motion, FeedCaps caps, long seed) {
        int at = 0;
        for (int i = 0; i < motion.intervals(); i++) {
            double middle = (motion.placeM(i) + motion.placeM(i + 1)) / 2;
            while (caps.untilM(at) < middle) {
                at++;
            }
            assertThat(motion.feedAt(middle)).as("seed %d", seed).isLessThan(caps.feedMPerS(at) * (1 + TOLERANCE));
        }
    }

    private static void requireLimits(MotionCurve motion, PathLimits limits, long seed) {
        for (int i = 0; i < motion.intervals(); i++) {
            double a = motion.acceleration(i);
            assertThat(Math.abs(a)).as("seed %d", seed).isLessThan(limits.accelerationMPerS2() * (1 + TOLERANCE));
            if (i > 0 && motion.square(i) > 0) {
                double time = (motion.timeS(i + 1) - motion.timeS(i - 1)) / 2;
                double jerk = Math.abs(a - motion.acceleration(i - 1)) / time;
                // the last digits of the squares, over the lengths of the intervals
                double rounding = 1e-14
                        * motion.square(i)
                        * (1 / (motion.placeM(i + 1) - motion.placeM(i))
                                + 1 / (motion.placeM(i) - motion.placeM(i - 1)))
                        / time;
                assertThat(jerk - rounding).as("seed %d", seed).isLessThan(limits.jerkMPerS3() * (1 + TOLERANCE));
            }
        }
    }

    /** Lines and arcs on a path that turns sharply, slightly, not at all or back. */
    private static PathPieces pieces(Random random) {
        int n = 1 + random.nextInt(40);
        PathPieces pieces = new PathPieces(n);
        double heading = 2 * Math.PI * random.nextDouble();
        double shortest = between(random, 1e-9, 1e-3);
        double longest = between(random, shortest, 0.3);
        for (int i = 0; i < n; i++) {
            double length = random.nextInt(3) == 0 ? between(random, 1e-9, 0.1) : between(random, shortest, longest);
            if (random.nextInt(3) == 0) {
                double radius = between(random, 1e-6, 10);
                double sweep = Math.min(length / radius, 6) * (random.nextBoolean() ? 1 : -1);
                pieces.arc(Math.cos(heading), Math.sin(heading), radius, sweep);
                heading += sweep;
            } else {
                pieces.line(length * Math.cos(heading), length * Math.sin(heading));
            }
            heading += turn(random);
        }
        return pieces;
    }

    private static double turn(Random random) {
        return switch (random.nextInt(5)) {
            case 0 -> Math.PI;
            case 1 -> between(random, 1e-8, 1);
            case 2 -> random.nextGaussian();
            default -> 0;
        };
    }

    private static FeedCaps caps(Random random, double lengthM) {
        FeedCaps caps = new FeedCaps();
        double at = 0;
        int n = random.nextInt(12);
        double slowest = between(random, 1e-5, 1);
        for (int i = 0; i < n; i++) {
            at += (lengthM - at) * (random.nextBoolean() ? random.nextDouble() / 2 : between(random, 1e-8, 1));
            caps.until(at, between(random, slowest, 1), 1);
        }
        return caps.until(Double.POSITIVE_INFINITY, between(random, slowest, 1), 1);
    }

    private static DynamicLimits limits(Random random, boolean hasAxes) {
        double acceleration = between(random, 1e-2, 50);
        double jerk = acceleration * between(random, 1e-2, 1e5);
        PathLimits path = PathLimits.ofAcceleration(acceleration).withJerk(jerk);
        if (random.nextBoolean()) {
            path = path.withCentripetal(acceleration * between(random, 0.1, 10)).withVectorJerk(jerk);
        }
        double deviation = between(random, 1e-7, 1e-3);
        CornerRule corner = switch (random.nextInt(4)) {
            case 0 -> CornerRule.stop(deviation);
            case 1 -> CornerRule.arc(deviation);
            case 2 -> CornerRule.pulse(deviation);
            default -> CornerRule.jump(deviation, between(random, 1e-4, 0.1), between(random, 1e-4, 0.1));
        };
        AxisLimits x = hasAxes ? axis(random) : AxisLimits.NONE;
        AxisLimits y = hasAxes ? axis(random) : AxisLimits.NONE;
        return new DynamicLimits(x, y, path, corner);
    }

    private static AxisLimits axis(Random random) {
        AxisLimits axis = new AxisLimits(between(random, 0.01, 2), between(random, 1e-2, 50), Double.POSITIVE_INFINITY);
        return random.nextBoolean() ? axis : axis.withJerk(axis.accelerationMPerS2() * between(random, 1e-2, 1e5));
    }

    private static double between(Random random, double from, double to) {
        return from * Math.pow(to / from, random.nextDouble());
    }
}
