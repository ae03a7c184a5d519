package dev.waterjet.calibrate;

import org.apache.commons.math3.distribution.NormalDistribution;

/** Reduction of uncertainty by one more cut. */
final class Gains {

    private static final int PHASES = 400;
    private static final double REACH = 10;

    private Gains() {}

    /**
     * Variance of a target after one more measured cut.
     *
     * @param covariance covariance of the coefficients
     * @param target settings of the target
     * @param candidate settings of the cut
     * @param variance variance of the cut itself
     */
    static double variance(double[][] covariance, double[] target, double[] candidate, double variance) {
        double[] times = Matrices.times(covariance, candidate);
        double shared = Matrices.dot(target, times);
        return Matrices.square(target, covariance) - shared * shared / (variance + Matrices.dot(candidate, times));
    }

    /**
     * Variance of a target after one more measured cut on a plate, by the fit with plates as a random effect.
     *
     * @param rows rows so far
     * @param target settings of the target
     * @param candidate settings of the cut
     * @param plate index of its plate; the number of plates for a new one, -1 for no cut
     * @param sigma scatter within a plate
     * @param tau spread between plates
     */
    static double variance(CutRows rows, double[] target, double[] candidate, int plate, double sigma, double tau) {
        CutRows all = plate < 0 ? rows : rows.with(candidate, plate);
        return Matrices.square(target, Matrices.inverse(information(all, sigma, tau)));
    }

    /** Information of rows about the coefficients. */
    static double[][] information(CutRows rows, double sigma, double tau) {
        return new MarginalLikelihood(rows)
                .derivatives(new double[rows.width()], sigma, tau)
                .information();
    }

    /** Expected variance of a normal quantity after a trial at an offset from its mean, by its prior deviation and scatter. */
    static double afterTrial(double offset, double prior, double scatter) {
        double width = Math.sqrt(prior * prior + scatter * scatter);
        double z = -offset / width;
        double density = Math.exp(NormalTails.logDensity(z));
        double yes = Math.exp(NormalTails.logBelow(z));
        double no = Math.exp(NormalTails.logBelow(-z));
        // the mean moves by this on yes and on no; the variance between both outcomes is what the trial takes away
        double step = prior * prior / width * density;
        return prior * prior - step * step * (1 / yes + 1 / no);
    }

    /** Information of an interval of a step over that of a measured value, averaged over where the steps lie. */
    static double ladderEfficiency(double step) {
        NormalDistribution normal = new NormalDistribution(null, 0, 1);
        int rungs = (int) Math.ceil(REACH / step);
        double sum = 0;
        for (int phase = 0; phase < PHASES; phase++) {
            double start = step * (phase + 1) / PHASES;
            for (int k = -rungs; k < rungs; k++) {
                double a = start + k * step;
                double probability = Math.exp(NormalTails.logBetween(a, a + step));
                double difference = normal.density(a + step) - normal.density(a);
                sum += probability > 0 ? difference * difference / probability : 0;
            }
        }
        return sum / PHASES;
    }
}
