package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/** Maximum of the likelihood of cuts of any kind, where it is known otherwise. */
class CensoredFitTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;
    private static final double[] X = {-1.3, -0.4, 0.1, 0.5, 0.9, 1.6, -0.8};
    private static final double[] Y = {3.71, 3.98, 4.13, 4.08, 4.29, 4.41, 3.86};

    private static CutRows line() {
        double[][] x = new double[X.length][];
        Arrays.setAll(x, i -> new double[] {1, X[i]});
        return CutRows.exact(Y, x);
    }

    private static SimpleRegression regression() {
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < X.length; i++) {
            line.addData(X[i], Y[i]);
        }
        return line;
    }

    @Test
    void measuredCutsAreARegressionLine() {
        SimpleRegression line = regression();
        CensoredFit fit = CensoredFit.of(line(), ErrorLaw.NORMAL);
        double variance = line.getSumSquaredErrors() / X.length;

        assertThat(fit.beta()).containsExactly(new double[] {line.getIntercept(), line.getSlope()}, within(1e-8));
        assertThat(fit.sigma()).isCloseTo(Math.sqrt(variance), within(1e-8));
        assertThat(fit.tau()).isZero();
        assertThat(fit.logLikelihood())
                .isCloseTo(-X.length / 2.0 * (Math.log(2 * Math.PI * variance) + 1), within(1e-10));
        double share = (X.length - 2.0) / X.length;
        assertThat(fit.maximum().covariance()[1][1])
                .isCloseTo(share * Math.pow(line.getSlopeStdErr(), 2), within(1e-8));
        assertThat(fit.isDetermined()).isTrue();
    }

    /** With a drop of n/2 ln(1 + t^2/f) the profile of a regression ends where Student's interval does. */
    @Test
    void profilesOfMeasuredCutsEndAtStudentsIntervals() {
        SimpleRegression line = regression();
        CensoredFit fit = CensoredFit.of(line(), ErrorLaw.NORMAL);
        int freedom = X.length - 2;
        double[] best = {line.getIntercept(), line.getSlope()};
        double[] errors = {line.getInterceptStdErr(), line.getSlopeStdErr()};
        for (double probability : new double[] {0.75, 0.975, 0.9995}) {
            double t = new TDistribution(null, freedom).inverseCumulativeProbability(probability);
            double drop = X.length / 2.0 * Math.log1p(t * t / freedom);
            for (int j = 0; j < 2; j++) {
                for (int side = -1; side <= 1; side += 2) {
                    assertThat(fit.profileEnd(j, side, drop))
                            .isCloseTo(best[j] + side * t * errors[j], within(1e-6 * t));
                }
            }
        }
    }

    /** The sum of squares with a coefficient held is that of the rest, plus the square of its distance in errors. */
    @Test
    void theProfileIsTheLikelihoodWithOneCoefficientHeld() {
        SimpleRegression line = regression();
        CensoredFit fit = CensoredFit.of(line(), ErrorLaw.NORMAL);
        double held = line.getSlope() + 0.07;
        double rest = line.getSumSquaredErrors() + 0.07 * 0.07 * line.getXSumSquares();

        assertThat(fit.profile(1, held))
                .isCloseTo(-X.length / 2.0 * (Math.log(2 * Math.PI * rest / X.length) + 1), within(1e-8));
    }

    /** Ability within an interval of one half in the logarithm, at the middle of a normal distribution. */
    private static CutRows intervals() {
        double[] lo = {0, 0.1, -INFINITE, 0.05, -0.2, 0.3, 0.1};
        double[] up = {0.2, 0.3, 0.2, INFINITE, 0.1, 0.5, 0.1};
        double[][] x = new double[lo.length][];
        Arrays.setAll(x, i -> new double[] {1});
        return new CutRows(lo, up, x, new double[] {0, 0.05, 0, 0, 0, 0, 0.02}, new int[lo.length], 0);
    }

    private static double log(CutRows rows, double mean, double sigma) {
        double sum = 0;
        for (int i = 0; i < rows.size(); i++) {
            NormalDistribution normal = new NormalDistribution(null, mean, Math.hypot(sigma, rows.delta()[i]));
            sum += rows.isExact(i)
                    ? normal.logDensity(rows.lo()[i])
                    : Math.log(normal.probability(rows.lo()[i], rows.up()[i]));
        }
        return sum;
    }

    /** A step to any side of mean and scatter lowers the product of the probabilities, evenly to both. */
    @Test
    void noNeighbourOfTheMaximumIsMoreLikely() {
        CutRows rows = intervals();
        CensoredFit fit = CensoredFit.of(rows, ErrorLaw.NORMAL);
        double mean = fit.beta()[0];
        double top = log(rows, mean, fit.sigma());
        double h = 1e-3;

        assertThat(fit.logLikelihood()).isCloseTo(top, within(1e-10));
        double byMean = (log(rows, mean + h, fit.sigma()) - log(rows, mean - h, fit.sigma())) / (2 * h);
        double byScatter = (log(rows, mean, fit.sigma() * (1 + h)) - log(rows, mean, fit.sigma() * (1 - h))) / (2 * h);
        assertThat(byMean).isCloseTo(0, within(1e-2));
        assertThat(byScatter).isCloseTo(0, within(1e-3));
        double curvature = -(log(rows, mean + h, fit.sigma()) + log(rows, mean - h, fit.sigma()) - 2 * top) / (h * h);
        assertThat(fit.maximum().information()[0][0]).isCloseTo(curvature, within(1e-3 * curvature));
    }

    @Test
    void theEndOfAProfileIsWhereTheLikelihoodHasFallen() {
        CutRows rows = intervals();
        CensoredFit fit = CensoredFit.of(rows, ErrorLaw.NORMAL);
        for (int side = -1; side <= 1; side += 2) {
            double end = fit.profileEnd(0, side, 1.9);
            double best = Double.NEGATIVE_INFINITY;
            for (double s = -6; s < 1; s += 0.002) {
                best = Math.max(best, log(rows, end, Math.exp(s)));
            }
            assertThat(fit.logLikelihood() - best).isCloseTo(1.9, within(1e-4));
            assertThat(side * (end - fit.beta()[0])).isPositive();
        }
    }

    /** Full likelihood of balanced plates: within and shrunk between mean squares. */
    @Test
    void platesAreFittedAsByTheFullLikelihood() {
        CutRows rows = DenseMixedModel.uneven(2);
        CensoredFit fit = CensoredFit.of(rows, ErrorLaw.NORMAL);
        VarianceFit full = VarianceFit.of(rows, false);

        assertThat(fit.sigma()).isCloseTo(full.sigma(), within(1e-6));
        assertThat(fit.tau()).isCloseTo(full.tau(), within(1e-6));
        assertThat(fit.beta()).containsExactly(full.beta(), within(1e-6));
        assertThat(fit.logLikelihood()).isCloseTo(full.logLikelihood(), within(1e-9));
    }

    @Test
    void theSearchStartsAtLeastSquaresOfTheMiddles() {
        SimpleRegression line = regression();
        double scatter = Math.sqrt(line.getSumSquaredErrors() / X.length);
        double[] start = CensoredFit.start(line());
        double[] onPlates = CensoredFit.start(line().withPlates(new int[] {0, 0, 0, 1, 1, 1, 1}));

        assertThat(start)
                .containsExactly(new double[] {line.getIntercept(), line.getSlope(), Math.log(scatter)}, within(1e-12));
        assertThat(onPlates).hasSize(4);
        assertThat(onPlates[2]).isCloseTo(Math.log(scatter / Math.sqrt(2)), within(1e-12));
        assertThat(onPlates[3]).isEqualTo(onPlates[2]);
        CutRows same = CutRows.exact(new double[] {2, 2, 2}, new double[][] {{1}, {1}, {1}});
        assertThat(CensoredFit.start(same)[1]).isCloseTo(Math.log(0.02), within(1e-12));
        assertThat(CensoredFit.middle(intervals())[0])
                .isCloseTo((0.1 + 0.2 + 0.2 + 0.05 - 0.05 + 0.4 + 0.1) / 7, within(1e-14));
    }

    @Test
    void outsideItsRangeADeviationIsImpossible() {
        CutRows plain = line();
        CutRows plates = plain.withPlates(new int[] {0, 0, 0, 1, 1, 1, 1});

        assertThat(CensoredFit.logLikelihood(plain, ErrorLaw.NORMAL, new double[] {4, 0.2, -13.9}))
                .isFinite();
        assertThat(CensoredFit.logLikelihood(plain, ErrorLaw.NORMAL, new double[] {4, 0.2, -14.1}))
                .isEqualTo(-INFINITE);
        assertThat(CensoredFit.logLikelihood(plain, ErrorLaw.NORMAL, new double[] {4, 0.2, 14}))
                .isEqualTo(-INFINITE);
        assertThat(CensoredFit.logLikelihood(plain, ErrorLaw.NORMAL, new double[] {4, 0.2, 13}))
                .isFinite();
        assertThat(CensoredFit.logLikelihood(plates, ErrorLaw.NORMAL, new double[] {4, 0.2, -2, 14}))
                .isEqualTo(-INFINITE);
        assertThat(CensoredFit.logLikelihood(plates, ErrorLaw.NORMAL, new double[] {4, 0.2, -2, -800}))
                .isEqualTo(-INFINITE);
        assertThat(CensoredFit.logLikelihood(plates, ErrorLaw.NORMAL, new double[] {4, 0.2, -2, -3}))
                .isFinite();
    }

    /** Trials that never disagree, one above the other: every scatter is too large. */
    @Test
    void aScatterThatVanishesIsNotDetermined() {
        CutRows rows = new CutRows(
                new double[] {0, -INFINITE, 0.1, -INFINITE},
                new double[] {INFINITE, 0.2, INFINITE, 0.3},
                new double[][] {{1}, {1}, {1}, {1}},
                new double[4],
                new int[4],
                0);

        assertThat(CensoredFit.of(rows, ErrorLaw.NORMAL).isDetermined()).isFalse();
        assertThat(CensoredFit.of(intervals(), ErrorLaw.NORMAL).isDetermined()).isTrue();
    }

    /** Student's location: the weighted mean of the values by their own weights. */
    @Test
    void studentsMaximumIsTheMeanByItsOwnWeights() {
        double[] y = {0.1, -0.3, 0.2, 0.05, 2.5, -0.1, 0.3};
        double[][] x = new double[y.length][];
        Arrays.setAll(x, i -> new double[] {1});
        StudentFit fit = StudentFit.of(CutRows.exact(y, x), 4);
        double scale = fit.fit().sigma();
        double location = fit.fit().beta()[0];
        double sum = 0;
        double weighted = 0;
        double squares = 0;
        for (int i = 0; i < y.length; i++) {
            double z = (y[i] - location) / scale;
            double weight = 5 / (4 + z * z);
            assertThat(fit.weights()[i]).isCloseTo(weight, within(1e-12));
            sum += weight;
            weighted += weight * y[i];
            squares += weight * z * z;
        }
        assertThat(weighted / sum).isCloseTo(location, within(1e-7));
        assertThat(squares / y.length).isCloseTo(1, within(1e-6));
    }

    /** The other of two groups is a maximum too, and the message has its likelihood. */
    @Test
    void aSecondGroupIsARivalMaximum() {
        Random random = new Random(3);
        double[] y = new double[20];
        Arrays.setAll(y, i -> 0.01 * random.nextGaussian() + (i % 5 < 2 ? 1 : 0));
        double[][] x = new double[y.length][];
        Arrays.setAll(x, i -> new double[] {1});
        StudentFit two = StudentFit.of(CutRows.exact(y, x), 1);

        assertThat(two.fit().beta()[0]).isBetween(-0.1, 0.1);
        assertThat(two.rival()).isLessThanOrEqualTo(two.fit().logLikelihood());
        double[] one = Arrays.stream(y).filter(v -> v < 0.5).toArray();
        assertThat(StudentFit.of(CutRows.exact(one, Arrays.copyOf(x, one.length)), 4)
                        .rival())
                .isEqualTo(-INFINITE);
    }
}
