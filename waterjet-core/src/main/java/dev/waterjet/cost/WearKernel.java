package dev.waterjet.cost;

import org.apache.commons.math3.special.Erf;

/** Lives that are known within a factor (log-normal), on SI doubles. */
final class WearKernel {

    private WearKernel() {}

    /** Chance that a life T has ended by an age: Phi((ln a - ln median)/s). */
    static double failureProbability(double medianS, double logDeviation, double ageS) {
        if (ageS <= 0) {
            return 0;
        }
        return logDeviation == 0 ? (ageS >= medianS ? 1 : 0) : standardNormal(Math.log(ageS / medianS) / logDeviation);
    }

    /** Age by which a chance of the lives have ended: median exp(s Phi^-1(chance)). */
    static double ageAtProbability(double medianS, double logDeviation, double chance) {
        return medianS * Math.exp(logDeviation * Math.sqrt(2) * Erf.erfInv(2 * chance - 1));
    }

    /**
     * Mean service until a part fails or reaches an age, E[min(T, a)] = m exp(s^2/2) Phi(k - s) + a (1 - Phi(k)) with
     * k = ln(a/m)/s: the limited expected value of the log-normal distribution.
     */
    static double meanService(double medianS, double logDeviation, double ageS) {
        if (logDeviation == 0) {
            return Math.min(medianS, ageS);
        }
        double k = Math.log(ageS / medianS) / logDeviation;
        return medianS * Math.exp(logDeviation * logDeviation / 2) * standardNormal(k - logDeviation)
                + ageS * (1 - standardNormal(k));
    }

    private static double standardNormal(double x) {
        return 0.5 * Erf.erfc(-x / Math.sqrt(2));
    }
}
