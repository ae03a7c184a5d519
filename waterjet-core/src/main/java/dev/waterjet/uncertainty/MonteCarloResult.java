package dev.waterjet.uncertainty;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Map;

/** The distribution of a result, as drawn (JCGM 101, 7). */
public final class MonteCarloResult implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double[] sorted;
    private final double mean;
    private final double standardUncertainty;

    private MonteCarloResult(double[] sorted, double mean, double standardUncertainty) {
        this.sorted = sorted;
        this.mean = mean;
        this.standardUncertainty = standardUncertainty;
    }

    /** Takes the array as its own. */
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
     * How many trials were drawn.
     *
     * @return the count
     */
    public int trials() {
        return sorted.length;
    }

    /**
     * Mean of the results: the estimate of JCGM 101.
     *
     * @return the mean
     */
    public double mean() {
        return mean;
    }

    /**
     * Standard deviation of the results: the standard uncertainty of JCGM 101.
     *
     * @return the standard uncertainty
     */
    public double standardUncertainty() {
        return standardUncertainty;
    }

    /**
     * Value that a given share of the results does not exceed.
     *
     * @param probability 0 to 1
     * @return the quantile, between neighbouring results by their distance
     */
    public double quantile(double probability) {
        Require.between("probability", probability, 0, 1, Units.ONE, "");
        double place = probability * (sorted.length - 1);
        int below = (int) Math.min(sorted.length - 2.0, Math.floor(place));
        double share = place - below;
        return sorted[below] * (1 - share) + sorted[below + 1] * share;
    }

    /**
     * Lower end of the interval with as much left out below as above.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the lower end
     */
    public double lower(double coverage) {
        return quantile((1 - checked(coverage)) / 2);
    }

    /**
     * Upper end of the interval with as much left out below as above.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the upper end
     */
    public double upper(double coverage) {
        return quantile((1 + checked(coverage)) / 2);
    }

    /**
     * Lower end of the shortest interval.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the lower end
     */
    public double shortestLower(double coverage) {
        return sorted[shortest(coverage)];
    }

    /**
     * Upper end of the shortest interval.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the upper end
     */
    public double shortestUpper(double coverage) {
        return sorted[shortest(coverage) + within(coverage)];
    }

    private int within(double coverage) {
        return (int) Math.min(sorted.length - 1.0, Math.rint(checked(coverage) * sorted.length));
    }

    /** JCGM 101, 7.7.4: where the distance over a given number of results is least. */
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

    private static double checked(double coverage) {
        Require.above("coverage", coverage, 0, Units.ONE, "");
        return Require.atMost("coverage", coverage, Math.nextDown(1.0), Units.ONE, "");
    }

    /**
     * All results.
     *
     * @return a new array, rising
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
    public String toString() {
        return mean + " +/- " + standardUncertainty + " from " + sorted.length + " trials";
    }
}
