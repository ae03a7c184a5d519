package dev.waterjet.simulate;

/** Closed forms of the dose, in s/m, for paths that are not polylines; in m, s. */
final class DoseKernel {

    /** From here on the asymptotic series of the Bessel function is accurate to the last digits. */
    private static final double ASYMPTOTIC = 40;

    private static final double NEGLIGIBLE = 1e-17;

    private DoseKernel() {}

    /**
     * Dose of one turn on a circle: {@code sqrt(2 pi) R/(u s) exp(-(r - R)^2/(2 s^2)) exp(-x) I0(x)}, {@code x = r R/s^2}.
     *
     * @param radiusM radius R of the circle
     * @param feedMPerS feed u along it
     * @param distanceM distance r of the point from its centre
     * @param spreadM spread s of the dose
     */
    static double circle(double radiusM, double feedMPerS, double distanceM, double spreadM) {
        double off = (distanceM - radiusM) / spreadM;
        return Math.sqrt(2 * Math.PI)
                * radiusM
                / (feedMPerS * spreadM)
                * Math.exp(-off * off / 2)
                * scaledBesselI0(distanceM * radiusM / (spreadM * spreadM));
    }

    /**
     * Modified Bessel function of the first kind and order 0, times exp(-x); Abramowitz, Stegun (1964), 9.6.12 and 9.7.1.
     * Commons Math 3 has no modified Bessel functions.
     */
    static double scaledBesselI0(double x) {
        double term = 1;
        double sum = 1;
        if (x < ASYMPTOTIC) {
            for (int k = 1; term > NEGLIGIBLE * sum; k++) {
                term *= x * x / (4.0 * k * k);
                sum += term;
            }
            return sum * Math.exp(-x);
        }
        for (int k = 1; term > NEGLIGIBLE * sum; k++) {
            term *= (2.0 * k - 1) * (2.0 * k - 1) / (8 * k * x);
            sum += term;
        }
        return sum / Math.sqrt(2 * Math.PI * x);
    }
}
