package dev.waterjet.fit;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/** A fitted model: its parameters, how sure they are, and how well it meets each observation. */
public final class Fit implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final List<String> names;
    private final double[] values;
    private final boolean[] isPositive;
    private final double[][] innerCovariance;
    private final double[] leverages;
    private final double[] residuals;
    private final double[] observed;
    private final double[] deviations;
    private final double[] rootWeights;
    private final boolean hasKnownDeviations;

    /** Takes the arrays as its own. */
    Fit(
            List<String> names,
            double[] values,
            boolean[] isPositive,
            double[][] innerCovariance,
            double[] leverages,
            double[] residuals,
            double[] observed,
            double[] deviations,
            double[] rootWeights,
            boolean hasKnownDeviations) {
        this.names = List.copyOf(names);
        this.values = values;
        this.isPositive = isPositive;
        this.innerCovariance = innerCovariance;
        this.leverages = leverages;
        this.residuals = residuals;
        this.observed = observed;
        this.deviations = deviations;
        this.rootWeights = rootWeights;
        this.hasKnownDeviations = hasKnownDeviations;
    }

    /**
     * Names of the parameters.
     *
     * @return the names, in the order in which they were asked for
     */
    public List<String> names() {
        return names;
    }

    /**
     * Values of the parameters.
     *
     * @return a new array
     */
    public double[] values() {
        return values.clone();
    }

    /**
     * Value of a parameter.
     *
     * @param name its name
     * @return the value
     */
    public double value(String name) {
        return values[index(name)];
    }

    /**
     * Standard error of a parameter.
     *
     * @param name its name
     * @return the standard error, in the unit of the parameter
     */
    public double standardError(String name) {
        int j = index(name);
        return Math.sqrt(innerCovariance[j][j]) * innerToOuter(j);
    }

    /** Slope from the inner parameter, the logarithm of a positive one, to the parameter itself. */
    private double innerToOuter(int j) {
        return isPositive[j] ? values[j] : 1;
    }

    /**
     * Covariance of two parameters.
     *
     * @param one name of the first
     * @param other name of the second; the same name gives the variance
     * @return the covariance
     */
    public double covariance(String one, String other) {
        int i = index(one);
        int j = index(other);
        return innerCovariance[i][j] * innerToOuter(i) * innerToOuter(j);
    }

    /**
     * Correlation of two parameters.
     *
     * @param one name of the first
     * @param other name of the second
     * @return the correlation, -1 to 1
     */
    public double correlation(String one, String other) {
        int i = index(one);
        int j = index(other);
        return innerCovariance[i][j] / Math.sqrt(innerCovariance[i][i] * innerCovariance[j][j]);
    }

    /**
     * Lower end of the confidence interval of a parameter.
     *
     * @param name its name
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the lower end; above zero for a parameter that must stay positive
     */
    public double lower(String name, double coverage) {
        return bound(index(name), -1, coverage);
    }

    /**
     * Upper end of the confidence interval of a parameter.
     *
     * @param name its name
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the upper end
     */
    public double upper(String name, double coverage) {
        return bound(index(name), 1, coverage);
    }

    private double bound(int j, int side, double coverage) {
        Require.above("coverage", coverage, 0, Units.ONE, "");
        Require.atMost("coverage", coverage, Math.nextDown(1.0), Units.ONE, "");
        double half = (1 + coverage) / 2;
        double reach = hasKnownDeviations
                ? new NormalDistribution(null, 0, 1).inverseCumulativeProbability(half)
                : new TDistribution(null, degreesOfFreedom()).inverseCumulativeProbability(half);
        double distance = side * reach * Math.sqrt(innerCovariance[j][j]);
        return isPositive[j] ? values[j] * Math.exp(distance) : values[j] + distance;
    }

    private int index(String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new TextException(Message.of("unknown-parameter", "unknown parameter {name}; use one of {known}")
                    .withInput("name", name)
                    .with("known", String.join(", ", names)));
        }
        return index;
    }

    /**
     * How many observations there were.
     *
     * @return the count
     */
    public int observations() {
        return observed.length;
    }

    /**
     * Observations less parameters.
     *
     * @return the degrees of freedom, 1 or more
     */
    public int degreesOfFreedom() {
        return observed.length - values.length;
    }

    /**
     * Observed less predicted, for each observation.
     *
     * @return a new array, in the unit of the observations
     */
    public double[] residuals() {
        double[] plain = new double[residuals.length];
        for (int i = 0; i < plain.length; i++) {
            plain[i] = residuals[i] * deviations[i];
        }
        return plain;
    }

    /**
     * Residuals over their own standard deviation, the leverage taken into account: beyond about 3 an observation does
     * not fit in.
     *
     * @return a new array
     */
    public double[] studentizedResiduals() {
        double spread = residualDeviation();
        double[] studentizedResiduals = new double[residuals.length];
        for (int i = 0; i < studentizedResiduals.length; i++) {
            double size = spread * Math.sqrt(Math.max(1e-12, 1 - leverages[i]));
            studentizedResiduals[i] = size > 0 ? residuals[i] / size : 0;
        }
        return studentizedResiduals;
    }

    /**
     * How much each observation determines its own prediction: 0 not at all, 1 wholly. Their sum is the number of
     * parameters.
     *
     * @return a new array
     */
    public double[] leverages() {
        return leverages.clone();
    }

    /**
     * Weight that a robust fit left to each observation, 0 to 1; all 1 in an ordinary fit.
     *
     * @return a new array
     */
    public double[] weights() {
        double[] weights = new double[rootWeights.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = rootWeights[i] * rootWeights[i];
        }
        return weights;
    }

    /**
     * Sum of squared residuals, each over its standard deviation.
     *
     * @return chi square; of observations without deviations the plain sum of squares
     */
    public double chiSquare() {
        double sum = 0;
        for (int i = 0; i < residuals.length; i++) {
            sum += residuals[i] * residuals[i] * rootWeights[i] * rootWeights[i];
        }
        return sum;
    }

    /**
     * Standard deviation of the residuals, relative to the deviations told: 1 where those are right.
     *
     * @return the root of chi square over the degrees of freedom
     */
    public double residualDeviation() {
        double freedom = -values.length;
        for (double root : rootWeights) {
            freedom += root * root;
        }
        return Math.sqrt(chiSquare() / Math.max(1, freedom));
    }

    /**
     * Probability that right deviations would give residuals this large by chance: near 0 means that the model or the
     * deviations are wrong. Only of use where the deviations are known.
     *
     * @return a probability
     */
    public double pValue() {
        return 1 - new ChiSquaredDistribution(null, degreesOfFreedom()).cumulativeProbability(chiSquare());
    }

    /**
     * Share of the spread of the observations that the model explains.
     *
     * @return R squared, at most 1; 0 where the observations are all alike
     */
    public double rSquared() {
        double weight = 0;
        double sum = 0;
        for (int i = 0; i < observed.length; i++) {
            weight += weight(i);
            sum += weight(i) * observed[i];
        }
        double mean = sum / weight;
        double total = 0;
        for (int i = 0; i < observed.length; i++) {
            total += weight(i) * (observed[i] - mean) * (observed[i] - mean);
        }
        return total > 0 ? 1 - chiSquare() / total : 0;
    }

    private double weight(int i) {
        double root = rootWeights[i] / deviations[i];
        return root * root;
    }

    @Override
    public Map<String, Object> describe() {
        List<Map<String, Object>> parameters = new ArrayList<>();
        for (String name : names) {
            parameters.add(Description.of("parameter")
                    .put("name", name)
                    .put("value", value(name))
                    .put("standard_error", standardError(name))
                    .map());
        }
        return Description.of("fit")
                .put("parameters", parameters)
                .put("observations", observations())
                .put("degrees_of_freedom", degreesOfFreedom())
                .put("chi_square", chiSquare())
                .put("residual_deviation", residualDeviation())
                .map();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("fit of " + observations() + " observations:");
        for (String name : names) {
            text.append(' ')
                    .append(name)
                    .append(" = ")
                    .append(value(name))
                    .append(" +/- ")
                    .append(standardError(name));
        }
        return text.toString();
    }
}
