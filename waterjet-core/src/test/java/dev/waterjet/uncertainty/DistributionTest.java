package dev.waterjet.uncertainty;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import java.util.Arrays;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DistributionTest {

    /** Probability below one deviation of a normal distribution: 84.134 %, NIST/SEMATECH e-Handbook, 1.3.6.7.1. */
    private static final double BELOW_ONE = 0.8413447460685429;

    @Test
    void isAValue() {
        ValueContract.of(() -> Distribution.triangular(0, 1, 5))
                .has("value", Distribution::value, 2.0)
                .has("degrees of freedom", Distribution::degreesOfFreedom, Double.POSITIVE_INFINITY)
                .differs("lower limit", Distribution.triangular(-1, 1, 5))
                .differs("likeliest value", Distribution.triangular(0, 2, 5))
                .differs("upper limit", Distribution.triangular(0, 1, 6))
                .differs("shape", Distribution.uniform(0, 5))
                .differs("another shape", Distribution.arcsine(0, 5))
                .prints("triangular, 0.0 to 5.0, likeliest 1.0")
                .check();
    }

    @Test
    void eachShapeReadsAsOneLine() {
        assertThat(Distribution.normal(5, 2)).hasToString("normal, 5.0 +/- 2.0");
        assertThat(Distribution.student(5, 2, 9)).hasToString("Student, 5.0 +/- 2.0, 9.0 degrees of freedom");
        assertThat(Distribution.logNormal(5, 0.25)).hasToString("log-normal, 5.0 within 25.0 %");
        assertThat(Distribution.uniform(1, 2)).hasToString("uniform, 1.0 to 2.0");
        assertThat(Distribution.arcsine(1, 2)).hasToString("arcsine, 1.0 to 2.0");
    }

    /** Quantiles at one standard deviation of a normal distribution, in closed form. */
    @Test
    void quantilesFollowTheirFormulas() {
        double below = 1 - BELOW_ONE;

        assertThat(Distribution.normal(5, 2).quantile(BELOW_ONE)).isCloseTo(7, within(1e-12));
        assertThat(Distribution.logNormal(10, 0.5).quantile(BELOW_ONE)).isCloseTo(10 * Math.exp(0.5), within(1e-12));
        assertThat(Distribution.uniform(-1, 4).quantile(BELOW_ONE)).isCloseTo(-1 + 5 * BELOW_ONE, within(1e-12));
        assertThat(Distribution.arcsine(-2, 6).quantile(0.5)).isCloseTo(2, within(1e-12));
        assertThat(Distribution.arcsine(-2, 6).quantile(BELOW_ONE))
                .isCloseTo(2 - 4 * Math.cos(Math.PI * BELOW_ONE), within(1e-12));
        // minimum + sqrt(p w a) on the rising side of the triangle, maximum - sqrt((1 - p) w b) on the other
        assertThat(Distribution.triangular(1, 3, 6).quantile(below))
                .isCloseTo(1 + Math.sqrt(below * 5 * 2), within(1e-12));
        assertThat(Distribution.triangular(1, 3, 6).quantile(BELOW_ONE))
                .isCloseTo(6 - Math.sqrt(below * 5 * 3), within(1e-12));
        // Student with one degree of freedom is Cauchy's distribution: quantile tan(pi (p - 1/2))
        assertThat(Distribution.student(5, 2, 1).quantile(0.75)).isCloseTo(7, within(1e-8));
        assertRefused(() -> Distribution.normal(0, 1).quantile(0), "must-be-above", "probability", 0);
        assertRefused(() -> Distribution.uniform(0, 1).quantile(1), "must-be-at-most", "probability", 1);
    }

    @Test
    void limitsMustStandInOrder() {
        assertRefused(() -> Distribution.triangular(5, 3, 1), "must-be-above", "upper limit", 5);
        assertRefused(() -> Distribution.arcsine(5, 5), "must-be-above", "upper limit", 5);
        assertRefused(() -> Distribution.triangular(0, 6, 5), "must-be-at-most", "likeliest value", 5);
        assertRefused(() -> Distribution.uniform(Double.NEGATIVE_INFINITY, 0), "must-be-at-least");
        assertRefused(() -> Distribution.student(0, 1, 0), "must-be-above", "degrees of freedom", 0);
    }

    /** First outputs of SplitMix64 from the seed 0, as published with it (from memory): mixed multiples of its step. */
    @Test
    void seedsAreMixedAsSplitMixHasIt() {
        long step = 0x9E3779B97F4A7C15L;

        assertThat(BatchRandom.mixed(step)).isEqualTo(0xE220A8397B1DCDAFL);
        assertThat(BatchRandom.mixed(2 * step)).isEqualTo(0x6E789E6AA1B965F4L);
        assertThat(BatchRandom.mixed(3 * step)).isEqualTo(0x06C45D188009454FL);
    }

    /** The same seed and batch give the same bits in every release; reckoned from SplitMix64 in Python 3. */
    @Test
    void drawsAreTheSameInEveryRelease() {
        assertThat(BatchRandom.of(1, 0).nextDouble()).isEqualTo(0.33504256092169343);
        assertThat(BatchRandom.of(2, 2).nextDouble()).isEqualTo(0.1543955821196728);
    }

    /** Mean nu and variance 2 nu, and quantiles by Apache Commons Math; above and below two degrees of freedom. */
    @ParameterizedTest
    @ValueSource(doubles = {0.8, 2, 5})
    void chiSquareHasTheMomentsAndQuantilesOfItsDistribution(double freedom) {
        int count = 100_000;
        BatchRandom draws = BatchRandom.of(11, 0);
        double[] drawn = new double[count];
        Arrays.setAll(drawn, i -> draws.chiSquare(freedom));
        double mean = Arrays.stream(drawn).average().orElseThrow();
        double variance = Arrays.stream(drawn).map(x -> (x - mean) * (x - mean)).sum() / count;

        assertThat(mean).isCloseTo(freedom, within(4 * Math.sqrt(2 * freedom / count)));
        assertThat(variance / (2 * freedom)).isCloseTo(1, within(0.05));
        ChiSquaredDistribution exact = new ChiSquaredDistribution(null, freedom);
        for (double probability : new double[] {0.1, 0.5, 0.9}) {
            double quantile = exact.inverseCumulativeProbability(probability);
            double below = Arrays.stream(drawn).filter(x -> x <= quantile).count() / (double) count;
            assertThat(below).as("share below %s", quantile).isCloseTo(probability, within(0.0065));
        }
    }
}
