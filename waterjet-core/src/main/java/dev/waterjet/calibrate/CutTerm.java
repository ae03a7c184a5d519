package dev.waterjet.calibrate;

/** Contribution of one row to a log-likelihood, with its derivatives by the mean: value, slope, and minus the curvature. */
record CutTerm(double value, double slope, double information) {

    /** Term of a normal row with ends {@code lo} and {@code up}, about a mean with a standard deviation. */
    static CutTerm normal(double lo, double up, double mean, double deviation) {
        double a = (lo - mean) / deviation;
        if (lo == up) {
            return new CutTerm(
                    NormalTails.logDensity(a) - Math.log(deviation), a / deviation, 1 / (deviation * deviation));
        }
        double b = (up - mean) / deviation;
        double value = NormalTails.logBetween(a, b);
        double atLower = Double.isInfinite(a) ? 0 : Math.exp(NormalTails.logDensity(a) - value);
        double atUpper = Double.isInfinite(b) ? 0 : Math.exp(NormalTails.logDensity(b) - value);
        double slope = atLower - atUpper;
        double curvature =
                slope * slope - (Double.isInfinite(a) ? 0 : a * atLower) + (Double.isInfinite(b) ? 0 : b * atUpper);
        return new CutTerm(value, slope / deviation, Math.max(0, curvature) / (deviation * deviation));
    }

    /** Value alone, for any distribution of the scatter. */
    static double value(ErrorLaw law, double lo, double up, double mean, double deviation) {
        return lo == up
                ? law.logDensity((lo - mean) / deviation) - Math.log(deviation)
                : law.logBetween((lo - mean) / deviation, (up - mean) / deviation);
    }
}
