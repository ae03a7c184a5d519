package dev.waterjet.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;

/** Exact factors between units, written as the decimals in which they are defined. */
final class Rational {

    private final BigInteger numerator;
    private final BigInteger denominator;

    private Rational(BigInteger numerator, BigInteger denominator) {
        this.numerator = numerator;
        this.denominator = denominator;
    }

    /** A fraction of two decimals: {@code of("0.0254", "60")}. */
    static Rational of(String numerator, String denominator) {
        return of(numerator).over(of(denominator));
    }

    static Rational of(String decimal) {
        BigDecimal value = new BigDecimal(decimal);
        return value.scale() > 0
                ? new Rational(value.unscaledValue(), BigInteger.TEN.pow(value.scale()))
                : new Rational(value.toBigIntegerExact(), BigInteger.ONE);
    }

    Rational times(Rational other) {
        return new Rational(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
    }

    Rational over(Rational other) {
        return new Rational(numerator.multiply(other.denominator), denominator.multiply(other.numerator));
    }

    BigInteger numerator() {
        return numerator;
    }

    BigInteger denominator() {
        return denominator;
    }

    /** The double nearest to a fraction: of two exact doubles by their quotient, which IEEE 754 rounds once. */
    static double toDouble(BigInteger numerator, BigInteger denominator) {
        if (numerator.bitLength() <= 53 && denominator.bitLength() <= 53) {
            return numerator.doubleValue() / denominator.doubleValue();
        }
        return new BigDecimal(numerator)
                .divide(new BigDecimal(denominator), MathContext.DECIMAL128)
                .doubleValue();
    }
}
