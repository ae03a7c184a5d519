package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Motions with jerk against closed forms of a line, and against one another over windows of different size. */
class JerkMotionTest {

    private static final double FREE = Double.POSITIVE_INFINITY;
    private static final MotionSettings SETTINGS = MotionSettings.defaults();

    private static DynamicLimits along(double acceleration, double jerk) {
        return limits(AxisLimits.NONE, AxisLimits.NONE, acceleration, jerk);
    }

    private static DynamicLimits limits(AxisLimits x, AxisLimits y, double acceleration, double jerk) {
        return new DynamicLimits(x, y, new PathLimits(acceleration, FREE, jerk, FREE), CornerRule.stop(1e-5));
    }

    /** Phases from rest to rest: jerk, acceleration and jerk up, the cap, and back (textbook formulas, derived anew). */
    private record Phases(double jerkS, double accelerationS, double cruiseS) {
        static Phases of(double length, double v, double a, double j) {
            double tj = Math.min(a / j, Math.sqrt(v / j));
            double ta = tj * tj * j < v ? v / a - tj : 0;
            double ramp = v * (2 * tj + ta);
            if (length >= ramp) {
                return new Phases(tj, Math.max(0, ta), (length - ramp) / v);
            }
            if (length >= 2 * a * a * a / (j * j)) {
                double t = a / j;
                // 2 v (t + v/a)/2 = L for the peak v
                double peak = (-a * t + Math.sqrt(a * a * t * t + 4 * a * length)) / 2;
                return new Phases(t, peak / a - t, 0);
            }
            return new Phases(Math.cbrt(length / (2 * j)), 0, 0);
        }

        double timeS() {
            return 4 * jerkS + 2 * accelerationS + cruiseS;
        }

        /** Times in the middle of the seven phases. */
        double[] middles() {
            double[] lengths = {jerkS, accelerationS, jerkS, cruiseS, jerkS, accelerationS, jerkS};
            double[] middles = new double[7];
            double at = 0;
            for (int i = 0; i < 7; i++) {
                middles[i] = at + lengths[i] / 2;
                at += lengths[i];
            }
            return middles;
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0.2, 0.1, 0.5, 5",
        "0.2, 0.1, 0.5, 20",
        "0.2, 0.1, 2, 5",
        "0.01, 1, 0.5, 5",
        "0.004, 1, 0.5, 5",
        "1e-4, 1, 3, 5",
        "10, 0.01, 1, 100",
        "1e-3, 0.02, 1, 1000",
        "3, 2, 1, 1",
        "0.05, 0.06, 0.3, 3"
    })
    void aLineTakesTheTimeOfSevenPhases(double length, double v, double a, double j) {
        double time = Phases.of(length, v, a, j).timeS();
        FeedCaps caps = FeedCaps.same(v, 4);
        for (double[] to : new double[][] {{1, 0}, {0, -1}, {-0.6, 0.8}}) {
            PathPieces line = new PathPieces(1).line(length * to[0], length * to[1]);
            double dx = Math.abs(to[0]);
            double dy = Math.abs(to[1]);
            DynamicLimits byPath = along(a, j);
            DynamicLimits byX = limits(axis(dx, FREE, a, j), AxisLimits.NONE, 99 * a, 99 * j);
            DynamicLimits byY = limits(AxisLimits.NONE, axis(dy, v, a, j), 99 * a, 99 * j);
            for (DynamicLimits limits :
                    new DynamicLimits[] {byPath, dx > 0.5 ? byX : byPath, dy > 0.7 ? byY : byPath}) {
                assertThat(MotionSolver.solve(line, caps, limits, SETTINGS).timeS())
                        .isCloseTo(time, within(6e-4 * time));
                MotionCurve finer = MotionSolver.solve(line, caps, limits, SETTINGS.withStepsPerJerkTime(16));
                assertThat(finer.timeS()).isCloseTo(time, within(2e-4 * time));
            }
        }
    }

