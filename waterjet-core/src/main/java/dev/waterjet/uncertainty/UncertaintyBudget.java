package dev.waterjet.uncertainty;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Require;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Uncertainty budget by the law of propagation of uncertainty (JCGM 100, 5.1 and 5.2): value, combined standard
 * uncertainty, and the contribution of each input. Derivatives are central differences over small parts of the inputs' uncertainties.
 */
public final class UncertaintyBudget implements Described {

    /** Step of a first difference, as a part of the input's standard uncertainty. */
    private static final double FIRST_STEP = 1e-3;

    /** Step of differences of second and third order. */
    private static final double HIGHER_STEP = 0.05;

    private final UncertainInputs inputs;
    private final double value;
    private final double[] sensitivities;
    private final double[] contributions;
    private final double combined;
    private final double higherVariance;

    private UncertaintyBudget(UncertainInputs inputs, Measurand measurand) {
        this.inputs = inputs;
        double[] at = inputs.values();
        this.value = measurand.of(at.clone());
        this.sensitivities = new double[at.length];
        this.contributions = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            double u = inputs.distribution(i).standardUncertainty();
            if (u > 0) {
                contributions[i] = slope(measurand, at, i, FIRST_STEP * u) / FIRST_STEP;
                sensitivities[i] = contributions[i] / u;
            }
        }
        this.combined = Math.sqrt(Math.max(0, variance()));
        this.higherVariance = inputs.isCorrelated() ? 0 : higherVariance(measurand, at);
    }

    /**
     * Returns the budget of a measurand.
     *
     * @param measurand the function
     * @param inputs its inputs
     * @return the budget
     * @throws dev.waterjet.measure.DomainException if the correlations contradict each other
     */
    public static UncertaintyBudget of(Measurand measurand, UncertainInputs inputs) {
        Objects.requireNonNull(measurand, "measurand");
        Objects.requireNonNull(inputs, "inputs").factor();
        return new UncertaintyBudget(inputs, measurand);
    }

    /** Half the difference over a step to both sides. */
    private static double slope(Measurand measurand, double[] at, int i, double step) {
        return (moved(measurand, at, i, step, i, 0) - moved(measurand, at, i, -step, i, 0)) / 2;
    }

    private static double moved(Measurand measurand, double[] at, int i, double stepI, int j, double stepJ) {
        double[] there = at.clone();
        there[i] += stepI;
        there[j] += stepJ;
        return measurand.of(there);
    }

    /** JCGM 100, eq. (13): sum of c<sub>i</sub> u<sub>i</sub> c<sub>j</sub> u<sub>j</sub> r<sub>ij</sub>. */
    private double variance() {
        double sum = 0;
        for (int i = 0; i < contributions.length; i++) {
            for (int j = 0; j < contributions.length; j++) {
                sum += contributions[i] * contributions[j] * inputs.correlation(i, j);
            }
        }
        return sum;
    }

    /** JCGM 100, note to 5.1.2: sum of (f<sub>ij</sub><sup>2</sup>/2 + f<sub>i</sub> f<sub>ijj</sub>) u<sub>i</sub><sup>2</sup> u<sub>j</sub><sup>2</sup> for independent, symmetric inputs. */
    private double higherVariance(Measurand measurand, double[] at) {
        double sum = 0;
        for (int i = 0; i < at.length; i++) {
            double hi = HIGHER_STEP * inputs.distribution(i).standardUncertainty();
            for (int j = 0; j < at.length; j++) {
                double hj = HIGHER_STEP * inputs.distribution(j).standardUncertainty();
                if (hi > 0 && hj > 0) {
                    double second = (moved(measurand, at, i, hi, j, hj)
                                    - moved(measurand, at, i, hi, j, -hj)
                                    - moved(measurand, at, i, -hi, j, hj)
                                    + moved(measurand, at, i, -hi, j, -hj))
                            / (4 * HIGHER_STEP * HIGHER_STEP);
                    double third = (bend(measurand, at, i, hi, j, hj) - bend(measurand, at, i, -hi, j, hj))
                            / (2 * HIGHER_STEP * HIGHER_STEP * HIGHER_STEP);
                    sum += second * second / 2 + contributions[i] * third;
                }
            }
        }
        return sum;
    }

    private static double bend(Measurand measurand, double[] at, int i, double stepI, int j, double stepJ) {
        return moved(measurand, at, i, stepI, j, stepJ)
                - 2 * moved(measurand, at, i, stepI, j, 0)
                + moved(measurand, at, i, stepI, j, -stepJ);
    }

    /**
     * Returns the result at the values of the inputs.
     *
     * @return the value
     */
    public double value() {
        return value;
    }

    /**
     * Returns the combined standard uncertainty of first order, correlations included.
     *
     * @return the standard uncertainty
     */
    public double standardUncertainty() {
        return combined;
    }

    /**
     * Returns the combined standard uncertainty with the terms of second order, which JCGM 100 gives for independent inputs. A
     * large difference from the first order shows a non-linear function; use a Monte Carlo study then.
     *
     * @return the standard uncertainty; that of first order where inputs are correlated
     */
    public double standardUncertaintyOfSecondOrder() {
        return Math.sqrt(Math.max(0, combined * combined + higherVariance));
    }

    /**
     * Returns the names of the inputs.
     *
     * @return the names, in order
     */
    public List<String> names() {
        return inputs.names();
    }

    /**
     * Returns the sensitivity of the result to an input.
     *
     * @param name name of the input
     * @return the derivative; 0 for an input without uncertainty
     */
    public double sensitivity(String name) {
        return sensitivities[inputs.index(Objects.requireNonNull(name, "name"))];
    }

    /**
     * Returns the contribution of an input: sensitivity times standard uncertainty.
     *
     * @param name name of the input
     * @return the contribution, with the sign of the sensitivity
     */
    public double contribution(String name) {
        return contributions[inputs.index(Objects.requireNonNull(name, "name"))];
    }

    /**
     * Returns the first-order share of the variance that an input causes. With correlations the shares need not add up to 1.
     *
     * @param name name of the input
     * @return the share
     */
    public double share(String name) {
        double part = contribution(name);
        return combined > 0 ? part * part / (combined * combined) : 0;
    }

    /**
     * Returns the effective degrees of freedom by Welch and Satterthwaite (JCGM 100, eq. G.2b).
     *
     * @return the degrees of freedom; infinite if those of all inputs are
     */
    public double degreesOfFreedom() {
        double sum = 0;
        for (int i = 0; i < contributions.length; i++) {
            sum += Math.pow(contributions[i], 4) / inputs.distribution(i).degreesOfFreedom();
        }
        return sum > 0 ? Math.pow(combined, 4) / sum : Double.POSITIVE_INFINITY;
    }

    /**
     * Returns the half width of the interval that contains the true value with a given probability: the standard uncertainty times the
     * factor of Student's distribution with the effective degrees of freedom, rounded down (JCGM 100, G.4).
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the expanded uncertainty
     */
    public double expanded(double coverage) {
        Require.coverage(coverage);
        double freedom = Math.floor(degreesOfFreedom());
        double half = (1 + coverage) / 2;
        // beyond a million degrees of freedom Student's distribution is the normal one
        return combined
                * (freedom < 1e6
                        ? new TDistribution(null, Math.max(1, freedom)).inverseCumulativeProbability(half)
                        : new NormalDistribution(null, 0, 1).inverseCumulativeProbability(half));
    }

    @Override
    public Map<String, Object> describe() {
        List<Map<String, Object>> rows = new ArrayList<>();
        for (int i = 0; i < contributions.length; i++) {
            rows.add(Description.of("uncertain input")
                    .put("name", inputs.names().get(i))
                    .put("value", inputs.distribution(i).value())
                    .put("standard_uncertainty", inputs.distribution(i).standardUncertainty())
                    .put("sensitivity", sensitivities[i])
                    .put("contribution", contributions[i])
                    .map());
        }
        return Description.of("uncertainty budget")
                .put("value", value)
                .put("standard_uncertainty", combined)
                .put("inputs", rows)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UncertaintyBudget that
                && inputs.equals(that.inputs)
                && value == that.value
                && Arrays.equals(contributions, that.contributions)
                && higherVariance == that.higherVariance;
    }

    @Override
    public int hashCode() {
        return Objects.hash(inputs, value, Arrays.hashCode(contributions), higherVariance);
    }

    @Override
    public String toString() {
        return value + " +/- " + combined;
    }
}
