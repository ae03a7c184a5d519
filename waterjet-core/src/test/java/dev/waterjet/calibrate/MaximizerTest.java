package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.calibrate.Maximizer.Maximum;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Maxima whose place and curvature are known in closed form. */
class MaximizerTest {

    private static Maximum from(ToDoubleFunction<double[]> function, double... start) {
        double[] sizes = new double[start.length];
        java.util.Arrays.fill(sizes, 0.1);
        return new Maximizer(function).from(start, sizes);
    }

    private static void isAt(Maximum maximum, double value, double[] place, double[][] information) {
        assertThat(maximum.at()).containsExactly(place, within(1e-7));
        assertThat(maximum.value()).isCloseTo(value, within(1e-9 * (1 + Math.abs(value))));
        assertThat(maximum.isRegular()).isTrue();
        for (int j = 0; j < place.length; j++) {
            for (int k = 0; k < place.length; k++) {
                double size = Math.sqrt(information[j][j] * information[k][k]);
                assertThat(maximum.information()[j][k]).isCloseTo(information[j][k], within(2e-6 * size));
            }
        }
    }

    @Test
    void aParabolaHasItsVertexAndItsMatrix() {
        double[][] matrix = {{5, 1.5, -0.4}, {1.5, 2, 0.3}, {-0.4, 0.3, 1}};
        double[] place = {3, -2, 0.5};
        ToDoubleFunction<double[]> parabola = x -> {
            double[] off = {x[0] - place[0], x[1] - place[1], x[2] - place[2]};
            return 7 - Matrices.square(off, matrix) / 2;
        };
        Maximum maximum = from(parabola, 0, 0, 0);

        isAt(maximum, 7, place, matrix);
        assertThat(maximum.covariance()[1]).containsExactly(Matrices.inverse(matrix)[1], within(1e-5));
        // the same in units a million times larger and smaller
        Maximum scaled = from(x -> parabola.applyAsDouble(new double[] {1e6 * x[0], 1e-6 * x[1], x[2]}), 0, 0, 0);
        assertThat(scaled.at()[0]).isCloseTo(3e-6, within(1e-12));
        assertThat(scaled.at()[1]).isCloseTo(-2e6, within(1.0));
    }

    /** Normal values: mean and logarithm of the deviation have the information n/s^2 and 2 n. */
    @Test
    void aNormalSampleHasItsMomentsAndItsInformation() {
        double[] sample = {1.2, 0.7, 2.1, 1.6, 0.4};
        double mean = 1.2;
        double variance = (0 + 0.25 + 0.81 + 0.16 + 0.64) / 5;
        Maximum maximum = from(
                at -> {
                    double sum = 0;
                    for (double y : sample) {
                        sum -= at[1] + Math.pow((y - at[0]) / Math.exp(at[1]), 2) / 2;
                    }
                    return sum;
                },
                -3,
                2);

        isAt(maximum, -5 * Math.log(variance) / 2 - 2.5, new double[] {mean, Math.log(variance) / 2}, new double[][] {
            {5 / variance, 0}, {0, 10}
        });
    }

    /** Rosenbrock's valley: the matrix of second derivatives at (1, 1) is 802, -400, 200. */
    @Test
    void aBentValleyIsFollowedToItsEnd() {
        Maximum maximum = from(x -> -100 * Math.pow(x[1] - x[0] * x[0], 2) - Math.pow(1 - x[0], 2), -1.2, 1);

        isAt(maximum, 0, new double[] {1, 1}, new double[][] {{802, -400}, {-400, 200}});
    }

    /** Far out Cauchy's density is convex, where Newton's step would go away from the top. */
    @Test
    void aStartWhereTheFunctionIsConvexFindsTheTop() {
        for (double start : new double[] {-8, 1.5, 3, 20}) {
            isAt(from(x -> -Math.log1p(x[0] * x[0]), start), 0, new double[] {0}, new double[][] {{2}});
        }
        isAt(
                from(x -> -Math.log1p(x[0] * x[0]) - Math.log1p((x[1] - 1) * (x[1] - 1) / 4), 6, -9),
                0,
                new double[] {0, 1},
                new double[][] {{2, 0}, {0, 0.5}});
    }

    @Test
    void whatIsNoNumberIsNoPlace() {
        Maximum maximum = from(x -> x[0] > 0 ? 3 * Math.log(x[0]) - x[0] : Double.NaN, 0.01);

        isAt(maximum, 3 * Math.log(3) - 3, new double[] {3}, new double[][] {{1 / 3.0}});
    }

    @Test
    void aSteepSideIsLeftInFewEvaluations() {
        int[] count = {0};
        Maximum maximum = from(
                x -> {
                    count[0]++;
                    return 3 * x[0] - Math.exp(x[0]);
                },
                4);

        isAt(maximum, 3 * Math.log(3) - 3, new double[] {Math.log(3)}, new double[][] {{3}});
        assertThat(count[0]).isLessThan(300);
    }

    @Test
    void whatDoesNotFallToAllSidesIsNotRegular() {
        assertThat(from(x -> -x[0] * x[0], 1, 1).isRegular()).isFalse();
        assertThat(from(x -> 0, 1).isRegular()).isFalse();
        assertThat(new Maximizer(x -> -x[0] * x[0] + x[1] * x[1])
                        .newton(new double[] {0, 0}, new double[] {0.1, 0.1})
                        .isRegular())
                .isFalse();
    }
}
