package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class MixtureTest {

    /** A normal quantity whose variance is scaled by nu over chi-square is Student's: a mixture over its quantiles comes near. */
    @Test
    void aMixtureOverTheVarianceIsStudents() {
        double freedom = 6;
        ChiSquaredDistribution chi = new ChiSquaredDistribution(null, freedom);
        int parts = 4000;
        Mixture.Builder builder = new Mixture.Builder();
        for (int k = 0; k < parts; k++) {
            builder.add(1.0 / parts, 2, 0.1 * Math.sqrt(freedom / chi.inverseCumulativeProbability((k + 0.5) / parts)));
        }
        Mixture mixture = builder.build();
        double[] student = mixture.student();

        assertThat(student[0]).isCloseTo(2, within(1e-6));
        assertThat(student[1]).isCloseTo(0.1, within(2e-4));
        assertThat(student[2]).isCloseTo(freedom, within(0.05));
        assertThat(mixture.quantile(0.975))
                .isCloseTo(
                        2 + 0.1 * new TDistribution(null, freedom).inverseCumulativeProbability(0.975), within(2e-4));
    }

    @Test
    void quantilesInvertTheDistributionFunction() {
        Mixture.Builder builder = new Mixture.Builder();
        builder.add(0.3, -1, 0.2);
        builder.add(0.7, 2, 1.5);
        Mixture mixture = builder.build();

        for (double p : new double[] {0.001, 0.1, 0.29, 0.5, 0.9, 0.9999}) {
            assertThat(mixture.below(mixture.quantile(p))).isCloseTo(p, within(1e-9));
        }
        assertThat(mixture.mean()).isCloseTo(-0.3 + 1.4, within(1e-12));
        assertThat(mixture.deviation() * mixture.deviation())
                .isCloseTo(0.3 * (0.04 + 1) + 0.7 * (2.25 + 4) - 1.21, within(1e-12));
    }

    @Test
    void oneNormalDistributionHasItsOwnQuantiles() {
        Mixture.Builder builder = new Mixture.Builder();
        builder.add(1, 5, 0.01);
        double[] student = builder.build().student();

        assertThat(student[2]).isEqualTo(200);
        assertThat(student[1] * new TDistribution(null, 200).inverseCumulativeProbability(0.975))
                .isCloseTo(0.01 * new NormalDistribution(null, 0, 1).inverseCumulativeProbability(0.975), within(1e-9));
    }

    @Test
    void itsDensityIsTheSlopeOfItsDistributionFunction() {
        Mixture mixture = two(0.2, 1.5);
        for (double x = -2; x < 5; x += 0.3) {
            double slope = (mixture.below(x + 1e-5) - mixture.below(x - 1e-5)) / 2e-5;
            assertThat(Math.exp(mixture.logDensity(x))).isCloseTo(slope, within(1e-8));
        }
    }

    private static Mixture two(double first, double second) {
        Mixture.Builder builder = new Mixture.Builder();
        builder.add(0.3, -1, first);
        builder.add(0.7, 2, second);
        return builder.build();
    }

    @Test
    void aPlaceWithoutWidthIsAStep() {
        Mixture steps = two(0, 0);

        assertThat(steps.below(-1.1)).isCloseTo(0, within(1e-12));
        assertThat(steps.below(-1)).isCloseTo(0.15, within(1e-12));
        assertThat(steps.below(0)).isCloseTo(0.3, within(1e-12));
        assertThat(steps.below(2.1)).isCloseTo(1, within(1e-12));
        assertThat(steps.deviation()).isCloseTo(3 * Math.sqrt(0.21), within(1e-12));
        assertThat(two(0, 1.5).below(2)).isCloseTo(0.3 + 0.35, within(1e-12));
    }

    /** Quantiles of one normal distribution, as far out as a tail of 1e-12. */
    @Test
    void farQuantilesAreReached() {
        Mixture.Builder builder = new Mixture.Builder();
        builder.add(0.5, 3, 0.2);
        builder.add(0.5, 3, 0.2);
        Mixture mixture = builder.build();
        NormalDistribution normal = new NormalDistribution(null, 3, 0.2);
        for (double p : new double[] {1e-10, 1e-6, 0.025, 0.4, 0.5, 0.6, 0.975, 1 - 1e-9}) {
            assertThat(mixture.quantile(p)).isCloseTo(normal.inverseCumulativeProbability(p), within(1e-5));
        }
        assertThat(mixture.below(2.9)).isCloseTo(normal.cumulativeProbability(2.9), within(1e-14));
    }

    /** A narrow distribution with a wide one under it has heavier tails than Student's with one degree of freedom. */
    @Test
    void tailsAreNoHeavierThanCauchys() {
        Mixture.Builder builder = new Mixture.Builder();
        builder.add(0.9, 0, 0.01);
        builder.add(0.1, 0, 1);
        Mixture mixture = builder.build();
        double[] student = mixture.student();

        assertThat(student[2]).isEqualTo(1);
        // 12.706205: quantile 0.975 of Student's distribution with one degree of freedom, any table
        assertThat(student[1]).isCloseTo(mixture.quantile(0.975) / 12.706205, within(1e-6));
    }

    /** Location between the tails, which a lopsided mixture has not at its mean. */
    @Test
    void studentsLocationIsBetweenTheTails() {
        Mixture mixture = two(0.2, 1.5);
        double[] student = mixture.student();

        assertThat(student[0]).isCloseTo((mixture.quantile(0.025) + mixture.quantile(0.975)) / 2, within(1e-9));
        assertThat(student[1]).isPositive();
    }
}