    /** Limits of an axis that are limits along a path with a component of direction. */
    private static AxisLimits axis(double component, double v, double a, double j) {
        return component == 0 ? AxisLimits.NONE : new AxisLimits(v * component, a * component, j * component);
    }

    /** Which limit is named in each of the seven phases: the one whose loosening saves time there. */
    @ParameterizedTest
    @CsvSource({"0.5, 20, PATH, PATH", "0.5, 5.5, X, Y", "0.5, 8, Y, X", "1, 20, X, PATH"})
    void eachPhaseNamesItsLimit(double a, double j, String ofAcceleration, String ofJerk) {
        double v = 0.1;
        Phases phases = Phases.of(0.06, v, a, j);
        double ax = ofAcceleration.equals("X") ? a * 0.6 : 50;
        double ay = ofAcceleration.equals("Y") ? a * 0.8 : 50;
        double jx = ofJerk.equals("X") ? j * 0.6 : 5000;
        double jy = ofJerk.equals("Y") ? j * 0.8 : 5000;
        DynamicLimits limits = limits(
                new AxisLimits(FREE, ax, jx),
                new AxisLimits(FREE, ay, jy),
                ofAcceleration.equals("PATH") ? a : 50,
                ofJerk.equals("PATH") ? j : 5000);
        MotionCurve motion =
                MotionSolver.solve(new PathPieces(1).line(0.036, 0.048), FeedCaps.same(v, 4), limits, SETTINGS);

        GoverningLimit jerk = GoverningLimit.valueOf(ofJerk + "_JERK");
        GoverningLimit acceleration = GoverningLimit.valueOf(ofAcceleration + "_ACCELERATION");
        GoverningLimit[] names = {jerk, acceleration, jerk, GoverningLimit.PROCESS, jerk, acceleration, jerk};
        double[] middles = phases.middles();
        for (int i = 0; i < 7; i++) {
            int interval = motion.intervalAt(motion.placeAt(middles[i]));
            assertThat(motion.limit(interval)).as("phase %d", i).isEqualTo(names[i]);
        }
        assertThat(motion.limitCode(motion.intervalAt(0.03))).isEqualTo((byte) 4);
    }

    @Test
    void theSpeedOfAnAxisIsNamedWhereItCapsALine() {
        DynamicLimits limits = limits(new AxisLimits(0.06, FREE, FREE), new AxisLimits(0.4, FREE, FREE), 0.5, 5);
        MotionCurve motion =
                MotionSolver.solve(new PathPieces(1).line(0.06, 0.08), FeedCaps.same(0.2, 4), limits, SETTINGS);

        assertThat(motion.feedAt(0.05)).isCloseTo(0.1, within(1e-6));
        assertThat(motion.limit(motion.intervalAt(0.05))).isEqualTo(GoverningLimit.X_SPEED);
    }

    /** Lines and arcs that go on smoothly, with caps that change on the way. */
    private static PathPieces wavy(Random random, int n) {
        PathPieces pieces = new PathPieces(n);
        double heading = 0.3;
        for (int i = 0; i < n; i++) {
            if (i % 3 == 0) {
                double length = 0.01 + 0.02 * random.nextDouble();
                pieces.line(length * Math.cos(heading), length * Math.sin(heading));
            } else {
                double sweep = 2 * random.nextDouble() - 1;
                pieces.arc(Math.cos(heading), Math.sin(heading), 0.02 + 0.03 * random.nextDouble(), sweep);
                heading += sweep;
            }
        }
        return pieces;
    }

    private static FeedCaps caps(Random random, double length) {
        FeedCaps caps = new FeedCaps();
        for (double at = 0.01; at < length; at += 0.02 * random.nextDouble()) {
            caps.until(at, 0.03 + 0.2 * random.nextDouble(), 1);
        }
        return caps.until(FREE, 0.1, 1);
    }

