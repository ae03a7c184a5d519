package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Motions without limits of jerk against a planner by brute force: a walk back and one forward over a fine grid, with the
 * acceleration that the axes leave at each place found by bisection.
 */
class AccelerationMotionTest {

    private static final double FREE = Double.POSITIVE_INFINITY;
    private static final int STEPS = 5_000;

    /** Grid planner, of first order in the step. */
    private record BruteForce(PathPieces pieces, FeedCaps caps, DynamicLimits limits) {

        int piece(double at) {
            int piece = 0;
            while (piece + 1 < pieces.count() && pieces.startM(piece + 1) <= at) {
                piece++;
            }
            return piece;
        }

        double cap(double at) {
            int cap = 0;
            while (caps.untilM(cap) < at) {
                cap++;
            }
            return caps.feedMPerS(cap);
        }

        /** Range of the acceleration along the path at a square of the feed; null if there is none. */
        double[] range(int piece, double at, double x) {
            double heading = pieces.headingAt(piece, at);
            double k = pieces.curvature(piece);
            double low = -limits.path().accelerationMPerS2();
            double high = -low;
            double[] t = {Math.cos(heading), Math.sin(heading)};
            double[] n = {-t[1], t[0]};
            double[] most = {limits.x().accelerationMPerS2(), limits.y().accelerationMPerS2()};
            for (int axis = 0; axis < 2; axis++) {
                double across = k * x * n[axis];
                if (Math.abs(t[axis]) > 1e-9) {
                    double one = (-most[axis] - across) / t[axis];
                    double other = (most[axis] - across) / t[axis];
                    low = Math.max(low, Math.min(one, other));
                    high = Math.min(high, Math.max(one, other));
                } else if (Math.abs(across) > most[axis]) {
                    return new double[] {1, -1};
                }
            }
            return new double[] {low, high};
        }

        double top(int piece, double at) {
            double heading = pieces.headingAt(piece, at);
            double top = Math.min(cap(at), limits.axisSpeed(Math.cos(heading), Math.sin(heading)));
            double k = Math.abs(pieces.curvature(piece));
            top = Math.min(top, Math.sqrt(limits.path().centripetalMPerS2() / k));
            double low = 0;
            double high = top * top;
            for (int i = 0; i < 30; i++) {
                double x = (low + high) / 2;
                double[] range = range(piece, at, x);
                low = range[0] <= range[1] ? x : low;
                high = range[0] <= range[1] ? high : x;
            }
            return low;
        }

        double timeS() {
            double h = pieces.lengthM() / STEPS;
            double[] kept = new double[STEPS + 1];
            for (int i = STEPS - 1; i > 0; i--) {
                int piece = piece(i * h);
                double low = 0;
                double high = top(piece, i * h);
                for (int n = 0; n < 30; n++) {
                    double x = (low + high) / 2;
                    boolean isKept = x + 2 * h * range(piece, i * h, x)[0] <= kept[i + 1];
                    low = isKept ? x : low;
                    high = isKept ? high : x;
                }
                kept[i] = low;
            }
            double time = 0;
            double x = 0;
            for (int i = 0; i < STEPS; i++) {
                double next = Math.max(0, Math.min(kept[i + 1], x + 2 * h * range(piece(i * h), i * h, x)[1]));
                time += 2 * h / (Math.sqrt(x) + Math.sqrt(next));
                x = next;
            }
            return time;
        }
    }

    private static PathPieces smooth(Random random, boolean hasArcs) {
        PathPieces pieces = new PathPieces(4);
        double heading = 6 * random.nextDouble();
        for (int i = 0; i < 5; i++) {
            if (!hasArcs || i % 2 == 0) {
                double length = 0.01 + 0.05 * random.nextDouble();
                pieces.line(length * Math.cos(heading), length * Math.sin(heading));
            } else {
                double sweep = (random.nextBoolean() ? 1 : -1) * (0.5 + 2.5 * random.nextDouble());
                pieces.arc(Math.cos(heading), Math.sin(heading), 0.005 + 0.05 * random.nextDouble(), sweep);
                heading += sweep;
            }
        }
        return pieces;
    }

    private static FeedCaps caps(Random random, double length) {
        FeedCaps caps = new FeedCaps();
        for (double at = 0.01; at < length; at += 0.03 * random.nextDouble()) {
            caps.until(at, 0.02 + 0.2 * random.nextDouble(), random.nextInt(9));
        }
        return caps.until(FREE, 0.1, 1);
    }

