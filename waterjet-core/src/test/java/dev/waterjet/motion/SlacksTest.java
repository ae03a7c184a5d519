package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * The steps solve the linear equations of an interior point method: {@code r + dv + ds = 0} for the residual r of a row whose
 * value changes by dv, and {@code s z + z ds + s dz = m} for the product m that is aimed at.
 */
class SlacksTest {

    private static final int N = 7;
    private final Random random = new Random(17);
    private final double[] value = random.doubles(N, -2, 0.5).toArray();
    private final double[] change = random.doubles(N, -1, 1).toArray();
    private final Slacks slacks = new Slacks(N);

    SlacksTest() {
        slacks.setCount(N);
        for (int i = 0; i < N; i++) {
            slacks.start(i, value[i] - 0.1, 0.3 + 0.1 * i);
        }
        slacks.startMultipliers(0.7);
        for (int i = 0; i < N; i++) {
            slacks.take(i, value[i]);
        }
    }

    /** A value of zero leaves the slack as the residual. */
    private double slack(int row) {
        return slacks.take(row, 0);
    }

    private double[] slack() {
        double[] all = new double[N];
        for (int i = 0; i < N; i++) {
            all[i] = slack(i);
            slacks.take(i, value[i]);
        }
        return all;
    }

    private double[] multiplier() {
        double[] all = new double[N];
        for (int i = 0; i < N; i++) {
            all[i] = slacks.multiplier(i);
        }
        return all;
    }

    @Test
    void aRowStartsWithWhatItsValueLeavesOrAFloor() {
        for (int i = 0; i < N; i++) {
            double start = Math.max(0.1 - value[i], 0.3 + 0.1 * i);
            assertThat(slacks.multiplier(i)).isCloseTo(0.7 / start, within(1e-15));
            assertThat(slacks.take(i, value[i])).isCloseTo(Math.max(0, value[i] + start), within(1e-15));
            assertThat(slack(i)).isCloseTo(Math.max(start, -value[i]), within(1e-15));
        }
        assertThat(slacks.count()).isEqualTo(N);
    }

    @Test
    void aSlackBelowWhatTheValueLeavesFollowsIt() {
        assertThat(slacks.take(2, -50)).isZero();
        assertThat(slack(2)).isEqualTo(50);
        assertThat(slacks.take(2, -8)).isEqualTo(42);
        assertThat(slack(2)).isEqualTo(50);
    }

    @Test
    void theGapIsTheSumOfProducts() {
        double sum = 0;
        double[] s = slack();
        for (int i = 0; i < N; i++) {
            sum += s[i] * slacks.multiplier(i);
            assertThat(slacks.weight(i)).isCloseTo(slacks.multiplier(i) / s[i], within(1e-14));
        }
        assertThat(slacks.gap()).isCloseTo(sum, within(1e-14));
    }

    @Test
    void thePredictorAimsAtNoProduct() {
        double[] s = slack();
        double[] z = multiplier();
        double mostOfSlack = 0;
        double mostOfMultiplier = 0;
        for (int i = 0; i < N; i++) {
            double ds = -(value[i] + s[i]) - change[i];
            double dz = (-s[i] * z[i] - z[i] * ds) / s[i];
            slacks.predict(i, change[i]);
            // the force is what the new multiplier has besides the weight times the change
            assertThat(slacks.predictorForce(i) + slacks.weight(i) * change[i]).isCloseTo(z[i] + dz, within(1e-12));
            mostOfSlack = Math.max(mostOfSlack, -ds / s[i]);
            mostOfMultiplier = Math.max(mostOfMultiplier, -dz / z[i]);
        }
        slacks.gap();
        slacks.sumPredictor();

        assertThat(slacks.slackFall()).isCloseTo(mostOfSlack, within(1e-12));
        assertThat(slacks.multiplierFall()).isCloseTo(mostOfMultiplier, within(1e-12));
    }

    @Test
    void withoutAFallThereIsNone() {
        for (int i = 0; i < N; i++) {
            slacks.predict(i, -100);
        }
        slacks.sumPredictor();
        assertThat(slacks.slackFall()).isZero();

        for (int i = 0; i < N; i++) {
            slacks.predict(i, 1000);
        }
        slacks.sumPredictor();
        assertThat(slacks.multiplierFall()).isZero();

        for (int i = 0; i < N; i++) {
            slacks.correct(i, -100, 1e9);
        }
        slacks.sumCorrector();
        assertThat(slacks.slackFall()).isZero();
        assertThat(slacks.multiplierFall()).isZero();
    }

    @Test
    void theGapBehindThePredictorIsThatOfItsSteps() {
        double[] s = slack();
        double[] z = multiplier();
        slacks.gap();
        for (int i = 0; i < N; i++) {
            slacks.predict(i, change[i]);
        }
        slacks.sumPredictor();

        for (double ofSlack : new double[] {0, 0.3, 1}) {
            for (double ofMultiplier : new double[] {0, 0.4, 1}) {
                double sum = 0;
                for (int i = 0; i < N; i++) {
                    double ds = -(value[i] + s[i]) - change[i];
                    double dz = -z[i] - z[i] * ds / s[i];
                    sum += (s[i] + ofSlack * ds) * (z[i] + ofMultiplier * dz);
                }
                assertThat(slacks.predictedGap(ofSlack, ofMultiplier)).isCloseTo(sum, within(1e-12));
            }
        }
    }

    @Test
    void theCorrectorAimsAtTheProductLessTheSecondOrderOfThePredictor() {
        double[] s = slack();
        double[] z = multiplier();
        double product = 0.05;
        double mostOfSlack = 0;
        double mostOfMultiplier = 0;
        double[] ds = new double[N];
        double[] dz = new double[N];
        for (int i = 0; i < N; i++) {
            double first = -(value[i] + s[i]) - change[i];
            double second = -z[i] - z[i] * first / s[i];
            slacks.predict(i, change[i]);
            double other = 0.4 - change[i];
            ds[i] = -(value[i] + s[i]) - other;
            dz[i] = (product - first * second - s[i] * z[i] - z[i] * ds[i]) / s[i];
            assertThat(slacks.correctorForce(i, product) + slacks.weight(i) * other)
                    .isCloseTo(z[i] + dz[i], within(1e-12));
            slacks.correct(i, other, product);
            mostOfSlack = Math.max(mostOfSlack, -ds[i] / s[i]);
            mostOfMultiplier = Math.max(mostOfMultiplier, -dz[i] / z[i]);
        }
        slacks.sumCorrector();
        assertThat(slacks.slackFall()).isCloseTo(mostOfSlack, within(1e-12));
        assertThat(slacks.multiplierFall()).isCloseTo(mostOfMultiplier, within(1e-12));

        slacks.move(0.1, 0.2);
        double sum = 0;
        for (int i = 0; i < N; i++) {
            sum += (s[i] + 0.1 * ds[i]) * (z[i] + 0.2 * dz[i]);
            assertThat(slacks.multiplier(i)).isCloseTo(z[i] + 0.2 * dz[i], within(1e-12));
        }
        assertThat(slacks.gap()).isCloseTo(sum, within(1e-12));
    }
}
