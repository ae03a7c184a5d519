package dev.waterjet.uncertainty;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Shares of the variance of a result by input: first-order and total Sobol indices. */
public final class SobolIndices implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final List<String> names;
    private final double variance;
    private final double[] first;
    private final double[] total;
    private final double[] firstErrors;

    private SobolIndices(List<String> names, double variance, double[] first, double[] total, double[] firstErrors) {
        this.names = names;
        this.variance = variance;
        this.first = first;
        this.total = total;
        this.firstErrors = firstErrors;
    }

    static SobolIndices of(List<String> names, double[] atA, double[] atB, double[][] mixed) {
        int trials = atA.length;
        double mean = 0;
        for (int i = 0; i < trials; i++) {
            mean += (atA[i] + atB[i]) / (2.0 * trials);
        }
        double variance = 0;
        for (int i = 0; i < trials; i++) {
            variance += ((atA[i] - mean) * (atA[i] - mean) + (atB[i] - mean) * (atB[i] - mean)) / (2.0 * trials - 1);
        }
        int count = mixed.length;
        double[] first = new double[count];
        double[] total = new double[count];
        double[] errors = new double[count];
        for (int k = 0; k < count && variance > 0; k++) {
            double squares = 0;
            for (int i = 0; i < trials; i++) {
                // subtracting the mean reduces the scatter and changes no expectation
                double term = (atB[i] - mean) * (mixed[k][i] - atA[i]) / variance;
                double difference = atA[i] - mixed[k][i];
                first[k] += term / trials;
                squares += term * term / trials;
                total[k] += difference * difference / (2 * variance * trials);
            }
            errors[k] = Math.sqrt(Math.max(0, squares - first[k] * first[k]) / trials);
        }
        return new SobolIndices(names, variance, first, total, errors);
    }

    /**
     * Returns the names of the inputs.
     *
     * @return the names, in order
     */
    public List<String> names() {
        return names;
    }

    /**
     * Returns the variance of the result.
     *
     * @return the variance
     */
    public double variance() {
        return variance;
    }

    /**
     * Returns the share of the variance that an input causes alone: the reduction if it were known exactly.
     *
     * @param name name of the input
     * @return the first-order index, 0 to 1 within the scatter of the draws
     */
    public double firstOrder(String name) {
        return first[index(name)];
    }

    /**
     * Returns the standard error of the first-order index, from the scatter of the draws.
     *
     * @param name name of the input
     * @return the standard error
     */
    public double standardError(String name) {
        return firstErrors[index(name)];
    }

    /**
     * Returns the share of the variance that involves an input: the remainder if all others were known exactly.
     *
     * @param name name of the input
     * @return the total index, 0 to 1 within the scatter of the draws
     */
    public double total(String name) {
        return total[index(name)];
    }

    private int index(String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new IllegalArgumentException("unknown input \"" + name + "\"; use one of " + names);
        }
        return index;
    }

    @Override
    public Map<String, Object> describe() {
        List<Map<String, Object>> inputs = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            inputs.add(Description.of("share of variance")
                    .put("name", names.get(i))
                    .put("first_order", first[i])
                    .put("standard_error", firstErrors[i])
                    .put("total", total[i])
                    .map());
        }
        return Description.of("Sobol indices")
                .put("variance", variance)
                .put("inputs", inputs)
                .map();
    }

    @Override
    public String toString() {
        return "shares of variance of " + names;
    }
}
