package dev.waterjet.calibrate;

import dev.waterjet.feed.FeedExponent;
import java.util.Arrays;
import java.util.List;

/**
 * Influence of each cut on a fit.
 *
 * @param residuals logarithms of what was measured over what the fit gives
 * @param leverages share of each cut in its own fitted value
 * @param deleted residuals over the standard deviation that the other cuts give them
 * @param cook distances of Cook
 * @param weights weights in the fit
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record FitRows(double[] residuals, double[] leverages, double[] deleted, double[] cook, double[] weights) {

    static double feedExponent(CalibrationSpec spec) {
        return ((MachinabilityFamily) spec.family()).published().exponent(FeedExponent.FEED);
    }

    /** Rows of a fit about its best variables: linear in the variables' changes. */
    static CutRows linearized(CutFit fit) {
        CalibrationSpec spec = fit.spec();
        List<TestCut> cuts = fit.cuts();
        double[] variables = fit.solution().variables();
        CutRows rows;
        if (CalibrationSolver.isLinear(spec)) {
            MachinabilityFamily family = (MachinabilityFamily) spec.family();
            rows = AbilityRows.of(family.published(), family.freed(), cuts);
            double[] fitted = new double[cuts.size()];
            CutRows plain = rows;
            Arrays.setAll(fitted, i -> plain.predicted(i, variables));
            rows = rows.shifted(fitted);
        } else {
            double[][] x =
                    cuts.stream().map(cut -> fit.slopes(FitPoint.of(cut))).toArray(double[][]::new);
            rows = new FamilyRows(spec.family(), cuts, new int[0]).at(variables).withX(x);
        }
        return rows;
    }

    static FitRows of(CutFit fit) {
        CutRows rows = linearized(fit);
        int n = rows.size();
        double sigma = Math.hypot(fit.scatter(), fit.plateScatter());
        double[] residuals = new double[n];
        double[] leverages = new double[n];
        for (int i = 0; i < n; i++) {
            TestCut cut = fit.cuts().get(i);
            double scale = cut.test() == TestCut.Test.DEPTH ? 1 : fit.slope(FitPoint.of(cut));
            double deviation = rows.deviation(i, Math.max(sigma, 1e-12));
            CutTerm term = CutTerm.normal(rows.lo()[i], rows.up()[i], 0, deviation);
            // of an interval or a trial the residual is what the fit expects of it
            residuals[i] = scale * (rows.isExact(i) ? rows.lo()[i] : term.slope() * deviation * deviation);
            leverages[i] = Math.min(
                    1,
                    term.information()
                            * Math.max(
                                    0,
                                    Matrices.square(rows.x()[i], fit.solution().covariance())));
        }
        double[] weights = weights(fit, rows);
        boolean isPlain = fit.method() != CutFit.Method.POSTERIOR
                && fit.method() != CutFit.Method.HEAVY_TAILS
                && fit.method() != CutFit.Method.HIGH_BREAKDOWN
                && fit.method() != CutFit.Method.RESTRICTED_LIKELIHOOD;
        if (isPlain && rows.isExact() && n > rows.width()) {
            Influence influence = Influence.of(rows.hasDelta() ? rows.scaled(Math.max(sigma, 1e-12)) : rows);
            return new FitRows(
                    residuals, influence.leverages(), finite(influence.deleted()), influence.cook(), weights);
        }
        return new FitRows(residuals, leverages, new double[n], new double[n], weights);
    }

    private static double[] finite(double[] numbers) {
        return Arrays.stream(numbers).map(x -> Double.isFinite(x) ? x : 0).toArray();
    }

    /** Share of wrong cuts that estimated tails withstand: by simulation, 30 % of 20. */
    private static final double ESTIMATED = 0.3;

    /** Number of wrong cuts to one side that a fit withstands. */
    static int withstood(CutFit fit) {
        int n = fit.observations();
        double freedom = fit.tailDegreesOfFreedom();
        if (fit.solution() instanceof BreakdownSolution found) {
            return HighBreakdown.withstood(found.fit().rows());
        }
        if (Double.isInfinite(freedom)) {
            return 0;
        }
        return fit.spec().tailFreedom() == CalibrationSpec.ESTIMATED
                ? (int) Math.floor(ESTIMATED * n)
                : (int) Math.ceil(n / (freedom + 1)) - 1;
    }

    private static double[] weights(CutFit fit, CutRows rows) {
        if (fit.solution() instanceof BreakdownSolution found) {
            return found.fit().weights();
        }
        double[] weights = new double[rows.size()];
        Arrays.fill(weights, 1);
        double freedom = fit.tailDegreesOfFreedom();
        if (Double.isFinite(freedom)) {
            for (int i = 0; i < weights.length; i++) {
                double scaled = rows.middle(i) / rows.deviation(i, fit.scatter());
                weights[i] = Math.min(1, (freedom + 1) / (freedom + scaled * scaled));
            }
        }
        return weights;
    }
}
