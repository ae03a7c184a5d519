package dev.waterjet.calibrate;

/**
 * Logarithms of normal probabilities that keep their digits far out in the tails, where a difference of distribution functions
 * is zero.
 */
final class NormalTails {

    static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

    private static final double ROOT_TWO = Math.sqrt(2);

    /** Above this a distribution function is no small number, and a difference that is a fair share of it has its digits. */
    private static final double MODERATE = -20;

    private static final double WIDE = 0.01;

    /** Nearer to 1 than this, the ratio of both probabilities has lost its digits; the density is then constant. */
    private static final double NARROW = -1e-10;

    private NormalTails() {}

    /** Logarithm of the density of the standard normal distribution. */
    static double logDensity(double x) {
        return -0.5 * x * x - LOG_ROOT_TWO_PI;
    }

    /** Logarithm of the distribution function. */
    static double logBelow(double x) {
        if (x > 0) {
            return Math.log1p(-below(-x));
        }
        return x == Double.NEGATIVE_INFINITY ? x : Math.log(0.5 * ErrorFunction.scaled(-x / ROOT_TWO)) - 0.5 * x * x;
    }

    /** Distribution function. */
    static double below(double x) {
        return x > 0 ? 1 - below(-x) : 0.5 * ErrorFunction.scaled(-x / ROOT_TWO) * Math.exp(-0.5 * x * x);
    }

    /** Logarithm of the probability between two values. */
    static double logBetween(double a, double b) {
        if (a > 0) {
            return logBetween(-b, -a);
        }
        if (a == Double.NEGATIVE_INFINITY) {
            return logBelow(b);
        }
        if (a > MODERATE) {
            double above = below(b);
            double between = above - below(a);
            if (between > WIDE * above) {
                return Math.log(between);
            }
        }
        double upper = logBelow(b);
        double lower = logBelow(a) - upper;
        if (lower > NARROW) {
            return logDensity((a + b) / 2) + Math.log(b - a);
        }
        return upper + Math.log1p(-Math.exp(lower));
    }
}
