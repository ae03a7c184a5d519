package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;

/** Priors of scatter and spread that are worth very many cuts: the posterior is then normal, and known by matrices of full size. */
class KnownScatterPriorTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final double SIGMA = 0.05;
    private static final double TAU = 0.08;
    private static final double MANY = 1e6;
    private static final double[] NOISE = {0.06, -0.04, 0.1, 0.02, -0.07, 0.05};
    private static final double[] PRESSURES = {280, 340, 380, 300, 360, 400};
    private static final int[] PLATES = {0, 0, 1, 2, 2, 2};

    /** Cuts at some pressures, of which some are stated to be uncertain. */
    private static List<TestCut> cuts(double... deviations) {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            AbrasiveJet jet = CalibrationTest.jet(PRESSURES[i], 300);
            double feed = MODEL.separationFeedSi(jet, ALLOY, 0.01) * Math.exp(1.15 * NOISE[i]);
            TestCut cut = TestCut.separated(jet, millimetres(10), Kind.SPEED.of(feed))
                    .withPlate("P" + PLATES[i])
                    .withAttribute("morning", i < 3 ? "May" : "June");
            cuts.add(deviations.length > 0 ? cut.withRelativeDeviation(deviations[i]) : cut);
        }
        return cuts;
    }

    private static CutRows rows(boolean hasPressure, double... deviations) {
        double[][] x = new double[6][];
        double[] delta = new double[6];
        for (int i = 0; i < 6; i++) {
            double log = Math.log(PRESSURES[i] / 345);
            x[i] = hasPressure ? new double[] {1, log} : new double[] {1};
            delta[i] = deviations.length > 0 ? deviations[i] / 1.15 : 0;
        }
        return CutRows.exact(NOISE, x).withDelta(delta);
    }

    /** Precisions of the prior: of the machinability, and of an exponent within 0.3. */
    private static void agrees(CutFit fit, DenseMixedModel dense, double... precisions) {
        int p = precisions.length;
        double[][] information = dense.information().getData();
        double[] sum = dense.information().operate(dense.beta());
        for (int j = 0; j < p; j++) {
            information[j][j] += precisions[j];
        }
        double[][] covariance = Matrices.inverse(information);
        double[] mean = Matrices.times(covariance, sum);

        assertThat(Math.log(fit.value("machinability") / 115)).isCloseTo(mean[0], within(1e-5));
        assertThat(fit.standardError("machinability") / fit.value("machinability"))
                .isCloseTo(Math.sqrt(covariance[0][0]), within(1e-4));
        if (p > 1) {
            assertThat(fit.value("pressure exponent")).isCloseTo(1.594 + mean[1], within(1e-4));
            assertThat(fit.standardError("pressure exponent")).isCloseTo(Math.sqrt(covariance[1][1]), within(1e-3));
        }
        assertThat(fit.method()).isEqualTo(CutFit.Method.POSTERIOR);
        assertThat(fit.scatter()).isCloseTo(SIGMA, within(1e-3));
    }

    private static Calibration with(CutPrior prior, FeedExponent... freed) {
        return Calibration.ofMachinability(ALLOY, MODEL, freed).withPrior(prior);
    }

    private static final double CATALOGUE = 1 / (0.1 * 0.1 + 0.13 * 0.13);
    private static final double EXPONENT = 1 / 0.09;
    private static final double[] STATED = {0.2, 0, 0.1, 0, 0.3, 0.05};

    @Test
    void theCatalogueCountsByItsDeviation() {
        CutPrior prior = CutPrior.catalogue(ALLOY).withScatter(MANY, SIGMA).withPlates(MANY, TAU);
        agrees(with(prior).fit(cuts()).fit(), new DenseMixedModel(rows(false), SIGMA, 0), CATALOGUE);
        agrees(with(prior).fit(cuts(STATED)).fit(), new DenseMixedModel(rows(false, STATED), SIGMA, 0), CATALOGUE);
        agrees(
                with(prior, FeedExponent.PRESSURE).fit(cuts()).fit(),
                new DenseMixedModel(rows(true), SIGMA, 0),
                CATALOGUE,
                EXPONENT);
        agrees(
                with(prior).withPlates().fit(cuts()).fit(),
                new DenseMixedModel(rows(false).withPlates(PLATES), SIGMA, TAU),
                CATALOGUE);
    }

    /** Nothing is known of the machinability, whichever way it is solved. */
    @Test
    void aPriorOfTheScatterAloneKnowsNoNumber() {
        CutPrior prior = CutPrior.ofScatter(MANY, SIGMA).withPlates(MANY, TAU);
        agrees(with(prior).fit(cuts()).fit(), new DenseMixedModel(rows(false), SIGMA, 0), 0);
        agrees(with(prior).fit(cuts(STATED)).fit(), new DenseMixedModel(rows(false, STATED), SIGMA, 0), 0);
        agrees(
                with(prior, FeedExponent.PRESSURE).fit(cuts()).fit(),
                new DenseMixedModel(rows(true), SIGMA, 0),
                0,
                EXPONENT);
        agrees(
                with(prior).withPlates().fit(cuts()).fit(),
                new DenseMixedModel(rows(false).withPlates(PLATES), SIGMA, TAU),
                0);
    }

    @Test
    void anyColumnMayNameTheGroups() {
        CutPrior prior = CutPrior.catalogue(ALLOY).withScatter(MANY, SIGMA).withPlates(MANY, TAU);
        int[] mornings = {0, 0, 0, 1, 1, 1};
        CutFit fit = with(prior).withGroups("morning").fit(cuts()).fit();

        agrees(fit, new DenseMixedModel(rows(false).withPlates(mornings), SIGMA, TAU), CATALOGUE);
        assertThat(fit.plates()).isEqualTo(2);
        assertThat(fit.plateScatter()).isCloseTo(TAU, within(2e-3));
    }

    /** One plate shows no spread of its own; a prior has one. */
    @Test
    void onePlateHasTheSpreadOfThePriorAlone() {
        List<TestCut> cuts = cuts().stream().map(cut -> cut.withPlate("P")).toList();
        CutPrior prior = CutPrior.catalogue(ALLOY).withScatter(MANY, SIGMA).withPlates(MANY, TAU);
        CutFit with = with(prior).withPlates().fit(cuts).fit();
        CutFit without =
                Calibration.ofMachinability(ALLOY, MODEL).withPlates().fit(cuts).fit();

        assertThat(with.plateScatter()).isCloseTo(TAU, within(2e-3));
        agrees(with, new DenseMixedModel(rows(false).withPlates(new int[6]), SIGMA, TAU), CATALOGUE);
        assertThat(without.plateScatter()).isZero();
        assertThat(without.method()).isEqualTo(CutFit.Method.LEAST_SQUARES);
        assertThat(without.plates()).isEqualTo(1);
    }

    /** A next cut has scatter, spread and the posterior's deviation; on a plate that was cut less. */
    @Test
    void theNextCutHasBothDeviations() {
        CutPrior prior = CutPrior.catalogue(ALLOY).withScatter(MANY, SIGMA).withPlates(MANY, TAU);
        CalibratedFeed own = with(prior).withPlates().fit(cuts());
        AbrasiveJet jet = CalibrationTest.jet(350, 300);
        double variance =
                Math.pow(own.fit().standardError("machinability") / own.fit().value("machinability"), 2);
        // Student's distribution with 200 degrees of freedom stands for the normal one: quantiles 0.975 of any table
        double normal = 1.971896 / 1.959964;
        Estimate<Speed> next = own.feed(jet, Workpiece.of(own.material(), millimetres(10)), 1);
        Estimate<Speed> mean = own.meanFeed(jet, millimetres(10), 1);

        assertThat(normal * next.relativeUncertainty())
                .isCloseTo(1.15 * Math.sqrt(variance + SIGMA * SIGMA + TAU * TAU), within(1e-3));
        assertThat(normal * mean.relativeUncertainty()).isCloseTo(1.15 * Math.sqrt(variance), within(1e-3));
        // the best linear prediction of the third plate, whose mean residual is zero: (0.02 - 0.07 + 0.05)/3
        double number = Math.log(own.fit().value("machinability") / 115);
        double shrink = TAU * TAU / (TAU * TAU + SIGMA * SIGMA / 3);
        double effect = Math.log(own.feedOnPlate(jet, millimetres(10), 1, "P2").si() / mean.si()) / 1.15;
        assertThat(effect).isCloseTo(-shrink * number, within(1e-4));
        assertThat(own.feedOnPlate(jet, millimetres(10), 1, "P2").relativeUncertainty())
                .isBetween(1.15 * SIGMA, next.relativeUncertainty());
    }
}
