package dev.waterjet.uncertainty;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.Map;

/** Distribution of a result from Monte Carlo trials (JCGM 101, 7). */
public final class MonteCarloResult implements Described {

    private final double[] sorted;
    private final double mean;
    private final double standardUncertainty;

    private MonteCarloResult(double[] sorted, double mean, double standardUncertainty) {
        this.sorted = sorted;
        this.mean = mean;
        this.standardUncertainty = standardUncertainty;
    }

    /**
     * Keeps and sorts the array. Quantiles and intervals are those of JCGM 101, 7.7, which no percentile of Commons Math
     * gives.
     */
    static MonteCarloResult of(double[] results) {
        Arrays.sort(results);
        double sum = 0;
        for (double result : results) {
            sum += result;
        }
        double mean = sum / results.length;
        double squares = 0;
        for (double result : results) {
            squares += (result - mean) * (result - mean);
        }
        return new MonteCarloResult(results, mean, Math.sqrt(squares / (results.length - 1)));
    }

    /**
     * Returns the number of trials.
     *
     * @return the count
     */
    public int trials() {
        return sorted.length;
    }

    /**
     * Returns the mean of the results: the estimate of JCGM 101.
     *
     * @return the mean
     */
    public double mean() {
        return mean;
    }

    /**
     * Returns the standard deviation of the results: the standard uncertainty of JCGM 101.
     *
     * @return the standard uncertainty
     */
    public double standardUncertainty() {
        return standardUncertainty;
    }

    /**
     * Returns a quantile of the results.
     *
     * @param probability probability that a result does not exceed the quantile, 0 to 1
     * @return the quantile, interpolated linearly between results
     */
    public double quantile(double probability) {
        Require.between("probability", probability, 0, 1, Units.ONE, "");
        double place = probability * (sorted.length - 1);
        int below = (int) Math.min(sorted.length - 2.0, Math.floor(place));
        double share = place - below;
        return sorted[below] * (1 - share) + sorted[below + 1] * share;
    }

    /**
     * Returns the lower end of the probabilistically symmetric interval.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the lower end
     */
    public double lower(double coverage) {
        return quantile((1 - Require.coverage(coverage)) / 2);
    }

    /**
     * Returns the upper end of the probabilistically symmetric interval.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the upper end
     */
    public double upper(double coverage) {
        return quantile((1 + Require.coverage(coverage)) / 2);
    }

    /**
     * Returns the lower end of the shortest interval.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the lower end
     */
    public double shortestLower(double coverage) {
        return sorted[shortest(coverage)];
    }

    /**
     * Returns the upper end of the shortest interval.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the upper end
     */
    public double shortestUpper(double coverage) {
        return sorted[shortest(coverage) + within(coverage)];
    }

    private int within(double coverage) {
        return (int) Math.min(sorted.length - 1.0, Math.rint(Require.coverage(coverage) * sorted.length));
    }

    /** JCGM 101, 7.7.4: the place of the minimum distance over a given number of results. */
    private int shortest(double coverage) {
        int within = within(coverage);
        int best = 0;
        for (int i = 1; i + within < sorted.length; i++) {
            if (sorted[i + within] - sorted[i] < sorted[best + within] - sorted[best]) {
                best = i;
            }
        }
        return best;
    }

    /**
     * Returns all results.
     *
     * @return a new array, in ascending order
     */
    public double[] results() {
        return sorted.clone();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("Monte Carlo result")
                .put("trials", trials())
                .put("mean", mean)
                .put("standard_uncertainty", standardUncertainty)
                .put("lower_95", lower(0.95))
                .put("upper_95", upper(0.95))
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MonteCarloResult that && Arrays.equals(sorted, that.sorted);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(sorted);
    }

    @Override
    public String toString() {
        return mean + " +/- " + standardUncertainty + " from " + sorted.length + " trials";
    }
}
