package dev.waterjet.fit;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Weighted non-linear least squares: the question, before the data. Immutable.
 *
 * <pre>{@code
 * Fit fit = LeastSquares.of((i, b) -> b[0] * (1 - Math.exp(-b[1] * x[i])))
 *         .withParameter("height", 500)
 *         .withPositiveParameter("rate", 1e-4)
 *         .fit(y);
 * }</pre>
 */
public final class LeastSquares {

    /** Below this ratio of singular values the observations do not tell the parameters apart. */
    private static final double RANK_TOLERANCE = 1e-7;

    private record Parameter(String name, double start, boolean isPositive) {}

    private final Response response;
    private final List<Parameter> parameters;
    private final boolean hasKnownDeviations;
    private final boolean isRobust;

    private LeastSquares(Response response, List<Parameter> parameters, boolean hasKnownDeviations, boolean isRobust) {
        this.response = Objects.requireNonNull(response, "response");
        this.parameters = parameters;
        this.hasKnownDeviations = hasKnownDeviations;
        this.isRobust = isRobust;
    }

    /**
     * A fit of a model, as yet without parameters.
     *
     * @param response what the model predicts
     * @return the question
     */
    public static LeastSquares of(Response response) {
        return new LeastSquares(response, List.of(), false, false);
    }

    /**
     * With one more parameter, of any sign.
     *
     * @param name its name
     * @param start where the search starts
     * @return the question with that parameter
     */
    public LeastSquares withParameter(String name, double start) {
        Require.finite("start of " + name, start, Units.ONE);
        return with(new Parameter(name, start, false));
    }

    /**
     * With one more parameter that must stay above zero. It is searched by its logarithm, so that its interval stays
     * above zero as well.
     *
     * @param name its name
     * @param start where the search starts, above zero
     * @return the question with that parameter
     */
    public LeastSquares withPositiveParameter(String name, double start) {
        Require.positive("start of " + name, start, Units.ONE);
        return with(new Parameter(name, start, true));
    }

    private LeastSquares with(Parameter parameter) {
        List<Parameter> more = new ArrayList<>(parameters);
        more.add(parameter);
        return new LeastSquares(response, List.copyOf(more), hasKnownDeviations, isRobust);
    }

    /**
     * Takes the standard deviations of the observations as they are told. Without this only their ratios count, and the
     * residuals tell how large they are.
     *
     * @return the question with that assumption
     */
    public LeastSquares withKnownDeviations() {
        return new LeastSquares(response, parameters, true, isRobust);
    }

    /**
     * Lets outliers lose their weight: Huber's weights until they settle, then Tukey's bisquare. Standard errors are then
     * those of an M-estimate and hold for many observations; with fewer than ten they are rough.
     *
     * @return the question with robust weights
     */
    public LeastSquares withRobustWeights() {
        return new LeastSquares(response, parameters, hasKnownDeviations, true);
    }

    /**
     * Fits observations of equal weight.
     *
     * @param observed the observations
     * @return the fit
     * @throws NoSolutionException if the observations do not determine the parameters, or the search does not converge
     */
    public Fit fit(double[] observed) {
        return fit(observed, ones(observed.length));
    }

    /**
     * Fits observations with a standard deviation each.
     *
     * @param observed the observations
     * @param deviations standard deviation of each, above zero; the weight is its inverse square
     * @return the fit
     * @throws NoSolutionException if the observations do not determine the parameters, or the search does not converge
     */
    public Fit fit(double[] observed, double[] deviations) {
        Require.atLeast("number of parameters", parameters.size(), 1, Units.ONE, "");
        if (observed.length != deviations.length) {
            throw new DomainException(
                    Message.of("unequal-lengths", "{limit} observations, but {value} standard deviations"),
                    "number of standard deviations",
                    deviations.length,
                    observed.length,
                    Units.ONE);
        }
        for (int i = 0; i < observed.length; i++) {
            Require.finite("observation " + (i + 1), observed[i], Units.ONE);
            Require.positive("standard deviation of observation " + (i + 1), deviations[i], Units.ONE);
        }
        List<String> names = parameters.stream().map(Parameter::name).toList();
        if (observed.length <= parameters.size()) {
            throw new NoSolutionException(Message.of(
                            "undetermined-parameters",
                            "{observations} observations do not determine {parameters} with an uncertainty; at least"
                                    + " {required} are required")
                    .with("observations", observed.length)
                    .with("parameters", String.join(", ", names))
                    .with("required", names.size() + 1));
        }
        return search(names, observed.clone(), deviations.clone());
    }

