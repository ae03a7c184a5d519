package dev.waterjet.cost;

import org.apache.commons.math3.distribution.NormalDistribution;

/** Log-normal service lives, on SI doubles. */
final class WearKernel {

    /** Without a generator, which only draws would need. */
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private WearKernel() {}

    /** Probability that a life T has ended by an age: Phi((ln a - ln median)/s). */
    static double failureProbability(double medianS, double logDeviation, double ageS) {
        if (ageS <= 0) {
            return 0;
        }
        return logDeviation == 0
                ? (ageS >= medianS ? 1 : 0)
                : NORMAL.cumulativeProbability(Math.log(ageS / medianS) / logDeviation);
    }

    /** Age at which a share of the lives has ended: median exp(s Phi^-1(probability)). */
    static double ageAtProbability(double medianS, double logDeviation, double probability) {
        return medianS * Math.exp(logDeviation * NORMAL.inverseCumulativeProbability(probability));
    }

    /**
     * Mean service life until failure or an age, E[min(T, a)] = m exp(s^2/2) Phi(k - s) + a (1 - Phi(k)) with
     * k = ln(a/m)/s: the limited expected value of the log-normal distribution.
     */
    static double meanService(double medianS, double logDeviation, double ageS) {
        if (logDeviation == 0) {
            return Math.min(medianS, ageS);
        }
        double k = Math.log(ageS / medianS) / logDeviation;
        return medianS * Math.exp(logDeviation * logDeviation / 2) * NORMAL.cumulativeProbability(k - logDeviation)
                + ageS * (1 - NORMAL.cumulativeProbability(k));
    }

    /** Mean life, m exp(s^2/2). */
    static double mean(double medianS, double logDeviation) {
        return medianS * Math.exp(logDeviation * logDeviation / 2);
    }
}
