package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;

/** Calibrations with a free feed exponent: with a prior, with plates and with intervals. */
class CurvedCalibrationTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final Calibration FREE =
            Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED, FeedExponent.PRESSURE);
    private static final int[] PLATES = {0, 0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3};

    private static List<TestCut> cuts() {
        Random random = new Random(31);
        List<TestCut> cuts = new ArrayList<>();
        double[] effects = {0.1, -0.12, 0.04, 0};
        for (int i = 0; i < PLATES.length; i++) {
            AbrasiveJet jet = CalibrationTest.jet(240 + 40 * (i % 4), 300);
            double thickness = 4 + 5 * (i % 5);
            double feed = MODEL.separationFeedSi(jet, ALLOY, thickness / 1e3)
                    * Math.exp(effects[PLATES[i]] + 0.04 * random.nextGaussian());
            cuts.add(TestCut.separated(jet, millimetres(thickness), Kind.SPEED.of(feed))
                    .withPlate("P" + PLATES[i]));
        }
        return cuts;
    }

    /** Residuals of the logarithms of the feed rates about the model, for matrices of full size. */
    private static DenseMixedModel dense(List<TestCut> cuts, double[] at, boolean hasPlates) {
        MachinabilityFeed model =
                MODEL.withExponent(FeedExponent.FEED, at[1]).withExponent(FeedExponent.PRESSURE, at[2]);
        Material material = Material.of("tried", Math.exp(at[0]), 0, MaterialClass.DUCTILE);
        double[] residuals = new double[cuts.size()];
        double[][] none = new double[cuts.size()][1];
        for (int i = 0; i < residuals.length; i++) {
            TestCut cut = cuts.get(i);
            residuals[i] = Math.log(cut.feedSi() / model.separationFeedSi(cut.jet(), material, cut.thicknessSi()));
        }
        CutRows rows = CutRows.exact(residuals, none);
        // deviations of a feed rate are those of the depth times the exponent
        return new DenseMixedModel(
                hasPlates ? rows.withPlates(PLATES) : rows,
                at[1] * Math.exp(at[3]),
                hasPlates ? at[1] * Math.exp(at[4]) : 0);
    }

    private static double chi(double log, double freedom, double size) {
        return -freedom * log - freedom * size * size / 2 * Math.exp(-2 * log);
    }

    /** Density of cuts and prior: machinability, feed exponent, pressure exponent, scatter, spread. */
    private static double posterior(double[] at, CutPrior prior, boolean hasPlates) {
        double log = dense(cuts(), at, hasPlates).logLikelihood(new double[] {0});
        log -= Math.pow((at[0] - Math.log(115)) / Math.hypot(prior.material(), prior.shop()), 2) / 2;
        log -= Math.pow(Math.log(at[1] / 1.15) / 0.15, 2) / 2;
        log -= Math.pow((at[2] - 1.594) / 0.3, 2) / 2;
        log += chi(at[3], prior.scatterFreedom(), prior.scatter());
        return hasPlates ? log + chi(at[4], prior.plateFreedom(), prior.plateSpread()) : log;
    }

    /** Minus the matrix of second derivatives, by differences of slopes. */
    private static double[][] curvature(ToDoubleFunction<double[]> function, double[] at) {
        double[][] matrix = new double[at.length][at.length];
        for (int j = 0; j < at.length; j++) {
            for (int k = 0; k < at.length; k++) {
                int column = k;
                matrix[j][k] = -Differences.slope(x -> Differences.slope(function, x, column, 1e-3), at, j, 1e-3);
            }
        }
        return matrix;
    }

    @Test
    void withAPriorTheFitIsTheTopOfTheDensityOfBoth() {
        CutPrior prior = CutPrior.catalogue(ALLOY).withScatter(3, 0.05).withPlates(4, 0.07);
        for (boolean hasPlates : new boolean[] {false, true}) {
            Calibration calibration = hasPlates ? FREE.withPlates() : FREE;
            CutFit fit = calibration.withPrior(prior).fit(cuts()).fit();
            double[] at = new double[hasPlates ? 5 : 4];
            at[0] = Math.log(fit.value("machinability"));
            at[1] = fit.value("feed exponent");
            at[2] = fit.value("pressure exponent");
            at[3] = Math.log(fit.scatter());
            if (hasPlates) {
                at[4] = Math.log(fit.plateScatter());
            }
            ToDoubleFunction<double[]> density = x -> posterior(x, prior, hasPlates);
            double[][] covariance = Matrices.inverse(curvature(density, at));

            for (int j = 0; j < at.length; j++) {
                double distance = Differences.slope(density, at, j, 1e-4) * Math.sqrt(covariance[j][j]);
                assertThat(distance).as("slope by %s", j).isCloseTo(0, within(1e-3));
            }
            assertThat(fit.standardError("feed exponent") / Math.sqrt(covariance[1][1]))
                    .isCloseTo(1, within(1e-3));
            assertThat(fit.standardError("pressure exponent") / Math.sqrt(covariance[2][2]))
                    .isCloseTo(1, within(1e-3));
            assertThat(fit.standardError("machinability") / fit.value("machinability"))
                    .isCloseTo(Math.sqrt(covariance[0][0]), within(1e-5));
            assertThat(fit.degreesOfFreedom()).isEqualTo(12 + 3 - 1);
            assertThat(fit.method()).isEqualTo(CutFit.Method.POSTERIOR);
            assertThat(fit.logLikelihood())
                    .isCloseTo(dense(cuts(), at, hasPlates).logLikelihood(new double[] {0}), within(1e-6));
            assertThat(fit.fittedNumbers()).isEqualTo(hasPlates ? 5 : 4);
        }
    }

    /** The same on plates as a mixed regression of the logarithm of the feed rate over thickness and pressure. */
    @Test
    void platesAreAMixedRegression() {
        List<TestCut> cuts = cuts();
        double[] y = new double[cuts.size()];
        double[][] x = new double[cuts.size()][];
        for (int i = 0; i < y.length; i++) {
            y[i] = Math.log(cuts.get(i).feedSi());
            x[i] = new double[] {
                1,
                Math.log(cuts.get(i).thicknessSi()),
                Math.log(cuts.get(i).jet().pressureSi() / 345e6)
            };
        }
        CensoredFit linear = CensoredFit.of(CutRows.exact(y, x).withPlates(PLATES), ErrorLaw.NORMAL);
        CalibratedFeed own = FREE.withPlates().fit(cuts);
        CutFit fit = own.fit();
        double exponent = -linear.beta()[1];
        double factor = 12 / 9.0;

        assertThat(fit.value("feed exponent")).isCloseTo(exponent, within(1e-5));
        assertThat(fit.value("pressure exponent")).isCloseTo(linear.beta()[2] / exponent, within(1e-4));
        assertThat(fit.scatter() * exponent).isCloseTo(linear.sigma() * Math.sqrt(factor), within(1e-5));
        assertThat(fit.plateScatter() * exponent).isCloseTo(linear.tau() * Math.sqrt(factor), within(1e-5));
        assertThat(fit.logLikelihood()).isCloseTo(linear.logLikelihood(), within(1e-6));
        double error = Math.sqrt(factor * linear.maximum().covariance()[1][1]);
        assertThat(fit.standardError("feed exponent")).isCloseTo(error, within(1e-3 * error));
        assertThat(fit.degreesOfFreedom()).isEqualTo(3);
        assertThat(fit.plates()).isEqualTo(4);

        double[] at = {1, Math.log(0.012), Math.log(300 / 345.0)};
        AbrasiveJet jet = CalibrationTest.jet(300, 300);
        double[][] covariance = linear.maximum().covariance();
        double mean = 0;
        for (int j = 0; j < 3; j++) {
            for (int k = 0; k < 3; k++) {
                mean += at[j] * at[k] * covariance[j][k];
            }
        }
        double s = linear.sigma() * linear.sigma();
        double t = linear.tau() * linear.tau();
        isEstimate(own.meanFeed(jet, millimetres(12), 1), linear, at, 0, factor * mean);
        isEstimate(
                own.feed(jet, dev.waterjet.material.Workpiece.of(own.material(), millimetres(12)), 1),
                linear,
                at,
                0,
                factor * (mean + s + t));
        for (int g = 0; g < 4; g++) {
            double[] effect =
                    new MarginalLikelihood(linear.rows()).effect(g, linear.beta(), linear.sigma(), linear.tau());
            isEstimate(
                    own.feedOnPlate(jet, millimetres(12), 1, "P" + g),
                    linear,
                    at,
                    effect[0],
                    factor * (mean + s + effect[1]));
        }
        Refusals.assertRefused(() -> own.feedOnPlate(jet, millimetres(12), 1, "P9"), "unknown-plate");
        CalibratedFeed without = FREE.fit(cuts);
        Refusals.assertRefused(() -> without.feedOnPlate(jet, millimetres(12), 1, "P1"), "unknown-plate");
    }

    private static void isEstimate(
            Estimate<Speed> feed, CensoredFit linear, double[] at, double effect, double variance) {
        assertThat(Math.log(feed.si())).isCloseTo(Matrices.dot(at, linear.beta()) + effect, within(1e-4));
        assertThat(feed.relativeUncertainty()).isCloseTo(Math.sqrt(variance), within(1e-3 * Math.sqrt(variance)));
        assertThat(feed.degreesOfFreedom()).isEqualTo(3);
    }

    /** Intervals and trials of the feed rate: a regression of what lies between, by the other way to fit it. */
    @Test
    void intervalsAndTrialsAreARegressionOfWhatLiesBetween() {
        List<TestCut> cuts = new ArrayList<>();
        double[] lo = new double[12];
        double[] up = new double[12];
        double[][] x = new double[12][];
        for (int i = 0; i < 12; i++) {
            TestCut cut = cuts().get(i);
            var failed = Kind.SPEED.of(1.07 * cut.feedSi());
            lo[i] = Math.log(cut.feedSi());
            up[i] = i % 4 == 3 ? lo[i] : Math.log(1.07 * cut.feedSi());
            x[i] = new double[] {1, Math.log(cut.thicknessSi())};
            cuts.add(i % 4 == 3 ? cut : TestCut.between(cut.jet(), cut.thickness(), cut.feed(), failed));
            if (i == 5 || i == 6) {
                cuts.set(i, TestCut.trial(cut.jet(), cut.thickness(), cut.feed(), i == 5));
                up[i] = i == 5 ? Double.POSITIVE_INFINITY : lo[i];
                lo[i] = i == 5 ? lo[i] : Double.NEGATIVE_INFINITY;
            }
        }
        // at the published pressure exponent, so that the pressure is an offset
        double[] offsets = new double[12];
        for (int i = 0; i < 12; i++) {
            offsets[i] = 1.594 * Math.log(cuts.get(i).jet().pressureSi() / 345e6);
        }
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED)
                .fit(cuts)
                .fit();
        double exponent = fit.value("feed exponent");
        double[] scaled =
                java.util.Arrays.stream(offsets).map(v -> exponent * v).toArray();
        CutRows rows = new CutRows(lo, up, x, new double[12], new int[12], 0).shifted(scaled);
        CensoredFit linear = CensoredFit.of(rows, ErrorLaw.NORMAL);

        // with the offset at its own exponent the likelihood of the line has no other maximum
        double top = linear.profile(1, -exponent);
        assertThat(fit.logLikelihood()).isCloseTo(top, within(1e-6));
    }
}
