package dev.waterjet.calibrate;

import java.util.Arrays;

/**
 * Posterior of measured values whose coefficients have no prior, or a prior that is as good as some earlier cuts, in closed
 * form: the coefficients and a further value have Student's distribution. The prior of the scatter counts as {@code freedom} values of
 * that scatter.
 *
 * @param beta coefficients
 * @param unit their covariance with unit scatter
 * @param freedom degrees of freedom
 * @param variance square of the scale
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record StudentPosterior(double[] beta, double[][] unit, double freedom, double variance) {

    /**
     * Returns the posterior.
     *
     * @param rows measured rows without plates
     * @param priorFreedom degrees of freedom of the prior of the scatter, 0 or more
     * @param priorScatter scatter by the prior
     */
    static StudentPosterior of(CutRows rows, double priorFreedom, double priorScatter) {
        MarginalLikelihood likelihood = new MarginalLikelihood(rows);
        double[] beta = VarianceFit.coefficients(likelihood, rows.width(), 1, 0);
        double squares = priorFreedom * priorScatter * priorScatter;
        for (int i = 0; i < rows.size(); i++) {
            double residual = rows.lo()[i] - rows.predicted(i, beta);
            squares += residual * residual;
        }
        double freedom = priorFreedom + rows.size() - rows.width();
        return new StudentPosterior(beta, Matrices.inverse(rows.unitInformation()), freedom, squares / freedom);
    }

    /**
     * The same where the coefficients of a mean have a normal prior whose variance is that of a cut over a number of them: these are
     * {@code count} earlier cuts whose mean is known, one row of that weight.
     *
     * @param rows measured rows of a mean
     * @param mean mean of the prior
     * @param count number of cuts that it is worth, above 0
     */
    static StudentPosterior of(CutRows rows, double priorFreedom, double priorScatter, double mean, double count) {
        int n = rows.size();
        double[] y = Arrays.copyOf(rows.lo(), n + 1);
        double[][] x = Arrays.copyOf(rows.x(), n + 1);
        y[n] = Math.sqrt(count) * mean;
        x[n] = new double[] {Math.sqrt(count)};
        return of(CutRows.exact(y, x), priorFreedom, priorScatter);
    }

    /** Scale of a further value. */
    double scale(double[] settings, double cutShare) {
        return Math.sqrt(variance * (Matrices.square(settings, unit) + cutShare));
    }
}