    private static DynamicLimits machine(boolean hasAxes) {
        AxisLimits x = hasAxes ? new AxisLimits(0.15, 0.6, 20) : AxisLimits.NONE;
        AxisLimits y = hasAxes ? new AxisLimits(0.2, 0.5, 25) : AxisLimits.NONE;
        return new DynamicLimits(x, y, new PathLimits(0.5, 0.6, 15, 40), CornerRule.arc(1e-5));
    }

    @ParameterizedTest
    @CsvSource({"1, false", "2, false", "3, true", "4, true"})
    void smallWindowsLoseLittleTimeAndKeepAllLimits(long seed, boolean hasAxes) {
        Random random = new Random(seed);
        PathPieces pieces = wavy(random, 40);
        FeedCaps caps = caps(random, pieces.lengthM());
        MotionCurve whole = MotionSolver.solve(pieces, caps, machine(hasAxes), SETTINGS.withWindowNodes(100_000));
        MotionCurve inParts = MotionSolver.solve(pieces, caps, machine(hasAxes), SETTINGS.withWindowNodes(200));

        assertThat(inParts.timeS()).isCloseTo(whole.timeS(), within(1e-5 * whole.timeS()));
        for (MotionCurve motion : new MotionCurve[] {whole, inParts}) {
            assertThat(motion.lengthM()).isCloseTo(pieces.lengthM(), within(1e-12));
            requireLimits(motion, pieces, caps, machine(hasAxes));
        }
        int[] byLimit = {0, 0};
        for (int k = 0; k < inParts.intervals(); k++) {
            double middle = (inParts.placeM(k) + inParts.placeM(k + 1)) / 2;
            byLimit[whole.limit(whole.intervalAt(middle)) == inParts.limit(k) ? 0 : 1]++;
        }
        assertThat(byLimit[1]).isLessThan(byLimit[0] / 8);
    }

    private static void requireLimits(MotionCurve motion, PathPieces pieces, FeedCaps caps, DynamicLimits limits) {
        int cap = 0;
        int piece = 0;
        double[] before = {};
        for (int k = 0; k < motion.intervals(); k++) {
            double middle = (motion.placeM(k) + motion.placeM(k + 1)) / 2;
            cap += caps.untilM(cap) < middle ? 1 : 0;
            while (pieces.startM(piece + 1) < middle) {
                piece++;
            }
            double feed = motion.feedAt(middle);
            double a = motion.acceleration(k);
            double heading = pieces.headingAt(piece, middle);
            double across = pieces.curvature(piece) * feed * feed;
            double ax = a * Math.cos(heading) - across * Math.sin(heading);
            double ay = a * Math.sin(heading) + across * Math.cos(heading);
            assertThat(feed).isLessThanOrEqualTo(caps.feedMPerS(cap) * (1 + 1e-6));
            assertThat(Math.abs(a)).isLessThanOrEqualTo(0.5 * (1 + 1e-5));
            assertThat(Math.abs(across)).isLessThanOrEqualTo(0.6 * (1 + 1e-5));
            assertThat(feed * Math.abs(Math.cos(heading)))
                    .isLessThanOrEqualTo(limits.x().speedMPerS() * 1.001);
            assertThat(feed * Math.abs(Math.sin(heading)))
                    .isLessThanOrEqualTo(limits.y().speedMPerS() * 1.001);
            assertThat(Math.abs(ax)).isLessThanOrEqualTo(limits.x().accelerationMPerS2() * 1.005);
            assertThat(Math.abs(ay)).isLessThanOrEqualTo(limits.y().accelerationMPerS2() * 1.005);
            double[] now = {a, ax, ay, piece};
            if (before.length > 0 && before[3] == piece && motion.square(k) > 0) {
                double time = (motion.timeS(k + 1) - motion.timeS(k - 1)) / 2;
                assertThat(Math.abs(a - before[0])).isLessThanOrEqualTo(15 * time * (1 + 1e-5));
                assertThat(Math.abs(ax - before[1]))
                        .isLessThanOrEqualTo(limits.x().jerkMPerS3() * time * 1.03);
                assertThat(Math.abs(ay - before[2]))
                        .isLessThanOrEqualTo(limits.y().jerkMPerS3() * time * 1.03);
            }
            before = now;
        }
    }

