package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The solution of a window satisfies the conditions of an optimum (Karush, Kuhn and Tucker), with rows written out here from
 * differences of the squares, and its multipliers add up to the time.
 */
class JerkOptimumTest {

    private static final double FREE = Double.POSITIVE_INFINITY;

    /** A window over a whole path. */
    private record Whole(JerkWindow window, GridNodes nodes, RowLayer layer, InteriorPoint solver) {
        static Whole of(PathPieces pieces, FeedCaps caps, DynamicLimits limits) {
            Stretches stretches = new Stretches(pieces, caps, limits);
            MotionCurve reference = AccelerationWalk.run(stretches, Math.PI / 100);
            JerkGrid grid = new JerkGrid(stretches, reference, 8);
            GridNodes nodes = new GridNodes(8);
            while (!grid.isComplete()) {
                grid.extend(nodes);
            }
            RowLayer layer = new RowLayer(stretches, nodes);
            JerkWindow window = new JerkWindow(layer, nodes, nodes.count);
            return new Whole(window, nodes, layer, new InteriorPoint(window));
        }

        int last() {
            return nodes.count - 1;
        }

        void lay(double share) {
            window.lay(last(), true, true, share);
        }
    }

    private static FeedCaps steps(Random random) {
        FeedCaps caps = new FeedCaps();
        for (int i = 1; i < 8; i++) {
            caps.until(0.02 * i, 0.01 + 0.1 * random.nextDouble(), i);
        }
        return caps.until(FREE, 0.05, 9);
    }

    private static DynamicLimits along(double acceleration, double jerk) {
        return new DynamicLimits(
                AxisLimits.NONE, AxisLimits.NONE, new PathLimits(acceleration, FREE, jerk, FREE), CornerRule.arc(1e-5));
    }

