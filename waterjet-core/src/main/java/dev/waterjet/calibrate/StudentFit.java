package dev.waterjet.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Fit with Student's distribution of the scatter, whose heavy tails leave little weight to a wrong cut. It breaks down where
 * more than one cut in (freedom + 1) is wrong on the same side: one in five for four degrees of freedom.
 *
 * @param fit the better of the maxima found
 * @param freedom degrees of freedom of the scatter
 * @param rival logarithm of the likelihood of another maximum; minus infinity if all starts led to one
 */
record StudentFit(CensoredFit fit, double freedom, double rival) {

    private static final double MIN_FREEDOM = 0.5;
    private static final double MAX_FREEDOM = 200;

    /** Shares of the sorted residuals that the second and third start use. */
    private static final double[] STARTS = {0.5, 0.75};

    static StudentFit of(CutRows rows, double freedom) {
        ErrorLaw law = ErrorLaw.student(freedom);
        List<CensoredFit> found = new ArrayList<>();
        found.add(CensoredFit.of(rows, law));
        for (double share : STARTS) {
            double[] start = ofShortest(rows, share);
            if (start.length > 0) {
                found.add(CensoredFit.of(rows, law, start));
            }
        }
        found.sort(Comparator.comparingDouble((CensoredFit fit) -> fit.logLikelihood())
                .reversed());
        CensoredFit best = found.get(0);
        double rival = found.stream()
                .filter(other -> other.maximum().isRegular())
                .filter(other -> Math.abs(other.beta()[0] - best.beta()[0]) > 0.01 * best.sigma())
                .mapToDouble(other -> other.logLikelihood())
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
        return new StudentFit(best, freedom, rival);
    }

    /** With the degrees of freedom that the cuts themselves show, between 0.5 and 200. */
    static StudentFit withFreedom(CutRows rows) {
        double log = VarianceFit.highest(
                f -> StudentFit.of(rows, Math.exp(f)).fit.logLikelihood(),
                Math.log(MIN_FREEDOM),
                Math.log(MAX_FREEDOM));
        return of(rows, Math.exp(log));
    }

    /** Start from the shortest part of the sorted residuals that holds a share of the rows, so that no far group moves it. */
    private static double[] ofShortest(CutRows rows, double share) {
        double[] beta = CensoredFit.middle(rows);
        int n = rows.size();
        double[] residuals = new double[n];
        Arrays.setAll(residuals, i -> rows.middle(i) - rows.predicted(i, beta));
        double[] sorted = residuals.clone();
        Arrays.sort(sorted);
        int size = (int) Math.ceil(share * n);
        int first = 0;
        for (int k = 0; k + size <= n; k++) {
            if (sorted[k + size - 1] - sorted[k] < sorted[first + size - 1] - sorted[first]) {
                first = k;
            }
        }
        double middle = (sorted[first] + sorted[first + size - 1]) / 2;
        double scale = Math.max(0.01, (sorted[first + size - 1] - sorted[first]) / 2 / 0.6745);
        double[] start = Arrays.copyOf(beta, beta.length + 1);
        start[0] += middle;
        start[beta.length] = Math.log(scale);
        return start;
    }

    /** Weight of each row in the fit, from 0 for a far one to (freedom + 1) / freedom in the middle. */
    double[] weights() {
        CutRows rows = fit.rows();
        double[] beta = fit.beta();
        double[] weights = new double[rows.size()];
        for (int i = 0; i < weights.length; i++) {
            double scaled = (rows.middle(i) - rows.predicted(i, beta)) / rows.deviation(i, fit.sigma());
            weights[i] = (freedom + 1) / (freedom + scaled * scaled);
        }
        return weights;
    }
}
