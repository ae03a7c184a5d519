package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class RampTest {

    @Property(tries = 500, seed = "61")
    void reachIsTheInverseOfLength(
            @ForAll @DoubleRange(min = 0, max = 2) double entry,
            @ForAll @DoubleRange(min = 0.01, max = 2) double change,
            @ForAll @DoubleRange(min = 0.1, max = 10) double acceleration,
            @ForAll @DoubleRange(min = 1, max = 1000) double jerk) {
        double length = RampKernel.rampLength(entry, entry + change, acceleration, jerk);

        assertThat(RampKernel.rampReach(entry, length, acceleration, jerk))
                .isCloseTo(entry + change, within(1e-9 * (entry + change)));
    }

    @Property(tries = 60, seed = "62")
    void aRunStaysWithinSpeedAccelerationAndJerk(
            @ForAll @DoubleRange(min = 0, max = 0.5) double entry,
            @ForAll @DoubleRange(min = 0, max = 0.5) double exit,
            @ForAll @DoubleRange(min = 0.01, max = 2) double more,
            @ForAll @DoubleRange(min = 0.5, max = 1) double cap) {
        double a = 1.5;
        double j = 30;
        double length = RampKernel.rampLength(entry, exit, a, j) + more * 0.1;
        SmoothRun run = new SmoothRun();
        run.set(entry, exit, cap, length, a, j);
        int n = 400;
        double[] speed = new double[n + 1];
        double step = run.time() / n;
        double place = 0;
        for (int i = 0; i <= n; i++) {
            double low = 0;
            double high = length;
            for (int k = 0; k < 60; k++) {
                double middle = (low + high) / 2;
                if (run.timeAt(middle) < i * step) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            speed[i] = run.speedAt(low);
            place += i == 0 ? 0 : (speed[i] + speed[i - 1]) / 2 * step;
        }
        assertThat(place).isCloseTo(length, within(1e-3 * length));
        for (int i = 1; i < n; i++) {
            assertThat(speed[i]).isLessThanOrEqualTo(cap * (1 + 1e-9));
            assertThat(Math.abs(speed[i] - speed[i - 1]) / step).isLessThanOrEqualTo(a * 1.001);
            assertThat(Math.abs(speed[i + 1] - 2 * speed[i] + speed[i - 1]) / (step * step))
                    .isLessThanOrEqualTo(j * 1.01 + 1e-4 / (step * step) * 1e-4);
        }
    }
}
