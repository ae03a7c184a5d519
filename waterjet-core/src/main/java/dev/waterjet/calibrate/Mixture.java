package dev.waterjet.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Mixture of normal distributions: the posterior of a quantity, given data of which scatter and spread are uncertain.
 *
 * @param weights weights, which add up to 1
 * @param means means
 * @param deviations standard deviations
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record Mixture(double[] weights, double[] means, double[] deviations) {

    private static final double REACH = 60;
    private static final double MAX_FREEDOM = 200;

    double mean() {
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            sum += weights[k] * means[k];
        }
        return sum;
    }

    double deviation() {
        double mean = mean();
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            double off = means[k] - mean;
            sum += weights[k] * (deviations[k] * deviations[k] + off * off);
        }
        return Math.sqrt(sum);
    }

    double below(double x) {
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            double z = deviations[k] == 0
                    ? (x > means[k] ? REACH : x < means[k] ? -REACH : 0)
                    : (x - means[k]) / deviations[k];
            sum += weights[k] * NormalTails.below(z);
        }
        return sum;
    }

    double logDensity(double x) {
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            sum += weights[k] * Math.exp(NormalTails.logDensity((x - means[k]) / deviations[k])) / deviations[k];
        }
        return Math.log(sum);
    }

    double quantile(double probability) {
        double center = mean();
        double step = Math.max(1e-12, deviation());
        double lower = center - step;
        double upper = center + step;
        for (int k = 0; k < REACH && below(lower) > probability; k++) {
            lower -= step * (k + 1);
        }
        for (int k = 0; k < REACH && below(upper) < probability; k++) {
            upper += step * (k + 1);
        }
        return new BrentSolver(1e-12, 1e-11).solve(300, x -> below(x) - probability, lower, upper);
    }

    /**
     * Student's distribution with the same central ranges of 50 % and 95 %: location, scale and degrees of freedom. The degrees
     * are no more than 200 and no less than 1.
     */
    double[] student() {
        double lower = quantile(0.025);
        double upper = quantile(0.975);
        double wide = upper - lower;
        double narrow = quantile(0.75) - quantile(0.25);
        ToDoubleFunction<Double> ratio = freedom -> {
            TDistribution student = new TDistribution(null, freedom);
            return student.inverseCumulativeProbability(0.975) / student.inverseCumulativeProbability(0.75);
        };
        double sought = wide / narrow;
        double freedom = sought <= ratio.applyAsDouble(MAX_FREEDOM)
                ? MAX_FREEDOM
                : sought >= ratio.applyAsDouble(1.0)
                        ? 1
                        : new BrentSolver(1e-6).solve(200, f -> ratio.applyAsDouble(f) - sought, 1, MAX_FREEDOM);
        double scale = wide / 2 / new TDistribution(null, freedom).inverseCumulativeProbability(0.975);
        return new double[] {(lower + upper) / 2, scale, freedom};
    }

    /** Mixture of components that are added one by one. */
    static final class Builder {

        private final List<double[]> components = new ArrayList<>();

        void add(double weight, double mean, double deviation) {
            components.add(new double[] {weight, mean, deviation});
        }

        Mixture build() {
            return new Mixture(column(0), column(1), column(2));
        }

        private double[] column(int j) {
            return components.stream().mapToDouble(c -> c[j]).toArray();
        }
    }
}
