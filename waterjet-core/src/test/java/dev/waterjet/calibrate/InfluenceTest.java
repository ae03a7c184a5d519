package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/** Influence of a cut against fits without it, by Commons Math. */
class InfluenceTest {

    private static final int COUNT = 9;

    private static double[][] settings(Random random) {
        double[][] x = new double[COUNT][];
        Arrays.setAll(x, i -> new double[] {1, random.nextGaussian(), random.nextDouble()});
        return x;
    }

    private static OLSMultipleLinearRegression fit(double[] y, double[][] x) {
        OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
        fit.setNoIntercept(true);
        fit.newSampleData(y, x);
        return fit;
    }

    /** Cook (1977) and Belsley, Kuh, Welsch (1980), from memory: what changes when a row is left out. */
    @Test
    void influenceIsWhatChangesWhenARowIsLeftOut() {
        Random random = new Random(14);
        double[][] x = settings(random);
        double[] y = new double[COUNT];
        Arrays.setAll(y, i -> 2 + 0.5 * x[i][1] - x[i][2] + 0.1 * random.nextGaussian());
        Influence influence = Influence.of(CutRows.exact(y, x));
        OLSMultipleLinearRegression all = fit(y, x);
        double[] beta = all.estimateRegressionParameters();
        for (int i = 0; i < COUNT; i++) {
            int left = i;
            double[] others = java.util.stream.IntStream.range(0, COUNT)
                    .filter(k -> k != left)
                    .mapToDouble(k -> y[k])
                    .toArray();
            double[][] rest = java.util.stream.IntStream.range(0, COUNT)
                    .filter(k -> k != left)
                    .mapToObj(k -> x[k])
                    .toArray(double[][]::new);
            OLSMultipleLinearRegression without = fit(others, rest);
            double[] own = without.estimateRegressionParameters();
            double missed = y[i] - Matrices.dot(x[i], own);
            double[][] covariance = without.estimateRegressionParametersVariance();
            double variance = without.estimateErrorVariance();
            double deviation = Math.sqrt(variance * (1 + Matrices.square(x[i], covariance)));
            double moved = 0;
            for (double[] row : x) {
                moved += Math.pow(Matrices.dot(row, beta) - Matrices.dot(row, own), 2);
            }

            assertThat(influence.residuals()[i]).isCloseTo(all.estimateResiduals()[i], within(1e-12));
            assertThat(influence.leverages()[i]).isCloseTo(all.calculateHat().getEntry(i, i), within(1e-12));
            assertThat(influence.deleted()[i]).isCloseTo(missed / deviation, within(1e-8));
            assertThat(influence.cook()[i]).isCloseTo(moved / (3 * all.estimateErrorVariance()), within(1e-10));
        }
    }

    /** With one degree of freedom the others leave none by which to judge a row. */
    @Test
    void rowsWithoutAFreeOneAreNotJudged() {
        double[][] x = {{1, 0}, {1, 1}, {1, 2}};
        Influence influence = Influence.of(CutRows.exact(new double[] {0, 1.1, 2}, x));

        assertThat(influence.deleted()).containsOnly(Double.NaN);
        assertThat(influence.cook()).doesNotContain(Double.NaN);
        double[][] one = {{1, 0}, {1, 1}, {1, 2}, {1, 3}};
        assertThat(Influence.of(CutRows.exact(new double[] {0, 1.1, 2, 2.9}, one))
                        .deleted())
                .as("with one free row more")
                .doesNotContain(Double.NaN);
    }

    @Test
    void theLargestOfManyIsLessSurprising() {
        double alone = 2 * (1 - new TDistribution(null, 7).cumulativeProbability(3));

        assertThat(Influence.outlierProbability(3, 1, 7)).isCloseTo(alone, within(1e-12));
        assertThat(Influence.outlierProbability(-3, 9, 7)).isCloseTo(9 * alone, within(1e-12));
        assertThat(Influence.outlierProbability(0.1, 9, 7)).isEqualTo(1);
    }
}