    private static Whole curved(Random random) {
        PathPieces pieces = new PathPieces(1).line(0.03, 0.01);
        double heading = Math.atan2(0.01, 0.03);
        for (int i = 0; i < 4; i++) {
            double sweep = (random.nextBoolean() ? 1 : -1) * (0.3 + random.nextDouble());
            pieces.arc(Math.cos(heading), Math.sin(heading), 0.02 + 0.02 * random.nextDouble(), sweep);
            heading += sweep;
        }
        pieces.line(0.02 * Math.cos(heading), 0.02 * Math.sin(heading));
        DynamicLimits limits = new DynamicLimits(
                new AxisLimits(0.12, 0.5, 9), new AxisLimits(0.2, 0.8, 7), PathLimits.NONE, CornerRule.arc(1e-5));
        return Whole.of(pieces, FeedCaps.same(0.3, 3), limits);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void theGradientOfTheTimeIsBalancedByTheLimits(long seed) {
        Random random = new Random(seed);
        double a = 0.2 + random.nextDouble();
        double j = 4 + 10 * random.nextDouble();
        Whole whole = Whole.of(new PathPieces(1).line(0.2, 0), steps(random), along(a, j));
        whole.lay(0.7);
        assertThat(whole.solver.solve()).isTrue();

        JerkWindow window = whole.window;
        double[] x = window.x;
        double[] h = window.lengthM;
        int last = whole.last();
        double[] gradient = new double[last + 1];
        double[] ofTime = new double[last + 1];
        for (int k = 0; k < last; k++) {
            double v = Math.sqrt(x[k]);
            double w = Math.sqrt(x[k + 1]);
            ofTime[k] -= v == 0 ? 0 : h[k] / ((v + w) * (v + w) * v);
            ofTime[k + 1] -= w == 0 ? 0 : h[k] / ((v + w) * (v + w) * w);
        }
        for (int i = 1; i < last; i++) {
            gradient[i] += ofTime[i] + window.speed.multiplier(i);
            assertThat(x[i]).isLessThanOrEqualTo(window.cap[i] * (1 + 1e-8));
        }
        for (int row = 0; row < window.acceleration.rows(); row++) {
            int k = window.acceleration.interval(row);
            double value = (x[k + 1] - x[k]) / (2 * h[k] * a);
            double z = Math.signum(value) * window.acceleration.multiplier(row) / (2 * h[k] * a);
            gradient[k + 1] += z;
            gradient[k] -= z;
            assertThat(Math.abs(value)).isLessThanOrEqualTo(1 + 1e-8);
        }
        addJerks(window, j, gradient);
        double most = 0;
        for (int i = 1; i < last; i++) {
            most = Math.max(most, Math.abs(gradient[i] / ofTime[i]));
        }
        assertThat(most).isLessThan(2e-2);
    }

    private static void addJerks(JerkWindow window, double j, double[] gradient) {
        double[] x = window.x;
        double[] h = window.lengthM;
        for (int row = 0; row < window.jerk.rows(); row++) {
            int i = window.jerk.node(row);
            double before = (x[i] - x[i - 1]) / (2 * h[i - 1] * j);
            double behind = (x[i + 1] - x[i]) / (2 * h[i] * j);
            double[] v = {Math.sqrt(x[i - 1]), Math.sqrt(x[i]), Math.sqrt(x[i + 1])};
            double first = h[i - 1] / (v[0] + v[1]);
            double second = h[i] / (v[1] + v[2]);
            assertThat(Math.abs(behind - before)).isLessThanOrEqualTo((first + second) * (1 + 1e-8));
            double z = window.jerk.multiplier(row);
            double sign = Math.signum(behind - before);
            gradient[i - 1] += z * (sign / (2 * h[i - 1] * j) + slope(first, v[0], v[1]));
            gradient[i] += z
                    * (-sign / (2 * h[i - 1] * j)
                            - sign / (2 * h[i] * j)
                            + slope(first, v[1], v[0])
                            + slope(second, v[1], v[2]));
            gradient[i + 1] += z * (sign / (2 * h[i] * j) + slope(second, v[2], v[1]));
        }
    }

    /** Minus the derivative of {@code h/(v + w)} by the square of v; a node at rest is fixed. */
    private static double slope(double half, double v, double w) {
        return v == 0 ? 0 : half / (v + w) / (2 * v);
    }

    /** A motion f times as fast needs f^2 of the squares and accelerations and f^3 of the jerks. */
    private static double sumOfSavings(JerkWindow window) {
        double sum = 0;
        for (int i = window.from(); i <= window.to(); i++) {
            sum += 2 * window.speed.multiplier(i) * window.cap[i];
        }
        for (int r = 0; r < window.acceleration.rows(); r++) {
            sum += 2 * window.acceleration.multiplier(r);
        }
        for (int r = 0; r < window.jerk.rows(); r++) {
            sum += 3 * window.jerk.multiplier(r) * JerkRows.bound(window.jerk.node(r), window.time);
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void savingsOfAllLimitsAddUpToTheTime(long seed) {
        Random random = new Random(seed);
        for (Whole whole :
                new Whole[] {curved(random), Whole.of(new PathPieces(1).line(0.2, 0.1), steps(random), along(0.4, 8))
                }) {
            whole.lay(0.7);
            assertThat(whole.solver.solve()).isTrue();

            double time = whole.window.evaluateTime();
            assertThat(sumOfSavings(whole.window)).isCloseTo(time, within(1e-3 * time));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23})
    void theOptimumDoesNotDependOnTheStart(long seed) {
        double before = 0;
        for (double share : new double[] {0.7, 0.3, 0.05, 1, 3}) {
            Whole whole = curved(new Random(seed));
            whole.lay(share);
            assertThat(whole.solver.solve()).isTrue();
            double time = whole.window.evaluateTime();
            assertThat(whole.window.evaluateRows()).isLessThan(1e-8);
            assertThat(time).isCloseTo(before == 0 ? time : before, within(1e-5 * time));
            before = time;
        }
    }

    @Test
    void aWindowStartsBelowItsCapsWithItsEndsAtRest() {
        Whole whole = curved(new Random(3));
        whole.lay(0.7);
        double[] x = whole.window.x;
        int last = whole.last();

        assertThat(whole.window.intervals()).isEqualTo(last);
        assertThat(whole.window.from()).isEqualTo(1);
        assertThat(whole.window.to()).isEqualTo(last - 1);
        assertThat(x[0]).isZero();
        assertThat(x[last]).isZero();
        // the caps of the nodes beside rest are lowered behind the start
        for (int i = 2; i < last - 1; i++) {
            assertThat(x[i]).isPositive().isLessThanOrEqualTo(0.7 * whole.window.cap[i] * (1 + 1e-12));
        }
        double total = whole.window.start();
        assertThat(total).isCloseTo(whole.window.evaluateTime(), within(1e-12 * total));
    }

    /** Half a step of jerk up to the middle of the first interval: v = j t^2/2 with h/2 = j t^3/6. */
    @Test
    void besideRestTheCapIsThatOfTheJerk() {
        Whole whole = Whole.of(new PathPieces(1).line(0.2, 0), FeedCaps.same(0.5, 3), along(2, 8));
        whole.lay(0.7);
        JerkWindow window = whole.window;
        int last = whole.last();
        double first = window.lengthM[0];
        double end = window.lengthM[last - 1];

        // the acceleration a in the middle of the interval is v^2/(2 h) = j t/2, where t = 2 h/v is its time
        assertThat(window.cap[1]).isCloseTo(Math.pow(2 * 8 * first * first, 2.0 / 3), within(1e-12));
        assertThat(window.cap[last - 1]).isCloseTo(Math.pow(2 * 8 * end * end, 2.0 / 3), within(1e-12));
        assertThat(window.capWhy(1)).isEqualTo(GoverningLimit.PATH_JERK.code());
        assertThat(window.capWhy(last - 1)).isEqualTo(GoverningLimit.PATH_JERK.code());
        for (int i = 2; i < last - 1; i++) {
            assertThat(window.cap[i]).isEqualTo(whole.nodes.capSquare[i]);
            assertThat(window.capWhy(i)).isEqualTo((byte) 3);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33, 34})
    void aMotionSlowedIntoItsLimitsTouchesOne(long seed) {
        Random random = new Random(seed);
        Whole whole = seed % 2 == 0
                ? curved(random)
                : Whole.of(new PathPieces(1).line(0.2, 0.1), steps(random), along(0.4, 8));
        whole.lay(1);
        double[] x = whole.window.x;
        for (int i = 1; i < whole.last(); i++) {
            x[i] *= seed < 33 ? 2 : 0.5 + random.nextDouble();
        }
        whole.window.scaleIntoLimits();

        assertThat(excess(whole, 1)).isLessThan(1e-9);
        assertThat(excess(whole, 1.001)).isGreaterThan(1e-4);
    }

    /** A slack that is the whole value counts the value itself as its residual. */
    private static double excess(Whole whole, double factor) {
        double[] x = whole.window.x.clone();
        for (int i = 0; i < x.length; i++) {
            whole.window.x[i] = 1e-6 * x[i];
        }
        whole.window.start();
        for (int i = 0; i < x.length; i++) {
            whole.window.x[i] = factor * x[i];
        }
        whole.window.evaluateTime();
        Slacks[] all = {whole.window.speed.slacks(), whole.window.acceleration.slacks(), whole.window.jerk.slacks()};
        for (Slacks slacks : all) {
            for (int i = 0; i < slacks.count(); i++) {
                slacks.start(i, 0, 0);
            }
        }
        double excess = whole.window.evaluateRows();
        System.arraycopy(x, 0, whole.window.x, 0, x.length);
        return excess;
    }

    @Test
    void aMotionThatKeepsItsLimitsIsNotScaled() {
        Whole whole = curved(new Random(5));
        whole.lay(0.01);
        double[] before = whole.window.x.clone();
        whole.window.scaleIntoLimits();

        assertThat(whole.window.x).containsExactly(before);
    }

    /** Of an interval the limit is named whose share of the savings is the largest; a node or row at its end counts half. */
    @ParameterizedTest
    @ValueSource(longs = {41, 42, 43})
    void anIntervalNamesTheLimitThatSavesMost(long seed) {
        Random random = new Random(seed);
        Whole whole =
                seed == 42 ? curved(random) : Whole.of(new PathPieces(1).line(0.2, 0.1), steps(random), along(0.4, 8));
        whole.lay(0.7);
        assertThat(whole.solver.solve()).isTrue();
        JerkWindow window = whole.window;
        WindowLimits limits = new WindowLimits(window);
        limits.find();
        for (int k = 0; k < whole.last(); k++) {
            double most = 0;
            double named = 0;
            for (int i = Math.max(1, k); i <= Math.min(whole.last() - 1, k + 1); i++) {
                double share = window.speed.multiplier(i) * window.cap[i];
                most = Math.max(most, share);
                named = window.capWhy(i) == limits.code(k) ? Math.max(named, share) : named;
            }
            for (int r = 0; r < window.acceleration.rows(); r++) {
                double share = window.acceleration.interval(r) == k ? 2 * window.acceleration.multiplier(r) : 0;
                most = Math.max(most, share);
                named = window.acceleration.why(r) == limits.code(k) ? Math.max(named, share) : named;
            }
            for (int r = 0; r < window.jerk.rows(); r++) {
                int i = window.jerk.node(r);
                double share =
                        i == k || i == k + 1 ? 1.5 * window.jerk.multiplier(r) * JerkRows.bound(i, window.time) : 0;
                most = Math.max(most, share);
                named = window.jerk.why(r) == limits.code(k) ? Math.max(named, share) : named;
            }
            assertThat(named).as("interval %d", k).isEqualTo(most);
        }
    }

    @Test
    void aNodeIsFreeWhereTheMotionIsSteadyOrGainsSpeedEvenly() {
        Whole whole = Whole.of(new PathPieces(1).line(0.5, 0), FeedCaps.same(0.1, 3), along(0.5, 5));
        whole.lay(0.7);
        assertThat(whole.solver.solve()).isTrue();
        // 0.1 s of jerk, 0.1 s of acceleration, 0.1 s of jerk on 15 mm, and the same at the end
        for (int i = 2; i < whole.last() - 1; i++) {
            double at = whole.nodes.placeM[i];
            boolean isSteady = at > 0.03 && at < 0.47;
            boolean isEven = at > 0.0025 && at < 0.0045;
            boolean isBraking = at > 0.486 && at < 0.499;
            boolean isByJerk = at < 0.0005 || (at > 0.0075 && at < 0.0135);
            if (isSteady || isEven) {
                assertThat(whole.window.isFree(i)).as("at %s", at).isTrue();
            } else if (isBraking || isByJerk) {
                assertThat(whole.window.isFree(i)).as("at %s", at).isFalse();
            }
        }
    }
}
