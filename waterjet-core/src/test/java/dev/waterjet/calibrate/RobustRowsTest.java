package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Robust regression against the equations that define it. */
class RobustRowsTest {

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    /** A line with a normal scatter, of which some rows are far off. */
    static CutRows line(int count, int wrong, double factor, long seed) {
        Random random = new Random(seed);
        double[] y = new double[count];
        double[][] x = new double[count][];
        for (int i = 0; i < count; i++) {
            x[i] = new double[] {1, 2 * random.nextDouble() - 1};
            y[i] = 4 + 0.5 * x[i][1] + 0.04 * random.nextGaussian() + (i < wrong ? factor * (1 + 0.2 * i) : 0);
        }
        return CutRows.exact(y, x);
    }

    /** Medians by hand: sizes 0.1, 0.2, 0.3 and 0.5; of an even number the mean of both in the middle. */
    @Test
    void theMedianScaleIsOverThatOfANormalDistribution() {
        double quartile = NORMAL.inverseCumulativeProbability(0.75);

        assertThat(RobustRows.MAD).isCloseTo(quartile, within(1e-4));
        assertThat(RobustRows.median(new double[] {-0.1, 0.5, 0.2})).isCloseTo(0.2 / 0.6745, within(1e-15));
        assertThat(RobustRows.median(new double[] {-0.1, 0.5, 0.2, -0.3})).isCloseTo(0.25 / 0.6745, within(1e-15));
    }

    /** Tuning constants by their definitions: mean loss of one half, efficiencies of 95 %. */
    @Test
    void tuningConstantsHaveTheirMeaningForANormalScatter() {
        RobustRows rows = new RobustRows(CutRows.exact(new double[0], new double[0][0]));
        double mean = normalMean(x -> rows.loss(new double[] {x}, 1));
        assertThat(mean).isCloseTo(0.5, within(1e-4));
        for (boolean isHuber : new boolean[] {true, false}) {
            DoubleUnaryOperator psi =
                    x -> x * (isHuber ? RobustRows.huber(x) : RobustRows.bisquare(x, RobustRows.BISQUARE));
            double slope = normalMean(x -> (psi.applyAsDouble(x + 1e-5) - psi.applyAsDouble(x - 1e-5)) / 2e-5);
            double square = normalMean(x -> Math.pow(psi.applyAsDouble(x), 2));
            assertThat(slope * slope / square).isCloseTo(0.95, within(1e-3));
        }
    }

    private static double normalMean(DoubleUnaryOperator function) {
        double sum = 0;
        for (double x = -9; x < 9; x += 1e-3) {
            sum += NORMAL.density(x) * function.applyAsDouble(x) * 1e-3;
        }
        return sum;
    }

    @Test
    void weightsFallWithTheResidual() {
        assertThat(RobustRows.bisquare(0, 2)).isEqualTo(1);
        assertThat(RobustRows.bisquare(-1, 2)).isCloseTo(0.75 * 0.75, within(1e-15));
        assertThat(RobustRows.bisquare(2, 2)).isZero();
        assertThat(RobustRows.bisquare(-3, 2)).isZero();
        assertThat(RobustRows.huber(-1.345)).isEqualTo(1);
        assertThat(RobustRows.huber(-2.69)).isCloseTo(0.5, within(1e-15));
    }

    /** The mean loss at the scale is a half, whatever the start, and grows with the residuals. */
    @Test
    void theScaleIsWhereTheMeanLossIsOneHalf() {
        CutRows rows = line(15, 3, 1, 4);
        RobustRows robust = new RobustRows(rows);
        double[] residuals = robust.residuals(new double[] {4, 0.5});
        for (double start : new double[] {0.01, 0.1, 5}) {
            double scale = robust.scale(residuals, start);
            double sum = 0;
            for (double residual : residuals) {
                double u = Math.min(1, Math.abs(residual / scale / 1.547645));
                sum += 3 * u * u - 3 * Math.pow(u, 4) + Math.pow(u, 6);
            }
            assertThat(sum / (15 - 2)).isCloseTo(0.5, within(1e-9));
        }
        double[] doubled = Arrays.stream(residuals).map(r -> 2 * r).toArray();
        assertThat(robust.scale(doubled, 1)).isCloseTo(2 * robust.scale(residuals, 1), within(1e-10));
        assertThat(robust.scale(new double[15], 0)).isZero();
        assertThat(residuals[4]).isCloseTo(rows.lo()[4] - 4 - 0.5 * rows.x()[4][1], within(1e-15));
    }

