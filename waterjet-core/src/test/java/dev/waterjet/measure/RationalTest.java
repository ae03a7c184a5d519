package dev.waterjet.measure;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import static org.assertj.core.api.Assertions.assertThat;

class RationalTest {

    @ParameterizedTest
    @CsvSource({
        "0.0254, 254, 10000",
        "60, 60, 1",
        "1e3, 1000, 1",
        "0.5, 5, 10",
    })
    void aDecimalIsItsDigitsOverAPowerOfTen(String decimal, BigInteger numerator, BigInteger denominator) {
        assertThat(Rational.of(decimal).numerator()).isEqualTo(numerator);
        assertThat(Rational.of(decimal).denominator()).isEqualTo(denominator);
    }

    @Test
    void fractionsMultiplyAndDivide() {
        Rational product = Rational.of("2", "3").times(Rational.of("5", "7"));
        Rational quotient = Rational.of("2", "3").over(Rational.of("5", "7"));

        assertThat(product.numerator().intValue()).isEqualTo(10);
        assertThat(product.denominator().intValue()).isEqualTo(21);
        assertThat(quotient.numerator().intValue()).isEqualTo(14);
        assertThat(quotient.denominator().intValue()).isEqualTo(15);
    }

    /** Nearest doubles by exact fractions in Python 3; rounding both parts first would miss the last two by an ulp. */
    @ParameterizedTest
    @CsvSource({
        "1, 3, 0.3333333333333333",
        "254, 10000, 0.0254",
        "9007199254740991, 1, 9007199254740991",
        "215, 580474829141388940, 3.703864305675715e-16",
        "53282253240996243, 924, 57664776234844.42",
    })
    void theNearestDoubleIsFound(BigInteger numerator, BigInteger denominator, double nearest) {
        assertThat(Rational.toDouble(numerator, denominator)).isEqualTo(nearest);
    }
}
