package dev.waterjet.calibrate;

import dev.waterjet.calibrate.Family.Start;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Fit of a feed model to test cuts: parameters with intervals, scatter of a cut, spread between plates, and what each cut does
 * to the fit.
 *
 * <p>Scatter and spread are standard deviations of the logarithm of the depth that the jet separates; those of a feed rate are
 * larger by the feed exponent. Arrays have one element for each cut, in their order.
 */
public final class CutFit implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double STEP = 1e-5;
    /** Method by which a fit was made. */
    public enum Method {
        /** Measured cuts alone: least squares, with Student's intervals. */
        LEAST_SQUARES,
        /** Measured cuts on plates: restricted likelihood, with Satterthwaite's degrees of freedom. */
        RESTRICTED_LIKELIHOOD,
        /** Intervals or trials among the cuts, or known deviations: likelihood, with intervals from its profile. */
        PROFILE_LIKELIHOOD,
        /** A model that is not linear in its parameters: likelihood, with intervals from its curvature. */
        LIKELIHOOD,
        /** Cuts and a prior: quantiles of the posterior. */
        POSTERIOR,
        /** Student's distribution of the scatter: likelihood, with intervals from its curvature. */
        HEAVY_TAILS,
        /** Weights that leave out far cuts, with a scale that nearly half of wrong cuts do not move. */
        HIGH_BREAKDOWN;

        /** {@return the method in words} */
        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /** Checked content, and the serial form: all else is computed from it. */
    private record Values(CalibrationSpec spec, List<TestCut> cuts) implements Serializable {

        Values {
            cuts = List.copyOf(cuts);
            try {
                Require.atLeast("number of test cuts", cuts.size(), 1, Units.ONE, "");
                new CutFit(spec, cuts).describe();
            } catch (ArithmeticException | org.apache.commons.math3.exception.MathIllegalArgumentException e) {
                throw new DomainException(
                        Message.of("fit-failed", "the fit of these cuts failed"),
                        "number of test cuts",
                        cuts.size(),
                        0,
                        Units.ONE);
            }
        }

        private Object readResolve() {
            return new CutFit(spec, cuts);
        }
    }

    private final transient CalibrationSpec spec;
    private final transient List<TestCut> cuts;
    private final transient List<Start> starts;
    private final transient Solution solution;
    private final transient double[] variables;
    private final transient double[][] covariance;

    CutFit(CalibrationSpec spec, List<TestCut> cuts) {
        this.spec = spec;
        this.cuts = List.copyOf(cuts);
        this.starts = spec.family().starts(this.cuts);
        this.solution = new CalibrationSolver(spec, this.cuts).solve();
        this.variables = solution.variables();
        this.covariance = solution.covariance();
    }

    CalibrationSpec spec() {
        return spec;
    }

    Solution solution() {
        return solution;
    }

    static String label(List<TestCut> cuts, int cut) {
        String label = cuts.get(cut).label();
        return label.isEmpty() ? "cut " + (cut + 1) : label;
    }

    /** {@return the test cuts} */
    public List<TestCut> cuts() {
        return cuts;
    }

    /** {@return the method by which the fit was made} */
    public Method method() {
        return solution.method();
    }

    /** {@return the number of cuts} */
    public int observations() {
        return cuts.size();
    }

    /** {@return the names of the parameters, in their order} */
    public List<String> names() {
        return starts.stream().map(Start::name).toList();
    }

    /** {@return the values of the parameters, in a new array} */
    public double[] values() {
        return values(variables);
    }

    double[] values(double[] at) {
        double[] values = new double[starts.size()];
        Arrays.setAll(values, j -> outer(j, at[j]));
        return values;
    }

    /** Parameter of a variable: its exponential if it must be positive; of a linear fit the variable is the change. */
    private double outer(int j, double variable) {
        Start start = starts.get(j);
        return start.isPositive()
                ? Math.exp(variable)
                : CalibrationSolver.isLinear(spec) ? start.value() + variable : variable;
    }

    private int place(String name) {
        int place = names().indexOf(name);
        if (place < 0) {
            throw new TextException(Message.of("unknown-parameter", "unknown parameter {name}; use one of {names}")
                    .withInput("name", name)
                    .with("names", String.join(", ", names())));
        }
        return place;
    }

    /** Derivative of a parameter by its variable. */
    private double slope(int j) {
        return starts.get(j).isPositive() ? outer(j, variables[j]) : 1;
    }

    /**
     * Returns the value of a parameter.
     *
     * @param name name of the parameter
     * @return the value; of a posterior the median of a positive parameter
     * @throws TextException if there is no such parameter; code {@code unknown-parameter}
     */
    public double value(String name) {
        return values()[place(name)];
    }

    /**
     * Returns the standard error of a parameter.
     *
     * @param name name of the parameter
     * @return the standard error, 0 or more
     */
    public double standardError(String name) {
        int j = place(name);
        return Math.sqrt(Math.max(0, covariance[j][j])) * slope(j);
    }

    /**
     * Returns the lower end of the interval of a parameter.
     *
     * @param name name of the parameter
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the lower end
     */
    public double lower(String name, double coverage) {
        int j = place(name);
        return outer(j, solution.interval(j, Require.coverage(coverage))[0]);
    }

    /**
     * Returns the upper end of the interval of a parameter.
     *
     * @param name name of the parameter
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return the upper end
     */
    public double upper(String name, double coverage) {
        int j = place(name);
        return outer(j, solution.interval(j, Require.coverage(coverage))[1]);
    }

    /**
     * Returns the covariance of two parameters.
     *
     * @param one name of a parameter
     * @param other name of a parameter, the same or another
     * @return the covariance
     */
    public double covariance(String one, String other) {
        int i = place(one);
        int j = place(other);
        return covariance[i][j] * slope(i) * slope(j);
    }

    /**
     * Returns the correlation of two parameters.
     *
     * @param one name of a parameter
     * @param other name of a parameter, the same or another
     * @return the correlation, -1 to 1
     */
    public double correlation(String one, String other) {
        return covariance(one, other) / Math.sqrt(covariance(one, one) * covariance(other, other));
    }

    /** {@return the scatter of a cut within its plate: standard deviation of the logarithm of depth} */
    public double scatter() {
        return solution.sigma();
    }

    /** {@return the spread between plates: standard deviation of the logarithm of depth; 0 if plates have no part in the fit} */
    public double plateScatter() {
        return solution.tau();
    }

    /** {@return the number of plates in the fit; 0 if plates have no part in it} */
    public int plates() {
        return 1 + Arrays.stream(spec.places(cuts)).max().orElse(-1);
    }

    /** {@return the degrees of freedom of the scatter} */
    public double degreesOfFreedom() {
        return solution.degreesOfFreedom();
    }

    /** {@return the degrees of freedom of a heavy-tailed scatter, stated or estimated; infinite for a normal one} */
    public double tailDegreesOfFreedom() {
        return solution instanceof ProfileSolution found ? found.fit().law().freedom() : Double.POSITIVE_INFINITY;
    }

    /** {@return the number of wrong cuts, far to one side, that the fit withstands: 0 unless it is robust} */
    public int withstoodCuts() {
        return FitRows.withstood(this);
    }

    /** {@return the logarithm of the likelihood of the logarithms of the measured feed rates and depths} */
    public double logLikelihood() {
        double jacobian = CalibrationSolver.isLinear(spec)
                ? -AbilityRows.measuredFeeds(cuts) * Math.log(FitRows.feedExponent(spec))
                : 0;
        return solution.logLikelihood() + jacobian;
    }

    /** {@return the number of parameters and deviations that were fitted} */
    public int fittedNumbers() {
        return starts.size() + (plateScatter() > 0 ? 2 : 1);
    }

    /**
     * Returns Akaike's criterion with its correction for few data; a smaller one is better. It may be compared with that of
     * another model of the same cuts.
     *
     * @return the criterion
     * @throws DomainException if there are too few cuts for the correction: no more than the fitted numbers and one
     */
    public double aicc() {
        int k = fittedNumbers();
        Require.above("number of test cuts", cuts.size(), k + 1, Units.ONE, "the fitted numbers and one");
        return Scores.aicc(logLikelihood(), k, cuts.size());
    }

    /** {@return the logarithms of what was measured over what the fit gives; 0.1 is about 10 %; of a trial the expected one} */
    public double[] residuals() {
        return FitRows.of(this).residuals();
    }

    /** {@return the leverages: the share of each cut in its own fitted value, 0 to 1} */
    public double[] leverages() {
        return FitRows.of(this).leverages();
    }

    /** {@return the residuals over the standard deviation that the other cuts give them; 0 for cuts that cannot show it} */
    public double[] studentizedResiduals() {
        return FitRows.of(this).deleted();
    }

    /** {@return the distances of Cook: how far each cut moves the fit; above 1 it moves it as far as its own uncertainty} */
    public double[] cookDistances() {
        return FitRows.of(this).cook();
    }

    /** {@return the weights of the cuts: 1, or with a heavy-tailed scatter less for a far one} */
    public double[] weights() {
        return FitRows.of(this).weights();
    }

    /** Derivatives of the logarithm of depth by the variables: those of the logarithm of the feed rate over its slope. */
    double[] slopes(FitPoint point) {
        if (CalibrationSolver.isLinear(spec)) {
            return AbilityRows.settings(point.jet(), ((MachinabilityFamily) spec.family()).freed());
        }
        double[] slopes = new double[variables.length];
        for (int j = 0; j < slopes.length; j++) {
            double step = STEP * Math.max(1e-3, Math.abs(variables[j]));
            slopes[j] = (logFeed(point, j, step) - logFeed(point, j, -step)) / (2 * step) / slope(point);
        }
        return slopes;
    }

    private double logFeed(FitPoint point, int variable, double step) {
        double[] moved = variables.clone();
        moved[variable] += step;
        return point.logFeed(spec.family(), values(moved));
    }

    /** Fall of the logarithm of the feed rate with that of depth. */
    double slope(FitPoint point) {
        return CalibrationSolver.isLinear(spec) ? FitRows.feedExponent(spec) : point.slope(spec.family(), values());
    }

    /** Logarithm of a feed rate: location, scale and degrees of freedom. */
    double[] logFeed(FitPoint point, Solution.Part part, int plate) {
        double slope = slope(point);
        double[] predicted = solution.prediction(slopes(point), part, plate);
        return new double[] {
            point.logFeed(spec.family(), values()) + slope * predicted[0], slope * predicted[1], predicted[2]
        };
    }

    @Override
    public Map<String, Object> describe() {
        Map<String, Object> parameters = new LinkedHashMap<>();
        for (String name : names()) {
            parameters.put(
                    name.replace(' ', '_').replace('-', '_').replace("/", "_per_"),
                    Description.of("fitted parameter")
                            .put("value", value(name))
                            .put("standard_error", standardError(name))
                            .put("lower_95", lower(name, 0.95))
                            .put("upper_95", upper(name, 0.95))
                            .map());
        }
        return Description.of("cut fit")
                .put("method", method())
                .put("parameters", parameters)
                .put("scatter", scatter())
                .put("plate_scatter", plateScatter())
                .put("degrees_of_freedom", degreesOfFreedom())
                .put("log_likelihood", logLikelihood())
                .put("observations", observations())
                .put("plates", plates())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CutFit that && spec.equals(that.spec) && cuts.equals(that.cuts);
    }

    @Override
    public int hashCode() {
        return spec.hashCode() * 31 + cuts.hashCode();
    }

    @Override
    public String toString() {
        return String.join(
                        ", ",
                        names().stream()
                                .map(name -> name + " " + QuantityText.round(value(name), 4))
                                .toList())
                + " from " + cuts.size() + " cuts by " + method().label();
    }

    private Object writeReplace() {
        return new Values(spec, cuts);
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