    /** Steady runs between changes of the cap add their length over their feed to the time. */
    @ParameterizedTest
    @CsvSource({"0.02, 0.1", "0.1, 0.02", "0.05, 0.06"})
    void longerSteadyRunsAddTheirOwnTime(double first, double second) {
        double before = 0;
        for (double more : new double[] {0, 0.3, 1.7}) {
            double length = 0.4 + more;
            FeedCaps caps = new FeedCaps()
                    .until(length, first, 1)
                    .until(2 * length, second, 2)
                    .until(FREE, first, 3);
            double time = MotionSolver.solve(new PathPieces(1).line(3 * length, 0), caps, along(0.5, 5), SETTINGS)
                    .timeS();
            double rest = time - more * (2 / first + 1 / second);
            assertThat(rest).isCloseTo(before == 0 ? rest : before, within(1e-6 * time));
            before = before == 0 ? rest : before;
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {5, 6})
    void pathsWithStopsTakeTheTimesOfTheirParts(long seed) {
        Random random = new Random(seed);
        PathPieces pieces = new PathPieces(4);
        double sum = 0;
        for (int i = 0; i < 12; i++) {
            double length = Math.pow(10, -5 + 4 * random.nextDouble());
            double heading = 1.3 * i;
            pieces.line(length * Math.cos(heading), length * Math.sin(heading));
            sum += Phases.of(length, 0.2, 0.5, 5).timeS();
        }
        MotionCurve motion = MotionSolver.solve(pieces, FeedCaps.same(0.2, 1), along(0.5, 5), SETTINGS);

        assertThat(motion.timeS()).isCloseTo(sum, within(1e-3 * sum));
        for (int i = 1; i < 12; i++) {
            assertThat(motion.feedAt(pieces.startM(i))).isZero();
        }
    }

    /** Between two stops a picometre apart one node holds the motion: within a quarter of the time of constant jerk. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-12, 1.9e-12})
    void betweenStopsAPicometreApartThereIsAMotion(double length) {
        PathPieces pieces = new PathPieces(3).line(0.01, 0).line(-length, 0).line(0.01, 0);
        DynamicLimits limits = new DynamicLimits(
                AxisLimits.NONE, AxisLimits.NONE, PathLimits.ofAcceleration(0.5).withJerk(5), CornerRule.stop(1e-9));
        MotionCurve motion = MotionSolver.solve(pieces, FeedCaps.same(1, 1), limits, SETTINGS);
        double there = motion.timeAt(0.01 + length) - motion.timeAt(0.01);

        assertThat(there / Math.cbrt(32 * length / 5)).isBetween(0.75, 1.01);
        double whole = 2 * Phases.of(0.01, 1, 0.5, 5).timeS();
        assertThat(motion.timeS()).isCloseTo(whole + there, within(1e-3 * whole));
    }

    /** Without a limit of acceleration in play, f times the jerk takes f^(-1/3) of the time; and with each limit less. */
    @Test
    void aLooserLimitNeverTakesLonger() {
        Random random = new Random(7);
        PathPieces pieces = wavy(random, 12);
        FeedCaps caps = caps(random, pieces.lengthM());
        double before = FREE;
        for (double factor : new double[] {1, 1.5, 2, 4}) {
            double time = MotionSolver.solve(
                            pieces,
                            caps,
                            new DynamicLimits(
                                    new AxisLimits(0.15, 0.6, 10 * factor),
                                    AxisLimits.NONE,
                                    new PathLimits(0.2 * factor, FREE, 8 * factor, 20 * factor),
                                    CornerRule.arc(1e-5)),
                            SETTINGS)
                    .timeS();
            assertThat(time).isLessThan(before);
            before = time;
        }
    }
}
