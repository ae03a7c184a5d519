package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.calibrate.MarginalLikelihood.Derivatives;
import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Likelihood of cuts on plates against the density of all of them together, and against sums over the effect of a plate. */
class MarginalLikelihoodTest {

    private static final double[] BETA = {4.4, 0.35};
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    /** Two plates of measured values and two with intervals and trials as well. */
    private static CutRows mixed() {
        Random random = new Random(12);
        int[] plates = {0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 3};
        double[] lo = new double[plates.length];
        double[] up = new double[plates.length];
        double[][] x = new double[plates.length][];
        double[] delta = new double[plates.length];
        for (int i = 0; i < lo.length; i++) {
            x[i] = new double[] {1, random.nextGaussian()};
            double y = 4.5 + 0.3 * x[i][1] + 0.06 * random.nextGaussian();
            lo[i] = y;
            up[i] = plates[i] < 2 || i % 4 == 0 ? y : y + 0.05;
            delta[i] = i % 3 == 0 ? 0.03 : 0;
        }
        up[6] = INFINITE;
        lo[7] = -INFINITE;
        return new CutRows(lo, up, x, delta, plates, 4);
    }

    @Test
    void measuredPlatesHaveTheDensityOfAllOfThemTogether() {
        CutRows rows = DenseMixedModel.uneven(3);
        double[] delta = new Random(4).doubles(rows.size(), 0, 0.1).toArray();
        for (CutRows one : new CutRows[] {rows, rows.withDelta(delta)}) {
            DenseMixedModel dense = new DenseMixedModel(one, 0.07, 0.11);
            MarginalLikelihood likelihood = new MarginalLikelihood(one);
            Derivatives at = likelihood.derivatives(BETA, 0.07, 0.11);

            assertThat(likelihood.value(BETA, 0.07, 0.11)).isCloseTo(dense.logLikelihood(BETA), within(1e-10));
            assertThat(at.value()).isCloseTo(dense.logLikelihood(BETA), within(1e-10));
            for (int j = 0; j < 2; j++) {
                assertThat(at.information()[j])
                        .containsExactly(dense.information().getRow(j), within(1e-8));
            }
        }
    }

    /** Trapezoids over the effect, of which a plate has a normal one. */
    private static double summed(CutRows rows, double sigma, double tau) {
        double total = 0;
        for (int[] plate : rows.byPlate()) {
            double sum = 0;
            double step = tau / 200;
            for (int k = -2000; k <= 2000; k++) {
                double effect = k * step;
                double density = new NormalDistribution(null, 0, tau).density(effect);
                for (int i : plate) {
                    double scatter = Math.hypot(sigma, rows.delta()[i]);
                    double mean = rows.x()[i][0] * BETA[0] + rows.x()[i][1] * BETA[1] + effect;
                    NormalDistribution normal = new NormalDistribution(null, mean, scatter);
                    density *= rows.lo()[i] == rows.up()[i]
                            ? normal.density(rows.lo()[i])
                            : normal.probability(rows.lo()[i], rows.up()[i]);
                }
                sum += density * step;
            }
            total += Math.log(sum);
        }
        return total;
    }

    @Test
    void plateWithIntervalsIsTheSumOverItsEffect() {
        for (double tau : new double[] {0.03, 0.08}) {
            double expected = summed(mixed(), 0.06, tau);

            assertThat(new MarginalLikelihood(mixed()).value(BETA, 0.06, tau)).isCloseTo(expected, within(1e-5));
            assertThat(new MarginalLikelihood(mixed())
                            .derivatives(BETA, 0.06, tau)
                            .value())
                    .isCloseTo(expected, within(1e-5));
        }
    }

    /** Central differences of the value, of the fourth order for the slope. */
    @Test
    void slopeAndInformationAreTheDerivativesWithAndWithoutPlates() {
        for (double tau : new double[] {0, 0.05}) {
            for (CutRows rows : new CutRows[] {mixed(), DenseMixedModel.uneven(8)}) {
                MarginalLikelihood likelihood = new MarginalLikelihood(rows);
                Derivatives at = likelihood.derivatives(BETA, 0.06, tau);
                double h = 1e-3;
                for (int j = 0; j < 2; j++) {
                    double near = likelihood.value(moved(j, h), 0.06, tau) - likelihood.value(moved(j, -h), 0.06, tau);
                    double far = likelihood.value(moved(j, 2 * h), 0.06, tau)
                            - likelihood.value(moved(j, -2 * h), 0.06, tau);
                    double slope = (8 * near - far) / (12 * h);
                    assertThat(at.gradient()[j]).isCloseTo(slope, within(2e-4 * (10 + Math.abs(slope))));
                    for (int k = 0; k < 2; k++) {
                        double change =
                                likelihood.derivatives(moved(k, h), 0.06, tau).gradient()[j]
                                        - likelihood.derivatives(moved(k, -h), 0.06, tau)
                                                .gradient()[j];
                        double expected = -change / (2 * h);
                        assertThat(at.information()[j][k])
                                .isCloseTo(expected, within(2e-3 * (100 + Math.abs(expected))));
                    }
                }
            }
        }
    }

