package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NormalTailsTest {

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    /** Values of R 4.2.2, pnorm(log.p = TRUE), and by 50 digits for the narrow intervals. */
    @ParameterizedTest
    @CsvSource({
        "-Infinity, -38, -726.557216019",
        "-Infinity, -60, -1805.01356068",
        "5, 5.5, -15.1335408113",
        "12, 12.01, -77.5835249599",
        "-30, -29.5, -439.42947495"
    })
    void tailsKeepTheirDigits(double a, double b, double expected) {
        assertThat(NormalTails.logBetween(a, b)).isCloseTo(expected, within(2e-11 * Math.abs(expected)));
    }

    /** Commons Math has 15 digits of the distribution function in this range. */
    @Test
    void theFractionAndTheErrorFunctionJoin() {
        for (double x = -30; x < 3; x += 0.013) {
            assertThat(NormalTails.logBelow(x))
                    .isCloseTo(Math.log(NORMAL.cumulativeProbability(x)), within(2e-13 * (1 + x * x)));
        }
    }

    @Test
    void anIntervalIsAsProbableAsItsMirrorImage() {
        Random random = new Random(3);
        for (int k = 0; k < 1000; k++) {
            double a = 20 * random.nextGaussian();
            double b = a + Math.exp(3 * random.nextGaussian() - 3);
            double one = NormalTails.logBetween(a, b);

            assertThat(NormalTails.logBetween(-b, -a)).isCloseTo(one, within(1e-9 * (1 + Math.abs(one))));
            assertThat(one).isLessThanOrEqualTo(NormalTails.logBelow(b) + 1e-12);
        }
    }

    /** An interval that shrinks has the density at its middle. */
    @Test
    void aNarrowIntervalHasTheDensity() {
        for (double x : new double[] {-8, -1, 0, 0.5, 3, 9}) {
            for (double width : new double[] {1e-4, 1e-7, 1e-11}) {
                double a = x - width / 2;
                double b = x + width / 2;
                assertThat(NormalTails.logBetween(a, b))
                        .isCloseTo(NormalTails.logDensity(x) + Math.log(b - a), within(1e-4 * (1 + x * x) * 1e-2));
            }
        }
    }
}
