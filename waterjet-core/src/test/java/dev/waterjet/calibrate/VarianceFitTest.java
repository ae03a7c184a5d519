package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** Scatter and spread against the analysis of variance of balanced plates, and against matrices of full size. */
class VarianceFitTest {

    private static final int PLATES = 6;
    private static final int EACH = 4;

    /** Plates of four, with effects far larger than the scatter. */
    private static CutRows balanced() {
        Random random = new Random(21);
        double[] y = new double[PLATES * EACH];
        double[][] x = new double[y.length][];
        int[] plates = new int[y.length];
        double[] effects = random.doubles(PLATES, -0.2, 0.2).toArray();
        for (int i = 0; i < y.length; i++) {
            plates[i] = i % PLATES;
            x[i] = new double[] {1};
            y[i] = 4.7 + effects[plates[i]] + 0.05 * random.nextGaussian();
        }
        return CutRows.exact(y, x).withPlates(plates);
    }

    /** Mean squares between and within plates. */
    private static double[] meanSquares(CutRows rows) {
        double all = Arrays.stream(rows.lo()).average().orElseThrow();
        double between = 0;
        double within = 0;
        for (int[] plate : rows.byPlate()) {
            double mean = Arrays.stream(plate)
                    .mapToDouble(i -> rows.lo()[i])
                    .average()
                    .orElseThrow();
            between += plate.length * (mean - all) * (mean - all);
            for (int i : plate) {
                within += Math.pow(rows.lo()[i] - mean, 2);
            }
        }
        return new double[] {between / (PLATES - 1), within / (PLATES * (EACH - 1)), all};
    }

    /** Searle, Casella, McCulloch (1992), section 3.8 (from memory): both likelihoods of balanced plates in closed form. */
    @Test
    void balancedPlatesAreTheAnalysisOfVariance() {
        CutRows rows = balanced();
        double[] squares = meanSquares(rows);
        VarianceFit restricted = VarianceFit.of(rows, true);
        VarianceFit full = VarianceFit.of(rows, false);
        double shrunk = squares[0] * (PLATES - 1) / PLATES;

        assertThat(restricted.sigma()).isCloseTo(Math.sqrt(squares[1]), within(1e-7));
        assertThat(restricted.tau()).isCloseTo(Math.sqrt((squares[0] - squares[1]) / EACH), within(1e-7));
        assertThat(full.sigma()).isCloseTo(Math.sqrt(squares[1]), within(1e-7));
        assertThat(full.tau()).isCloseTo(Math.sqrt((shrunk - squares[1]) / EACH), within(1e-7));
        assertThat(restricted.beta()[0]).isCloseTo(squares[2], within(1e-12));
        assertThat(restricted.covariance()[0][0]).isCloseTo(squares[0] / rows.size(), within(1e-8));
        int n = rows.size();
        int within = PLATES * (EACH - 1);
        double twice = (n - 1) * Math.log(2 * Math.PI)
                + within * Math.log(squares[1])
                + PLATES * Math.log(squares[0])
                + Math.log(n / squares[0])
                + n
                - 1;
        assertThat(restricted.logLikelihood()).isCloseTo(-twice / 2, within(1e-9));
    }

    /**
     * Variances of balanced plates are sums of shares of both mean squares, which are independent: Satterthwaite's degrees of freedom
     * are then those of the textbook, (a + b)^2 / (a^2/m + b^2/k).
     */
    @Test
    void degreesOfFreedomOfBalancedPlatesAreThoseOfTheMeanSquares() {
        CutRows rows = balanced();
        double[] squares = meanSquares(rows);
        VarianceFit fit = VarianceFit.of(rows, true);
        double[] one = {1};
        int plates = PLATES - 1;
        int within = PLATES * (EACH - 1);

        assertThat(fit.degreesOfFreedom(one, 0, 0)).isCloseTo(plates, within(2e-3));
        assertThat(fit.degreesOfFreedom(one, 0, 1)).isCloseTo(combined(squares, 1.0 / rows.size(), 1), within(2e-3));
        double between = 1.0 / rows.size() + 1.0 / EACH;
        assertThat(fit.degreesOfFreedom(one, 1, 1)).isCloseTo(combined(squares, between, 1 - 1.0 / EACH), within(2e-3));
        assertThat(combined(squares, 0, 1)).isEqualTo(within);
        assertThat(fit.variance(one, 1, 1))
                .isCloseTo(squares[0] * between + squares[1] * (1 - 1.0 / EACH), within(1e-7));
        assertThat(fit.variance(one, 0, 2)).isCloseTo(squares[0] / rows.size() + 2 * squares[1], within(1e-7));
    }

