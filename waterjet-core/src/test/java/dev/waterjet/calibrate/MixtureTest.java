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
}
