package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Nodes of a grid: places, caps by all that they touch, the reference's feed, the size of steps, intervals at the cap. */
class JerkGridTest {

    private static final double FREE = Double.POSITIVE_INFINITY;

    private record Grid(Stretches stretches, MotionCurve reference, GridNodes nodes) {
        static Grid of(PathPieces pieces, FeedCaps caps, DynamicLimits limits, double stepsPerJerkTime) {
            Stretches stretches = new Stretches(pieces, caps, limits);
            MotionCurve reference = AccelerationWalk.run(stretches, Math.PI / 100);
            JerkGrid grid = new JerkGrid(stretches, reference, stepsPerJerkTime);
            GridNodes nodes = new GridNodes(8);
            while (!grid.isComplete()) {
                grid.extend(nodes);
            }
            return new Grid(stretches, reference, nodes);
        }

        double place(int node) {
            return nodes.placeM[node];
        }

        /** Time of an interval with the reference. */
        double time(int k) {
            return reference.timeAt(place(k + 1)) - reference.timeAt(place(k));
        }

        /** Lowest square of all that an interval touches, at one of its nodes. */
        double lowest(int k, int node) {
            double lowest = FREE;
            for (int at = 0; at < stretches.count(); at++) {
                double start = stretches.startM(at);
                double end = stretches.startM(at + 1);
                if (start > place(k) && start < place(k + 1)) {
                    lowest = Math.min(lowest, stretches.pointSquare(at));
                }
                if (Math.max(start, place(k)) < Math.min(end, place(k + 1))) {
                    lowest = Math.min(lowest, stretches.capSquare(at));
                    if (stretches.isTurning(at)) {
                        double heading = stretches.headingAt(at, place(node));
                        double speed = stretches.limits.axisSpeed(Math.cos(heading), Math.sin(heading));
                        lowest = Math.min(lowest, speed * speed);
                    }
                }
            }
            return lowest;
        }

        double cap(int node) {
            double cap = FREE;
            for (int at = 0; at <= stretches.count(); at++) {
                cap = stretches.startM(at) == place(node) ? Math.min(cap, stretches.pointSquare(at)) : cap;
            }
            cap = node > 0 ? Math.min(cap, lowest(node - 1, node)) : cap;
            return node < nodes.count - 1 ? Math.min(cap, lowest(node, node)) : cap;
        }
    }

    private static DynamicLimits along(double acceleration, double jerk) {
        return new DynamicLimits(
                AxisLimits.NONE, AxisLimits.NONE, new PathLimits(acceleration, FREE, jerk, FREE), CornerRule.arc(1e-5));
    }

    private static PathPieces pieces(Random random) {
        PathPieces pieces = new PathPieces(1);
        double heading = 0;
        for (int i = 0; i < 60; i++) {
            double length = Math.pow(10, -6 + 4.5 * random.nextDouble());
            if (random.nextBoolean()) {
                pieces.line(length * Math.cos(heading), length * Math.sin(heading));
            } else {
                double radius = 0.002 + 0.02 * random.nextDouble();
                double sweep = (random.nextBoolean() ? 1 : -1) * length / radius;
                pieces.arc(Math.cos(heading), Math.sin(heading), radius, sweep);
                heading += sweep;
            }
            heading += random.nextInt(4) == 0 ? random.nextGaussian() : 0;
        }
        return pieces;
    }

