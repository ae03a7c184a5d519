package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.MultivariateNormalDistribution;
import org.junit.jupiter.api.Test;

class GaussianPriorTest {

    private static final double[][] PRECISION = {{4, -1}, {-1, 9}};
    private static final GaussianPrior PRIOR = new GaussianPrior(new double[] {4, 0.3}, PRECISION, 5, 0.06, 3, 0.04);

    @Test
    void coefficientsHaveTheNormalDensity() {
        MultivariateNormalDistribution normal =
                new MultivariateNormalDistribution(null, PRIOR.mean(), Matrices.inverse(PRECISION));
        double top = Math.log(normal.density(PRIOR.mean()));
        for (double[] beta : new double[][] {{4, 0.3}, {4.2, 0.1}, {3, 1}}) {
            assertThat(PRIOR.value(beta)).isCloseTo(Math.log(normal.density(beta)) - top, within(1e-12));
            for (int j = 0; j < 2; j++) {
                assertThat(PRIOR.slope(beta)[j])
                        .isCloseTo(Differences.slope(PRIOR::value, beta, j, 1e-4), within(1e-8));
            }
        }
    }

    /** With s^2 = nu s0^2 / c and c of chi-square, ln s has the density of c times 2 c. */
    private static double logDensity(double log, double freedom, double size) {
        double c = freedom * size * size / Math.exp(2 * log);
        return new ChiSquaredDistribution(null, freedom).logDensity(c) + Math.log(2 * c);
    }

    @Test
    void deviationsHaveTheScaledInverseChiSquareDensity() {
        double constant = PRIOR.ofDeviations(-3, 0, false) - logDensity(-3, 5, 0.06);
        double ofPlates = PRIOR.ofDeviations(-3, -3, true) - PRIOR.ofDeviations(-3, 0, false) - logDensity(-3, 3, 0.04);
        for (double log = -5; log < 0; log += 0.4) {
            assertThat(PRIOR.ofDeviations(log, 7, false)).isCloseTo(logDensity(log, 5, 0.06) + constant, within(1e-9));
            assertThat(PRIOR.ofDeviations(-2, log, true) - PRIOR.ofDeviations(-2, log, false))
                    .isCloseTo(logDensity(log, 3, 0.04) + ofPlates, within(1e-9));
        }
    }
}
