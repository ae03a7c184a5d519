package dev.waterjet.calibrate;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Maximum of the likelihood, or of the posterior density, of a model that is not linear in its parameters: these, then the
 * logarithm of the scatter, then that of the spread between plates where there are plates.
 *
 * @param rows the rows as functions of the parameters
 * @param count number of parameters of the model
 * @param maximum place and curvature of the maximum
 */
record CurvedFit(CurvedRows rows, int count, Maximizer.Maximum maximum) {

    private static final double START_SCATTER = 0.05;

    static CurvedFit of(CurvedRows rows, double[] start, double[] sizes, boolean hasPlates) {
        return of(rows, start, sizes, hasPlates, at -> 0);
    }

    /** With the logarithm of a prior density, of the parameters and the logarithms of the deviations. */
    static CurvedFit of(
            CurvedRows rows, double[] start, double[] sizes, boolean hasPlates, ToDoubleFunction<double[]> prior) {
        int p = start.length;
        double[] from = Arrays.copyOf(start, p + (hasPlates ? 2 : 1));
        double[] steps = Arrays.copyOf(sizes, from.length);
        CutRows first = rows.at(start);
        double squares = 0;
        for (int i = 0; i < first.size(); i++) {
            squares += first.middle(i) * first.middle(i);
        }
        double scatter = Math.max(START_SCATTER / 5, Math.sqrt(squares / first.size()));
        Arrays.fill(from, p, from.length, Math.log(scatter));
        Arrays.fill(steps, p, from.length, 0.3);
        Maximizer.Maximum maximum = new Maximizer(at -> value(rows, p, at) + prior.applyAsDouble(at)).from(from, steps);
        return new CurvedFit(rows, p, maximum);
    }

    /** Cuts that agree with the model: the place is that of least squares, and the scatter that of rounding. */
    static CurvedFit withoutScatter(CurvedRows rows, double[] start) {
        int p = start.length;
        CutRows residuals = rows.at(start);
        double squares = 1e-24;
        double[][] slopes = new double[residuals.size()][p];
        for (int j = 0; j < p; j++) {
            double[] more = start.clone();
            double step = 1e-5 * Math.max(1e-3, Math.abs(start[j]));
            more[j] += step;
            double[] moved = rows.at(more).lo();
            for (int i = 0; i < slopes.length; i++) {
                slopes[i][j] = (residuals.lo()[i] - moved[i]) / step;
            }
        }
        for (double residual : residuals.lo()) {
            squares += residual * residual / residuals.size();
        }
        double[][] unit = CutRows.exact(residuals.lo(), slopes).unitInformation();
        double[][] information = new double[p + 1][p + 1];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                information[i][j] = unit[i][j] / squares;
            }
        }
        information[p][p] = 2.0 * residuals.size();
        double[] at = Arrays.copyOf(start, p + 1);
        at[p] = Math.log(squares) / 2;
        double value = new MarginalLikelihood(residuals).value(new double[0], Math.sqrt(squares), 0);
        return new CurvedFit(rows, p, new Maximizer.Maximum(at, value + rows.logJacobian(start), information));
    }

    private static double value(CurvedRows rows, int count, double[] at) {
        double[] parameters = Arrays.copyOf(at, count);
        CutRows residuals = rows.at(parameters);
        double sigma = Math.exp(at[count]);
        double tau = at.length > count + 1 ? Math.exp(at[count + 1]) : 0;
        if (!(sigma > 1e-7 && sigma < 1e3 && tau < 1e3)) {
            return Double.NEGATIVE_INFINITY;
        }
        for (int i = 0; i < residuals.size(); i++) {
            if (Double.isNaN(residuals.lo()[i]) || Double.isNaN(residuals.up()[i])) {
                return Double.NEGATIVE_INFINITY;
            }
        }
        return new MarginalLikelihood(residuals).value(new double[0], sigma, tau) + rows.logJacobian(parameters);
    }

    double[] parameters() {
        return Arrays.copyOf(maximum.at(), count);
    }

    double sigma() {
        return Math.exp(maximum.at()[count]);
    }

    double tau() {
        return maximum.at().length > count + 1 ? Math.exp(maximum.at()[count + 1]) : 0;
    }

    /** Fit of a family of models to cuts, in the variables of the search. */
    static CurvedFit of(Family family, List<TestCut> cuts, int[] places, ToDoubleFunction<double[]> prior) {
        FamilyRows rows = new FamilyRows(family, cuts, places);
        double[] start = rows.start();
        double[] sizes = new double[start.length];
        Arrays.fill(sizes, 0.05);
        return of(rows, start, sizes, places.length > 0, prior);
    }
}
