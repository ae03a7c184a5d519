package dev.waterjet.kerf;

import org.apache.commons.math3.special.Erf;

/**
 * Error function for inner loops: a table of the values of Commons Math, and between them the series in the distance from
 * the nearest entry. Its absolute error is below 1e-15; the library's own function sums a series of 20 to 100 terms for
 * each value, which takes some fifty times as long.
 */
final class ErrorFunction {

    private static final int PER_UNIT = 128;
    /** From here on erf is 1 within half of the last place. */
    private static final int END = 6;

    private static final double[] VALUES = new double[END * PER_UNIT + 1];
    private static final double[] SLOPES = new double[END * PER_UNIT + 1];

    static {
        for (int i = 0; i < VALUES.length; i++) {
            double x = (double) i / PER_UNIT;
            VALUES[i] = Erf.erf(x);
            SLOPES[i] = 2 / Math.sqrt(Math.PI) * Math.exp(-x * x);
        }
    }

    private ErrorFunction() {}

    /** erf(x0 + d) = erf(x0) + slope d (1 - x0 d + (2 x0^2 - 1) d^2/3 - x0 (2 x0^2 - 3) d^3/6 + ...). */
    static double value(double argument) {
        double size = Math.abs(argument);
        if (!(size < END)) {
            return size >= END ? Math.signum(argument) : argument;
        }
        int i = (int) (size * PER_UNIT + 0.5);
        double x = (double) i / PER_UNIT;
        double d = size - x;
        double xx = x * x;
        double fifth = (4 * xx * xx - 12 * xx + 3) * (1.0 / 30);
        double fourth = x * (3 - 2 * xx) * (1.0 / 6);
        double series = 1 + d * (-x + d * ((2 * xx - 1) * (1.0 / 3) + d * (fourth + d * fifth)));
        return Math.copySign(VALUES[i] + SLOPES[i] * d * series, argument);
    }
}
