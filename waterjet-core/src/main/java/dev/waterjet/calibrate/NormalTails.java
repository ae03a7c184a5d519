package dev.waterjet.calibrate;

import org.apache.commons.math3.special.Erf;

/**
 * Logarithms of normal probabilities that keep their digits far out in the tails, where a difference of distribution functions
 * is zero.
 */
final class NormalTails {

    static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

    private static final double ROOT_TWO = Math.sqrt(2);

    /** Below this the continued fraction of the tail has all its digits; above it the error function has. */
    private static final double TAIL = -2.5;

    /** Terms of the fraction: these and more by the square of the distance, so that 16 digits are kept everywhere. */
    private static final double MIN_TERMS = 6;

    private static final double TERMS = 270;

    /** Nearer to 1 than this, the ratio of both probabilities has lost its digits; the density is then constant. */
    private static final double NARROW = -1e-10;

    private NormalTails() {}

    /** Logarithm of the density of the standard normal distribution. */
    static double logDensity(double x) {
        return -0.5 * x * x - LOG_ROOT_TWO_PI;
    }

    /** Logarithm of the distribution function. Laplace's continued fraction of the tail: Abramowitz and Stegun 26.2.14. */
    static double logBelow(double x) {
        if (x == Double.POSITIVE_INFINITY) {
            return 0;
        }
        if (x == Double.NEGATIVE_INFINITY) {
            return Double.NEGATIVE_INFINITY;
        }
        if (x > TAIL) {
            return x > 0 ? Math.log1p(-0.5 * Erf.erfc(x / ROOT_TWO)) : Math.log(0.5 * Erf.erfc(-x / ROOT_TWO));
        }
        double z = -x;
        double fraction = z;
        for (int k = (int) (MIN_TERMS + TERMS / (z * z)); k >= 1; k--) {
            fraction = z + k / fraction;
        }
        return logDensity(z) - Math.log(fraction);
    }

    /** Logarithm of the probability between two values. */
    static double logBetween(double a, double b) {
        if (a > 0) {
            return logBetween(-b, -a);
        }
        if (a == Double.NEGATIVE_INFINITY) {
            return logBelow(b);
        }
        double upper = logBelow(b);
        double lower = logBelow(a) - upper;
        if (lower > NARROW) {
            return logDensity((a + b) / 2) + Math.log(b - a);
        }
        return upper + Math.log1p(-Math.exp(lower));
    }
}