    private Fit search(List<String> names, double[] observed, double[] deviations) {
        double[] start = parameters.stream().mapToDouble(Parameter::start).toArray();
        boolean[] isPositive = new boolean[start.length];
        for (int j = 0; j < start.length; j++) {
            isPositive[j] = parameters.get(j).isPositive();
        }
        LeastSquaresSolver kernel = new LeastSquaresSolver(response, observed, deviations, isPositive, start);
        double[] rootWeights = ones(observed.length);
        double[] begin = kernel.inner(start);
        double[] inner = found(kernel, names, begin, rootWeights);
        double variance = Double.NaN;
        if (isRobust) {
            RobustSearch robust =
                    RobustSearch.from(inner, kernel, (from, weights) -> found(kernel, names, from, weights));
            inner = robust.inner();
            rootWeights = robust.rootWeights();
            variance = robust.variance();
        }
        RealMatrix jacobian = kernel.jacobian(inner, rootWeights);
        SingularValueDecomposition decomposition = determined(names, jacobian);
        double[] residuals = kernel.residuals(inner);
        if (!isRobust) {
            double chiSquare = LeastSquaresSolver.sumOfSquares(residuals);
            variance = hasKnownDeviations ? 1 : chiSquare / (observed.length - start.length);
        }
        // the bisquare's own derivative stands for the weights in the covariance of a robust fit
        RealMatrix information = isRobust ? kernel.jacobian(inner, ones(observed.length)) : jacobian;
        return new Fit(
                names,
                kernel.outer(inner),
                isPositive,
                Covariance.of(isRobust ? determined(names, information) : decomposition, information, variance),
                Covariance.leverages(decomposition),
                residuals,
                observed,
                deviations,
                rootWeights,
                hasKnownDeviations);
    }

    private static double[] found(LeastSquaresSolver kernel, List<String> names, double[] start, double[] rootWeights) {
        double[] inner = kernel.minimumOrNothing(start, rootWeights);
        if (inner.length == 0) {
            determined(names, kernel.jacobian(start, rootWeights));
            throw new NoSolutionException(Message.of(
                            "fit-not-converged",
                            "the fit of {parameters} did not converge; choose a start closer to the solution or fit"
                                    + " fewer parameters")
                    .with("parameters", String.join(", ", names)));
        }
        return inner;
    }

    static double[] ones(int count) {
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        return ones;
    }

    /** The decomposition of the derivatives with columns of unit length, if the observations tell the parameters apart. */
    private static SingularValueDecomposition determined(List<String> names, RealMatrix jacobian) {
        for (int j = 0; j < names.size(); j++) {
            if (!(jacobian.getColumnVector(j).getNorm() > 0)) {
                throw new NoSolutionException(Message.of(
                                "undetermined-parameters",
                                "no observation depends on {parameters}; vary its setting or leave it out of the fit")
                        .with("parameters", names.get(j)));
            }
        }
        SingularValueDecomposition decomposition = new SingularValueDecomposition(Covariance.withUnitColumns(jacobian));
        double[] singular = decomposition.getSingularValues();
        int last = singular.length - 1;
        if (singular[last] < RANK_TOLERANCE * singular[0]) {
            double[] direction = decomposition.getV().getColumn(last);
            List<String> entangled = new ArrayList<>();
            for (int j = 0; j < direction.length; j++) {
                if (Math.abs(direction[j]) > 0.1) {
                    entangled.add(names.get(j));
                }
            }
            throw new NoSolutionException(Message.of(
                            "undetermined-parameters",
                            "the observations do not separate {parameters}; vary the settings that distinguish them or"
                                    + " fix one of them")
                    .with("parameters", String.join(", ", entangled)));
        }
        return decomposition;
    }
}
