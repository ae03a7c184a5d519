package dev.waterjet.motion;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Times, places and feeds of a motion against constant acceleration, and sums by piece against sums of small parts. */
class MotionCurveTest {

    private static MotionCurve curve(Random random, int intervals) {
        MotionCurve curve = new MotionCurve(1);
        double at = 0;
        for (int i = 0; i < intervals; i++) {
            at += 0.1 + random.nextDouble();
            double square = i == intervals - 1 ? 0 : 0.1 + random.nextDouble();
            curve.add(at, square, (byte) (i % 2 == 0 ? random.nextInt(3) : 108 + random.nextInt(3)));
        }
        return curve;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void intervalsHaveConstantAcceleration(long seed) {
        MotionCurve curve = curve(new Random(seed), 20);
        double time = 0;
        for (int k = 0; k < curve.intervals(); k++) {
            double length = curve.placeM(k + 1) - curve.placeM(k);
            double v = Math.sqrt(curve.square(k));
            double w = Math.sqrt(curve.square(k + 1));
            double a = curve.acceleration(k);
            double own = 2 * length / (v + w);
            assertThat(a).isCloseTo((w - v) / own, within(1e-12));
            assertThat(curve.timeS(k)).isCloseTo(time, within(1e-12));
            for (double share : new double[] {0, 0.01, 0.3, 0.9, 1}) {
                double t = share * own;
                double at = curve.placeM(k) + v * t + a * t * t / 2;
                assertThat(curve.placeAt(time + t)).isCloseTo(at, within(1e-9));
                assertThat(curve.placeIn(k, time + t)).isCloseTo(at, within(1e-9));
                assertThat(curve.timeIn(k, at)).isCloseTo(time + t, within(1e-7));
                assertThat(curve.feedIn(k, at)).isCloseTo(v + a * t, within(1e-7));
                assertThat(curve.squareIn(k, at)).isCloseTo(v * v + 2 * a * (at - curve.placeM(k)), within(1e-9));
                assertThat(curve.timeAt(Math.min(at, curve.lengthM()))).isCloseTo(time + t, within(1e-7));
                assertThat(curve.feedAt(Math.min(at, curve.lengthM()))).isCloseTo(v + a * t, within(1e-7));
            }
            assertThat(curve.placeIn(k, time - 1)).isEqualTo(curve.placeM(k));
            assertThat(curve.placeIn(k, time + own * (1 + 1e-12))).isCloseTo(curve.placeM(k + 1), within(1e-9));
            assertThat(curve.squareIn(k, curve.placeM(k) - 1)).isEqualTo(curve.square(k));
            assertThat(curve.squareIn(k, curve.placeM(k + 1) + 1)).isCloseTo(curve.square(k + 1), within(1e-12));
            time += own;
        }
        assertThat(curve.timeS()).isCloseTo(time, within(1e-12));
        assertThat(curve.timeS(curve.intervals())).isEqualTo(curve.timeS());
        assertThat(curve.placeAt(-1)).isZero();
    }

    @Test
    void aNodeBelongsToTheIntervalBeforeIt() {
        MotionCurve curve = curve(new Random(7), 5);

        assertThat(curve.intervalAt(0)).isZero();
        for (int k = 0; k < 5; k++) {
            assertThat(curve.intervalAt(curve.placeM(k + 1))).isEqualTo(k);
            assertThat(curve.intervalAt((curve.placeM(k) + curve.placeM(k + 1)) / 2))
                    .isEqualTo(k);
        }
        assertRefused(() -> curve.feedAt(-1e-9), "must-be-at-least", "distance along the path", 0);
        assertRefused(
                () -> curve.timeAt(curve.lengthM() + 1e-9),
                "must-be-at-most",
                "distance along the path",
                curve.lengthM());
        assertRefused(() -> curve.feedAt(Double.NaN), "must-be-at-most");
    }

    @Test
    void steadyIntervalsUnderOneLimitAreOne() {
        MotionCurve curve = new MotionCurve(1);
        curve.add(1, 4, (byte) 1);
        curve.add(2, 4, (byte) 1);
        curve.add(4, 4, (byte) 1);
        curve.add(5, 4, (byte) 2);
        curve.add(6, 4, (byte) 2);
        curve.add(7, 1, (byte) 2);
        curve.add(8, 1, (byte) 2);
        curve.add(9, 0, (byte) 2);

        // the first one speeds up, so that it stays apart from those behind it
        assertThat(curve.intervals()).isEqualTo(6);
        assertThat(curve.placeM(2)).isEqualTo(4);
        assertThat(curve.limitCode(1)).isEqualTo((byte) 1);
        assertThat(curve.placeM(3)).isEqualTo(6);
        assertThat(curve.limitCode(2)).isEqualTo((byte) 2);
        assertThat(curve.timeS()).isCloseTo(1 + 3 / 2.0 + 2 / 2.0 + 2 / 3.0 + 1 + 2, within(1e-12));
        assertThat(curve.limit(0)).isEqualTo(GoverningLimit.PROCESS);
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15})
    void sumsByPieceAreThoseOfSmallParts(long seed) {
        Random random = new Random(seed);
        MotionCurve curve = curve(random, 30);
        int n = 12;
        double[] ends = random.doubles(n, 0, curve.lengthM()).sorted().toArray();
        ends[3] = curve.placeM(9);
        ends[4] = curve.placeM(10);
        Arrays.sort(ends);
        ends[n - 1] = curve.lengthM() + 1e-12;
        PieceMotion sums = PieceMotion.of(curve, ends);
        double at = 0;
        for (int i = 0; i < n; i++) {
            double end = Math.min(ends[i], curve.lengthM());
            double peak = Math.max(curve.feedAt(at), curve.feedAt(end));
            for (int k = 0; k < curve.intervals(); k++) {
                double from = Math.max(at, curve.placeM(k));
                double to = Math.min(end, curve.placeM(k + 1));
                if (from < to) {
                    peak = Math.max(peak, Math.max(curve.feedIn(k, from), curve.feedIn(k, to)));
                }
            }
            assertThat(sums.entryMPerS[i]).isCloseTo(curve.feedAt(at), within(1e-12));
            assertThat(sums.exitMPerS[i]).isCloseTo(curve.feedAt(end), within(1e-12));
            assertThat(sums.peakMPerS[i]).isCloseTo(peak, within(1e-12));
            assertThat(sums.timeS[i]).isCloseTo(curve.timeAt(end) - curve.timeAt(at), within(1e-9));
            at = end;
        }
    }