    private static FeedCaps caps(Random random, double length) {
        FeedCaps caps = new FeedCaps();
        for (double at = 0; at < length; at += 0.03 * random.nextDouble()) {
            caps.until(at, 0.02 + 0.2 * random.nextDouble(), 1);
        }
        return caps.until(FREE, 0.1, 1);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void nodesCoverThePathUnderAllCapsThatTheyTouch(long seed) {
        Random random = new Random(seed);
        PathPieces pieces = pieces(random);
        DynamicLimits limits = seed % 2 == 0
                ? along(0.5, 10)
                : new DynamicLimits(
                        new AxisLimits(0.1, 0.6, 20),
                        new AxisLimits(0.07, 0.4, 30),
                        new PathLimits(0.5, FREE, 20, FREE),
                        CornerRule.pulse(1e-5));
        Grid grid = Grid.of(pieces, caps(random, pieces.lengthM()), limits, 8);

        assertThat(grid.place(0)).isZero();
        assertThat(grid.place(grid.nodes.count - 1)).isEqualTo(grid.stretches.startM(grid.stretches.count()));
        for (int i = 0; i < grid.nodes.count; i++) {
            assertThat(grid.nodes.capSquare[i]).as("node %d", i).isCloseTo(grid.cap(i), within(1e-15));
            double feed = grid.reference.feedAt(Math.min(grid.place(i), grid.reference.lengthM()));
            assertThat(grid.nodes.reference[i]).isCloseTo(feed * feed, within(1e-12));
            if (i > 0) {
                assertThat(grid.place(i)).isGreaterThan(grid.place(i - 1));
            }
            if (i < grid.nodes.count - 1) {
                int stretch = grid.nodes.stretch[i];
                assertThat(grid.place(i)).isBetween(grid.stretches.startM(stretch), grid.stretches.startM(stretch + 1));
            }
        }
        assertThat(grid.nodes.capWhy[0]).isEqualTo(GoverningLimit.REST.code());
        assertThat(grid.nodes.capWhy[grid.nodes.count - 1]).isEqualTo(GoverningLimit.REST.code());
    }

    /** From rest with 0.5 up to 0.1 on 10 mm, back at the end; jerk time 0.1 s for a jerk of 5. */
    @ParameterizedTest
    @CsvSource({"8, 0.3", "16, 0.3", "8, 2", "32, 0.05"})
    void stepsAreAShareOfTheJerkTimeBesideEventsAndGrowOffThem(double stepsPerJerkTime, double length) {
        Grid grid = Grid.of(new PathPieces(1).line(length, 0), FeedCaps.same(0.1, 1), along(0.5, 5), stepsPerJerkTime);
        double step = 0.1 / stepsPerJerkTime;
        int last = grid.nodes.count - 1;
        double longest = 0;
        for (int k = 0; k < last; k++) {
            double fromEvent = Math.max(0, Math.min(grid.place(k) - 0.01, length - 0.01 - grid.place(k + 1)) / 0.1);
            if (grid.place(k) >= 0.01 && grid.place(k + 1) <= length - 0.01) {
                double allowed = Math.max(step, 0.5 * (fromEvent + step - 0.2) + step);
                assertThat(grid.time(k)).isLessThanOrEqualTo(allowed * 1.01);
                assertThat(grid.time(k)).isGreaterThan(0.8 * step);
                longest = Math.max(longest, grid.time(k));
            }
            assertThat(grid.time(k) - grid.time(last - 1 - k)).isCloseTo(0, within(0.02 * grid.time(k)));
        }
        if (length > 1) {
            assertThat(longest).isGreaterThan(10 * step);
        }
        // the ramp of constant jerk and the ramp of constant acceleration take a given number of steps
        long ramp = IntStream.range(0, last)
                .filter(k -> grid.place(k) < 0.01 - 1e-9)
                .count();
        assertThat((double) ramp).isBetween(2 * stepsPerJerkTime, 4.0 * stepsPerJerkTime);
    }

    /** Near rest the steps are those of constant jerk: places j t^3/6 up to 8/20.25 a^3/j^2. */
    @Test
    void nearRestStepsAreEvenInTheTimeOfConstantJerk() {
        double a = 0.5;
        double j = 5;
        Grid grid = Grid.of(new PathPieces(1).line(0.3, 0), FeedCaps.same(0.1, 1), along(a, j), 8);
        double end = 8 / 20.25 * a * a * a / (j * j);
        double first = Math.cbrt(6 * grid.place(1) / j);
        int inside = 0;
        for (int k = 1; grid.place(k) < end; k++) {
            double own = Math.cbrt(6 * grid.place(k) / j) - Math.cbrt(6 * grid.place(k - 1) / j);
            assertThat(own).isCloseTo(first, within(0.2 * first));
            double back = Math.cbrt(6 * (0.3 - grid.place(grid.nodes.count - 1 - k)) / j);
            assertThat(back).isCloseTo(Math.cbrt(6 * grid.place(k) / j), within(0.02 * back));
            inside++;
        }
        // the jerk time there is that of the fastest feed of the part, the ramp's end
        assertThat(inside).isBetween(8, 20);
    }

    @Test
    void oneIntervalInTheMiddleOfALongRunAtTheCapIsSteady() {
        // the margin is 3.5 jerk times of 0.1 s at 0.1 m/s on each side
        for (double cruise : new double[] {0.03, 0.068, 0.0705, 0.075, 0.08, 0.09, 0.2, 1.5}) {
            Grid grid = Grid.of(new PathPieces(1).line(cruise + 0.02, 0), FeedCaps.same(0.1, 1), along(0.5, 5), 8);
            int steady = 0;
            for (int k = 0; k < grid.nodes.count - 1; k++) {
                if (grid.nodes.isSteady[k]) {
                    steady++;
                    assertThat(grid.place(k)).isGreaterThanOrEqualTo(0.01 + 0.035 - 1e-12);
                    assertThat(grid.place(k + 1)).isLessThanOrEqualTo(cruise + 0.01 - 0.035 + 1e-12);
                    assertThat(grid.place(k)).isLessThanOrEqualTo(cruise / 2 + 0.01);
                    assertThat(grid.place(k + 1)).isGreaterThan(cruise / 2 + 0.01);
                }
            }
            assertThat(steady).as("cruise %s", cruise).isBetween(cruise > 0.1 ? 1 : 0, cruise < 0.07 ? 0 : 1);
        }
    }

    /** Where only the reason of the cap changes, the acceleration does not jump, and steps stay as they are. */
    @Test
    void aChangeOfTheReasonAloneIsNoEvent() {
        FeedCaps caps = new FeedCaps().until(0.7, 0.1, 1).until(1.1, 0.1, 2).until(FREE, 0.1, 3);
        Grid cut = Grid.of(new PathPieces(1).line(2, 0), caps, along(0.5, 5), 8);
        Grid whole = Grid.of(new PathPieces(1).line(2, 0), FeedCaps.same(0.1, 1), along(0.5, 5), 8);

        assertThat(cut.stretches.count()).isEqualTo(3);
        assertThat(cut.nodes.count).isBetween(whole.nodes.count, whole.nodes.count + 4);
        for (int k = 0; k < cut.nodes.count - 1; k++) {
            double fromEvent = Math.min(cut.place(k), 2 - cut.place(k + 1)) - 0.01;
            if (fromEvent > 0.3) {
                assertThat(cut.time(k)).isGreaterThan(0.1 * fromEvent / 0.1);
            }
        }
    }

    @Test
    void arcsWithLimitsOfTheAxesAreNotSteadyAndHaveStepsOfTheirAngle() {
        DynamicLimits limits = new DynamicLimits(
                new AxisLimits(1, 5, 50), new AxisLimits(1, 5, 50), PathLimits.NONE, CornerRule.arc(1e-5));
        PathPieces slow = new PathPieces(1).arc(1, 0, 0.02, 3 * Math.PI);
        Grid grid = Grid.of(slow, FeedCaps.same(0.001, 1), limits, 8);
        double longest = 0;
        for (int k = 0; k < grid.nodes.count - 1; k++) {
            assertThat(grid.nodes.isSteady[k]).isFalse();
            longest = Math.max(longest, (grid.place(k + 1) - grid.place(k)) / 0.02);
        }
        // steps of 0.6/8 rad on top of those of the time
        assertThat(longest).isBetween(0.3 * 0.6 / 8, 0.6 / 8 * (1 + 1e-9));
        assertThat(grid.nodes.count).isGreaterThan((int) (3 * Math.PI / (0.6 / 8)));
    }

    @Test
    void manyStretchesShorterThanAStepShareIntervals() {
        PathPieces pieces = new PathPieces(1000);
        for (int i = 0; i < 1000; i++) {
            double heading = 1e-6 * (i % 2);
            pieces.line(1e-4 * Math.cos(heading), 1e-4 * Math.sin(heading));
        }
        DynamicLimits limits = new DynamicLimits(
                AxisLimits.NONE, AxisLimits.NONE, new PathLimits(0.5, FREE, 5, FREE), CornerRule.arc(1));
        Grid grid = Grid.of(pieces, FeedCaps.same(0.1, 1), limits, 8);
        Grid one = Grid.of(new PathPieces(1).line(0.1, 0), FeedCaps.same(0.1, 1), limits, 8);

        assertThat(grid.stretches.count()).isEqualTo(1000);
        // a step at the cap is 1.25 mm; near rest stretches are longer than steps
        assertThat(grid.nodes.count).isBetween(one.nodes.count, 400);
    }
}
