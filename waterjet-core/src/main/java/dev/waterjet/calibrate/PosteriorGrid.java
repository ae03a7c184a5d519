package dev.waterjet.calibrate;

import dev.waterjet.calibrate.MarginalLikelihood.Derivatives;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Posterior of coefficients, scatter and spread between plates, without random numbers: a grid over the logarithms of both
 * deviations, and at each point of it the coefficients. For measured values these are normal, exactly. For intervals and
 * trials the first coefficient is integrated by Gauss-Hermite quadrature and the others follow it as a normal distribution
 * would have them.
 */
final class PosteriorGrid {

    private static final double SCATTER_STEP = 0.15;
    private static final double PLATE_STEP = 0.3;

    /** Points of the grid whose weight is smaller by this logarithm are left out. */
    static final double DEPTH = 12;

    /** The same for measured values, whose points cost little. */
    private static final double EXACT_DEPTH = 18;

    /** Below this weight a point of the grid is taken as normal, without quadrature. */
    private static final double LIGHT = 7;

    /** From so many rows on, coefficients are so nearly normal that fewer nodes at fewer points have the same digits. */
    private static final int MANY = 12;

    private static final double LIGHT_OF_MANY = 4;
    private static final GaussIntegrator NODES_OF_MANY = new GaussIntegratorFactory().hermite(7);

    private static final double SETTLED = 1e-15;

    /** The same where the likelihood itself is a quadrature. */
    private static final double SETTLED_BY_QUADRATURE = 1e-9;

    /** Fall of the likelihood that rounding may cause. */
    private static final double NOISE = 1e-10;

    /** Smallest part of a step that is tried. */
    private static final double MIN_FACTOR = 1e-3;

    private static final int MAX_POINTS = 200;
    private static final int MAX_STEPS = 60;

    /** Smallest scatter and spread of the grid, as logarithms; a shop does not cut more evenly than to 1 in 10 000. */
    private static final double FLOOR = Math.log(1e-4);

    private final CutRows rows;
    private final GaussianPrior prior;
    private final MarginalLikelihood likelihood;
    private final boolean isExact;
    private final double depth;
    private final List<Point> points = new ArrayList<>();
    private double top = Double.NEGATIVE_INFINITY;
    private double[] last;

    /** Part of a posterior: weight, scatter, spread between plates, mean and covariance of the coefficients. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Component(double weight, double sigma, double tau, double[] mean, double[][] covariance) {}

    private record Point(double value, double logSigma, double logTau, Mode mode) {}

    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Mode(double[] at, double[][] information, double value) {}

    private PosteriorGrid(CutRows rows, GaussianPrior prior) {
        this.rows = rows;
        this.prior = prior;
        this.likelihood = new MarginalLikelihood(rows);
        this.isExact = rows.isExact();
        this.depth = isExact ? EXACT_DEPTH : DEPTH;
        this.last = prior.mean().clone();
    }

    /** Components of the posterior, whose weights add up to 1. */
    static List<Component> of(CutRows rows, GaussianPrior prior) {
        PosteriorGrid grid = new PosteriorGrid(rows, prior);
        grid.walk();
        return grid.components();
    }

    /** Coefficients where the scatter is known and there are no plates. */
    static Component given(CutRows rows, GaussianPrior prior, double sigma) {
        Mode mode = new PosteriorGrid(rows, prior).mode(sigma, 0);
        return new Component(1, sigma, 0, mode.at, Matrices.inverse(mode.information));
    }

    /** Logarithm of the marginal likelihood where the scatter is known, all rows are measured and the prior is proper. */
    static double logMarginal(CutRows rows, GaussianPrior prior, double sigma) {
        Mode mode = new PosteriorGrid(rows, prior).mode(sigma, 0);
        return mode.value
                - Matrices.logDeterminant(mode.information) / 2
                + Matrices.logDeterminant(prior.precision()) / 2;
    }

    /** Distribution of a combination of the coefficients, with a variance of its own. */
    static Mixture mixture(List<Component> components, double[] at, ToDoubleFunction<Component> variance) {
        Mixture.Builder builder = new Mixture.Builder();
        int from = 0;
        while (from < components.size()) {
            double own = variance.applyAsDouble(components.get(from));
            // the nodes of one point of the grid are places of a quadrature, not of a distribution
            int to = own == 0 ? endOfPoint(components, from) : from + 1;
            addPoint(components.subList(from, to), at, own, builder);
            from = to;
        }
        return builder.build();
    }

