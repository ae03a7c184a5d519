package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleBiFunction;
import org.apache.commons.math3.distribution.MultivariateNormalDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** Posteriors against sums over dense grids of all unknowns, and against closed forms. */
class PosteriorGridTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static double[][] ones(int count) {
        double[][] x = new double[count][];
        Arrays.setAll(x, i -> new double[] {1});
        return x;
    }

    private static GaussianPrior prior(double mean, double deviation) {
        return new GaussianPrior(new double[] {mean}, new double[][] {{1 / (deviation * deviation)}}, 3, 0.07, 4, 0.09);
    }

    /** Sums of a posterior: weight, mean and square of the coefficient, logarithms of both deviations. */
    private static final class Sums {

        private double weight;
        private final double[] first = new double[5];

        void add(double share, double beta, double second, double logSigma, double logTau) {
            weight += share;
            double[] values = {beta, beta * beta, logSigma, logTau, second};
            for (int k = 0; k < values.length; k++) {
                first[k] += share * values[k];
            }
        }

        double mean(int k) {
            return first[k] / weight;
        }

        double deviation() {
            return Math.sqrt(mean(1) - mean(0) * mean(0));
        }
    }

    private static double likelihood(CutRows rows, int i, double mean, double sigma) {
        NormalDistribution normal = new NormalDistribution(null, mean, Math.hypot(sigma, rows.delta()[i]));
        return rows.isExact(i) ? normal.density(rows.lo()[i]) : normal.probability(rows.lo()[i], rows.up()[i]);
    }

    private static double chi(double log, double freedom, double size) {
        return -freedom * log - freedom * size * size / 2 * Math.exp(-2 * log);
    }

    private static void agrees(CutRows rows, GaussianPrior prior, Sums sums, double tolerance) {
        PosteriorSolution solution = PosteriorSolution.of(rows, prior);
        assertThat(solution.variables()[0]).isCloseTo(sums.mean(0), within(tolerance * sums.deviation()));
        assertThat(Math.sqrt(solution.covariance()[0][0]) / sums.deviation()).isCloseTo(1, within(tolerance));
        assertThat(Math.log(solution.sigma())).isCloseTo(sums.mean(2), within(tolerance));
        if (rows.plates() > 0) {
            assertThat(Math.log(solution.tau())).isCloseTo(sums.mean(3), within(tolerance));
        }
        double total = solution.components().stream()
                .mapToDouble(PosteriorGrid.Component::weight)
                .sum();
        assertThat(total).isCloseTo(1, within(1e-9));
        assertThat(solution.degreesOfFreedom()).isEqualTo(rows.size() + prior.scatterFreedom() - 1);
    }

    private static Sums summed(CutRows rows, GaussianPrior prior, double low, double high) {
        Sums sums = new Sums();
        int steps = 200;
        for (double s = -6.5; s < 1; s += 0.05) {
            for (int k = 0; k <= steps; k++) {
                double beta = low + (high - low) * k / steps;
                double log = prior.value(new double[] {beta}) + chi(s, prior.scatterFreedom(), prior.scatter());
                double product = Math.exp(log);
                for (int i = 0; i < rows.size(); i++) {
                    product *= likelihood(rows, i, beta, Math.exp(s));
                }
                sums.add(product, beta, 0, s, 0);
            }
        }
        return sums;
    }

    @Test
    void intervalsAndTrialsAreTheSumOverScatterAndCoefficient() {
        CutRows rows = new CutRows(
                new double[] {4.0, 4.05, -INFINITE, 4.1},
                new double[] {4.1, 4.2, 4.25, INFINITE},
                ones(4),
                new double[] {0, 0.02, 0, 0},
                new int[4],
                0);
        agrees(rows, prior(4.2, 0.15), summed(rows, prior(4.2, 0.15), 3.4, 5), 3e-3);
    }

    /** From twelve rows on with fewer nodes. */
    @Test
    void manyIntervalsAreTheSumToo() {
        double[] lo = new Random(4).doubles(14, 3.9, 4.2).toArray();
        double[] up = Arrays.stream(lo).map(v -> v + 0.08).toArray();
        CutRows rows = new CutRows(lo, up, ones(14), new double[14], new int[14], 0);
        agrees(rows, prior(4.1, 0.3), summed(rows, prior(4.1, 0.3), 3.8, 4.5), 3e-3);
    }

    /**
     * Balanced measured plates: given both deviations their means are normal about the coefficient, and the squares within them
     * are independent of these.
     */
    @Test
    void measuredPlatesAreTheSumOverBothDeviations() {
        double[] y = {4.1, 4.15, 4.3, 4.38, 4.0, 4.02, 4.22, 4.2};
        int[] plates = {0, 0, 1, 1, 2, 2, 3, 3};
        CutRows rows = CutRows.exact(y, ones(8)).withPlates(plates);
        GaussianPrior prior = prior(4.3, 0.2);
        double within = 0;
        double[] means = new double[4];
        for (int g = 0; g < 4; g++) {
            means[g] = (y[2 * g] + y[2 * g + 1]) / 2;
            within += Math.pow(y[2 * g] - y[2 * g + 1], 2) / 2;
        }
        Sums sums = new Sums();
        for (double s = -6.5; s < 0; s += 0.07) {
            for (double t = -7; t < 1; t += 0.07) {
                double variance = Math.exp(2 * t) + Math.exp(2 * s) / 2;
                double inner = Math.exp(-within / 2 * Math.exp(-2 * s) - 4 * s + chi(s, 3, 0.07) + chi(t, 4, 0.09));
                for (double beta = 3.6; beta < 5; beta += 0.02) {
                    double squares = 0;
                    for (double mean : means) {
                        squares += (mean - beta) * (mean - beta);
                    }
                    double share = inner * Math.exp(prior.value(new double[] {beta}) - squares / 2 / variance);
                    sums.add(share / variance / variance, beta, 0, s, t);
                }
            }
        }
        agrees(rows, prior, sums, 3e-3);
    }

    /** Plates with intervals: the probability of a plate at each mean is tabulated, and summed over its effect. */
    @Test
    void intervalsOnPlatesAreTheSumOverTheEffectsToo() {
        double[] lo = {4.1, 4.05, 4.3, -INFINITE, 4.0, 4.06};
        double[] up = {4.2, 4.12, 4.4, 4.45, INFINITE, 4.16};
        CutRows rows = new CutRows(lo, up, ones(6), new double[6], new int[] {0, 0, 1, 1, 2, 2}, 3);
        GaussianPrior prior = prior(4.3, 0.2);
        double step = 0.025;
        int count = 100;
        Sums sums = new Sums();
        for (double s = -5.5; s < -0.5; s += 0.15) {
            double[][] tables = new double[3][count];
            for (int k = 0; k < count; k++) {
                double mean = 3 + k * step;
                for (int g = 0; g < 3; g++) {
                    tables[g][k] =
                            likelihood(rows, 2 * g, mean, Math.exp(s)) * likelihood(rows, 2 * g + 1, mean, Math.exp(s));
                }
            }
            for (double t = -3.6; t < 0.5; t += 0.15) {
                for (int b = 20; b < 80; b++) {
                    double beta = 3 + b * step;
                    double product = 1;
                    for (double[] table : tables) {
                        double sum = 0;
                        for (int k = 0; k < count; k++) {
                            double z = (k - b) * step / Math.exp(t);
                            sum += table[k] * Math.exp(-z * z / 2);
                        }
                        product *= sum / Math.exp(t);
                    }
                    double log = prior.value(new double[] {beta}) + chi(s, 3, 0.07) + chi(t, 4, 0.09);
                    sums.add(product * Math.exp(log), beta, 0, s, t);
                }
            }
        }
        // the sum leaves out spreads below 0.027, which its table cannot hold
        agrees(rows, prior, sums, 0.05);
    }

    /** Two coefficients: the second follows the first as in a normal distribution. */
    @Test
    void twoCoefficientsOfIntervalsAreTheSumOverBoth() {
        double[][] x = {{1, 0.2}, {1, 1.2}, {1, 2.2}, {1, 1.7}, {1, 0.7}};
        double[] lo = {3.7, 4.0, 4.2, 4.1, 3.85};
        double[] up = {3.78, 4.06, 4.3, 4.2, 3.95};
        CutRows rows = new CutRows(lo, up, x, new double[5], new int[5], 0);
        GaussianPrior prior =
                new GaussianPrior(new double[] {3.7, 0.2}, new double[][] {{20, 0}, {0, 20}}, 3, 0.05, 0, 0);
        Sums sums = new Sums();
        double squares = 0;
        double products = 0;
        for (double s = -5.5; s < -1; s += 0.15) {
            for (double one = 3.2; one < 4.2; one += 0.012) {
                for (double two = -0.1; two < 0.65; two += 0.01) {
                    double log = prior.value(new double[] {one, two}) + chi(s, 3, 0.05);
                    double product = Math.exp(log);
                    for (int i = 0; i < 5; i++) {
                        double a = (lo[i] - one - two * x[i][1]) / Math.exp(s);
                        double b = (up[i] - one - two * x[i][1]) / Math.exp(s);
                        product *= Math.exp(NormalTails.logBetween(a, b));
                    }
                    sums.add(product, one, two, s, 0);
                    squares += product * two * two;
                    products += product * one * two;
                }
            }
        }
        agrees(rows, prior, sums, 0.01);
        double[][] covariance = PosteriorSolution.of(rows, prior).covariance();
        double[] means = PosteriorSolution.of(rows, prior).variables();
        double second = squares / sums.weight - sums.mean(4) * sums.mean(4);
        double both = products / sums.weight - sums.mean(0) * sums.mean(4);
        assertThat(means[1]).isCloseTo(sums.mean(4), within(0.02 * Math.sqrt(second)));
        // the conditional spread of the second is that of a normal distribution
        assertThat(covariance[1][1] / second).isCloseTo(1, within(0.05));
        assertThat(covariance[0][1]).isCloseTo(both, within(0.03 * Math.sqrt(second) * sums.deviation()));
        assertThat(covariance[1][0]).isEqualTo(covariance[0][1]);
    }

    /** Normal prior and known scatter: the information of both adds up. */
    @Test
    void withAKnownScatterThePosteriorIsNormal() {
        CutRows rows = CutRows.exact(
                DenseMixedModel.uneven(3).lo(), DenseMixedModel.uneven(3).x());
        double[][] precision = {{20, 3}, {3, 10}};
        GaussianPrior prior = new GaussianPrior(new double[] {4, 0.5}, precision, 0, 0, 0, 0);
        DenseMixedModel dense = new DenseMixedModel(rows, 0.2, 0);
        RealMatrix information = dense.information().add(new Array2DRowRealMatrix(precision));
        RealMatrix covariance = DenseMixedModel.inverse(information);
        double[] sum = dense.information().operate(dense.beta());
        double[] own = Matrices.times(precision, prior.mean());
        double[] mean = covariance.operate(new double[] {sum[0] + own[0], sum[1] + own[1]});
        PosteriorGrid.Component given = PosteriorGrid.given(rows, prior, 0.2);

        assertThat(given.mean()).containsExactly(mean, within(1e-7));
        assertThat(given.covariance()[0]).containsExactly(covariance.getRow(0), within(1e-9));
        assertThat(given.covariance()[1]).containsExactly(covariance.getRow(1), within(1e-9));
        assertThat(given.weight()).isEqualTo(1);
        assertThat(given.sigma()).isEqualTo(0.2);

        RealMatrix x = new Array2DRowRealMatrix(rows.x());
        RealMatrix all = dense.covariance()
                .add(x.multiply(DenseMixedModel.inverse(new Array2DRowRealMatrix(precision)))
                        .multiply(x.transpose()));
        double density =
                new MultivariateNormalDistribution(null, x.operate(prior.mean()), all.getData()).density(rows.lo());
        assertThat(PosteriorGrid.logMarginal(rows, prior, 0.2)).isCloseTo(Math.log(density), within(1e-6));
    }

    /** Normal values with a prior of the scatter: Student's distribution in closed form, and by the grid. */
    @Test
    void measuredCutsWithAWidePriorAreStudents() {
        double[] y = {4.1, 4.2, 4.15, 4.02};
        CutRows rows = CutRows.exact(y, ones(4));
        double mean = Arrays.stream(y).average().orElseThrow();
        double squares = 3 * 0.07 * 0.07;
        for (double value : y) {
            squares += (value - mean) * (value - mean);
        }
        StudentPosterior closed = StudentPosterior.of(rows, 3, 0.07);
        GaussianPrior flat = new GaussianPrior(new double[] {4}, new double[][] {{0}}, 3, 0.07, 0, 0);
        List<PosteriorGrid.Component> grid = PosteriorGrid.of(rows, flat);
        double[] student = PosteriorGrid.mixture(grid, new double[] {1}, c -> c.sigma() * c.sigma())
                .student();

        assertThat(closed.beta()[0]).isCloseTo(mean, within(1e-12));
        assertThat(closed.freedom()).isEqualTo(6);
        assertThat(closed.variance()).isCloseTo(squares / 6, within(1e-14));
        assertThat(closed.scale(new double[] {1}, 1)).isCloseTo(Math.sqrt(squares / 6 * 1.25), within(1e-14));
        assertThat(student[0]).isCloseTo(mean, within(1e-6));
        assertThat(student[1]).isCloseTo(closed.scale(new double[] {1}, 1), within(1e-4));
        assertThat(student[2]).isCloseTo(6, within(0.02));
    }

    /** Gelman et al., Bayesian Data Analysis, section 3.3 (from memory): mean (k m + n y)/(k + n), and its sum of squares. */
    @Test
    void aConjugatePriorCountsAsEarlierCuts() {
        double[] y = {4.1, 4.2, 4.15};
        StudentPosterior posterior = StudentPosterior.of(CutRows.exact(y, ones(3)), 4, 0.05, 4.4, 2);
        double mean = 4.15;
        double squares = 4 * 0.0025 + 2 * 0.0025 + 2.0 * 3 / 5 * 0.25 * 0.25;

        assertThat(posterior.beta()[0]).isCloseTo((2 * 4.4 + 3 * mean) / 5, within(1e-12));
        assertThat(posterior.freedom()).isEqualTo(7);
        assertThat(posterior.variance()).isCloseTo(squares / 7, within(1e-14));
        assertThat(posterior.unit()[0][0]).isCloseTo(0.2, within(1e-14));
    }

    @Test
    void nodesOfOnePointAreOneNormalDistribution() {
        double[][] variance = {{0.04}};
        List<PosteriorGrid.Component> components = List.of(
                new PosteriorGrid.Component(0.25, 0.1, 0.2, new double[] {1}, variance),
                new PosteriorGrid.Component(0.25, 0.1, 0.2, new double[] {2}, variance),
                new PosteriorGrid.Component(0.3, 0.1, 0.3, new double[] {4}, variance),
                new PosteriorGrid.Component(0.2, 0.2, 0.3, new double[] {5}, variance));
        Mixture whole = PosteriorGrid.mixture(components, new double[] {2}, c -> 0);
        Mixture own = PosteriorGrid.mixture(components, new double[] {2}, c -> c.tau());

        assertThat(whole.weights()).containsExactly(0.5, 0.3, 0.2);
        assertThat(whole.means()).containsExactly(new double[] {3, 8, 10}, within(1e-12));
        assertThat(whole.deviations()).containsExactly(new double[] {Math.sqrt(1 + 0.16), 0.4, 0.4}, within(1e-12));
        assertThat(own.weights()).containsExactly(0.25, 0.25, 0.3, 0.2);
        assertThat(own.deviations()[0]).isCloseTo(Math.sqrt(0.2 + 0.16), within(1e-12));
    }

    /** A prediction: mean, new cut on a new plate, new cut on a plate that was cut. */
    @Test
    void aPredictionHoldsWhatIsUncertainInIt() {
        double[] y = {4.1, 4.15, 4.3, 4.38, 4.0, 4.02, 4.22, 4.2};
        CutRows rows = CutRows.exact(y, ones(8)).withPlates(new int[] {0, 0, 1, 1, 2, 2, 3, 3});
        PosteriorSolution solution = PosteriorSolution.of(rows, prior(4.3, 0.2));
        double[] one = {1};
        ToDoubleBiFunction<Solution.Part, Integer> spread = (part, plate) -> {
            double[] predicted = solution.prediction(one, part, plate);
            return predicted[1] * predicted[1] * predicted[2] / (predicted[2] - 2);
        };
        double sigma = 0;
        double tau = 0;
        double effect = 0;
        for (PosteriorGrid.Component c : solution.components()) {
            sigma += c.weight() * c.sigma() * c.sigma();
            tau += c.weight() * c.tau() * c.tau();
            double shrink = 2 * c.tau() * c.tau() / (2 * c.tau() * c.tau() + c.sigma() * c.sigma());
            effect += c.weight() * (c.mean()[0] + shrink * (4.34 - c.mean()[0]));
        }
        double mean = solution.covariance()[0][0];

        assertThat(solution.prediction(one, Solution.Part.NEW_PLATE, -1)[0]).isCloseTo(0, within(0.01));
        assertThat(spread.applyAsDouble(Solution.Part.NEW_PLATE, -1)).isCloseTo(mean + sigma + tau, within(0.002));
        assertThat(spread.applyAsDouble(Solution.Part.MEAN, -1)).isCloseTo(mean, within(0.0005));
        assertThat(solution.prediction(one, Solution.Part.THIS_PLATE, 1)[0] + solution.variables()[0])
                .isCloseTo(effect, within(0.008));
        assertThat(spread.applyAsDouble(Solution.Part.THIS_PLATE, 1)).isBetween(sigma, mean + sigma + tau);
        double[] interval = solution.interval(0, 0.95);
        assertThat((interval[0] + interval[1]) / 2).isCloseTo(solution.variables()[0], within(0.02));
        assertThat(interval[1] - interval[0]).isCloseTo(4 * Math.sqrt(mean), within(0.4 * Math.sqrt(mean)));
    }
}
