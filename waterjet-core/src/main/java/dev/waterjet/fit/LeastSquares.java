package dev.waterjet.fit;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Weighted non-linear least-squares problem: a model and its parameters, without data. Immutable.
 *
 * <pre>{@code
 * Fit fit = LeastSquares.of((i, b) -> b[0] * (1 - Math.exp(-b[1] * x[i])))
 *         .withParameter("height", 500)
 *         .withPositiveParameter("rate", 1e-4)
 *         .fit(y);
 * }</pre>
 */
public final class LeastSquares {

    /** Ratio of singular values below which the observations do not separate the parameters. */
    private static final double RANK_TOLERANCE = 1e-7;

    /** Component of the direction without effect above which a parameter takes part in it. */
    private static final double MIN_PART = 0.1;

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
     * Returns a problem without parameters.
     *
     * @param response prediction of the model
     * @return the problem
     */
    public static LeastSquares of(Response response) {
        return new LeastSquares(response, List.of(), false, false);
    }

    /**
     * Returns this problem with one more parameter, of any sign.
     *
     * @param name name of the parameter
     * @param start start of the search
     * @return the problem
     * @throws TextException if there is a parameter of this name; code {@code repeated-name}
     */
    public LeastSquares withParameter(String name, double start) {
        Objects.requireNonNull(name, "name");
        return with(new Parameter(name, Require.finite("start of " + name, start, Units.ONE), false));
    }

    /**
     * Returns this problem with one more parameter that must stay above zero. The solver varies its logarithm, so the
     * interval of the parameter stays above zero as well.
     *
     * @param name name of the parameter
     * @param start start of the search, above zero
     * @return the problem
     * @throws TextException if there is a parameter of this name; code {@code repeated-name}
     */
    public LeastSquares withPositiveParameter(String name, double start) {
        Objects.requireNonNull(name, "name");
        return with(new Parameter(name, Require.positive("start of " + name, start, Units.ONE), true));
    }

    private LeastSquares with(Parameter parameter) {
        if (names().contains(parameter.name())) {
            throw new TextException(Message.of("repeated-name", "the name {name} is given twice")
                    .withInput("name", parameter.name()));
        }
        List<Parameter> more = new ArrayList<>(parameters);
        more.add(parameter);
        return new LeastSquares(response, List.copyOf(more), hasKnownDeviations, isRobust);
    }

    /**
     * Returns this problem with standard deviations of the observations that are known. Otherwise only their ratios count,
     * and their size is estimated from the residuals.
     *
     * @return the problem
     */
    public LeastSquares withKnownDeviations() {
        return new LeastSquares(response, parameters, true, isRobust);
    }

    /**
     * Returns this problem with weights that decrease for outliers: those of Huber until they converge, then Tukey's
     * bisquare. The standard errors are those of an M-estimate. They hold for many observations and are rough for fewer
     * than ten.
     *
     * @return the problem
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
        return fit(observed, LeastSquaresSolver.ones(observed.length));
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
        if (observed.length <= parameters.size()) {
            throw new NoSolutionException(Message.of(
                            "undetermined-parameters",
                            "{observations} observations do not determine {parameters} with an uncertainty; at least"
                                    + " {required} are required")
                    .with("observations", observed.length)
                    .with("parameters", String.join(", ", names()))
                    .with("required", parameters.size() + 1));
        }
        return search(observed.clone(), deviations.clone());
    }

    private List<String> names() {
        return parameters.stream().map(Parameter::name).toList();
    }

    private Fit search(double[] observed, double[] deviations) {
        double[] start = parameters.stream().mapToDouble(Parameter::start).toArray();
        boolean[] isPositive = new boolean[start.length];
        for (int j = 0; j < start.length; j++) {
            isPositive[j] = parameters.get(j).isPositive();
        }
        LeastSquaresSolver solver = new LeastSquaresSolver(response, observed, deviations, isPositive, start);
        double[] inner = minimum(solver, solver.inner(start), LeastSquaresSolver.ones(observed.length));
        if (isRobust) {
            RobustSearch robust =
                    RobustSearch.from(inner, solver, (from, rootWeights) -> minimum(solver, from, rootWeights));
            return result(solver, robust.inner(), robust.rootWeights(), robust.variance());
        }
        double freedom = observed.length - start.length;
        double chiSquare = LeastSquaresSolver.sumOfSquares(solver.residuals(inner));
        return result(
                solver, inner, LeastSquaresSolver.ones(observed.length), hasKnownDeviations ? 1 : chiSquare / freedom);
    }

    private double[] minimum(LeastSquaresSolver solver, double[] start, double[] rootWeights) {
        return solver.minimum(start, rootWeights).orElseThrow(() -> {
            determined(solver.jacobian(start, rootWeights));
            return new NoSolutionException(Message.of(
                            "fit-not-converged",
                            "the fit of {parameters} did not converge; choose a start closer to the solution or fit"
                                    + " fewer parameters")
                    .with("parameters", String.join(", ", names())));
        });
    }

    private Fit result(LeastSquaresSolver solver, double[] inner, double[] rootWeights, double variance) {
        RealMatrix weighted = solver.jacobian(inner, rootWeights);
        double[] leverages = Covariance.leverages(determined(weighted));
        // the variance of a robust fit contains the slope of the bisquare, which takes the place of the weights
        RealMatrix information =
                isRobust ? solver.jacobian(inner, LeastSquaresSolver.ones(rootWeights.length)) : weighted;
        double[][] covariance = Covariance.ofUnitVariance(determined(information), information);
        double[] outer = solver.outer(inner);
        List<Fit.Parameter> fitted = new ArrayList<>();
        for (int j = 0; j < outer.length; j++) {
            Parameter parameter = parameters.get(j);
            fitted.add(new Fit.Parameter(parameter.name(), outer[j], parameter.isPositive()));
        }
        List<Double> unitCovariance = Arrays.stream(covariance)
                .flatMapToDouble(Arrays::stream)
                .boxed()
                .toList();
        return Fit.of(
                fitted,
                unitCovariance,
                variance,
                hasKnownDeviations,
                solver.observations(inner, leverages, rootWeights));
    }

    /** Decomposition of the derivatives with columns of unit length, if the observations separate the parameters. */
    private SingularValueDecomposition determined(RealMatrix jacobian) {
        for (int j = 0; j < parameters.size(); j++) {
            if (!(jacobian.getColumnVector(j).getNorm() > 0)) {
                throw new NoSolutionException(Message.of(
                                "undetermined-parameters",
                                "no observation depends on {parameters}; vary its setting or leave it out of the fit")
                        .with("parameters", parameters.get(j).name()));
            }
        }
        SingularValueDecomposition decomposition = new SingularValueDecomposition(Covariance.withUnitColumns(jacobian));
        double[] singular = decomposition.getSingularValues();
        int last = singular.length - 1;
        if (singular[last] < RANK_TOLERANCE * singular[0]) {
            throw new NoSolutionException(Message.of(
                            "undetermined-parameters",
                            "the observations do not separate {parameters}; vary the settings that distinguish them or"
                                    + " fix one of them")
                    .with("parameters", partsOf(decomposition.getV().getColumn(last))));
        }
        return decomposition;
    }

    /** Names of the parameters that a direction without effect on the predictions contains. */
    private String partsOf(double[] direction) {
        List<String> parts = new ArrayList<>();
        for (int j = 0; j < direction.length; j++) {
            if (Math.abs(direction[j]) > MIN_PART) {
                parts.add(parameters.get(j).name());
            }
        }
        return String.join(", ", parts);
    }
}
