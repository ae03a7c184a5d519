package dev.waterjet.calibrate;

import dev.waterjet.calibrate.MarginalLikelihood.Derivatives;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleBiFunction;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;

/**
 * Scatter within plates and spread between plates of measured values, by the restricted or the full likelihood, with the
 * coefficients that follow from them by generalized least squares.
 *
 * @param rows the rows, all of measured values
 * @param isRestricted whether the likelihood is the restricted one
 * @param sigma standard deviation of a cut within its plate
 * @param tau standard deviation between plates; 0 if the likelihood is largest there
 * @param beta coefficients
 * @param covariance their covariance
 * @param logLikelihood value of the likelihood at its maximum
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record VarianceFit(
        CutRows rows,
        boolean isRestricted,
        double sigma,
        double tau,
        double[] beta,
        double[][] covariance,
        double logLikelihood) {

    /** Logarithms of the ratio of both deviations between which the maximum is sought; beyond them nothing changes. */
    private static final double LOWEST_RATIO = -9;

    private static final double HIGHEST_RATIO = 5;
    private static final double GRID = 0.5;
    private static final double MIN_SCATTER = 1e-12;

    /** Step in the logarithm of a variance. */
    private static final double STEP = 5e-3;

    static VarianceFit of(CutRows rows, boolean isRestricted) {
        MarginalLikelihood likelihood = new MarginalLikelihood(rows);
        return rows.hasDelta()
                ? withKnownDeviations(rows, likelihood, isRestricted)
                : homogeneous(rows, likelihood, isRestricted);
    }

    private static VarianceFit homogeneous(CutRows rows, MarginalLikelihood likelihood, boolean isRestricted) {
        VarianceFit without = atRatio(rows, likelihood, isRestricted, 0);
        if (rows.plates() < 2 || rows.plates() == rows.size()) {
            return without;
        }
        double log = highest(
                ratio -> atRatio(rows, likelihood, isRestricted, Math.exp(ratio)).logLikelihood,
                LOWEST_RATIO,
                HIGHEST_RATIO);
        VarianceFit with = atRatio(rows, likelihood, isRestricted, Math.exp(log));
        return with.logLikelihood > without.logLikelihood + 1e-12 ? with : without;
    }

    /** For a given ratio the scatter has a closed form: unit scatter gives the coefficients and the sum of squares. */
    private static VarianceFit atRatio(
            CutRows rows, MarginalLikelihood likelihood, boolean isRestricted, double ratio) {
        int n = rows.size();
        int p = rows.width();
        double[] beta = coefficients(likelihood, p, 1, ratio);
        double unitLog = likelihood.value(beta, 1, ratio);
        double logDeterminant = -2 * unitLog - squares(rows, beta, ratio) - 2 * n * NormalTails.LOG_ROOT_TWO_PI;
        // cuts without any scatter would make it 0, and its logarithm infinite
        double sigma = Math.max(MIN_SCATTER, Math.sqrt(squares(rows, beta, ratio) / (isRestricted ? n - p : n)));
        double log = -n * NormalTails.LOG_ROOT_TWO_PI
                - logDeterminant / 2
                - n * Math.log(sigma)
                - squares(rows, beta, ratio) / (2 * sigma * sigma);
        return finished(rows, likelihood, isRestricted, new double[] {sigma, ratio * sigma, log});
    }

    /** Sum of squares with unit scatter and a given ratio. */
    private static double squares(CutRows rows, double[] beta, double ratio) {
        double sum = 0;
        double[] first = new double[Math.max(1, rows.plates())];
        double[] count = new double[first.length];
        for (int i = 0; i < rows.size(); i++) {
            double residual = rows.lo()[i] - rows.predicted(i, beta);
            sum += residual * residual;
            first[rows.plate()[i]] += residual;
            count[rows.plate()[i]]++;
        }
        for (int g = 0; g < first.length; g++) {
            sum -= ratio * ratio * first[g] * first[g] / (1 + ratio * ratio * count[g]);
        }
        return sum;
    }

    static double[] coefficients(MarginalLikelihood likelihood, int width, double sigma, double tau) {
        Derivatives zero = likelihood.derivatives(new double[width], sigma, tau);
        double[][] inverse = Matrices.inverse(zero.information());
        double[] beta = Matrices.times(inverse, zero.gradient());
        // one step of refinement recovers the digits that the inverse lost
        double[] rest =
                Matrices.times(inverse, likelihood.derivatives(beta, sigma, tau).gradient());
        for (int j = 0; j < beta.length; j++) {
            beta[j] += rest[j];
        }
        return beta;
    }

    /** With the coefficients, and the term of the restricted likelihood; {@code found} is sigma, tau and the logarithm. */
    private static VarianceFit finished(
            CutRows rows, MarginalLikelihood likelihood, boolean isRestricted, double[] found) {
        double[] beta = coefficients(likelihood, rows.width(), found[0], found[1]);
        double[][] information =
                likelihood.derivatives(beta, found[0], found[1]).information();
        double restricted = isRestricted
                ? rows.width() * NormalTails.LOG_ROOT_TWO_PI - Matrices.logDeterminant(information) / 2
                : 0;
        return new VarianceFit(
                rows, isRestricted, found[0], found[1], beta, Matrices.inverse(information), found[2] + restricted);
    }

    private static VarianceFit withKnownDeviations(CutRows rows, MarginalLikelihood likelihood, boolean isRestricted) {
        ToDoubleBiFunction<Double, Double> value =
                (s, t) -> at(rows, likelihood, isRestricted, Math.exp(s), t == null ? 0 : Math.exp(t)).logLikelihood;
        double log = highest(s -> value.applyAsDouble(s, null), -12, 3);
        VarianceFit best = at(rows, likelihood, isRestricted, Math.exp(log), 0);
        if (rows.plates() > 1 && rows.plates() < rows.size()) {
            double tau = log;
            for (int round = 0; round < 40; round++) {
                double fixedScatter = log;
                tau = highest(t -> value.applyAsDouble(fixedScatter, t), -12, 3);
                double fixedTau = tau;
                log = highest(s -> value.applyAsDouble(s, fixedTau), -12, 3);
            }
            VarianceFit with = at(rows, likelihood, isRestricted, Math.exp(log), Math.exp(tau));
            best = with.logLikelihood > best.logLikelihood + 1e-9 ? with : best;
        }
        return best;
    }

    static VarianceFit at(CutRows rows, MarginalLikelihood likelihood, boolean isRestricted, double sigma, double tau) {
        double[] beta = coefficients(likelihood, rows.width(), sigma, tau);
        return finished(rows, likelihood, isRestricted, new double[] {sigma, tau, likelihood.value(beta, sigma, tau)});
    }

    /** Place of the highest value between two ends, by a coarse grid and Brent's method. */
    static double highest(DoubleUnaryOperator value, double lowest, double highest) {
        double best = lowest;
        double top = Double.NEGATIVE_INFINITY;
        for (double x = lowest; x <= highest; x += GRID) {
            double here = value.applyAsDouble(x);
            if (here > top) {
                top = here;
                best = x;
            }
        }
        UnivariatePointValuePair found = new BrentOptimizer(1e-10, 1e-12)
                .optimize(
                        new MaxEval(500),
                        new UnivariateObjectiveFunction(value::applyAsDouble),
                        GoalType.MAXIMIZE,
                        new SearchInterval(Math.max(lowest, best - GRID), Math.min(highest, best + GRID), best));
        return found.getValue() >= top ? found.getPoint() : best;
    }

    /** Variance of a prediction: that of the settings' coefficients, and shares of both variances. */
    double variance(double[] settings, double plateShare, double cutShare) {
        return Matrices.square(settings, covariance) + plateShare * tau * tau + cutShare * sigma * sigma;
    }

    /**
     * Degrees of freedom of such a variance by Satterthwaite: from its gradient by the logarithms of both variances, and the
     * curvature of the likelihood there.
     */
    double degreesOfFreedom(double[] settings, double plateShare, double cutShare) {
        if (tau == 0) {
            return rows.size() - rows.width();
        }
        MarginalLikelihood likelihood = new MarginalLikelihood(rows);
        double[] at = {2 * Math.log(sigma), 2 * Math.log(tau)};
        ToDoubleBiFunction<Double, Double> log =
                (s, t) -> at(rows, likelihood, isRestricted, Math.exp(s / 2), Math.exp(t / 2)).logLikelihood;
        ToDoubleBiFunction<Double, Double> variance =
                (s, t) -> at(rows, likelihood, isRestricted, Math.exp(s / 2), Math.exp(t / 2))
                        .variance(settings, plateShare, cutShare);
        double[][] curvature = curvature(log, at);
        double[] gradient = {
            (variance.applyAsDouble(at[0] + STEP, at[1]) - variance.applyAsDouble(at[0] - STEP, at[1])) / (2 * STEP),
            (variance.applyAsDouble(at[0], at[1] + STEP) - variance.applyAsDouble(at[0], at[1] - STEP)) / (2 * STEP)
        };
        double value = variance(settings, plateShare, cutShare);
        double spread = Matrices.square(gradient, Matrices.generalInverse(curvature));
        double freedom = 2 * value * value / spread;
        return freedom >= 1 ? freedom : 1;
    }

    private static double[][] curvature(ToDoubleBiFunction<Double, Double> log, double[] at) {
        double h = STEP;
        double middle = log.applyAsDouble(at[0], at[1]);
        double first = log.applyAsDouble(at[0] + h, at[1]) + log.applyAsDouble(at[0] - h, at[1]) - 2 * middle;
        double second = log.applyAsDouble(at[0], at[1] + h) + log.applyAsDouble(at[0], at[1] - h) - 2 * middle;
        double mixed = log.applyAsDouble(at[0] + h, at[1] + h)
                - log.applyAsDouble(at[0] + h, at[1] - h)
                - log.applyAsDouble(at[0] - h, at[1] + h)
                + log.applyAsDouble(at[0] - h, at[1] - h);
        return new double[][] {{-first / (h * h), -mixed / (4 * h * h)}, {-mixed / (4 * h * h), -second / (h * h)}};
    }
}
