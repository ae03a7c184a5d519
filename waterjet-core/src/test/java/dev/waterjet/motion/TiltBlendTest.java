package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The tilt wanted against its pieces, and its blend against means taken by sums over small times. */
class TiltBlendTest {

    private static final int FINE = 4000;

    private static TiltingHead head(double speed, double acceleration) {
        return TiltingHead.of(
                Kind.ANGLE.of(0.5), Kind.ANGULAR_SPEED.of(speed), Kind.ANGULAR_ACCELERATION.of(acceleration));
    }

    /** Pieces with jumps, kept as plain rows beside the class under test. */
    private static final class Pieces {
        final double[] ends;
        final double[][] rows;
        final WantedTilt wanted = new WantedTilt();

        Pieces(int n) {
            ends = new double[n];
            rows = new double[n][];
        }

        static Pieces random(Random random, int n) {
            Pieces pieces = new Pieces(n);
            double at = 0;
            for (int i = 0; i < n; i++) {
                at += 0.2 + random.nextDouble();
                double[] row = random.doubles(4, -0.2, 0.2).toArray();
                pieces.ends[i] = at;
                pieces.rows[i] = row;
                pieces.wanted.add(at, row[0], row[1], row[2], row[3]);
            }
            return pieces;
        }

        double start(int i) {
            return i == 0 ? 0 : ends[i - 1];
        }

        /** Value of x (0) or y (1) at a time; constant before the start and behind the end. */
        double value(int axis, double at) {
            int i = 0;
            while (i < ends.length - 1 && ends[i] <= at) {
                i++;
            }
            double share = Math.max(0, Math.min(1, (at - start(i)) / (ends[i] - start(i))));
            return rows[i][axis] + share * (rows[i][axis + 2] - rows[i][axis]);
        }

        double end() {
            return ends[ends.length - 1];
        }
    }

