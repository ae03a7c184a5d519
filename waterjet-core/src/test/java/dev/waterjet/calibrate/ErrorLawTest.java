package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class ErrorLawTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    @Test
    void probabilitiesAreDifferencesOfTheDistributionFunction() {
        TDistribution student = new TDistribution(null, 4);
        NormalDistribution normal = new NormalDistribution(null, 0, 1);
        for (double a = -3; a < 3; a += 0.37) {
            for (double width : new double[] {0.05, 0.5, 2}) {
                double b = a + width;
                assertThat(ErrorLaw.student(4).logBetween(a, b))
                        .isCloseTo(Math.log(student.probability(a, b)), within(1e-10));
                assertThat(ErrorLaw.NORMAL.logBetween(a, b))
                        .isCloseTo(Math.log(normal.probability(a, b)), within(1e-11));
            }
            assertThat(ErrorLaw.student(4).logDensity(a)).isEqualTo(student.logDensity(a));
            assertThat(ErrorLaw.student(4).logBetween(-INFINITE, a))
                    .isCloseTo(Math.log(student.cumulativeProbability(a)), within(1e-12));
            assertThat(ErrorLaw.student(4).logBetween(a, INFINITE))
                    .isCloseTo(Math.log(student.cumulativeProbability(-a)), within(1e-12));
            assertThat(ErrorLaw.NORMAL.logBetween(a, INFINITE))
                    .isCloseTo(Math.log(normal.cumulativeProbability(-a)), within(1e-12));
            assertThat(ErrorLaw.NORMAL.logDensity(a)).isCloseTo(normal.logDensity(a), within(1e-14));
        }
    }

    /** Cauchy's distribution function is arctan(x)/pi + 1/2. */
    @Test
    void oneDegreeOfFreedomIsCauchys() {
        assertThat(ErrorLaw.student(1).logBetween(50, 80))
                .isCloseTo(Math.log((Math.atan(1 / 50.0) - Math.atan(1 / 80.0)) / Math.PI), within(1e-9));
        assertThat(ErrorLaw.student(1).logDensity(3)).isCloseTo(-Math.log(10 * Math.PI), within(1e-12));
    }

    @Test
    void aVeryNarrowIntervalHasTheDensityAtItsMiddle() {
        for (double a : new double[] {-30, -2, 0.1, 2, 30}) {
            double b = a + 1e-11 * (1 + Math.abs(a));
            double expected = new TDistribution(null, 3).logDensity(a) + Math.log(b - a);
            assertThat(ErrorLaw.student(3).logBetween(a, b)).isCloseTo(expected, within(1e-9));
        }
    }

    @Test
    void theNormalLawHasInfiniteFreedom() {
        assertThat(ErrorLaw.NORMAL.freedom()).isInfinite();
        assertThat(ErrorLaw.student(4).freedom()).isEqualTo(4);
    }
}