    private static double[] moved(int j, double step) {
        double[] moved = BETA.clone();
        moved[j] += step;
        return moved;
    }

    /** A plate of measured values: its mean residual, shrunk by the spread over spread and scatter. */
    @Test
    void theEffectOfAMeasuredPlateIsItsShrunkMeanResidual() {
        CutRows rows = DenseMixedModel.uneven(5);
        double[][] effects = new MarginalLikelihood(rows).effects(BETA, 0.05, 0.1);
        for (int g = 0; g < rows.plates(); g++) {
            int[] plate = rows.byPlate()[g];
            double sum = 0;
            for (int i : plate) {
                sum += rows.lo()[i] - BETA[0] - BETA[1] * rows.x()[i][1];
            }
            double precision = plate.length / 0.0025 + 1 / 0.01;

            assertThat(effects[g][0]).isCloseTo(sum / 0.0025 / precision, within(1e-12));
            assertThat(effects[g][1]).isCloseTo(1 / precision, within(1e-15));
        }
        assertThat(effects).hasDimensions(rows.plates(), 2);
    }

    /** The most likely effect of a plate with trials: nowhere near is the product of density and probabilities larger. */
    @Test
    void theEffectOfAPlateWithTrialsIsTheMostLikelyOne() {
        CutRows rows = mixed();
        MarginalLikelihood likelihood = new MarginalLikelihood(rows);
        for (int g = 2; g < 4; g++) {
            double[] effect = likelihood.effect(g, BETA, 0.06, 0.05);
            int[] plate = rows.byPlate()[g];
            double h = 1e-3;
            double middle = logProduct(rows, plate, effect[0]);
            double up = logProduct(rows, plate, effect[0] + h);
            double down = logProduct(rows, plate, effect[0] - h);

            assertThat((up - down) / (2 * h)).isCloseTo(0, within(0.02));
            assertThat(effect[1]).isCloseTo(-h * h / (up + down - 2 * middle), within(1e-6));
        }
    }

    private static double logProduct(CutRows rows, int[] plate, double effect) {
        double sum = -effect * effect / (2 * 0.05 * 0.05);
        for (int i : plate) {
            double scatter = Math.hypot(0.06, rows.delta()[i]);
            NormalDistribution normal =
                    new NormalDistribution(null, BETA[0] + BETA[1] * rows.x()[i][1] + effect, scatter);
            sum += Math.log(
                    rows.lo()[i] == rows.up()[i]
                            ? normal.density(rows.lo()[i])
                            : normal.probability(rows.lo()[i], rows.up()[i]));
        }
        return sum;
    }

    /** Trials on one plate with a scatter far below the spread: steps of the integrand, and still a fall to every side. */
    @Test
    void theInformationIsPositiveHoweverSmallTheScatter() {
        double[] lo = {-INFINITE, 0, -0.05, 0.01};
        double[] up = {0.1, INFINITE, INFINITE, 0.08};
        double[][] x = {{1}, {1}, {1}, {1}};
        CutRows rows = new CutRows(lo, up, x, new double[4], new int[4], 1);
        for (double sigma : new double[] {1e-5, 1e-4, 1e-3, 1e-2, 0.1}) {
            for (double mean = -0.3; mean < 0.3; mean += 0.02) {
                Derivatives at = new MarginalLikelihood(rows).derivatives(new double[] {mean}, sigma, 0.1);

                assertThat(at.information()[0][0]).isGreaterThanOrEqualTo(0);
                assertThat(at.information()[0][0]).isFinite();
            }
        }
    }

    /** Without plates, or with a spread of zero, every row stands alone. */
    @Test
    void withoutASpreadTheLogarithmsAddUp() {
        CutRows rows = mixed();
        double sum = 0;
        for (int i = 0; i < rows.size(); i++) {
            sum += CutTerm.normal(
                            rows.lo()[i],
                            rows.up()[i],
                            BETA[0] + BETA[1] * rows.x()[i][1],
                            Math.hypot(0.06, rows.delta()[i]))
                    .value();
        }
        CutRows alone = new CutRows(rows.lo(), rows.up(), rows.x(), rows.delta(), new int[rows.size()], 0);

        assertThat(new MarginalLikelihood(rows).value(BETA, 0.06, 0)).isCloseTo(sum, within(1e-12));
        assertThat(new MarginalLikelihood(alone).value(BETA, 0.06, 0.2)).isCloseTo(sum, within(1e-12));
        assertThat(new MarginalLikelihood(alone).derivatives(BETA, 0.06, 0.2).value())
                .isCloseTo(sum, within(1e-12));
    }
}
