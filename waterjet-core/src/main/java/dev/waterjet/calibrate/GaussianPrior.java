package dev.waterjet.calibrate;

/**
 * Prior of a posterior fit, on the scale of the logarithm of depth. A variance has a scaled inverse chi-square distribution:
 * {@code nu s^2 / chi^2(nu)}, whose density in ln s goes with {@code s^-nu exp(-nu s0^2 / (2 s^2))}.
 *
 * @param mean means of the coefficients
 * @param precision inverse of their covariance; zeros where nothing is known
 * @param scatterFreedom degrees of freedom of the prior of the scatter; 0 if nothing is known
 * @param scatter size of the scatter by the prior
 * @param plateFreedom degrees of freedom of the prior of the spread between plates
 * @param plateSpread size of that spread by the prior
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record GaussianPrior(
        double[] mean,
        double[][] precision,
        double scatterFreedom,
        double scatter,
        double plateFreedom,
        double plateSpread) {

    double value(double[] beta) {
        double[] off = beta.clone();
        for (int j = 0; j < off.length; j++) {
            off[j] -= mean[j];
        }
        return -0.5 * Matrices.square(off, precision);
    }

    double[] slope(double[] beta) {
        double[] off = beta.clone();
        for (int j = 0; j < off.length; j++) {
            off[j] = mean[j] - off[j];
        }
        return Matrices.times(precision, off);
    }

    double ofDeviations(double logSigma, double logTau, boolean hasPlates) {
        double value = inverseChi(logSigma, scatterFreedom, scatter);
        return hasPlates ? value + inverseChi(logTau, plateFreedom, plateSpread) : value;
    }

    private static double inverseChi(double log, double freedom, double size) {
        return -freedom * log - freedom * size * size / 2 * Math.exp(-2 * log);
    }
}