    private static double combined(double[] squares, double between, double within) {
        double a = between * squares[0];
        double b = within * squares[1];
        return (a + b) * (a + b) / (a * a / (PLATES - 1) + b * b / (PLATES * (EACH - 1)));
    }

    /** Plates that differ no more than their cuts: the likelihood is largest without a spread, and least squares remain. */
    @Test
    void platesThatDoNotDifferHaveNoSpread() {
        double[] y = {1, -1, 2, -2, 1.5, -1.5, 1, -1};
        double[][] x = new double[y.length][];
        Arrays.setAll(x, i -> new double[] {1});
        CutRows rows = CutRows.exact(y, x).withPlates(new int[] {0, 0, 1, 1, 2, 2, 3, 3});
        VarianceFit fit = VarianceFit.of(rows, true);

        assertThat(fit.tau()).isZero();
        assertThat(fit.sigma()).isCloseTo(Math.sqrt((2 + 8 + 4.5 + 2) / 7), within(1e-12));
        assertThat(fit.degreesOfFreedom(new double[] {1}, 1, 1)).isEqualTo(7);
        assertThat(VarianceFit.of(rows, false).sigma()).isCloseTo(Math.sqrt(16.5 / 8), within(1e-12));
    }

    @Test
    void onePlateOrOneCutEachShowNoSpread() {
        CutRows rows = balanced();
        double all = Arrays.stream(rows.lo()).map(v -> v * v).average().orElseThrow()
                - Math.pow(Arrays.stream(rows.lo()).average().orElseThrow(), 2);
        int[] own = new int[rows.size()];
        Arrays.setAll(own, i -> i);
        for (int[] plates : new int[][] {new int[rows.size()], own}) {
            VarianceFit fit = VarianceFit.of(rows.withPlates(plates), true);

            assertThat(fit.tau()).isZero();
            assertThat(fit.sigma()).isCloseTo(Math.sqrt(all * rows.size() / (rows.size() - 1)), within(1e-9));
        }
    }

    private static double dense(CutRows rows, boolean isRestricted, double sigma, double tau) {
        DenseMixedModel dense = new DenseMixedModel(rows, sigma, tau);
        return isRestricted ? dense.restricted() : dense.logLikelihood(dense.beta());
    }

    /** A maximum: the likelihood by matrices of full size is the same there, and falls by about as much to either side. */
    private static void isMaximum(VarianceFit fit) {
        boolean isRestricted = fit.isRestricted();
        double sigma = fit.sigma();
        double tau = fit.tau();
        double top = dense(fit.rows(), isRestricted, sigma, tau);
        assertThat(fit.logLikelihood()).isCloseTo(top, within(1e-8));
        double f = 1.02;
        double up = top - dense(fit.rows(), isRestricted, sigma * f, tau);
        double down = top - dense(fit.rows(), isRestricted, sigma / f, tau);
        assertThat(up).isPositive();
        assertThat(down / up).isCloseTo(1, within(0.25));
        if (tau > 0) {
            double more = top - dense(fit.rows(), isRestricted, sigma, tau * f);
            double less = top - dense(fit.rows(), isRestricted, sigma, tau / f);
            assertThat(more).isPositive();
            assertThat(less / more).isCloseTo(1, within(0.25));
        }
        DenseMixedModel dense = new DenseMixedModel(fit.rows(), sigma, tau);
        assertThat(fit.beta()).containsExactly(dense.beta(), within(1e-9));
        RealMatrix covariance = DenseMixedModel.inverse(dense.information());
        for (int j = 0; j < fit.beta().length; j++) {
            assertThat(fit.covariance()[j]).containsExactly(covariance.getRow(j), within(1e-10));
        }
    }

    @Test
    void theFitIsAMaximumOfTheLikelihoodOfFullMatrices() {
        CutRows plain = DenseMixedModel.uneven(2);
        double[] delta = new Random(9).doubles(plain.size(), 0.01, 0.06).toArray();
        CutRows single = new CutRows(plain.lo(), plain.up(), plain.x(), delta, new int[plain.size()], 0);
        for (boolean isRestricted : new boolean[] {true, false}) {
            VarianceFit spread = VarianceFit.of(plain, isRestricted);
            VarianceFit known = VarianceFit.of(plain.withDelta(delta), isRestricted);
            assertThat(spread.tau()).isPositive();
            assertThat(known.tau()).isPositive();
            isMaximum(spread);
            isMaximum(known);
            isMaximum(VarianceFit.of(single, isRestricted));
        }
    }

