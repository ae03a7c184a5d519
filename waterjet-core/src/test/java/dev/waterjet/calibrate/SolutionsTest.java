package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.calibrate.Solution.Part;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;

/** Intervals and predictions of the ways to solve a fit. */
class SolutionsTest {

    private static final double[] AT = {1, 0.6};

    private static double t(double freedom, double coverage) {
        return new TDistribution(null, freedom).inverseCumulativeProbability((1 + coverage) / 2);
    }

    private static CutRows fewPlates() {
        CutRows all = DenseMixedModel.uneven(2);
        return all.only(0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 13);
    }

    private static void isCentred(double[] interval, double center, double half) {
        assertThat(interval[0]).isCloseTo(center - half, within(1e-9));
        assertThat(interval[1]).isCloseTo(center + half, within(1e-9));
    }

    @Test
    void measuredCutsHaveStudentsIntervals() {
        CutRows rows = CutRows.exact(
                DenseMixedModel.uneven(2).lo(), DenseMixedModel.uneven(2).x());
        LinearSolution solution = new LinearSolution(VarianceFit.of(rows, true));
        double variance = Math.pow(solution.sigma(), 2);
        RealMatrix unit = DenseMixedModel.inverse(new DenseMixedModel(rows, 1, 0).information());

        assertThat(solution.method()).isEqualTo(CutFit.Method.LEAST_SQUARES);
        assertThat(solution.degreesOfFreedom()).isEqualTo(12);
        assertThat(solution.tau()).isZero();
        for (int j = 0; j < 2; j++) {
            isCentred(
                    solution.interval(j, 0.9),
                    solution.variables()[j],
                    t(12, 0.9) * Math.sqrt(variance * unit.getEntry(j, j)));
        }
        double mean = variance * Matrices.dot(AT, unit.operate(AT));
        for (Part part : Part.values()) {
            double[] predicted = solution.prediction(AT, part, 0);
            assertThat(predicted[0]).isZero();
            assertThat(predicted[1]).isCloseTo(Math.sqrt(mean + (part == Part.MEAN ? 0 : variance)), within(1e-12));
            assertThat(predicted[2]).isEqualTo(12);
        }
        assertThat(solution.logLikelihood())
                .isCloseTo(VarianceFit.of(rows, false).logLikelihood(), within(1e-12));
    }

    @Test
    void fivePlatesHaveTheIntervalsOfKenwardAndRoger() {
        VarianceFit fit = VarianceFit.of(DenseMixedModel.uneven(2), true);
        LinearSolution solution = new LinearSolution(fit);
        RealMatrix adjusted = new DenseMixedModel(fit.rows(), fit.sigma(), fit.tau()).adjustedCovariance();

        assertThat(solution.method()).isEqualTo(CutFit.Method.RESTRICTED_LIKELIHOOD);
        // fourteen cuts less five plates and one slope
        assertThat(solution.degreesOfFreedom()).isEqualTo(8);
        for (int j = 0; j < 2; j++) {
            double[] unit = new double[2];
            unit[j] = 1;
            double freedom = KenwardRoger.of(fit).degreesOfFreedom(unit);
            isCentred(solution.interval(j, 0.95), fit.beta()[j], t(freedom, 0.95) * Math.sqrt(adjusted.getEntry(j, j)));
        }
        double[] predicted = solution.prediction(AT, Part.NEW_PLATE, -1);
        assertThat(predicted[1]).isCloseTo(Math.sqrt(fit.variance(AT, 1, 1)), within(1e-12));
        assertThat(predicted[2]).isCloseTo(fit.degreesOfFreedom(AT, 1, 1), within(1e-9));
        assertThat(solution.prediction(AT, Part.MEAN, -1)[1])
                .isCloseTo(Math.sqrt(Matrices.square(AT, fit.covariance())), within(1e-12));
    }

    /** With fewer plates the degrees of freedom are the harmonic mean of Satterthwaite's and those of the plates. */
    @Test
    void fewPlatesHaveFewerDegreesOfFreedom() {
        VarianceFit fit = VarianceFit.of(fewPlates(), true);
        LinearSolution solution = new LinearSolution(fit);
        assertThat(fit.rows().plates()).isEqualTo(3);
        assertThat(fit.tau()).isPositive();
        double own = fit.degreesOfFreedom(AT, 1, 1);
        double[] predicted = solution.prediction(AT, Part.NEW_PLATE, -1);

        assertThat(predicted[2]).isCloseTo(1 / ((1 / own + 1 / 2.0) / 2), within(1e-9));
        double ofSlope = fit.degreesOfFreedom(new double[] {0, 1}, 0, 0);
        isCentred(
                solution.interval(1, 0.95),
                fit.beta()[1],
                t(1 / ((1 / ofSlope + 1 / 2.0) / 2), 0.95) * Math.sqrt(fit.covariance()[1][1]));
    }