    private static int endOfPoint(List<Component> components, int from) {
        int to = from + 1;
        while (to < components.size()
                && components.get(to).sigma == components.get(from).sigma
                && components.get(to).tau == components.get(from).tau) {
            to++;
        }
        return to;
    }

    /** Adds components as one normal distribution with their mean and variance. */
    private static void addPoint(List<Component> point, double[] at, double variance, Mixture.Builder into) {
        double weight = point.stream().mapToDouble(Component::weight).sum();
        double mean = 0;
        for (Component component : point) {
            mean += component.weight / weight * Matrices.dot(at, component.mean);
        }
        double total = variance;
        for (Component component : point) {
            double off = Matrices.dot(at, component.mean) - mean;
            total += component.weight / weight * (off * off + Math.max(0, Matrices.square(at, component.covariance)));
        }
        into.add(weight, mean, Math.sqrt(total));
    }

    private boolean hasPlates() {
        return rows.plates() > 0;
    }

    private void walk() {
        double[] center = center();
        if (!hasPlates()) {
            row(center[0], 0);
            return;
        }
        for (int direction : new int[] {1, -1}) {
            for (int k = direction == 1 ? 0 : 1; k < MAX_POINTS; k++) {
                double logTau = center[1] + direction * k * PLATE_STEP;
                if (row(center[0], logTau) < top - depth || logTau < FLOOR) {
                    break;
                }
            }
        }
    }

    /** Walks along the scatter at one spread between plates; returns the highest value. */
    private double row(double center, double logTau) {
        double best = Double.NEGATIVE_INFINITY;
        for (int direction : new int[] {1, -1}) {
            for (int k = direction == 1 ? 0 : 1; k < MAX_POINTS; k++) {
                double logSigma = center + direction * k * SCATTER_STEP;
                Point point = point(logSigma, logTau);
                points.add(point);
                best = Math.max(best, point.value);
                top = Math.max(top, point.value);
                if (point.value < best - depth || point.value < top - depth - 3 || logSigma < FLOOR) {
                    break;
                }
            }
        }
        return best;
    }

    private double[] center() {
        double start = Math.log(prior.scatterFreedom() > 0 ? prior.scatter() : 0.05);
        if (!hasPlates()) {
            double best = VarianceFit.highest(s -> point(s, 0).value, FLOOR, 1);
            return new double[] {best, 0};
        }
        double[] from = {start, Math.log(prior.plateFreedom() > 0 ? prior.plateSpread() : 0.05)};
        return new SimplexOptimizer(1e-6, 1e-3)
                .optimize(
                        new MaxEval(1000),
                        new ObjectiveFunction(at -> at[0] < FLOOR || at[1] < FLOOR || at[0] > 3 || at[1] > 3
                                ? -1e300
                                : point(at[0], at[1]).value),
                        GoalType.MAXIMIZE,
                        new InitialGuess(from),
                        new NelderMeadSimplex(new double[] {0.3, 0.3}))
                .getPoint();
    }

    private Point point(double logSigma, double logTau) {
        double sigma = Math.exp(logSigma);
        double tau = hasPlates() ? Math.exp(logTau) : 0;
        Mode mode = mode(sigma, tau);
        double value = mode.value
                - Matrices.logDeterminant(mode.information) / 2
                + prior.ofDeviations(logSigma, logTau, hasPlates());
        return new Point(value, logSigma, logTau, mode);
    }

    /** Most likely coefficients by Newton's method; the logarithm of likelihood and prior is concave. */
    private Mode mode(double sigma, double tau) {
        double[] at = last;
        Derivatives here = likelihood.derivatives(at, sigma, tau);
        double value = here.value() + prior.value(at);
        for (int step = 0; step < MAX_STEPS; step++) {
            double[] slope = prior.slope(at);
            for (int j = 0; j < slope.length; j++) {
                slope[j] += here.gradient()[j];
            }
            double[][] information = damped(Matrices.sum(here.information(), prior.precision()));
            double[] move = Matrices.times(Matrices.inverse(information), slope);
            if (Matrices.dot(move, slope) < (isExact ? SETTLED : SETTLED_BY_QUADRATURE)) {
                break;
            }
            double factor = 1;
            double[] next = moved(at, move, factor);
            Derivatives there = likelihood.derivatives(next, sigma, tau);
            while (!(there.value() + prior.value(next) >= value - NOISE) && factor > MIN_FACTOR) {
                factor /= 2;
                next = moved(at, move, factor);
                there = likelihood.derivatives(next, sigma, tau);
            }
            if (factor <= MIN_FACTOR) {
                break;
            }
            at = next;
            here = there;
            value = here.value() + prior.value(at);
        }
        last = at;
        return new Mode(at, damped(Matrices.sum(here.information(), prior.precision())), value);
    }

