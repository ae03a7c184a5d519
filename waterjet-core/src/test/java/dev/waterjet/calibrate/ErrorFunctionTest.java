package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;

class ErrorFunctionTest {

    private static final double HIGHEST = 5;

    @Test
    void itIsTheErrorFunctionOfCommonsMath() {
        for (double x = 0; x < HIGHEST; x += 0.01) {
            double expected = Math.exp(x * x) * Erf.erfc(x);
            assertThat(ErrorFunction.scaled(x)).as("of %s", x).isCloseTo(expected, within(2e-14 * expected));
        }
    }

    /** Asymptotic series: 1/(x root pi) (1 - 1/(2 x^2) + 3/(4 x^4) - 15/(8 x^6) + 105/(16 x^8)), Abramowitz and Stegun 7.1.23. */
    @Test
    void farOutItIsTheAsymptoticSeries() {
        for (double x : new double[] {60, 100, 1e3, 1e6, 1e9, 1e150}) {
            double s = 1 / x / x;
            double series = 1 - s / 2 + 3 * s * s / 4 - 15 * s * s * s / 8 + 105 * s * s * s * s / 16;
            double expected = series / x / Math.sqrt(Math.PI);
            assertThat(ErrorFunction.scaled(x)).isCloseTo(expected, within(1e-15 * expected));
        }
        assertThat(ErrorFunction.scaled(Double.POSITIVE_INFINITY)).isZero();
        assertThat(ErrorFunction.scaled(0)).isEqualTo(1);
    }
}
