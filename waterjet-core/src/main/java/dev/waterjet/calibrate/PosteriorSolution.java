package dev.waterjet.calibrate;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Cuts with a prior, or with intervals and trials and the flat prior that gives Student's intervals for measured cuts.
 *
 * @param method method by which it was found
 * @param rows the rows
 * @param components the posterior
 * @param freedom degrees of freedom of the scatter
 * @param logLikelihood value of the likelihood at the best variables
 */
record PosteriorSolution(
        CutFit.Method method,
        CutRows rows,
        List<PosteriorGrid.Component> components,
        double freedom,
        double logLikelihood)
        implements Solution {

    static PosteriorSolution of(CutRows rows, GaussianPrior prior) {
        List<PosteriorGrid.Component> components = PosteriorGrid.of(rows, prior);
        PosteriorSolution plain = new PosteriorSolution(
                CutFit.Method.POSTERIOR, rows, components, rows.size() + prior.scatterFreedom() - 1, 0);
        double logLikelihood = new MarginalLikelihood(rows).value(plain.variables(), plain.sigma(), plain.tau());
        return new PosteriorSolution(plain.method, rows, components, plain.freedom, logLikelihood);
    }

    private Mixture of(double[] slopes, ToDoubleFunction<PosteriorGrid.Component> variance) {
        return PosteriorGrid.mixture(components, slopes, variance);
    }

    private double[] unit(int variable) {
        double[] unit = new double[rows.width()];
        unit[variable] = 1;
        return unit;
    }

    @Override
    public double[] variables() {
        double[] means = new double[rows.width()];
        for (int j = 0; j < means.length; j++) {
            means[j] = of(unit(j), c -> 0).mean();
        }
        return means;
    }

    @Override
    public double[][] covariance() {
        double[] means = variables();
        double[][] matrix = new double[means.length][means.length];
        for (PosteriorGrid.Component component : components) {
            for (int i = 0; i < means.length; i++) {
                for (int j = 0; j < means.length; j++) {
                    matrix[i][j] += component.weight()
                            * (component.covariance()[i][j]
                                    + (component.mean()[i] - means[i])
                                            * (component.mean()[j] - means[j]));
                }
            }
        }
        return matrix;
    }

    @Override
    public double sigma() {
        return geometric(PosteriorGrid.Component::sigma);
    }

    @Override
    public double tau() {
        return rows.plates() > 0 ? geometric(PosteriorGrid.Component::tau) : 0;
    }

    private double geometric(ToDoubleFunction<PosteriorGrid.Component> deviation) {
        return Math.exp(components.stream()
                .mapToDouble(c -> c.weight() * Math.log(deviation.applyAsDouble(c)))
                .sum());
    }

    @Override
    public double degreesOfFreedom() {
        return freedom;
    }

    @Override
    public double[] interval(int variable, double coverage) {
        Mixture mixture = of(unit(variable), c -> 0);
        return new double[] {mixture.quantile((1 - coverage) / 2), mixture.quantile((1 + coverage) / 2)};
    }

    @Override
    public double[] prediction(double[] slopes, Part part, int plate) {
        Mixture mixture = part == Part.THIS_PLATE && rows.plates() > 0
                ? onPlate(slopes, plate)
                : of(
                        slopes,
                        c -> part == Part.MEAN
                                ? 0
                                : c.sigma() * c.sigma() + (part == Part.NEW_PLATE ? c.tau() * c.tau() : 0));
        double[] student = mixture.student();
        return new double[] {student[0] - Matrices.dot(slopes, variables()), student[1], student[2]};
    }

    private Mixture onPlate(double[] slopes, int plate) {
        MarginalLikelihood likelihood = new MarginalLikelihood(rows);
        Mixture.Builder builder = new Mixture.Builder();
        for (PosteriorGrid.Component c : components) {
            double[] effect = likelihood.effect(plate, c.mean(), c.sigma(), c.tau());
            double variance = Matrices.square(slopes, c.covariance()) + effect[1] + c.sigma() * c.sigma();
            builder.add(c.weight(), Matrices.dot(slopes, c.mean()) + effect[0], Math.sqrt(variance));
        }
        return builder.build();
    }
}
