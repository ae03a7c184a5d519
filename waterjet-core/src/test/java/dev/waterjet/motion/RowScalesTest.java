package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Shares that bring a motion within its rows, multipliers of rows, and rounding that counts as no excess. */
class RowScalesTest {

    private static final int INTERVALS = 5;
    private final Random random = new Random(31);
    private final double[] x = random.doubles(INTERVALS + 1, 1, 3).toArray();
    private final double[] length = random.doubles(INTERVALS, 0.2, 1).toArray();

    private double[] scaled(double share) {
        double[] scaled = x.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= share;
        }
        return scaled;
    }

    private TravelTime time(double[] squares) {
        TravelTime time = new TravelTime(INTERVALS);
        time.evaluate(squares, length, INTERVALS);
        return time;
    }

    @Test
    void theLargestShareOfAccelerationsTouchesTheTightestLimit() {
        double[] p = {3, -2, 0.5, -4};
        double[] q = {1, 0.1, -3, 3};
        AccelerationRows rows = new AccelerationRows(4);
        for (int k = 0; k < 4; k++) {
            rows.add(k, p[k], q[k], (byte) 0);
        }
        double most = 0;
        for (int k = 0; k < 4; k++) {
            most = Math.max(most, Math.abs(p[k] * x[k] + q[k] * x[k + 1]));
        }

        assertThat(rows.largestShare(x)).isCloseTo(1 / most, within(1e-14));
        rows.clear();
        assertThat(rows.rows()).isZero();
        assertThat(rows.slacks().count()).isZero();
        rows.add(0, 0, 0, (byte) 0);
        assertThat(rows.largestShare(x)).isInfinite();
    }

    @Test
    void theLargestShareOfJerksTouchesTheTightestLimit() {
        JerkRows rows = new JerkRows(4);
        double[] l = {0, 2, -1, 3, 0.4};
        double[] r = {0, -5, 0.2, 1, 0.3};
        for (int i = 1; i < INTERVALS; i++) {
            rows.add(i, l[i], r[i], 0.1, (byte) 0);
        }
        double share = rows.largestShare(x, time(x));

        double most = 0;
        double[] at = scaled(share);
        TravelTime time = time(at);
        for (int i = 1; i < INTERVALS; i++) {
            double value = l[i] * at[i - 1] - (l[i] + r[i] + 0.1) * at[i] + r[i] * at[i + 1];
            most = Math.max(most, Math.abs(value) / ((time.timeS[i - 1] + time.timeS[i]) / 2));
        }
        assertThat(most).isCloseTo(1, within(1e-12));
        rows.clear();
        assertThat(rows.rows()).isZero();
        assertThat(rows.slacks().count()).isZero();
        assertThat(rows.largestShare(x, time(x))).isInfinite();
        rows.add(2, 0, 0, 0, (byte) 0);
        assertThat(rows.largestShare(x, time(x))).isInfinite();
    }

    @Test
    void theMultiplierOfARowIsThatOfBothSides() {
        AccelerationRows accelerations = new AccelerationRows(2);
        accelerations.add(3, 0.1, 0.2, (byte) 7);
        accelerations.add(1, -0.1, 0.3, (byte) 9);
        accelerations.start(x);
        accelerations.slacks().startMultipliers(1);
        double value = -0.1 * x[1] + 0.3 * x[2];
        assertThat(accelerations.multiplier(1))
                .isCloseTo(1 / Math.max(1 - value, 0.2) + 1 / Math.max(1 + value, 0.2), within(1e-12));
        assertThat(accelerations.interval(0)).isEqualTo(3);
        assertThat(accelerations.why(1)).isEqualTo((byte) 9);

        JerkRows jerks = new JerkRows(2);
        jerks.add(2, 0.01, 0.02, 0, (byte) 5);
        jerks.add(4, 0.01, -0.03, 0, (byte) 6);
        jerks.start(x, time(x));
        jerks.slacks().startMultipliers(1);
        double bound = JerkRows.bound(4, time(x));
        double jerk = 0.01 * x[3] + 0.02 * x[4] - 0.03 * x[5];
        assertThat(jerks.multiplier(1))
                .isCloseTo(
                        1 / Math.max(bound - jerk, 0.2 * bound) + 1 / Math.max(bound + jerk, 0.2 * bound),
                        within(1e-12));
        assertThat(jerks.node(1)).isEqualTo(4);
        assertThat(jerks.why(0)).isEqualTo((byte) 5);

        SpeedRows speeds = new SpeedRows(6);
        speeds.lay(2, 4);
        speeds.start(x, scaled(1.5));
        speeds.slacks().startMultipliers(1);
        for (int i = 0; i <= INTERVALS; i++) {
            assertThat(speeds.multiplier(i)).isCloseTo(i < 2 || i > 4 ? 0 : 1 / (0.5 * x[i]), within(1e-12));
        }
    }

    /** Squares of one size, one of them a share higher. */
    private static double[] raised(int node, double share) {
        double[] squares = {4, 4, 4, 4, 4, 4};
        squares[node] *= 1 + share;
        return squares;
    }

    /** The last digit of terms of 8e6 is 1e-9; rows count 1e-15 of the sum of their terms. */
    @Test
    void theRoundingOfLargeTermsIsNoExcess() {
        double large = 1e6;
        double noise = 2 * large * 4 * 1e-15;
        double excess = large * 4 * 0.9992e-13 - noise;
        for (double sign : new double[] {1, -1}) {
            for (int node = 1; node <= 2; node++) {
                AccelerationRows rows = new AccelerationRows(1);
                rows.add(1, -sign * large, sign * large, (byte) 0);
                rows.start(raised(0, 0));
                assertThat(rows.evaluate(raised(node, 1e-15))).isZero();
                assertThat(rows.evaluate(raised(node, 1e-13))).isCloseTo(excess, within(0.1 * noise));
            }
        }
    }

    @Test
    void theRoundingOfLargeTermsIsNoExcessOfJerk() {
        double large = 1e6;
        double noise = 4 * large * 4 * 1e-15;
        for (double sign : new double[] {1, -1}) {
            for (int node = 1; node <= 3; node++) {
                JerkRows rows = new JerkRows(1);
                rows.add(2, sign * large, sign * large, 0, (byte) 0);
                rows.start(raised(0, 0), time(raised(0, 0)));
                double bound = JerkRows.bound(2, time(raised(0, 0)));
                double factor = node == 2 ? 2 : 1;
                double ratio = (factor * large * 4 * 0.9992e-13 - noise) / bound;
                double[] slightly = raised(node, 1e-15);
                double[] higher = raised(node, 1e-13);
                assertThat(rows.evaluate(slightly, time(slightly))).isZero();
                assertThat(rows.evaluate(higher, time(higher))).isCloseTo(ratio, within(0.1 * noise / bound));
                assertThat(rows.largestShare(slightly, time(slightly))).isInfinite();
                assertThat(rows.largestShare(higher, time(higher)))
                        .isCloseTo(Math.pow(ratio, -2.0 / 3), within(3e-3 * Math.pow(ratio, -2.0 / 3)));
            }
        }
    }
}