    /** Best linear unbiased prediction with matrices of full size (Robinson, Statistical Science 6 (1991) 15-32, from memory). */
    @Test
    void aFurtherCutOnAPlateIsTheBestLinearPrediction() {
        VarianceFit fit = VarianceFit.of(DenseMixedModel.uneven(2), true);
        CutRows rows = fit.rows();
        DenseMixedModel dense = new DenseMixedModel(rows, fit.sigma(), fit.tau());
        RealMatrix inverse = DenseMixedModel.inverse(dense.covariance());
        for (int g = 0; g < rows.plates(); g++) {
            double[] shared = new double[rows.size()];
            double[] residuals = new double[rows.size()];
            for (int i = 0; i < shared.length; i++) {
                shared[i] = rows.plate()[i] == g ? fit.tau() * fit.tau() : 0;
                residuals[i] = rows.lo()[i] - Matrices.dot(rows.x()[i], dense.beta());
            }
            RealVector weights = inverse.operate(new ArrayRealVector(shared));
            double[] off = AT.clone();
            for (int j = 0; j < 2; j++) {
                for (int i = 0; i < shared.length; i++) {
                    off[j] -= weights.getEntry(i) * rows.x()[i][j];
                }
            }
            double variance = fit.sigma() * fit.sigma()
                    + fit.tau() * fit.tau()
                    - weights.dotProduct(new ArrayRealVector(shared))
                    + Matrices.dot(
                            off, DenseMixedModel.inverse(dense.information()).operate(off));
            double[] predicted = new LinearSolution(fit).prediction(AT, Part.THIS_PLATE, g);

            assertThat(predicted[0]).isCloseTo(weights.dotProduct(new ArrayRealVector(residuals)), within(1e-10));
            assertThat(predicted[1]).isCloseTo(Math.sqrt(variance), within(1e-10));
            assertThat(predicted[2]).isEqualTo(8);
        }
    }

    /** Without a spread in the fit a plate says nothing of its own. */
    @Test
    void platesWithoutASpreadPredictAlike() {
        double[] y = {1, -1, 2, -2, 1.5, -1.5, 1, -1};
        double[][] x = new double[8][];
        Arrays.setAll(x, i -> new double[] {1});
        LinearSolution solution = new LinearSolution(
                VarianceFit.of(CutRows.exact(y, x).withPlates(new int[] {0, 0, 1, 1, 2, 2, 3, 3}), true));
        double[] one = {1};

        assertThat(solution.tau()).isZero();
        assertThat(solution.degreesOfFreedom()).isEqualTo(7);
        assertThat(solution.prediction(one, Part.THIS_PLATE, 1))
                .containsExactly(solution.prediction(one, Part.NEW_PLATE, -1));
        assertThat(solution.prediction(one, Part.NEW_PLATE, -1)[2]).isEqualTo(7);
    }

    /** Plates among intervals: curvature of the likelihood, times n/(n - p). */
    @Test
    void profilesWithPlatesHaveTheCurvatureOfTheLikelihood() {
        CutRows rows = DenseMixedModel.uneven(2);
        CensoredFit fit = CensoredFit.of(rows, ErrorLaw.NORMAL);
        ProfileSolution solution = new ProfileSolution(CutFit.Method.PROFILE_LIKELIHOOD, fit, Optional.empty(), 4);
        double[][] covariance = fit.maximum().covariance();
        double factor = 14 / 12.0;

        assertThat(solution.covariance()).hasDimensions(2, 2);
        assertThat(solution.covariance()[1][0]).isEqualTo(covariance[1][0]);
        isCentred(solution.interval(1, 0.9), fit.beta()[1], t(4, 0.9) * Math.sqrt(factor * covariance[1][1]));
        double mean = Matrices.square(AT, solution.covariance());
        double sigma = fit.sigma() * fit.sigma();
        double tau = fit.tau() * fit.tau();
        assertThat(solution.prediction(AT, Part.MEAN, -1))
                .containsExactly(new double[] {0, Math.sqrt(factor * mean), 4}, within(1e-12));
        assertThat(solution.prediction(AT, Part.NEW_PLATE, -1)[1])
                .isCloseTo(Math.sqrt(factor * (mean + sigma + tau)), within(1e-12));
        int[] plate = rows.byPlate()[3];
        double residual = rows.lo()[plate[0]] - Matrices.dot(rows.x()[plate[0]], fit.beta());
        double[] known = solution.prediction(AT, Part.THIS_PLATE, 3);
        assertThat(plate).hasSize(1);
        assertThat(known[0]).isCloseTo(residual * tau / (tau + sigma), within(1e-9));
        assertThat(known[1]).isCloseTo(Math.sqrt(factor * (mean + sigma + sigma * tau / (tau + sigma))), within(1e-9));
        assertThat(solution.logLikelihood()).isEqualTo(fit.logLikelihood());
        assertThat(solution.tau()).isEqualTo(fit.tau());
        assertThat(solution.degreesOfFreedom()).isEqualTo(4);
    }

