package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Derivatives against differences of fourth order. */
class TravelTimeTest {

    private static final int N = 6;
    private final Random random = new Random(8);
    private final double[] length = random.doubles(N, 0.1, 2).toArray();
    private final double[] square = random.doubles(N + 1, 0.3, 3).toArray();

    private double time(double[] x) {
        double sum = 0;
        for (int k = 0; k < N; k++) {
            sum += length[k] / ((Math.sqrt(x[k]) + Math.sqrt(x[k + 1])) / 2);
        }
        return sum;
    }

    private static double[] moved(double[] x, int i, double by) {
        double[] moved = x.clone();
        moved[i] += by;
        return moved;
    }

    /** Difference of fourth order of one entry of what a run over the squares makes. */
    private static double difference(ToDoubleFunction<double[]> value, double[] x, int i) {
        double h = 1e-3 * x[i];
        return (8 * (value.applyAsDouble(moved(x, i, h)) - value.applyAsDouble(moved(x, i, -h)))
                        - value.applyAsDouble(moved(x, i, 2 * h))
                        + value.applyAsDouble(moved(x, i, -2 * h)))
                / (12 * h);
    }

    private double[] gradient(double[] x) {
        TravelTime time = new TravelTime(N);
        time.evaluate(x, length, N);
        double[] right = new double[N + 1];
        time.subtractGradient(right, N);
        return right;
    }

    @Test
    void theTimeIsThatOfConstantAccelerationInEachInterval() {
        TravelTime time = new TravelTime(N);

        assertThat(time.evaluate(square, length, N)).isCloseTo(time(square), within(1e-12));
        for (int k = 0; k < N; k++) {
            // from v to w with the acceleration (w^2 - v^2)/(2 h)
            double v = Math.sqrt(square[k]);
            double w = Math.sqrt(square[k + 1]);
            double acceleration = (square[k + 1] - square[k]) / (2 * length[k]);
            assertThat(time.timeS[k]).isCloseTo((w - v) / acceleration, within(1e-10));
        }
    }

    @Test
    void derivativesOfIntervalsAreDifferences() {
        TravelTime time = new TravelTime(N);
        time.evaluate(square, length, N);
        double[] gradient = gradient(square);

        for (int i = 0; i <= N; i++) {
            double byNode = difference(this::time, square, i);
            double parts = (i < N ? time.byStart[i] : 0) + (i > 0 ? time.byEnd[i - 1] : 0);
            assertThat(parts).isCloseTo(byNode, within(1e-9));
            assertThat(gradient[i]).isCloseTo(-byNode, within(1e-9));
        }
    }

    @Test
    void theMatrixTakesSecondDerivativesAndTheSideTheFirst() {
        TravelTime time = new TravelTime(N);
        time.evaluate(square, length, N);
        BandMatrix matrix = new BandMatrix(N + 1);
        double[] right = new double[N + 1];
        for (int i = 0; i <= N; i++) {
            matrix.diagonal[i] = 7;
            matrix.first[i] = 5;
            matrix.second[i] = 3;
            right[i] = 11;
        }
        time.assemble(matrix, right, N);

        for (int i = 0; i <= N; i++) {
            int node = i;
            assertThat(right[i]).isCloseTo(11 + gradient(square)[i], within(1e-12));
            assertThat(matrix.diagonal[i] - 7).isCloseTo(-difference(x -> gradient(x)[node], square, i), within(1e-8));
            if (i < N) {
                assertThat(matrix.first[i] - 5)
                        .isCloseTo(-difference(x -> gradient(x)[node], square, i + 1), within(1e-8));
            }
            assertThat(matrix.second[i]).isEqualTo(3);
        }
    }

    @Test
    void aNodeAtRestHasNoDerivative() {
        double[] x = square.clone();
        x[0] = 0;
        x[N] = 0;
        TravelTime time = new TravelTime(N);
        BandMatrix matrix = new BandMatrix(N + 1);
        double[] right = new double[N + 1];

        assertThat(time.evaluate(x, length, N)).isCloseTo(time(x), within(1e-12));
        time.assemble(matrix, right, N);

        assertThat(time.byStart[0]).isZero();
        assertThat(time.byEnd[N - 1]).isZero();
        assertThat(new double[] {right[0], right[N], matrix.diagonal[0], matrix.diagonal[N], matrix.first[0]})
                .containsOnly(0);
        // d/dx 2 h/sqrt(x) = -h x^(-3/2), and its derivative 3/2 h x^(-5/2)
        assertThat(time.byEnd[0]).isCloseTo(-length[0] * Math.pow(x[1], -1.5), within(1e-12));
        assertThat(matrix.diagonal[1]).isCloseTo(-difference(each -> gradient(each)[1], x, 1), within(1e-8));
    }
}
