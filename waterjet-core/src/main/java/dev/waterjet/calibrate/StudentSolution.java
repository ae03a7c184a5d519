package dev.waterjet.calibrate;

/**
 * Measured cuts with a prior of the scatter alone, in closed form.
 *
 * @param rows the rows
 * @param posterior the posterior
 */
record StudentSolution(CutRows rows, StudentPosterior posterior) implements Solution {

    @Override
    public CutFit.Method method() {
        return CutFit.Method.POSTERIOR;
    }

    @Override
    public double[] variables() {
        return posterior.beta();
    }

    @Override
    public double[][] covariance() {
        return Matrices.scaled(posterior.unit(), posterior.variance());
    }

    @Override
    public double sigma() {
        return Math.sqrt(posterior.variance());
    }

    @Override
    public double tau() {
        return 0;
    }

    @Override
    public double logLikelihood() {
        return new MarginalLikelihood(rows).value(posterior.beta(), sigma(), 0);
    }

    @Override
    public double degreesOfFreedom() {
        return posterior.freedom();
    }

    @Override
    public double[] interval(int variable, double coverage) {
        double half = Math.sqrt(covariance()[variable][variable]) * Solution.student(posterior.freedom(), coverage);
        return new double[] {posterior.beta()[variable] - half, posterior.beta()[variable] + half};
    }

    @Override
    public double[] prediction(double[] slopes, Part part, int plate) {
        return new double[] {0, posterior.scale(slopes, part == Part.MEAN ? 0 : 1), posterior.freedom()};
    }
}
