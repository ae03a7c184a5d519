package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class GainsTest {

    /** One more row adds its square to the information. */
    @Test
    void aMeasuredCutAddsItsInformation() {
        double[][] covariance = {{0.04, 0.01}, {0.01, 0.09}};
        double[] target = {1, 0.7};
        double[] candidate = {1, -0.5};
        double[][] information = Matrices.inverse(covariance);
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                information[i][j] += candidate[i] * candidate[j] / 0.0025;
            }
        }

        assertThat(Gains.variance(covariance, target, candidate, 0.0025))
                .isCloseTo(Matrices.square(target, Matrices.inverse(information)), within(1e-14));
    }

    @Test
    void aCutOnAPlateIsThatOfFullMatrices() {
        CutRows rows = DenseMixedModel.uneven(3);
        double[] target = {1, 0.4};
        double[] candidate = {1, 1.2};
        for (int plate = -1; plate <= rows.plates(); plate++) {
            CutRows all = plate < 0 ? rows : rows.with(candidate, plate);
            double[][] information =
                    new DenseMixedModel(all, 0.05, 0.1).information().getData();

            assertThat(Gains.variance(rows, target, candidate, plate, 0.05, 0.1))
                    .isCloseTo(Matrices.square(target, Matrices.inverse(information)), within(1e-12));
        }
    }

    /** The variance after yes and after no, by sums over the quantity, weighted by the probability of either. */
    @Test
    void aTrialLeavesTheMeanOfBothVariances() {
        double prior = 0.08;
        double scatter = 0.05;
        for (double offset : new double[] {-0.1, 0, 0.06}) {
            double left = 0;
            for (int sign = -1; sign <= 1; sign += 2) {
                double weight = 0;
                double first = 0;
                double second = 0;
                for (double x = -0.8; x < 0.8; x += 0.0005) {
                    double share = new NormalDistribution(null, 0, prior).density(x)
                            * new NormalDistribution(null, 0, scatter).cumulativeProbability(sign * (x - offset));
                    weight += share * 0.0005;
                    first += share * 0.0005 * x;
                    second += share * 0.0005 * x * x;
                }
                left += second - first * first / weight;
            }
            assertThat(Gains.afterTrial(offset, prior, scatter)).isCloseTo(left, within(1e-9));
        }
    }

    /** Sheppard: rounding to steps of h adds h^2/12 to the variance, for steps up to about a deviation. */
    @Test
    void narrowStepsLoseAsMuchAsRounding() {
        for (double step : new double[] {0.05, 0.2, 0.5, 1}) {
            assertThat(Gains.ladderEfficiency(step)).isCloseTo(1 / (1 + step * step / 12), within(2e-3));
        }
    }

    /** Information of a grouped normal value, by differences of the logarithms of the probabilities of the groups. */
    @Test
    void wideStepsHaveTheInformationOfTheirGroups() {
        for (double step : new double[] {1.5, 3, 6}) {
            double sum = 0;
            int phases = 200;
            for (int phase = 0; phase < phases; phase++) {
                double start = step * (phase + 0.5) / phases;
                for (int k = -20; k < 20; k++) {
                    double a = start + k * step;
                    double h = 1e-4;
                    double here = probability(a, a + step);
                    double slope = (probability(a + h, a + step + h) - probability(a - h, a + step - h)) / (2 * h);
                    sum += here > 1e-14 ? slope * slope / here / phases : 0;
                }
            }
            assertThat(Gains.ladderEfficiency(step)).isCloseTo(sum, within(1e-4));
        }
    }

    private static double probability(double a, double b) {
        // on the side where both are small
        return a > 0 ? NormalTails.below(-a) - NormalTails.below(-b) : NormalTails.below(b) - NormalTails.below(a);
    }
}
