package dev.waterjet.calibrate;

/**
 * Measured cuts without a prior: least squares with Student's intervals, or plates by the restricted likelihood with
 * Satterthwaite's degrees of freedom for predictions, and those of Kenward and Roger for the parameters of five plates and more.
 *
 * @param fit the fit
 */
record LinearSolution(VarianceFit fit) implements Solution {

    /** With fewer plates Satterthwaite's degrees of freedom are too many: intervals of 95 % hold 90 % to 93 %. */
    private static final int FEW_PLATES = 5;

    @Override
    public CutFit.Method method() {
        return fit.rows().plates() > 0 ? CutFit.Method.RESTRICTED_LIKELIHOOD : CutFit.Method.LEAST_SQUARES;
    }

    @Override
    public double[] variables() {
        return fit.beta();
    }

    @Override
    public double[][] covariance() {
        return fit.covariance();
    }

    @Override
    public double sigma() {
        return fit.sigma();
    }

    @Override
    public double tau() {
        return fit.tau();
    }

    @Override
    public double logLikelihood() {
        return VarianceFit.of(fit.rows(), false).logLikelihood();
    }

    @Override
    public double degreesOfFreedom() {
        return fit.tau() == 0
                ? fit.rows().size() - fit.rows().width()
                : Math.max(
                        1, fit.rows().size() - fit.rows().plates() - fit.rows().width() + 1);
    }

    @Override
    public double[] interval(int variable, double coverage) {
        double[] slopes = new double[fit.beta().length];
        slopes[variable] = 1;
        if (fit.tau() > 0 && fit.rows().plates() >= FEW_PLATES) {
            KenwardRoger adjusted = KenwardRoger.of(fit);
            double freedom = Math.max(1, adjusted.degreesOfFreedom(slopes));
            double half = Math.sqrt(adjusted.covariance()[variable][variable]) * Solution.student(freedom, coverage);
            return new double[] {fit.beta()[variable] - half, fit.beta()[variable] + half};
        }
        double[] predicted = prediction(slopes, Part.MEAN, -1);
        double half = predicted[1] * Solution.student(predicted[2], coverage);
        return new double[] {fit.beta()[variable] - half, fit.beta()[variable] + half};
    }

    @Override
    public double[] prediction(double[] slopes, Part part, int plate) {
        double cut = part == Part.MEAN ? 0 : 1;
        if (part == Part.THIS_PLATE && fit.tau() > 0) {
            return onPlate(slopes, plate);
        }
        double plates = part == Part.NEW_PLATE && fit.tau() > 0 ? 1 : 0;
        double freedom = fit.degreesOfFreedom(slopes, plates, cut);
        if (fit.tau() > 0 && fit.rows().plates() < FEW_PLATES) {
            // the harmonic mean with the degrees of freedom of the plates holds 93 % to 96 % in simulations of 2 to 4
            // plates
            freedom = 2 / (1 / freedom + 1.0 / (fit.rows().plates() - 1));
        }
        return new double[] {0, Math.sqrt(fit.variance(slopes, plates, cut)), freedom};
    }

    /** The effect of a plate that was cut, with its own uncertainty and that of the parameters. */
    private double[] onPlate(double[] slopes, int plate) {
        CutRows rows = fit.rows();
        double[][] effects = new MarginalLikelihood(rows).effects(fit.beta(), fit.sigma(), fit.tau());
        double weights = 0;
        double[] effective = slopes.clone();
        for (int i = 0; i < rows.size(); i++) {
            if (rows.plate()[i] == plate) {
                weights += 1;
                for (int j = 0; j < slopes.length; j++) {
                    effective[j] -= effects[plate][1] / (fit.sigma() * fit.sigma()) * rows.x()[i][j];
                }
            }
        }
        double variance = Matrices.square(effective, fit.covariance()) + effects[plate][1] + fit.sigma() * fit.sigma();
        return new double[] {effects[plate][0], Math.sqrt(variance), weights > 0 ? degreesOfFreedom() : 1};
    }
}
