package dev.waterjet.calibrate;

/**
 * A model that is not linear in its parameters, by the curvature of the likelihood, or of the posterior density, at its
 * maximum.
 *
 * @param fit the maximum
 * @param logLikelihood value of the likelihood there, without a prior
 * @param size number of cuts
 * @param freedom degrees of freedom
 * @param hasPrior whether there is a prior
 * @param isPlain whether all cuts are measured, without known deviations: errors then have the degrees of freedom of least squares
 */
record CurvedSolution(CurvedFit fit, double logLikelihood, int size, double freedom, boolean hasPrior, boolean isPlain)
        implements Solution {

    @Override
    public CutFit.Method method() {
        return hasPrior ? CutFit.Method.POSTERIOR : CutFit.Method.LIKELIHOOD;
    }

    @Override
    public double[] variables() {
        return fit.parameters();
    }

    private double unbiased() {
        return hasPrior ? 1 : (double) size / Math.max(1, size - fit.count());
    }

    @Override
    public double[][] covariance() {
        return covariance(isPlain ? unbiased() : 1);
    }

    private double[][] covariance(double factor) {
        double[][] whole = fit.maximum().covariance();
        double[][] part = new double[fit.count()][fit.count()];
        for (int i = 0; i < part.length; i++) {
            for (int j = 0; j < part.length; j++) {
                part[i][j] = whole[i][j] * factor;
            }
        }
        return part;
    }

    @Override
    public double sigma() {
        return fit.sigma() * Math.sqrt(unbiased());
    }

    @Override
    public double tau() {
        return fit.tau() * Math.sqrt(unbiased());
    }

    @Override
    public double degreesOfFreedom() {
        return freedom;
    }

    @Override
    public double[] interval(int variable, double coverage) {
        double half = Solution.student(freedom, coverage) * Math.sqrt(covariance(unbiased())[variable][variable]);
        return new double[] {variables()[variable] - half, variables()[variable] + half};
    }

    @Override
    public double[] prediction(double[] slopes, Part part, int plate) {
        double effect = 0;
        double own = part == Part.MEAN ? 0 : sigma() * sigma();
        if (part == Part.NEW_PLATE) {
            own += tau() * tau();
        } else if (part == Part.THIS_PLATE && tau() > 0) {
            double[] found = new MarginalLikelihood(fit.rows().at(variables()))
                    .effect(plate, new double[0], fit.sigma(), fit.tau());
            effect = found[0];
            own += found[1] * unbiased();
        }
        return new double[] {effect, Math.sqrt(Matrices.square(slopes, covariance(unbiased())) + own), freedom};
    }
}