    private static DynamicLimits limits(Random random, boolean hasAxes) {
        AxisLimits x = hasAxes ? axis(random) : AxisLimits.NONE;
        AxisLimits y = hasAxes ? axis(random) : AxisLimits.NONE;
        double across = random.nextBoolean() ? 0.2 + random.nextDouble() : FREE;
        return new DynamicLimits(
                x, y, new PathLimits(0.2 + random.nextDouble(), across, FREE, FREE), CornerRule.arc(1e-5));
    }

    private static AxisLimits axis(Random random) {
        return new AxisLimits(0.05 + 0.2 * random.nextDouble(), 0.2 + random.nextDouble(), FREE);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void theTimeIsThatOfAPlannerByBruteForce(long seed) {
        Random random = new Random(seed);
        PathPieces pieces = smooth(random, seed % 3 > 0);
        FeedCaps caps = caps(random, pieces.lengthM());
        DynamicLimits limits = limits(random, seed % 3 == 2);
        double brute = new BruteForce(pieces, caps, limits).timeS();

        MotionCurve motion = MotionSolver.solve(pieces, caps, limits, MotionSettings.defaults());
        assertThat(motion.timeS()).isCloseTo(brute, within(4e-3 * brute));
        assertThat(motion.lengthM()).isCloseTo(pieces.lengthM(), within(1e-12));
        requireNames(motion, pieces, caps, limits);
        MotionCurve coarse = MotionSolver.solve(
                pieces, caps, limits, MotionSettings.defaults().withArcStep(0.02));
        assertThat(coarse.timeS()).isBetween(motion.timeS() * (1 - 1e-9), motion.timeS() * 1.02);
    }

    /** The limit that an interval names is used up there but for the short intervals of a switch, and no other is exceeded. */
    private static void requireNames(MotionCurve motion, PathPieces pieces, FeedCaps caps, DynamicLimits limits) {
        BruteForce path = new BruteForce(pieces, caps, limits);
        double otherwise = 0;
        for (int k = 0; k < motion.intervals(); k++) {
            double at = (motion.placeM(k) + motion.placeM(k + 1)) / 2;
            if (motion.placeM(k + 1) - motion.placeM(k) < 1e-9) {
                continue;
            }
            int piece = path.piece(at);
            double heading = pieces.headingAt(piece, at);
            double feed = motion.feedAt(at);
            double a = motion.acceleration(k);
            double across = pieces.curvature(piece) * feed * feed;
            double c = Math.cos(heading);
            double s = Math.sin(heading);
            double[] shares = {
                feed / path.cap(at),
                feed * Math.abs(c) / limits.x().speedMPerS(),
                feed * Math.abs(s) / limits.y().speedMPerS(),
                Math.abs(across) / limits.path().centripetalMPerS2(),
                Math.abs(a) / limits.path().accelerationMPerS2(),
                Math.abs(a * c - across * s) / limits.x().accelerationMPerS2(),
                Math.abs(a * s + across * c) / limits.y().accelerationMPerS2()
            };
            for (double share : shares) {
                assertThat(share).isLessThan(1.01);
            }
            int named = switch (motion.limit(k)) {
                case PROCESS -> 0;
                case X_SPEED -> 1;
                case Y_SPEED -> 2;
                case CENTRIPETAL -> 3;
                case PATH_ACCELERATION -> 4;
                case X_ACCELERATION -> 5;
                case Y_ACCELERATION -> 6;
                default -> -1;
            };
            assertThat(named).isNotNegative();
            otherwise += shares[named] > 0.97 ? 0 : motion.timeS(k + 1) - motion.timeS(k);
        }
        assertThat(otherwise).isLessThan(0.01 * motion.timeS());
    }

    /** Speeds up, runs and slows down: closed form for every way in which two caps and two lengths meet. */
    @Test
    void aLineWithACapHasItsClosedForm() {
        double a = 0.5;
        for (double length : new double[] {1e-6, 0.001, 0.01, 0.02, 0.3}) {
            for (double v : new double[] {0.01, 0.1, 1}) {
                double peak = Math.min(v, Math.sqrt(a * length));
                double expected = 2 * peak / a + (length - peak * peak / a) / peak;
                MotionCurve motion = MotionSolver.solve(
                        new PathPieces(1).line(0, length),
                        FeedCaps.same(v, 6),
                        new DynamicLimits(
                                AxisLimits.NONE, AxisLimits.NONE, PathLimits.ofAcceleration(a), CornerRule.arc(1)),
                        MotionSettings.defaults());
                assertThat(motion.timeS()).isCloseTo(expected, within(1e-9 * expected));
                boolean isCapped = v * v < a * length;
                assertThat(motion.intervals()).isEqualTo(isCapped ? 3 : 2);
                assertThat(motion.limit(0)).isEqualTo(GoverningLimit.PATH_ACCELERATION);
                assertThat(motion.limit(motion.intervals() - 1)).isEqualTo(GoverningLimit.PATH_ACCELERATION);
                assertThat(motion.limitCode(1) == 6).isEqualTo(isCapped);
            }
        }
    }

    /** On an arc the axes allow vx/|cos| and vy/|sin|: the time is the sum of both, but for the ramps at the ends. */
    @Test
    void theSpeedsOfTheAxesRuleAnArcAndAreNamed() {
        DynamicLimits limits = new DynamicLimits(
                new AxisLimits(0.03, 500, FREE),
                new AxisLimits(0.02, 500, FREE),
                PathLimits.ofAcceleration(1000),
                CornerRule.arc(1));
        double radius = 0.1;
        MotionCurve motion = MotionSolver.solve(
                new PathPieces(1).arc(1, 0, radius, 2 * Math.PI),
                FeedCaps.same(1, 2),
                limits,
                MotionSettings.defaults());
        int n = 100_000;
        double time = 0;
        for (int i = 0; i < n; i++) {
            double angle = 2 * Math.PI * (i + 0.5) / n;
            double feed = Math.min(0.03 / Math.abs(Math.cos(angle)), 0.02 / Math.abs(Math.sin(angle)));
            time += 2 * Math.PI * radius / n / feed;
        }
        assertThat(motion.timeS()).isCloseTo(time, within(1e-3 * time));
        for (double angle = 0.1; angle < 6.2; angle += 0.13) {
            double byX = 0.03 / Math.abs(Math.cos(angle));
            double byY = 0.02 / Math.abs(Math.sin(angle));
            if (Math.abs(byX / byY - 1) > 0.05) {
                int interval = motion.intervalAt(angle * radius);
                assertThat(motion.feedAt(angle * radius))
                        .isCloseTo(Math.min(byX, byY), within(2e-3 * Math.min(byX, byY)));
                assertThat(motion.limit(interval))
                        .isEqualTo(byX < byY ? GoverningLimit.X_SPEED : GoverningLimit.Y_SPEED);
            }
        }
    }

    /** A full turn at a speed that the axes keep in every direction is one interval of constant feed. */
    @Test
    void aSteadyArcIsOneInterval() {
        AxisLimits axis = new AxisLimits(0.2, 1, FREE);
        PathPieces pieces =
                new PathPieces(3).line(0.1, 0).arc(1, 0, 0.04, 2 * Math.PI).line(0.1, 0);
        for (double feed : new double[] {0.199, 0.1999}) {
            MotionCurve motion = MotionSolver.solve(
                    pieces,
                    FeedCaps.same(feed, 2),
                    new DynamicLimits(axis, axis, PathLimits.ofAcceleration(1), CornerRule.arc(1)),
                    MotionSettings.defaults());
            double expected = 0.2 / feed + 2 * Math.PI * 0.04 / feed + feed;
            assertThat(motion.timeS()).isCloseTo(expected, within(1e-9));
            assertThat(motion.intervals()).isEqualTo(3);
        }
        // 1 m/s2 on 39 mm is 0.1975 m/s: on the circle the acceleration of the axes rules
        MotionCurve slower = MotionSolver.solve(
                new PathPieces(1).arc(1, 0, 0.039, 20 * Math.PI),
                FeedCaps.same(0.199, 2),
                new DynamicLimits(axis, axis, PathLimits.ofAcceleration(1), CornerRule.arc(1)),
                MotionSettings.defaults());
        assertThat(slower.timeS()).isBetween(0.78 * Math.PI / 0.199, 0.78 * Math.PI / 0.197 + 0.3);
    }
}
