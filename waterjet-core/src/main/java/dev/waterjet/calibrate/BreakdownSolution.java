package dev.waterjet.calibrate;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import java.util.Arrays;

/**
 * Measured cuts of which nearly half may be wrong.
 *
 * @param fit the fit
 */
record BreakdownSolution(HighBreakdown fit) implements Solution {

    /** Known deviations have no part: the scale of the residuals holds them. */
    static BreakdownSolution of(CutRows rows) {
        if (!rows.isExact()) {
            throw new NoSolutionException(Message.of(
                    "measured-cuts-only",
                    "a fit that withstands many wrong cuts takes measured cuts only; leave out intervals and trials"));
        }
        HighBreakdown fit = HighBreakdown.of(rows.withDelta(new double[rows.size()]));
        if (!(fit.scale() > 0)) {
            throw new NoSolutionException(Message.of(
                    "half-without-scatter",
                    "more than half of the cuts agree exactly, so that they show no scatter by which to judge"
                            + " the others"));
        }
        return new BreakdownSolution(fit);
    }

    @Override
    public CutFit.Method method() {
        return CutFit.Method.HIGH_BREAKDOWN;
    }

    @Override
    public double[] variables() {
        return fit.beta();
    }

    @Override
    public double[][] covariance() {
        return Matrices.scaled(Matrices.inverse(fit.rows().unitInformation()), fit.variance());
    }

    @Override
    public double sigma() {
        return fit.scale();
    }

    @Override
    public double tau() {
        return 0;
    }

    /** That of a normal scatter, in which a wrong cut is all but impossible. */
    @Override
    public double logLikelihood() {
        return new MarginalLikelihood(fit.rows()).value(fit.beta(), fit.scale(), 0);
    }

    @Override
    public double degreesOfFreedom() {
        return Math.max(1, Arrays.stream(fit.weights()).sum() - fit.rows().width());
    }

    @Override
    public double[] interval(int variable, double coverage) {
        double half = Math.sqrt(covariance()[variable][variable]) * Solution.student(degreesOfFreedom(), coverage);
        return new double[] {fit.beta()[variable] - half, fit.beta()[variable] + half};
    }

    @Override
    public double[] prediction(double[] slopes, Part part, int plate) {
        double own = part == Part.MEAN ? 0 : fit.scale() * fit.scale();
        return new double[] {0, Math.sqrt(Matrices.square(slopes, covariance()) + own), degreesOfFreedom()};
    }
}
