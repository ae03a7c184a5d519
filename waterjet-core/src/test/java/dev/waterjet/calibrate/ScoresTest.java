package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.distribution.MultivariateNormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/** Scores of cuts left out. */
class ScoresTest {

    private static CutRows withoutPlates(CutRows rows) {
        return CutRows.exact(rows.lo(), rows.x());
    }

    private static double logStudent(CutRows fitted, double y, double[] settings) {
        DenseMixedModel unit = new DenseMixedModel(fitted, 1, 0);
        double[] beta = unit.beta();
        double squares = 0;
        for (int i = 0; i < fitted.size(); i++) {
            squares += Math.pow(fitted.lo()[i] - Matrices.dot(fitted.x()[i], beta), 2);
        }
        double freedom = fitted.size() - fitted.width();
        double[] spread = DenseMixedModel.inverse(unit.information()).operate(settings);
        double scale = Math.sqrt(squares / freedom * (1 + Matrices.dot(settings, spread)));
        return new TDistribution(null, freedom).logDensity((y - Matrices.dot(settings, beta)) / scale)
                - Math.log(scale);
    }

    @Test
    void aRowLeftOutHasStudentsDensityAboutTheOthers() {
        CutRows rows = withoutPlates(DenseMixedModel.uneven(7));
        double[] scores = Scores.leaveOneOut(rows);
        for (int i = 0; i < rows.size(); i++) {
            assertThat(scores[i]).isCloseTo(logStudent(rows.without(i), rows.lo()[i], rows.x()[i]), within(1e-9));
        }
    }

    /** A joint density is a product of densities, each given those before it. */
    @Test
    void aPlateLeftOutHasTheDensityOfItsRowsOneAfterAnother() {
        CutRows rows = DenseMixedModel.uneven(7);
        double[] scores = Scores.leavePlatesOut(rows);
        assertThat(scores).hasSize(rows.plates());
        for (int g = 0; g < rows.plates(); g++) {
            int number = g;
            int[] known = java.util.stream.IntStream.range(0, rows.size())
                    .filter(i -> rows.plate()[i] != number)
                    .toArray();
            double sum = 0;
            for (int i : rows.byPlate()[g]) {
                sum += logStudent(withoutPlates(rows.only(known)), rows.lo()[i], rows.x()[i]);
                known = Arrays.copyOf(known, known.length + 1);
                known[known.length - 1] = i;
            }
            assertThat(scores[g]).isCloseTo(sum, within(1e-8));
        }
    }

    @Test
    void aPlateLeftOutOfPlatesIsNormalWithItsOwnEffect() {
        CutRows rows = DenseMixedModel.uneven(2);
        double[] scores = Scores.leavePlatesOutOfMixed(rows);
        for (int g = 0; g < rows.plates(); g++) {
            CutRows left = rows.ofPlate(g, true);
            VarianceFit fit = VarianceFit.of(rows.ofPlate(g, false), true);
            double[] means = new double[left.size()];
            double[][] covariance = new double[left.size()][left.size()];
            for (int i = 0; i < means.length; i++) {
                means[i] = Matrices.dot(left.x()[i], fit.beta());
                for (int j = 0; j < means.length; j++) {
                    double parameters = Matrices.dot(left.x()[i], Matrices.times(fit.covariance(), left.x()[j]));
                    covariance[i][j] = parameters + fit.tau() * fit.tau() + (i == j ? fit.sigma() * fit.sigma() : 0);
                }
            }
            double density = new MultivariateNormalDistribution(null, means, covariance).density(left.lo());

            assertThat(scores[g]).isCloseTo(Math.log(density), within(1e-8));
        }
    }

    /** Burnham and Anderson (2002), eq. 7.8 with 2k(k + 1)/(n - k - 1), from memory: by hand for k = 3, n = 10. */
    @Test
    void akaikesCriterionIsCorrectedForFewCuts() {
        assertThat(Scores.aicc(-5, 3, 10)).isEqualTo(10 + 6 + 24 / 6.0);
        assertThat(Scores.aicc(2, 1, 4)).isEqualTo(-4 + 2 + 4 / 2.0);
    }

    /** Differences 1, 2, 3 with standard deviation 1: their sum 6 has an error of the root of 3. */
    @Test
    void theErrorOfADifferenceGrowsWithTheRootOfTheCount() {
        assertThat(ScoreDifference.of(new double[] {2, 4, 6}, new double[] {1, 2, 3}))
                .containsExactly(new double[] {6, Math.sqrt(3)}, within(1e-14));
    }
}