    @Test
    void weightedCoefficientsAreThoseOfLeastSquares() {
        CutRows rows = line(8, 1, 1, 6);
        double[] weights = {0, 1, 2, 0.5, 1, 0, 3, 1};
        double[] beta = new RobustRows(rows).weighted(new double[2], weights);
        for (int j = 0; j < 2; j++) {
            double sum = 0;
            for (int i = 0; i < 8; i++) {
                sum += weights[i] * rows.x()[i][j] * (rows.lo()[i] - Matrices.dot(rows.x()[i], beta));
            }
            assertThat(sum).isCloseTo(0, within(1e-12));
        }
        double[] start = {7, 8};
        assertThat(new RobustRows(rows).weighted(start, new double[8])).isEqualTo(start);
        assertThat(new RobustRows(rows).weighted(start, new double[] {1, 0, 0, 0, 0, 0, 0, 0}))
                .isEqualTo(start);
    }

    /** Huber's equations: bounded residuals over the median scale add up to nothing in every setting. */
    @Test
    void hubersCoefficientsSolveHubersEquations() {
        CutRows rows = line(20, 4, 1, 5);
        double[] beta = new RobustRows(rows).ofHuber();
        double[] residuals = new RobustRows(rows).residuals(beta);
        double scale = RobustRows.median(residuals);
        for (int j = 0; j < 2; j++) {
            double sum = 0;
            for (int i = 0; i < 20; i++) {
                sum += Math.max(-1.345, Math.min(1.345, residuals[i] / scale)) * rows.x()[i][j];
            }
            assertThat(sum).isCloseTo(0, within(1e-6));
        }
    }

    @Test
    void aLineThatMostRowsAreOnIsHubers() {
        double[][] x = {{1, 0}, {1, 1}, {1, 2}, {1, 3}, {1, 4}, {1, 5}, {1, 6}};
        double[] beta = new RobustRows(CutRows.exact(new double[] {1, 3, 5, 7, 9, 11, 13}, x)).ofHuber();

        assertThat(beta).containsExactly(new double[] {1, 2}, within(1e-10));
    }

    @Test
    void settledCoefficientsSolveTheirEquations() {
        CutRows rows = line(20, 4, 1, 5);
        double[] beta =
                new RobustRows(rows).settled(new double[] {4, 0.5}, 0.04, z -> RobustRows.bisquare(z, 4.685061));
        for (int j = 0; j < 2; j++) {
            double sum = 0;
            for (int i = 0; i < 20; i++) {
                double z = (rows.lo()[i] - Matrices.dot(rows.x()[i], beta)) / 0.04 / 4.685061;
                sum += Math.abs(z) < 1 ? z * (1 - z * z) * (1 - z * z) * rows.x()[i][j] : 0;
            }
            assertThat(sum).isCloseTo(0, within(1e-7));
        }
    }

    @Test
    void coefficientsAreNearByTheirLargestDifference() {
        double[] one = {1, 2, 3};

        assertThat(RobustRows.isNear(one, new double[] {1, 2, 3 + 1e-9}, 1)).isFalse();
        assertThat(RobustRows.isNear(one, new double[] {1, 2, 3 - 1e-9}, 1)).isFalse();
        assertThat(RobustRows.isNear(one, new double[] {1, 2, 3 + 1e-9}, 100)).isTrue();
        assertThat(RobustRows.isNear(one, new double[] {1 + 1e-9, 2, 3}, 1)).isFalse();
    }
}