    /** Satterthwaite by differences of the dense likelihood, with another step and in the variances, not their logarithms. */
    @Test
    void degreesOfFreedomAreThoseOfTheCurvatureOfFullMatrices() {
        CutRows rows = DenseMixedModel.uneven(2);
        VarianceFit fit = VarianceFit.of(rows, true);
        double[] settings = {1, 0.7};
        double s = fit.sigma() * fit.sigma();
        double t = fit.tau() * fit.tau();
        double[] h = {s * 1e-3, t * 1e-3};
        double[][] curvature = new double[2][2];
        double[] gradient = new double[2];
        for (int i = 0; i < 2; i++) {
            double di = i == 0 ? h[0] : 0;
            double ei = i == 1 ? h[1] : 0;
            gradient[i] =
                    (variance(rows, settings, s + di, t + ei) - variance(rows, settings, s - di, t - ei)) / (2 * h[i]);
            for (int j = 0; j < 2; j++) {
                double dj = j == 0 ? h[0] : 0;
                double ej = j == 1 ? h[1] : 0;
                double mixed = log(rows, s + di + dj, t + ei + ej)
                        - log(rows, s + di - dj, t + ei - ej)
                        - log(rows, s - di + dj, t - ei + ej)
                        + log(rows, s - di - dj, t - ei - ej);
                curvature[i][j] = -mixed / (4 * h[i] * h[j]);
            }
        }
        double determinant = curvature[0][0] * curvature[1][1] - curvature[0][1] * curvature[1][0];
        double spread = (gradient[0] * gradient[0] * curvature[1][1]
                        - 2 * gradient[0] * gradient[1] * curvature[0][1]
                        + gradient[1] * gradient[1] * curvature[0][0])
                / determinant;
        double value = variance(rows, settings, s, t);

        assertThat(fit.degreesOfFreedom(settings, 0.5, 0.8)).isCloseTo(2 * value * value / spread, within(0.01));
    }

    private static double log(CutRows rows, double s, double t) {
        return new DenseMixedModel(rows, Math.sqrt(s), Math.sqrt(t)).restricted();
    }

    private static double variance(CutRows rows, double[] settings, double s, double t) {
        RealMatrix covariance =
                DenseMixedModel.inverse(new DenseMixedModel(rows, Math.sqrt(s), Math.sqrt(t)).information());
        return Matrices.dot(settings, covariance.operate(settings)) + 0.5 * t + 0.8 * s;
    }

    @Test
    void theHighestPointIsFoundInsideAndAtTheEnds() {
        assertThat(VarianceFit.highest(x -> -(x - 1.23) * (x - 1.23), -9, 5)).isCloseTo(1.23, within(1e-6));
        assertThat(VarianceFit.highest(x -> x, -9, 5)).isCloseTo(5, within(1e-6));
        assertThat(VarianceFit.highest(x -> -x, -9, 5)).isCloseTo(-9, within(1e-6));
        // the higher of two hills, to either side of a valley
        assertThat(VarianceFit.highest(
                        x -> Math.exp(-8 * (x - 3.1) * (x - 3.1)) + 0.8 * Math.exp(-(x + 2) * (x + 2)), -9, 5))
                .isCloseTo(3.1, within(1e-6));
        assertThat(VarianceFit.highest(
                        x -> 0.7 * Math.exp(-8 * (x - 3.1) * (x - 3.1)) + Math.exp(-(x + 2) * (x + 2)), -9, 5))
                .isCloseTo(-2, within(1e-4));
    }

    /** Restricted and full likelihood differ by the term of the coefficients alone. */
    @Test
    void coefficientsAreWeightedLeastSquares() {
        CutRows rows = DenseMixedModel.uneven(4);
        double[] found = VarianceFit.coefficients(new MarginalLikelihood(rows), 2, 0.06, 0.15);

        assertThat(found).containsExactly(new DenseMixedModel(rows, 0.06, 0.15).beta(), within(1e-11));
    }

    @Test
    void cutsWithoutAnyScatterHaveNone() {
        double[][] x = {{1, 0}, {1, 1}, {1, 2}, {1, 3}};
        VarianceFit fit = VarianceFit.of(CutRows.exact(new double[] {2, 3, 4, 5}, x), true);

        assertThat(fit.sigma()).isBetween(0., 1e-11);
        assertThat(fit.beta()).containsExactly(new double[] {2, 1}, within(1e-12));
        assertThat(fit.logLikelihood()).isFinite();
    }
}
