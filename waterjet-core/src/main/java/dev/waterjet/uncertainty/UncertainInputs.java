package dev.waterjet.uncertainty;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * Inputs of a measurand: names, distributions, correlations. Immutable.
 *
 * <p>Correlated draws use normal scores: the stated correlation is that of the standard normal values from which the inputs
 * are computed, and so that of inputs with normal distributions.
 */
public final class UncertainInputs implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final UncertainInputs NONE = new UncertainInputs(List.of(), List.of(), new double[0][0]);

    private final List<String> names;
    private final List<Distribution> distributions;
    private final double[][] correlations;
    private final boolean isCorrelated;

    private UncertainInputs(List<String> names, List<Distribution> distributions, double[][] correlations) {
        this.names = names;
        this.distributions = distributions;
        this.correlations = correlations;
        boolean isAny = false;
        for (int i = 0; i < correlations.length; i++) {
            for (int j = 0; j < i; j++) {
                isAny |= correlations[i][j] != 0;
            }
        }
        this.isCorrelated = isAny;
    }

    /**
     * F with F F^T equal to the correlations, from their eigenvectors; full correlation is allowed. Correlations
     * given one by one can contradict each other until all are given, so this is computed only then.
     */
    double[][] factor() {
        if (!isCorrelated) {
            return correlations;
        }
        EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(correlations));
        double[] values = eigen.getRealEigenvalues();
        double[][] factor = eigen.getV().getData();
        for (int k = 0; k < values.length; k++) {
            Require.atLeast(
                    "smallest eigenvalue of the correlations",
                    values[k],
                    -1e-10,
                    Units.ONE,
                    "else the correlations contradict each other");
            double root = Math.sqrt(Math.max(0, values[k]));
            for (double[] row : factor) {
                row[k] *= root;
            }
        }
        return factor;
    }

    /**
     * Returns an empty list of inputs.
     *
     * @return the empty list of inputs
     */
    public static UncertainInputs none() {
        return NONE;
    }

    /**
     * Returns these inputs with one more, correlated with none.
     *
     * @param name name of the input, not yet used
     * @param distribution distribution of the input
     * @return the inputs
     */
    public UncertainInputs with(String name, Distribution distribution) {
        if (names.contains(name)) {
            throw new IllegalArgumentException("repeated input \"" + name + "\"");
        }
        List<String> moreNames = new ArrayList<>(names);
        moreNames.add(name);
        List<Distribution> more = new ArrayList<>(distributions);
        more.add(distribution);
        double[][] wider = new double[more.size()][more.size()];
        for (int i = 0; i < correlations.length; i++) {
            System.arraycopy(correlations[i], 0, wider[i], 0, correlations.length);
        }
        wider[names.size()][names.size()] = 1;
        return new UncertainInputs(List.copyOf(moreNames), List.copyOf(more), wider);
    }

    /**
     * Returns these inputs with a correlation of two of them.
     *
     * @param one name of the first
     * @param other name of the second
     * @param correlation -1 to 1
     * @return the inputs
     */
    public UncertainInputs withCorrelation(String one, String other, double correlation) {
        Require.between(
                "correlation of " + one + " and " + other, correlation, -1, 1, Units.ONE, "a correlation has no more");
        int i = index(one);
        int j = index(other);
        if (i == j) {
            throw new IllegalArgumentException(one + " is correlated with itself");
        }
        double[][] changed = new double[correlations.length][];
        for (int k = 0; k < changed.length; k++) {
            changed[k] = correlations[k].clone();
        }
        changed[i][j] = correlation;
        changed[j][i] = correlation;
        return new UncertainInputs(names, distributions, changed);
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
     * Returns the distribution of an input.
     *
     * @param index index from 0
     * @return its distribution
     */
    public Distribution distribution(int index) {
        return distributions.get(index);
    }

    /**
     * Returns the number of inputs.
     *
     * @return the count
     */
    public int size() {
        return names.size();
    }

    /**
     * Returns the correlation of two inputs.
     *
     * @param one name of the first
     * @param other name of the second
     * @return the correlation
     */
    public double correlation(String one, String other) {
        return correlations[index(one)][index(other)];
    }

    double correlation(int i, int j) {
        return correlations[i][j];
    }

    boolean isCorrelated() {
        return isCorrelated;
    }

    int index(String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new IllegalArgumentException("unknown input \"" + name + "\"; use one of " + names);
        }
        return index;
    }

    double[] values() {
        return distributions.stream().mapToDouble(Distribution::value).toArray();
    }

    /** One draw of all inputs, by their {@link #factor()}; {@code scores} is an array of as many numbers. */
    void draw(Draws draws, double[][] factor, double[] scores, double[] into) {
        if (!isCorrelated) {
            for (int i = 0; i < into.length; i++) {
                into[i] = distributions.get(i).draw(draws);
            }
            return;
        }
        for (int k = 0; k < scores.length; k++) {
            scores[k] = draws.normal();
        }
        for (int i = 0; i < into.length; i++) {
            double correlated = 0;
            for (int k = 0; k < scores.length; k++) {
                correlated += factor[i][k] * scores[k];
            }
            into[i] = distributions.get(i).draw(correlated, draws);
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UncertainInputs that
                && names.equals(that.names)
                && distributions.equals(that.distributions)
                && Arrays.deepEquals(correlations, that.correlations);
    }

    @Override
    public int hashCode() {
        return Objects.hash(names, distributions, Arrays.deepHashCode(correlations));
    }

    @Override
    public String toString() {
        return "inputs " + names;
    }
}
