package dev.waterjet.uncertainty;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import javax.measure.quantity.Dimensionless;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RectangularCholeskyDecomposition;

/**
 * Inputs of a measurand: names, distributions, correlations. Immutable.
 *
 * <pre>{@code
 * UncertainInputs inputs = UncertainInputs.none()
 *         .with("pressure", Distribution.normal(345e6, 5e6))
 *         .with("machinability", Distribution.logNormal(87.6, 0.1))
 *         .withCorrelation("pressure", "machinability", 0.2);
 * }</pre>
 *
 * <p>Correlated draws use normal scores: the stated correlation is that of the standard normal values from which the inputs
 * are computed, and so that of inputs with normal distributions.
 */
public final class UncertainInputs implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Pivot below which a correlation matrix counts as singular, such as one with full correlation. */
    private static final double SINGULAR = 1e-10;

    /** Error of a matrix and its factor that rounding explains. */
    private static final double ROUNDING = 1e-6;

    /** Checked content, and the serial form: the correlation matrix row by row. */
    private record Values(
            List<String> names, List<Distribution> distributions, QuantityArray<Dimensionless> correlations)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            names = List.copyOf(names);
            distributions = List.copyOf(distributions);
            int size = names.size();
            Require.between(
                    "number of distributions", distributions.size(), size, size, Units.ONE, "the number of names");
            Require.between("number of names", new HashSet<>(names).size(), size, size, Units.ONE, "all different");
            int cells = size * size;
            Require.between("number of correlations", correlations.size(), cells, cells, Units.ONE, "");
            for (int i = 0; i < size; i++) {
                Require.between(
                        "correlation of an input with itself", correlations.si(i * size + i), 1, 1, Units.ONE, "");
                for (int j = 0; j < i; j++) {
                    double above = correlations.si(j * size + i);
                    Require.between("correlation", above, -1, 1, Units.ONE, "");
                    Require.between("correlation", correlations.si(i * size + j), above, above, Units.ONE, "symmetric");
                }
            }
        }

        private Object readResolve() {
            return new UncertainInputs(this);
        }
    }

    private static final UncertainInputs NONE =
            new UncertainInputs(new Values(List.of(), List.of(), QuantityArray.ofSi(Kind.RATIO)));

    private final transient Values values;
    private final transient boolean isCorrelated;

    private UncertainInputs(Values values) {
        this.values = values;
        int size = values.names.size();
        boolean isAny = false;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < i; j++) {
                isAny |= values.correlations.si(i * size + j) != 0;
            }
        }
        this.isCorrelated = isAny;
    }

    /**
     * F with F F<sup>T</sup> equal to the correlations; full correlation is allowed. Correlations given one by one can contradict each
     * other until all are given, so this is computed only then.
     */
    double[][] factor() {
        int size = size();
        double[][] rows = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                rows[i][j] = correlation(i, j);
            }
        }
        if (!isCorrelated) {
            return rows;
        }
        RealMatrix matrix = new Array2DRowRealMatrix(rows);
        try {
            RealMatrix root = new RectangularCholeskyDecomposition(matrix, SINGULAR).getRootMatrix();
            // the decomposition stops at the first small pivot; what is left must be rounding
            if (root.multiply(root.transpose()).subtract(matrix).getNorm() < ROUNDING) {
                return root.getData();
            }
        } catch (NonPositiveDefiniteMatrixException e) {
            throw contradiction();
        }
        throw contradiction();
    }

    private static DomainException contradiction() {
        return new DomainException(
                Message.of("contradictory-correlations", "the correlations contradict each other"), "correlations");
    }

    /** {@return the empty list of inputs} */
    public static UncertainInputs none() {
        return NONE;
    }

    /**
     * Returns these inputs with one more, correlated with none.
     *
     * @param name name of the input, not yet used
     * @param distribution distribution of the input
     * @return the inputs
     * @throws DomainException if the name is used
     */
    public UncertainInputs with(String name, Distribution distribution) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(distribution, "distribution");
        if (values.names.contains(name)) {
            throw new DomainException(
                    Message.of("repeated-input", "repeated input {name}").withInput("name", name), "input");
        }
        List<String> names = new ArrayList<>(values.names);
        names.add(name);
        List<Distribution> distributions = new ArrayList<>(values.distributions);
        distributions.add(distribution);
        int before = size();
        int size = before + 1;
        double[] wider = new double[size * size];
        for (int i = 0; i < before; i++) {
            for (int j = 0; j < before; j++) {
                wider[i * size + j] = correlation(i, j);
            }
        }
        wider[size * size - 1] = 1;
        return new UncertainInputs(new Values(names, distributions, QuantityArray.ofSi(Kind.RATIO, wider)));
    }

    /**
     * Returns these inputs with a correlation of two of them.
     *
     * @param one name of the first
     * @param other name of the second
     * @param correlation -1 to 1
     * @return the inputs
     * @throws DomainException if a name is unknown, both are the same, or the correlation is out of range
     */
    public UncertainInputs withCorrelation(String one, String other, double correlation) {
        int i = index(Objects.requireNonNull(one, "one"));
        int j = index(Objects.requireNonNull(other, "other"));
        Require.between("correlation", correlation, -1, 1, Units.ONE, "");
        if (i == j) {
            throw new DomainException(
                    Message.of("self-correlation", "{name} is correlated with itself")
                            .withInput("name", one),
                    "input");
        }
        int size = size();
        double[] changed = values.correlations.toSi();
        changed[i * size + j] = correlation;
        changed[j * size + i] = correlation;
        return new UncertainInputs(
                new Values(values.names, values.distributions, QuantityArray.ofSi(Kind.RATIO, changed)));
    }

    /** {@return the names of the inputs, in order} */
    public List<String> names() {
        return values.names;
    }

    /**
     * Returns the distribution of an input.
     *
     * @param index index from 0
     * @return its distribution
     */
    public Distribution distribution(int index) {
        return values.distributions.get(Require.index("input", index, size()));
    }

    /** {@return the number of inputs} */
    public int size() {
        return values.names.size();
    }

    /**
     * Returns the correlation of two inputs.
     *
     * @param one name of the first
     * @param other name of the second
     * @return the correlation
     * @throws DomainException if a name is unknown
     */
    public double correlation(String one, String other) {
        return correlation(index(Objects.requireNonNull(one, "one")), index(Objects.requireNonNull(other, "other")));
    }

    double correlation(int i, int j) {
        return values.correlations.si(i * size() + j);
    }

    boolean isCorrelated() {
        return isCorrelated;
    }

    int index(String name) {
        return index(values.names, name);
    }

    /** The place of a name. */
    static int index(List<String> names, String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new DomainException(
                    Message.of("unknown-input", "unknown input {name}; use one of {known}")
                            .withInput("name", name)
                            .with("known", String.join(", ", names)),
                    "input");
        }
        return index;
    }

    double[] values() {
        return values.distributions.stream().mapToDouble(Distribution::value).toArray();
    }

    /** One draw of all inputs, by their {@link #factor()}; {@code scores} is an array of as many numbers. */
    void draw(BatchRandom random, double[][] factor, double[] scores, double[] into) {
        for (int k = 0; k < scores.length; k++) {
            scores[k] = random.nextDouble();
        }
        if (isCorrelated) {
            correlate(factor, scores, into);
        } else {
            System.arraycopy(scores, 0, into, 0, into.length);
        }
        for (int i = 0; i < into.length; i++) {
            into[i] = draw(values.distributions.get(i), into[i], random);
        }
    }

    /** Uniform numbers to probabilities of correlated normal scores. */
    private static void correlate(double[][] factor, double[] uniform, double[] into) {
        for (int k = 0; k < uniform.length; k++) {
            uniform[k] = Shapes.STANDARD_NORMAL.inverseCumulativeProbability(uniform[k]);
        }
        for (int i = 0; i < into.length; i++) {
            double correlated = 0;
            for (int k = 0; k < factor[i].length; k++) {
                correlated += factor[i][k] * uniform[k];
            }
            into[i] = Shapes.STANDARD_NORMAL.cumulativeProbability(correlated);
        }
    }

    private static double draw(Distribution distribution, double probability, BatchRandom random) {
        double inside = inside(probability);
        if (distribution instanceof Shapes.Student student) {
            double n = student.degreesOfFreedom();
            double score = Shapes.STANDARD_NORMAL.inverseCumulativeProbability(inside);
            return student.value() + student.standardUncertainty() * score * Math.sqrt(n / random.chiSquare(n));
        }
        return distribution.quantile(inside);
    }

    /** The inputs at a point of the unit cube. */
    void at(double[] probabilities, int from, double[] into) {
        for (int i = 0; i < into.length; i++) {
            into[i] = values.distributions.get(i).quantile(inside(probabilities[from + i]));
        }
    }

    /** A probability that is neither 0 nor 1, where a quantile can be infinite. */
    private static double inside(double probability) {
        return Math.min(1 - 0x1p-53, Math.max(0x1p-54, probability));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UncertainInputs that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "inputs " + values.names;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
