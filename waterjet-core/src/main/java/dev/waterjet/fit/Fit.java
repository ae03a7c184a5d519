package dev.waterjet.fit;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Result of a least-squares fit: parameters with standard errors and intervals, residuals, and the leverage and weight of
 * each observation.
 *
 * <p>Arrays have one element for each observation, in the order in which they were given.
 */
public final class Fit implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Of an observation with leverage 1 the residual is 0; this keeps its deviation above 0. */
    private static final double MIN_FREEDOM = 1e-12;

    /** Fitted parameter. Of one that must stay positive the solver varies the logarithm; else the parameter itself. */
    record Parameter(String name, double value, boolean isPositive) implements Serializable {

        Parameter {
            Objects.requireNonNull(name, "name");
            value = isPositive
                    ? Require.positive("value of " + name, value, Units.ONE)
                    : Require.finite("value of " + name, value, Units.ONE);
        }

        /** Derivative of the parameter by the variable of the solver. */
        double slope() {
            return isPositive ? value : 1;
        }
    }

    /** Observation; the residual is observed less predicted, over the standard deviation. */
    record Observation(double observed, double deviation, double residual, double leverage, double rootWeight)
            implements Serializable {

        Observation {
            observed = Require.finite("observation", observed, Units.ONE);
            deviation = Require.positive("standard deviation", deviation, Units.ONE);
            residual = Require.finite("residual", residual, Units.ONE);
            leverage = Require.notNegative("leverage", leverage, Units.ONE);
            rootWeight = Require.between("root of the weight", rootWeight, 0, 1, Units.ONE, "");
        }

        double weightedSquare() {
            return residual * residual * rootWeight * rootWeight;
        }

        double weight() {
            double root = rootWeight / deviation;
            return root * root;
        }
    }

    /**
     * Checked content, and the serial form. The covariance is that of the variables of the solver for observations of unit
     * variance, row by row; {@code variance} is the factor to the true one.
     */
    private record Values(
            List<Parameter> parameters,
            List<Double> unitCovariance,
            double variance,
            boolean isVarianceKnown,
            List<Observation> observations)
            implements Serializable {

        Values {
            parameters = List.copyOf(parameters);
            unitCovariance = unitCovariance.stream()
                    .map(covariance -> Require.finite("covariance", covariance, Units.ONE))
                    .toList();
            observations = List.copyOf(observations);
            variance = Require.notNegative("variance of the residuals", variance, Units.ONE);
            int count = parameters.size();
            int cells = count * count;
            Require.between("number of covariances", unitCovariance.size(), cells, cells, Units.ONE, "");
            Require.above("number of observations", observations.size(), count, Units.ONE, "the number of parameters");
            for (int j = 0; j < count; j++) {
                double unitVariance =
                        Require.notNegative("variance of a parameter", unitCovariance.get(j * count + j), Units.ONE);
                double error =
                        Math.sqrt(variance * unitVariance) * parameters.get(j).slope();
                Require.finite("standard error of a parameter", error, Units.ONE);
            }
            double chiSquare = observations.stream()
                    .mapToDouble(Observation::weightedSquare)
                    .sum();
            Require.finite("sum of squares", chiSquare, Units.ONE);
        }

        double unitCovariance(int i, int j) {
            return unitCovariance.get(i * parameters.size() + j);
        }

        private Object readResolve() {
            return new Fit(this);
        }
    }

    private final transient Values values;

    private Fit(Values values) {
        this.values = values;
    }

    static Fit of(
            List<Parameter> parameters,
            List<Double> unitCovariance,
            double variance,
            boolean isVarianceKnown,
            List<Observation> observations) {
        return new Fit(new Values(parameters, unitCovariance, variance, isVarianceKnown, observations));
    }

    /** {@return the names of the parameters, in the order in which they were added} */
    public List<String> names() {
        return values.parameters.stream().map(Parameter::name).toList();
    }

    /** {@return the values of the parameters, in a new array} */
    public double[] values() {
        return values.parameters.stream().mapToDouble(Parameter::value).toArray();
    }

    /**
     * Returns the value of a parameter.
     *
     * @param name name of the parameter
     * @return the value
     * @throws TextException if there is no such parameter; code {@code unknown-parameter}
     */
    public double value(String name) {
        return values.parameters.get(index(name)).value();
    }

    /**
     * Returns the standard error of a parameter.
     *
     * @param name name of the parameter
     * @return the standard error, in the unit of the parameter
     * @throws TextException if there is no such parameter; code {@code unknown-parameter}
     */
    public double standardError(String name) {
        int j = index(name);
        return innerError(j) * values.parameters.get(j).slope();
    }

    private double innerError(int j) {
        return Math.sqrt(values.variance * values.unitCovariance(j, j));
    }

    /**
     * Returns the covariance of two parameters.
     *
     * @param one name of the first parameter
     * @param other name of the second parameter; the same name gives the variance
     * @return the covariance
     * @throws TextException if there is no such parameter; code {@code unknown-parameter}
     */
    public double covariance(String one, String other) {
        int i = index(one);
        int j = index(other);
        return values.variance
                * values.unitCovariance(i, j)
                * values.parameters.get(i).slope()
                * values.parameters.get(j).slope();
    }

    /**
     * Returns the correlation of two parameters.
     *
     * @param one name of the first parameter
     * @param other name of the second parameter
     * @return the correlation, -1 to 1
     * @throws TextException if there is no such parameter; code {@code unknown-parameter}
     */
    public double correlation(String one, String other) {
        int i = index(one);
        int j = index(other);
        return values.unitCovariance(i, j) / Math.sqrt(values.unitCovariance(i, i) * values.unitCovariance(j, j));
    }

    /**
     * Returns the lower end of the confidence interval of a parameter.
     *
     * @param name name of the parameter
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the lower end; above zero for a parameter that must stay positive
     * @throws TextException if there is no such parameter; code {@code unknown-parameter}
     */
    public double lower(String name, double coverage) {
        return bound(index(name), -1, coverage);
    }

    /**
     * Returns the upper end of the confidence interval of a parameter.
     *
     * @param name name of the parameter
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the upper end
     * @throws TextException if there is no such parameter; code {@code unknown-parameter}
     */
    public double upper(String name, double coverage) {
        return bound(index(name), 1, coverage);
    }

    private double bound(int j, int side, double coverage) {
        double probability = (1 + Require.coverage(coverage)) / 2;
        double factor = values.isVarianceKnown
                ? new NormalDistribution(null, 0, 1).inverseCumulativeProbability(probability)
                : new TDistribution(null, degreesOfFreedom()).inverseCumulativeProbability(probability);
        double distance = side * factor * innerError(j);
        Parameter parameter = values.parameters.get(j);
        return parameter.isPositive() ? parameter.value() * Math.exp(distance) : parameter.value() + distance;
    }

    private int index(String name) {
        int index = names().indexOf(name);
        if (index < 0) {
            throw new TextException(Message.of("unknown-parameter", "unknown parameter {name}; use one of {known}")
                    .withInput("name", name)
                    .with("known", String.join(", ", names())));
        }
        return index;
    }

    /** {@return the number of observations} */
    public int observations() {
        return values.observations.size();
    }

    /** {@return the degrees of freedom: observations less parameters, 1 or more} */
    public int degreesOfFreedom() {
        return values.observations.size() - values.parameters.size();
    }

    private double[] ofEach(ToDoubleFunction<Observation> function) {
        return values.observations.stream().mapToDouble(function).toArray();
    }

    /** {@return the residuals, observed less predicted, in the unit of the observations, in a new array} */
    public double[] residuals() {
        return ofEach(observation -> observation.residual() * observation.deviation());
    }

    /**
     * Returns the residuals over their own standard deviation, which allows for the leverage. An observation beyond about 3
     * is an outlier.
     *
     * @return the internally studentized residuals, in a new array; 0 if all residuals are 0
     */
    public double[] studentizedResiduals() {
        double spread = residualDeviation();
        return ofEach(observation -> {
            double size = spread * Math.sqrt(Math.max(MIN_FREEDOM, 1 - observation.leverage()));
            return size > 0 ? observation.residual() / size : 0;
        });
    }

    /**
     * Returns the leverages: the derivative of each prediction by its own observation, 0 to 1. Their sum is the number of
     * parameters.
     *
     * @return the leverages, in a new array
     */
    public double[] leverages() {
        return ofEach(Observation::leverage);
    }

    /** {@return the weights left by a robust fit, 0 to 1, in a new array; all 1 in an ordinary fit} */
    public double[] weights() {
        return ofEach(observation -> observation.rootWeight() * observation.rootWeight());
    }

    /** {@return chi-square: the sum of squared residuals, each over its standard deviation and times its weight} */
    public double chiSquare() {
        return values.observations.stream()
                .mapToDouble(Observation::weightedSquare)
                .sum();
    }

    /** {@return the root of chi-square over the degrees of freedom; 1 if the given standard deviations are right} */
    public double residualDeviation() {
        double freedom = -values.parameters.size();
        for (double weight : weights()) {
            freedom += weight;
        }
        return Math.sqrt(chiSquare() / Math.max(1, freedom));
    }

    /**
     * Returns the probability of a larger chi-square if model and standard deviations are right. A value near 0 means that
     * one of them is wrong. Meaningful only if the standard deviations are known.
     *
     * @return the p-value, 0 to 1
     */
    public double pValue() {
        return 1 - new ChiSquaredDistribution(null, degreesOfFreedom()).cumulativeProbability(chiSquare());
    }

    /** {@return R squared, the share of the variance of the observations that the model explains; 0 if they are equal} */
    public double rSquared() {
        double weight = 0;
        double sum = 0;
        for (Observation observation : values.observations) {
            weight += observation.weight();
            sum += observation.weight() * observation.observed();
        }
        double total = 0;
        for (Observation observation : values.observations) {
            double distance = observation.observed() - sum / weight;
            total += observation.weight() * distance * distance;
        }
        return total > 0 ? 1 - chiSquare() / total : 0;
    }

    @Override
    public Map<String, Object> describe() {
        List<Map<String, Object>> parameters = names().stream()
                .map(name -> Description.of("parameter")
                        .put("name", name)
                        .put("value", value(name))
                        .put("standard_error", standardError(name))
                        .map())
                .toList();
        return Description.of("fit")
                .put("parameters", parameters)
                .put("observations", observations())
                .put("degrees_of_freedom", degreesOfFreedom())
                .put("chi_square", chiSquare())
                .put("residual_deviation", residualDeviation())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Fit that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return names().stream()
                .map(name -> name + " " + QuantityText.round(value(name), 4) + " ± "
                        + QuantityText.round(standardError(name), 2))
                .collect(Collectors.joining(", ", "fit of " + observations() + " observations: ", ""));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
