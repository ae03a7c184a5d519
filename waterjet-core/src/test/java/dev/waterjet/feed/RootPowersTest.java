package dev.waterjet.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RootPowersTest {

    private static final MathContext FIGURES = new MathContext(60);

    /** y = x^(23/20) exactly where y^20 = x^23; a small deviation of the ratio is 20 times that of y. */
    private static double deviationInUlps(double x, double y) {
        BigDecimal ratio = new BigDecimal(y).pow(20, FIGURES).divide(new BigDecimal(x).pow(23, FIGURES), FIGURES);
        return ratio.subtract(BigDecimal.ONE).doubleValue() / 20 * y / Math.ulp(y);
    }

    @Test
    void powersAreWithinOneUnitInTheLastPlace() {
        SplittableRandom random = new SplittableRandom(20260228);
        double[] inverse =
                random.doubles(10_000, -88, 88).map(e -> Math.pow(10, e)).toArray();
        double[] powers = RootPowersKernel.powersOfRatios(1, inverse);

        for (int i = 0; i < inverse.length; i++) {
            double x = 1 / inverse[i];
            assertThat(deviationInUlps(x, powers[i])).as("%s^1.15", x).isBetween(-1.0, 1.0);
        }
    }

    @Test
    void powersNextToPowersOfTwoAreWithinOneUnitInTheLastPlace() {
        for (int exponent = -60; exponent <= 60; exponent++) {
            double two = Math.scalb(1.0, exponent);
            for (double x : new double[] {Math.nextDown(two), two, Math.nextUp(two), 1.5 * two}) {
                double power = RootPowersKernel.powersOfRatios(x, new double[] {1})[0];
                assertThat(deviationInUlps(x, power)).as("%s^1.15", x).isBetween(-1.0, 1.0);
            }
        }
    }

    @Test
    void wholePowersAreExact() {
        double[] powers = RootPowersKernel.powersOfRatios(Math.scalb(1.0, 20), new double[] {1, Math.scalb(1.0, 40)});

        assertThat(powers).containsExactly(Math.scalb(1.0, 23), Math.scalb(1.0, -23));
    }

    @Test
    void numbersBeyondTheRangeOfTheirCubesArePowersOfTheMathLibrary() {
        double[] powers = RootPowersKernel.powersOfRatios(1, new double[] {1e-200, 1e200, 1e-300, Double.MIN_VALUE});

        assertThat(powers)
                .containsExactly(
                        Math.pow(1e200, 1.15),
                        Math.pow(1 / 1e200, 1.15),
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY);
        assertThat(RootPowersKernel.powersOfRatios(0, new double[] {1})).containsExactly(0);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 255, 256, 257, 511, 512, 513, 1000})
    void placeInTheArrayDoesNotMatter(int count) {
        double[] denominators = new double[count];
        for (int i = 0; i < count; i++) {
            denominators[i] = 0.001 + 1e-5 * i;
        }
        double[] powers = RootPowersKernel.powersOfRatios(0.02, denominators);

        assertThat(powers).hasSize(count);
        for (int i = 0; i < count; i++) {
            assertThat(powers[i]).isEqualTo(RootPowersKernel.powersOfRatios(0.02, new double[] {denominators[i]})[0]);
        }
    }
}
