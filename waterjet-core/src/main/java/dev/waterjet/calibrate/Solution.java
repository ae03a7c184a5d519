package dev.waterjet.calibrate;

import org.apache.commons.math3.distribution.TDistribution;

/**
 * Solution of a fit in the variables of the search: the parameters, of a positive one the logarithm. Deviations are of the
 * logarithm of depth.
 */
interface Solution {

    /** Method by which it was found. */
    CutFit.Method method();

    double[] variables();

    double[][] covariance();

    /** Scatter of a cut within its plate. */
    double sigma();

    /** Spread between plates; 0 without plates. */
    double tau();

    double logLikelihood();

    /** Degrees of freedom of the scatter. */
    double degreesOfFreedom();

    /** Ends of the interval of a variable. */
    double[] interval(int variable, double coverage);

    /**
     * Prediction of the logarithm of depth over that at the best variables: offset, scale and degrees of freedom.
     *
     * @param slopes derivatives by the variables
     * @param part which deviations are in it
     * @param plate index of a plate; -1 for a new one
     */
    double[] prediction(double[] slopes, Part part, int plate);

    /** Half of an interval, in standard deviations: a quantile of Student's distribution. */
    static double student(double freedom, double coverage) {
        return new TDistribution(null, freedom).inverseCumulativeProbability((1 + coverage) / 2);
    }

    /** Deviations of a prediction beyond the uncertainty of the parameters. */
    enum Part {
        /** None: what is cut on average. */
        MEAN,
        /** That of the cut on a plate that is given. */
        THIS_PLATE,
        /** That of the cut and of the plate. */
        NEW_PLATE
    }
}
