package dev.waterjet.calibrate;

import java.util.Optional;
import java.util.function.Supplier;

/**
 * Cuts of any kind without a prior: the maximum of the likelihood. Without plates intervals come from the profile of the
 * likelihood and predictions from the posterior with a flat prior, both of which are Student's for measured cuts; otherwise
 * both come from the curvature of the likelihood.
 *
 * @param method method by which it was found
 * @param fit the maximum
 * @param flat posterior with a flat prior, made when a prediction is asked for
 * @param freedom degrees of freedom
 */
record ProfileSolution(
        CutFit.Method method, CensoredFit fit, Optional<Supplier<PosteriorSolution>> flat, double freedom)
        implements Solution {

    /** Offset or scale of a prediction beyond which the cuts have not determined it. */
    private static final double MAX_SCALE = 5;

    @Override
    public double[] variables() {
        return fit.beta();
    }

    @Override
    public double[][] covariance() {
        double[][] whole = fit.maximum().covariance();
        double[][] part = new double[fit.rows().width()][fit.rows().width()];
        for (int i = 0; i < part.length; i++) {
            System.arraycopy(whole[i], 0, part[i], 0, part.length);
        }
        return part;
    }

    @Override
    public double sigma() {
        return fit.sigma();
    }

    @Override
    public double tau() {
        return fit.tau();
    }

    @Override
    public double logLikelihood() {
        return fit.logLikelihood();
    }

    @Override
    public double degreesOfFreedom() {
        return freedom;
    }

    /** The likelihood divides sums of squares by the number of cuts; for few this is too small a variance. */
    private double unbiased() {
        double n = fit.rows().size();
        return n / Math.max(1, n - fit.rows().width());
    }

    @Override
    public double[] interval(int variable, double coverage) {
        double t = Solution.student(freedom, coverage);
        if (method == CutFit.Method.PROFILE_LIKELIHOOD && fit.rows().plates() == 0) {
            double drop = fit.rows().size() / 2.0 * Math.log1p(t * t / freedom);
            return new double[] {fit.profileEnd(variable, -1, drop), fit.profileEnd(variable, 1, drop)};
        }
        double half = t * Math.sqrt(covariance()[variable][variable] * unbiased());
        return new double[] {fit.beta()[variable] - half, fit.beta()[variable] + half};
    }

    @Override
    public double[] prediction(double[] slopes, Part part, int plate) {
        if (flat.isPresent()) {
            PosteriorSolution posterior = flat.get().get();
            double[] predicted = posterior.prediction(slopes, part, plate);
            predicted[0] += Matrices.dot(slopes, posterior.variables()) - Matrices.dot(slopes, fit.beta());
            if (!(Math.abs(predicted[0]) < MAX_SCALE && predicted[1] < MAX_SCALE)) {
                // intervals that nearly all overlap leave the scatter free to vanish or to grow
                throw FitRefusals.scatter(fit.rows());
            }
            return predicted;
        }
        double effect = 0;
        double own = part == Part.MEAN ? 0 : sigma() * sigma();
        if (part == Part.NEW_PLATE) {
            own += tau() * tau();
        } else if (part == Part.THIS_PLATE && tau() > 0) {
            double[] found = new MarginalLikelihood(fit.rows()).effect(plate, fit.beta(), fit.sigma(), fit.tau());
            effect = found[0];
            own += found[1];
        }
        double variance = (Matrices.square(slopes, covariance()) + own) * unbiased();
        return new double[] {effect, Math.sqrt(variance), freedom};
    }
}
