package dev.waterjet.uncertainty;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;

/** Shares of the variance of a result by input: first-order and total Sobol indices. */
public final class SobolIndices implements Described {

    private final List<String> names;
    private final double variance;
    private final double[] first;
    private final double[] total;
    private final double[] firstErrors;
    private final double[] totalErrors;

    private SobolIndices(List<String> names, double variance, double[][] indices, double[][] errors) {
        this.names = List.copyOf(names);
        this.variance = variance;
        this.first = indices[0];
        this.total = indices[1];
        this.firstErrors = errors[0];
        this.totalErrors = errors[1];
    }

    /** From trials of which trial i belongs to copy i mod {@code copies} of the sequence. */
    static SobolIndices of(List<String> names, double[] atA, double[] atB, double[][] mixed, int copies) {
        Trials all = new Trials(atA, atB, mixed, 0, 1);
        double[][] errors = new double[2][names.size()];
        double[][][] copy = new double[copies][][];
        for (int r = 0; r < copies; r++) {
            copy[r] = new Trials(atA, atB, mixed, r, copies).indices();
        }
        for (int kind = 0; kind < 2; kind++) {
            for (int k = 0; k < names.size(); k++) {
                StandardDeviation scatter = new StandardDeviation();
                for (double[][] one : copy) {
                    scatter.increment(one[kind][k]);
                }
                errors[kind][k] = scatter.getResult() / Math.sqrt(copies);
            }
        }
        return new SobolIndices(names, all.variance(), all.indices(), errors);
    }

    /** The trials from a first one in equal steps; never compared. */
    @SuppressWarnings("ArrayRecordComponent")
    private record Trials(double[] atA, double[] atB, double[][] mixed, int first, int step) {

        private double mean() {
            double sum = 0;
            for (int i = first; i < atA.length; i += step) {
                sum += atA[i] + atB[i];
            }
            return sum / (2.0 * count());
        }

        private int count() {
            return (atA.length - first + step - 1) / step;
        }

        double variance() {
            double mean = mean();
            double squares = 0;
            for (int i = first; i < atA.length; i += step) {
                squares += (atA[i] - mean) * (atA[i] - mean) + (atB[i] - mean) * (atB[i] - mean);
            }
            return squares / (2.0 * count() - 1);
        }

        /** First-order and total indices; subtracting the mean reduces the scatter and changes no expectation. */
        double[][] indices() {
            double mean = mean();
            double variance = variance();
            double[][] indices = new double[2][mixed.length];
            for (int k = 0; k < mixed.length && variance > 0; k++) {
                for (int i = first; i < atA.length; i += step) {
                    double difference = atA[i] - mixed[k][i];
                    indices[0][k] -= (atB[i] - mean) * difference / variance / count();
                    indices[1][k] += difference * difference / (2 * variance * count());
                }
            }
            return indices;
        }
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

    /**
     * Returns the standard error of the total index, from the scatter of the draws.
     *
     * @param name name of the input
     * @return the standard error
     */
    public double totalStandardError(String name) {
        return totalErrors[index(name)];
    }

    private int index(String name) {
        return UncertainInputs.index(names, Objects.requireNonNull(name, "name"));
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
                    .put("total_standard_error", totalErrors[i])
                    .map());
        }
        return Description.of("Sobol indices")
                .put("variance", variance)
                .put("inputs", inputs)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SobolIndices that
                && names.equals(that.names)
                && variance == that.variance
                && Arrays.equals(first, that.first)
                && Arrays.equals(total, that.total)
                && Arrays.equals(firstErrors, that.firstErrors)
                && Arrays.equals(totalErrors, that.totalErrors);
    }

    @Override
    public int hashCode() {
        return Objects.hash(names, variance, Arrays.hashCode(first), Arrays.hashCode(total));
    }

    @Override
    public String toString() {
        return "shares of variance of " + names;
    }
}