    /** Measured cuts are Student's by the profile and by the flat posterior. */
    @Test
    void profilesOfMeasuredCutsPredictAsLeastSquares() {
        Random random = new Random(2);
        double[] y = random.doubles(6, 3.9, 4.3).toArray();
        double[][] x = new double[6][];
        Arrays.setAll(x, i -> new double[] {1});
        CutRows rows = CutRows.exact(y, x);
        LinearSolution linear = new LinearSolution(VarianceFit.of(rows, true));
        GaussianPrior flat = new GaussianPrior(CensoredFit.middle(rows), new double[1][1], 0, 0, 0, 0);
        ProfileSolution profile = new ProfileSolution(
                CutFit.Method.PROFILE_LIKELIHOOD,
                CensoredFit.of(rows, ErrorLaw.NORMAL),
                Optional.of(() -> PosteriorSolution.of(rows, flat)),
                5);
        double[] one = {1};

        isClose(profile.interval(0, 0.95), linear.interval(0, 0.95), 1e-6);
        for (Part part : new Part[] {Part.MEAN, Part.NEW_PLATE}) {
            double[] predicted = profile.prediction(one, part, -1);
            double[] expected = linear.prediction(one, part, -1);
            assertThat(predicted[0]).isCloseTo(0, within(1e-6));
            assertThat(predicted[1] / expected[1]).isCloseTo(1, within(1e-3));
            assertThat(predicted[2]).isCloseTo(5, within(0.05));
        }
    }

    private static void isClose(double[] one, double[] other, double tolerance) {
        assertThat(one).containsExactly(other, within(tolerance));
    }

    /** Factor of the inverse of the squares of the settings, and the weights left in the fit. */
    @Test
    void wrongCutsThatAreLeftOutLeaveFewerDegreesOfFreedom() {
        CutRows rows = RobustRowsTest.line(20, 5, 1, 5);
        BreakdownSolution solution = BreakdownSolution.of(rows);
        HighBreakdown fit = solution.fit();
        double freedom = Arrays.stream(fit.weights()).sum() - 2;
        double variance = fit.variance()
                * Matrices.dot(
                        AT,
                        DenseMixedModel.inverse(new DenseMixedModel(rows, 1, 0).information())
                                .operate(AT));

        assertThat(solution.degreesOfFreedom()).isCloseTo(freedom, within(1e-9));
        assertThat(solution.sigma()).isEqualTo(fit.scale());
        assertThat(solution.tau()).isZero();
        assertThat(solution.prediction(AT, Part.MEAN, -1))
                .containsExactly(new double[] {0, Math.sqrt(variance), freedom}, within(1e-9));
        assertThat(solution.prediction(AT, Part.NEW_PLATE, -1)[1])
                .isCloseTo(Math.hypot(Math.sqrt(variance), fit.scale()), within(1e-9));
        isCentred(solution.interval(1, 0.9), fit.beta()[1], t(freedom, 0.9) * Math.sqrt(solution.covariance()[1][1]));
        DenseMixedModel normal = new DenseMixedModel(rows, fit.scale(), 0);
        assertThat(solution.logLikelihood()).isCloseTo(normal.logLikelihood(fit.beta()), within(1e-7));
        double[] delta = new double[20];
        Arrays.fill(delta, 0.3);
        assertThat(BreakdownSolution.of(rows.withDelta(delta)).sigma()).isEqualTo(fit.scale());
    }

    /** A prior of the scatter alone: Student's with the degrees of freedom of prior and cuts. */
    @Test
    void aPriorOfTheScatterCountsAsItsDegreesOfFreedom() {
        double[] y = {4.1, 4.2, 4.15, 4.02};
        double[][] x = {{1}, {1}, {1}, {1}};
        CutRows rows = CutRows.exact(y, x);
        StudentSolution solution = new StudentSolution(rows, StudentPosterior.of(rows, 3, 0.07));
        double variance = solution.sigma() * solution.sigma();
        double[] one = {1};

        assertThat(solution.variables()[0]).isCloseTo(4.1175, within(1e-12));
        assertThat(solution.degreesOfFreedom()).isEqualTo(6);
        assertThat(solution.covariance()[0][0]).isCloseTo(variance / 4, within(1e-14));
        isCentred(solution.interval(0, 0.95), 4.1175, t(6, 0.95) * Math.sqrt(variance / 4));
        assertThat(solution.prediction(one, Part.MEAN, -1))
                .containsExactly(new double[] {0, Math.sqrt(variance / 4), 6}, within(1e-12));
        assertThat(solution.prediction(one, Part.THIS_PLATE, -1)[1])
                .isCloseTo(Math.sqrt(variance * 1.25), within(1e-12));
        assertThat(solution.tau()).isZero();
        assertThat(solution.logLikelihood())
                .isCloseTo(
                        new DenseMixedModel(rows, solution.sigma(), 0).logLikelihood(new double[] {4.1175}),
                        within(1e-10));
        assertThat(solution.method()).isEqualTo(CutFit.Method.POSTERIOR);
    }
}