    @Test
    void eachCodeHasItsLimit() {
        for (GoverningLimit limit : GoverningLimit.values()) {
            if (limit != GoverningLimit.PROCESS) {
                assertThat(GoverningLimit.ofCode(limit.code())).isEqualTo(limit);
            }
        }
        assertThat(GoverningLimit.ofCode(99)).isEqualTo(GoverningLimit.PROCESS);
        for (FeedLimit limit : FeedLimit.values()) {
            if (limit.isOfFront() || limit == FeedLimit.MINIMUM_FEED) {
                assertThat(FeedLimit.ofCode((byte) limit.processCode())).isEqualTo(limit);
            } else {
                assertThat(limit.processCode()).isGreaterThan(FeedLimit.MINIMUM_FEED.processCode());
            }
        }
        assertThat(FeedLimit.ofCode(GoverningLimit.X_SPEED.code())).isEqualTo(FeedLimit.MACHINE_SPEED);
        assertThat(FeedLimit.ofCode(GoverningLimit.ARC_JERK.code())).isEqualTo(FeedLimit.CENTRIPETAL);
        assertThat(FeedLimit.ofCode(GoverningLimit.CURVATURE_JUMP.code())).isEqualTo(FeedLimit.MACHINE_CORNER);
        assertThat(FeedLimit.ofCode(GoverningLimit.REST.code())).isEqualTo(FeedLimit.PATH_END);
        assertThat(FeedLimit.ofCode(GoverningLimit.Y_ACCELERATION.code())).isEqualTo(FeedLimit.ACCELERATION);
        assertThat(FeedLimit.ofCode(GoverningLimit.Y_JERK.code())).isEqualTo(FeedLimit.JERK);
    }
}