    private static double sum(DoubleUnaryOperator value, double from, double to) {
        double step = (to - from) / FINE;
        double sum = 0;
        for (int i = 0; i < FINE; i++) {
            sum += value.applyAsDouble(from + (i + 0.5) * step);
        }
        return sum * step;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3, 70, 200})
    void theTiltWantedIsThatOfItsPieces(int n) {
        Random random = new Random(n);
        Pieces pieces = Pieces.random(random, n);
        WantedTilt wanted = pieces.wanted;
        double largest = 0;
        double jump = 0;
        for (int i = 0; i < n; i++) {
            double[] row = pieces.rows[i];
            largest = Math.max(largest, Math.max(Math.hypot(row[0], row[1]), Math.hypot(row[2], row[3])));
            if (i > 0) {
                double[] before = pieces.rows[i - 1];
                jump = Math.max(jump, Math.hypot(row[0] - before[2], row[1] - before[3]));
                assertThat(wanted.xAt(i, true)).isEqualTo(before[2]);
                assertThat(wanted.yAt(i, true)).isEqualTo(before[3]);
            }
            assertThat(wanted.xAt(i, false)).isEqualTo(row[0]);
            assertThat(wanted.yAt(i, false)).isEqualTo(row[1]);
            assertThat(wanted.timeS(i)).isEqualTo(pieces.start(i));
        }
        assertThat(wanted.pieces()).isEqualTo(n);
        assertThat(wanted.endS()).isEqualTo(pieces.end());
        assertThat(wanted.largest()).isCloseTo(largest, within(1e-15));
        assertThat(wanted.largestJump()).isCloseTo(jump, within(1e-15));
        // constant before the first time and behind the last one
        assertThat(wanted.xAt(0, true)).isEqualTo(pieces.rows[0][0]);
        assertThat(wanted.yAt(0, true)).isEqualTo(pieces.rows[0][1]);
        assertThat(wanted.xAt(n, true)).isEqualTo(pieces.rows[n - 1][2]);
        assertThat(wanted.yAt(n, true)).isEqualTo(pieces.rows[n - 1][3]);
        assertThat(wanted.xAt(n, false)).isEqualTo(pieces.rows[n - 1][2]);
        assertThat(wanted.yAt(n, false)).isEqualTo(pieces.rows[n - 1][3]);
        for (int k = 0; k < 100; k++) {
            double at = -0.5 + (pieces.end() + 1) * random.nextDouble();
            assertThat(wanted.x(at)).isCloseTo(pieces.value(0, at), within(1e-12));
            assertThat(wanted.y(at)).isCloseTo(pieces.value(1, at), within(1e-12));
        }
        for (int k = 0; k < 10; k++) {
            double at = -0.5 + Math.min(3, pieces.end() + 1) * random.nextDouble();
            assertThat(wanted.integralX(at)).isCloseTo(sum(t -> pieces.value(0, t), 0, at), within(2e-4));
            assertThat(wanted.integralY(at)).isCloseTo(sum(t -> pieces.value(1, t), 0, at), within(2e-4));
        }
        double whole = 0;
        for (int i = 0; i < n; i++) {
            whole += (pieces.ends[i] - pieces.start(i)) * (pieces.rows[i][0] + pieces.rows[i][2]) / 2;
        }
        assertThat(wanted.integralX(pieces.end())).isCloseTo(whole, within(1e-12));
        assertThat(wanted.integralX(pieces.end() + 2)).isCloseTo(whole + 2 * pieces.rows[n - 1][2], within(1e-12));
    }

    /** The two times that a search in steps of a quarter finds, with rates found at many places. */
    private static double[] times(Pieces pieces, double speed, double acceleration) {
        double most = pieces.wanted.largest();
        double jump = pieces.wanted.largestJump();
        double longest = Math.max(2 * most / speed, 2 * Math.sqrt(most / acceleration));
        double first = Math.max(Math.max(jump / speed, Math.sqrt(jump / acceleration)), longest / 16);
        while (first < longest && rate(pieces, first) > speed * (1 + 1e-10)) {
            first *= 1.25;
        }
        first = Math.min(first, longest);
        double longestSecond = 4 * most / (acceleration * first);
        double second = Math.max(jump / (acceleration * first), longestSecond / 16);
        while (second < longestSecond && change(pieces, first, second) > acceleration * (1 + 1e-10)) {
            second *= 1.25;
        }
        return new double[] {first, Math.min(second, longestSecond)};
    }

    private interface Offsets {
        double of(int axis, double at);
    }

    /** Largest size over times beside all changes and in between. */
    private static double largest(Pieces pieces, double reach, Offsets value, double[] shifts) {
        double most = 0;
        for (int i = -1; i < pieces.ends.length; i++) {
            double change = i < 0 ? 0 : pieces.ends[i];
            for (double shift : shifts) {
                for (double beside : new double[] {-1e-12, 1e-12}) {
                    double at = change + shift + beside;
                    most = Math.max(most, Math.hypot(value.of(0, at), value.of(1, at)));
                }
            }
        }
        for (int i = 0; i < 500; i++) {
            double at = -reach + (pieces.end() + 2 * reach) * i / 500;
            most = Math.max(most, Math.hypot(value.of(0, at), value.of(1, at)));
        }
        return most;
    }

    private static double rate(Pieces pieces, double t) {
        return largest(
                pieces,
                t,
                (axis, at) -> (pieces.value(axis, at + t / 2) - pieces.value(axis, at - t / 2)) / t,
                new double[] {-t / 2, t / 2});
    }

    private static double change(Pieces pieces, double t1, double t2) {
        double a = (t1 + t2) / 2;
        double b = (t1 - t2) / 2;
        return largest(
                pieces,
                t1 + t2,
                (axis, at) -> (pieces.value(axis, at + a)
                                - pieces.value(axis, at + b)
                                - pieces.value(axis, at - b)
                                + pieces.value(axis, at - a))
                        / (t1 * t2),
                new double[] {-a, -b, b, a});
    }

    @ParameterizedTest
    @CsvSource({"1, 5, 1, 10", "2, 5, 0.3, 10", "3, 8, 5, 2", "4, 3, 0.2, 100", "5, 12, 2, 4", "6, 20, 0.5, 1"})
    void theBlendIsTheMeanOverTheShortestTimesOfTheSearch(long seed, int n, double speed, double acceleration) {
        Pieces pieces = Pieces.random(new Random(seed), n);
        double[] times = times(pieces, speed, acceleration);
        TiltBlend blend = new TiltBlend(head(speed, acceleration), pieces.wanted);

        assertThat(blend.timeS()).isCloseTo(times[0] + times[1], within(1e-9));
        assertThat(blend.timeS())
                .isLessThanOrEqualTo(
                        TiltBlend.longestS(head(speed, acceleration), pieces.wanted.largest()) * (1 + 1e-9));
        double[][] nodes = blend.nodes();
        int last = nodes[0].length - 1;
        assertThat(nodes[0][0]).isLessThanOrEqualTo(0);
        assertThat(nodes[0][1]).isPositive();
        assertThat(nodes[0][last]).isEqualTo(pieces.end());
        for (int k = 0; k < last; k += Math.max(1, last / 8)) {
            requireMean(pieces, times, nodes, k);
        }
        requireLimits(nodes, speed, acceleration);
    }

    /** At a node, and at the middle of the cubic behind it. */
    private static void requireMean(Pieces pieces, double[] times, double[][] nodes, int k) {
        double at = nodes[0][k];
        double step = nodes[0][k + 1] - at;
        assertThat(step).isPositive();
        for (int axis = 0; axis < 2; axis++) {
            double[] v = nodes[1 + axis];
            double[] r = nodes[3 + axis];
            double middle = (v[k] + v[k + 1]) / 2 + step * (r[k] - r[k + 1]) / 8;
            assertThat(v[k]).isCloseTo(mean(pieces, axis, times, at), within(5e-5));
            assertThat(middle).isCloseTo(mean(pieces, axis, times, at + step / 2), within(5e-5));
        }
    }

    /** Mean over one time of the mean over the other: a weight that is a trapezoid. */
    private static double mean(Pieces pieces, int axis, double[] times, double at) {
        double half = (times[0] + times[1]) / 2;
        double flat = Math.abs(times[0] - times[1]) / 2;
        double height = 1 / Math.max(times[0], times[1]);
        double sum = 0;
        double weights = 0;
        int n = 8_000;
        for (int i = 0; i < n; i++) {
            double off = -half + 2 * half * (i + 0.5) / n;
            double weight = height * Math.min(1, (half - Math.abs(off)) / (half - flat));
            weights += weight;
            sum += weight * pieces.value(axis, at + off);
        }
        return sum / weights;
    }

    private static void requireLimits(double[][] nodes, double speed, double acceleration) {
        for (int k = 0; k + 1 < nodes[0].length; k++) {
            double step = nodes[0][k + 1] - nodes[0][k];
            assertThat(Math.hypot(nodes[3][k], nodes[4][k])).isLessThanOrEqualTo(speed * (1 + 1e-6));
            double bend = Math.hypot(nodes[3][k + 1] - nodes[3][k], nodes[4][k + 1] - nodes[4][k]) / step;
            assertThat(bend).isLessThanOrEqualTo(acceleration * (1 + 1e-6));
        }
    }

    /** A single jump D takes max(D/w, sqrt(D/a)) and then D/(a T1). */
    @ParameterizedTest
    @CsvSource({"1, 10", "0.1, 10", "10, 1"})
    void oneJumpIsBlendedInTheShortestTime(double speed, double acceleration) {
        WantedTilt wanted = new WantedTilt();
        wanted.add(5, 0.1, 0, 0.1, 0);
        wanted.add(10, 0.1, 0.2, 0.1, 0.2);
        TiltBlend blend = new TiltBlend(head(speed, acceleration), wanted);

        double first = Math.max(0.2 / speed, Math.sqrt(0.2 / acceleration));
        assertThat(blend.timeS()).isCloseTo(first + 0.2 / (acceleration * first), within(1e-9));
        double[][] nodes = blend.nodes();
        int last = nodes[0].length - 1;
        assertThat(nodes[2][0]).isCloseTo(0, within(1e-12));
        assertThat(nodes[2][last]).isCloseTo(0.2, within(1e-12));
        double fastest = 0;
        for (double rate : nodes[4]) {
            fastest = Math.max(fastest, rate);
        }
        assertThat(fastest).isCloseTo(Math.min(speed, 0.2 / first), within(1e-9));
    }

    @Test
    void theLongestTimeIsThatOfTurningBack() {
        // 2 M/T1 = w and 4 M/(T1 T2) = a
        assertThat(TiltBlend.longestS(head(0.5, 10), 0.2)).isCloseTo(0.8 + 0.8 / (10 * 0.8), within(1e-12));
        assertThat(TiltBlend.longestS(head(50, 10), 0.2)).isCloseTo(4 * Math.sqrt(0.2 / 10), within(1e-12));
        assertThat(TiltBlend.longestS(head(0.5, 10), 0)).isZero();
        assertThat(TiltBlend.longestS(head(0, 10), 0.2)).isZero();
    }

    @Test
    void nothingWantedTakesNoTime() {
        WantedTilt wanted = new WantedTilt();
        wanted.add(1, 0, 0, 0, 0);

        assertThat(new TiltBlend(head(1, 1), wanted).timeS()).isZero();
    }
}
