package dev.waterjet.calibrate;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Maximum of the likelihood of rows of any kind: coefficients, then the logarithm of the scatter, then that of the spread
 * between plates where there are plates.
 *
 * @param rows the rows
 * @param law distribution of the scatter
 * @param maximum place and curvature of the maximum
 */
record CensoredFit(CutRows rows, ErrorLaw law, Maximizer.Maximum maximum) {

    private static final double MIN_SCATTER = 0.02;

    /** Logarithm of the scatter below which the likelihood is taken to grow without bound. */
    private static final double VANISHED = -11;

    static CensoredFit of(CutRows rows, ErrorLaw law) {
        double[] start = start(rows);
        return of(rows, law, start);
    }

    static CensoredFit of(CutRows rows, ErrorLaw law, double[] start) {
        double[] sizes = new double[start.length];
        Arrays.fill(sizes, 0.1);
        Maximizer maximizer = new Maximizer(at -> logLikelihood(rows, law, at));
        return new CensoredFit(rows, law, maximizer.from(start, sizes));
    }

    static double[] start(CutRows rows) {
        int p = rows.width();
        double[] beta = middle(rows);
        double squares = 0;
        for (int i = 0; i < rows.size(); i++) {
            double residual = rows.middle(i) - rows.predicted(i, beta);
            squares += residual * residual;
        }
        double scatter = Math.max(MIN_SCATTER, Math.sqrt(squares / rows.size()));
        double[] start = Arrays.copyOf(beta, p + (rows.plates() > 0 ? 2 : 1));
        start[p] = Math.log(scatter);
        if (rows.plates() > 0) {
            start[p] = Math.log(scatter / Math.sqrt(2));
            start[p + 1] = start[p];
        }
        return start;
    }

    /** Least squares on the middle of each row. */
    static double[] middle(CutRows rows) {
        double[] middle =
                IntStream.range(0, rows.size()).mapToDouble(rows::middle).toArray();
        CutRows exact = CutRows.exact(middle, rows.x());
        return VarianceFit.coefficients(new MarginalLikelihood(exact), rows.width(), 1, 0);
    }

    static double logLikelihood(CutRows rows, ErrorLaw law, double[] at) {
        int p = rows.width();
        double[] beta = Arrays.copyOf(at, p);
        double sigma = Math.exp(at[p]);
        if (!(sigma > 0 && sigma < 1e6) || at[p] < VANISHED - 3) {
            return Double.NEGATIVE_INFINITY;
        }
        if (rows.plates() > 0) {
            double tau = Math.exp(at[p + 1]);
            return tau > 0 && tau < 1e6
                    ? new MarginalLikelihood(rows).value(beta, sigma, tau)
                    : Double.NEGATIVE_INFINITY;
        }
        double sum = 0;
        for (int i = 0; i < rows.size(); i++) {
            sum += CutTerm.value(law, rows.lo()[i], rows.up()[i], rows.predicted(i, beta), rows.deviation(i, sigma));
        }
        return sum;
    }

    double[] beta() {
        return Arrays.copyOf(maximum.at(), rows.width());
    }

    double sigma() {
        return Math.exp(maximum.at()[rows.width()]);
    }

    double tau() {
        return rows.plates() > 0 ? Math.exp(maximum.at()[rows.width() + 1]) : 0;
    }

    double logLikelihood() {
        return maximum.value();
    }

    /** Whether the maximum determines every parameter; not so if the scatter vanishes or the curvature does. */
    boolean isDetermined() {
        return maximum.isRegular() && maximum.at()[rows.width()] > VANISHED && sigma() < 10;
    }

    /** Highest likelihood with one coefficient held. */
    double profile(int coefficient, double value) {
        double[] free = new double[maximum.at().length - 1];
        double[] sizes = new double[free.length];
        Arrays.fill(sizes, 0.05);
        double[] along = maximum.covariance()[coefficient];
        double share = (value - maximum.at()[coefficient]) / along[coefficient];
        for (int j = 0, k = 0; j < maximum.at().length; j++) {
            if (j != coefficient) {
                // where a normal likelihood would have its ridge
                free[k++] = maximum.at()[j] + share * along[j];
            }
        }
        return new Maximizer(at -> logLikelihood(rows, law, with(at, coefficient, value)))
                .from(free, sizes)
                .value();
    }

    private static double[] with(double[] free, int coefficient, double value) {
        double[] all = new double[free.length + 1];
        for (int j = 0, k = 0; j < all.length; j++) {
            all[j] = j == coefficient ? value : free[k++];
        }
        return all;
    }

    /** End of an interval of a coefficient: where the profile has fallen by {@code drop}. */
    double profileEnd(int coefficient, int side, double drop) {
        double best = maximum.at()[coefficient];
        double error = Math.sqrt(maximum.covariance()[coefficient][coefficient]);
        double near = best;
        double step = side * error * Math.sqrt(2 * drop) * 1.1;
        double far = best + step;
        while (profile(coefficient, far) > maximum.value() - drop && Math.abs(far - best) < 100 * error) {
            near = far;
            far += step;
        }
        // the root of the fall is nearly a line, on which the solver needs few steps
        return new BrentSolver(1e-10)
                .solve(
                        200,
                        value ->
                                Math.sqrt(Math.max(0, maximum.value() - profile(coefficient, value))) - Math.sqrt(drop),
                        Math.min(near, far),
                        Math.max(near, far));
    }
}