    /** Far from every end of every interval a likelihood is flat; the matrix must still have an inverse. */
    private static double[][] damped(double[][] information) {
        double[][] damped = Arrays.stream(information).map(double[]::clone).toArray(double[][]::new);
        for (int j = 0; j < damped.length; j++) {
            damped[j][j] += 1e-9 * (1 + damped[j][j] * 1e-3);
        }
        return damped;
    }

    private double logAt(double[] beta, double sigma, double tau) {
        return likelihood.value(beta, sigma, tau) + prior.value(beta);
    }

    private static double[] moved(double[] at, double[] move, double factor) {
        double[] next = at.clone();
        for (int j = 0; j < next.length; j++) {
            next[j] += factor * move[j];
        }
        return next;
    }

    private List<Component> components() {
        List<Component> all = new ArrayList<>();
        for (Point point : points) {
            if (point.value > top - depth) {
                if (isExact || point.value < top - (rows.size() < MANY ? LIGHT : LIGHT_OF_MANY)) {
                    all.add(component(point, Math.exp(point.value - top)));
                } else {
                    addNodes(point, all);
                }
            }
        }
        double total = all.stream().mapToDouble(Component::weight).sum();
        return all.stream()
                .filter(c -> c.weight > 1e-12 * total)
                .map(c -> new Component(c.weight / total, c.sigma, c.tau, c.mean, c.covariance))
                .toList();
    }

    private Component component(Point point, double weight) {
        return new Component(
                weight,
                Math.exp(point.logSigma),
                hasPlates() ? Math.exp(point.logTau) : 0,
                point.mode.at,
                Matrices.inverse(point.mode.information));
    }

    /** Quadrature in the first coefficient; the others move with it and keep their conditional covariance. */
    private void addNodes(Point point, List<Component> into) {
        Component whole = component(point, 1);
        double[][] covariance = whole.covariance;
        double variance = covariance[0][0];
        double[][] rest = conditional(covariance);
        double base = prior.ofDeviations(point.logSigma, point.logTau, hasPlates()) - logDeterminantOfRest(point) / 2;
        GaussIntegrator nodes = rows.size() < MANY ? MarginalLikelihood.HERMITE : NODES_OF_MANY;
        for (int k = 0; k < nodes.getNumberOfPoints(); k++) {
            double node = nodes.getPoint(k);
            double offset = Math.sqrt(2 * variance) * node;
            double[] at = point.mode.at.clone();
            for (int j = 0; j < at.length; j++) {
                at[j] += covariance[0][j] / variance * offset;
            }
            double log = base
                    + logAt(at, whole.sigma, whole.tau)
                    + node * node
                    + Math.log(nodes.getWeight(k) * Math.sqrt(2 * variance) / Math.sqrt(2 * Math.PI));
            into.add(new Component(Math.exp(log - top), whole.sigma, whole.tau, at, rest));
        }
    }

    private static double[][] conditional(double[][] covariance) {
        int p = covariance.length;
        double[][] rest = new double[p][p];
        for (int i = 1; i < p; i++) {
            for (int j = 1; j < p; j++) {
                rest[i][j] = covariance[i][j] - covariance[0][i] * covariance[0][j] / covariance[0][0];
            }
        }
        return rest;
    }

    /** Logarithm of the determinant of the information without its first row and column. */
    private static double logDeterminantOfRest(Point point) {
        double[][] information = point.mode.information;
        if (information.length == 1) {
            return 0;
        }
        double[][] rest = new double[information.length - 1][];
        for (int i = 0; i < rest.length; i++) {
            rest[i] = Arrays.copyOfRange(information[i + 1], 1, information.length);
        }
        return Matrices.logDeterminant(rest);
    }
}
