package dev.waterjet.fit;

import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * Weights of robust regression, which limit the influence of an outlier (Huber 1964; Tukey's bisquare, Beaton and Tukey
 * 1974; tuning constants for 95 % efficiency under a normal distribution, from memory).
 */
final class RobustWeights {

    static final double HUBER = 1.345;
    static final double BISQUARE = 4.685;

    /** Ratio of the standard deviation of a normal distribution to its median absolute deviation. */
    private static final double MAD_TO_DEVIATION = 1.482602218505602;

    private RobustWeights() {}

    /** Standard deviation of the residuals from their median size, corrected for the degrees of freedom. */
    static double spread(double[] residuals, int parameters) {
        double[] sizes = new double[residuals.length];
        for (int i = 0; i < sizes.length; i++) {
            sizes[i] = Math.abs(residuals[i]);
        }
        double freedom = (double) sizes.length / (sizes.length - parameters);
        return MAD_TO_DEVIATION * new Median().evaluate(sizes) * Math.sqrt(freedom);
    }

    /** w = min(1, k/|r|). */
    static double huber(double residual) {
        double size = Math.abs(residual);
        return size <= HUBER ? 1 : HUBER / size;
    }

    /** w = (1 - (r/c)^2)^2 within c, else 0. */
    static double bisquare(double residual) {
        double share = residual / BISQUARE;
        double rest = Math.max(0, 1 - share * share);
        return rest * rest;
    }

    /** Derivative of r w(r) for the bisquare. */
    private static double bisquareSlope(double residual) {
        double square = residual / BISQUARE * residual / BISQUARE;
        return square >= 1 ? 0 : (1 - square) * (1 - 5 * square);
    }

    /**
     * Variance that takes the place of that of the residuals in the covariance of the parameters (Huber, Robust Statistics
     * (1981), eq. 6.5 of chapter 7, from memory): K^2 (sum psi^2 / (n - p)) / mean(psi')^2, K = 1 + p/n var(psi') /
     * mean(psi')^2, times the square of the spread.
     */
    static double variance(double[] residuals, double spread, int parameters) {
        int count = residuals.length;
        double squares = 0;
        double slope = 0;
        double slopeSquares = 0;
        for (double residual : residuals) {
            double scaled = residual / spread;
            double psi = scaled * bisquare(scaled);
            double derivative = bisquareSlope(scaled);
            squares += psi * psi;
            slope += derivative / count;
            slopeSquares += derivative * derivative / count;
        }
        double correction = 1 + parameters / (double) count * (slopeSquares - slope * slope) / (slope * slope);
        return spread * spread * correction * correction * squares / (count - parameters) / (slope * slope);
    }
}
