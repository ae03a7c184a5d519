package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.calibrate.NextCut.Way;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Worth of one more cut for its cost. */
class NextCutTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);

    /** Four plates of three cuts, 3 % within and 6 % between them. */
    private static CalibratedFeed own(Calibration calibration) {
        Random random = new Random(6);
        List<TestCut> cuts = new ArrayList<>();
        for (int g = 0; g < 4; g++) {
            double plate = 0.06 * random.nextGaussian();
            for (int i = 0; i < 3; i++) {
                double log = plate + 0.03 * random.nextGaussian();
                double feed = MODEL.separationFeedSi(JET, ALLOY, 0.01) * Math.exp(1.15 * log);
                cuts.add(TestCut.separated(JET, millimetres(10), Kind.SPEED.of(feed))
                        .withPlate("P" + g));
            }
        }
        return calibration.withPlates().fit(cuts);
    }

    private static double narrowing(CalibratedFeed own, Way way) {
        return NextCut.rank(own, JET, millimetres(10), List.of(JET), List.of(way))
                .get(0)
                .narrowing();
    }

    @Test
    void whatSaysMoreNarrowsMore() {
        Calibration plain = Calibration.ofMachinability(ALLOY, MODEL);
        for (CalibratedFeed own : List.of(own(plain), own(plain.withPrior(CutPrior.catalogue(ALLOY))))) {
            double measured = narrowing(own, Way.measured());

            assertThat(measured).isGreaterThan(narrowing(own, Way.ladder(0.1)));
            assertThat(narrowing(own, Way.ladder(0.1))).isGreaterThan(narrowing(own, Way.ladder(0.3)));
            assertThat(narrowing(own, Way.ladder(1e-3))).isCloseTo(measured, within(1e-4));
            assertThat(narrowing(own, Way.trial())).isBetween(0.5 * measured, 0.7 * measured);
            // the plate is known in part already
            assertThat(narrowing(own, Way.measured().onPlate("P2"))).isBetween(0., 0.5 * measured);
        }
    }

    /**
     * A balanced design in closed form: one more cut on a plate makes its mean weigh more. With weights 1 / (tau^2 + sigma^2 / m) of the
     * plates the variance of the mean is the inverse of their sum.
     */
    @Test
    void aCutOnAKnownPlateAddsWhatItsPlateMeanGains() {
        CalibratedFeed own = own(Calibration.ofMachinability(ALLOY, MODEL));
        double between = Math.pow(own.fit().plateScatter(), 2);
        double within = Math.pow(own.fit().scatter(), 2);
        double three = 1 / (between + within / 3);
        double before = 1 / (4 * three);
        double after = 1 / (3 * three + 1 / (between + within / 4));
        double cut = between + within;

        assertThat(narrowing(own, Way.measured().onPlate("P1")))
                .isCloseTo(1 - Math.sqrt((after + cut) / (before + cut)), within(1e-6));
        double fresh = 1 / (4 * three + 1 / cut);
        assertThat(narrowing(own, Way.measured()))
                .isCloseTo(1 - Math.sqrt((fresh + cut) / (before + cut)), within(1e-6));
    }

    @Test
    void theCheapestNarrowingComesFirst() {
        CalibratedFeed own = own(Calibration.ofMachinability(ALLOY, MODEL));
        List<NextCut> ranked = NextCut.rank(
                own,
                JET,
                millimetres(10),
                List.of(JET),
                List.of(
                        Way.measured().withCost(30),
                        Way.ladder(0.1).withCost(3),
                        Way.trial().withCost(1)));

        assertThat(ranked)
                .extracting(cut -> cut.way().test())
                .containsExactly(TestCut.Test.TRIAL, TestCut.Test.INTERVAL, TestCut.Test.SEPARATION);
        assertThat(ranked.get(1).narrowingPerCost()).isEqualTo(ranked.get(1).narrowing() / 3);
    }

    @Test
    void whatIsNotThereIsRefused() {
        CalibratedFeed own = own(Calibration.ofMachinability(ALLOY, MODEL));

        Refusals.assertRefused(() -> narrowing(own, Way.trial().onPlate("P9")), "unknown-plate");
        assertThat(Refusals.of(() -> Way.ladder(0))).isNotEqualTo("no refusal");
        assertThat(Refusals.of(() -> Way.trial().withCost(0))).isNotEqualTo("no refusal");
    }

    /** Three pressures and a free exponent, by the information of a line: one more cut adds its square. */
    @Test
    void aCutFarFromTheOthersNarrowsAsItsLeverageSays() {
        List<TestCut> cuts = new ArrayList<>();
        double[] noise = {0.03, -0.02, 0.02, -0.04, 0.01, 0.03};
        double[][] information = new double[2][2];
        for (int i = 0; i < 6; i++) {
            AbrasiveJet jet = CalibrationTest.jet(280 + 20 * (i % 3), 300);
            double feed = MODEL.separationFeedSi(jet, ALLOY, 0.01) * Math.exp(1.15 * noise[i]);
            cuts.add(TestCut.separated(jet, millimetres(10), Kind.SPEED.of(feed)));
            add(information, 280 + 20 * (i % 3), 1);
        }
        CalibratedFeed own =
                Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE).fit(cuts);
        double[] at = {1, Math.log(400 / 345.0)};
        double before = Matrices.square(at, Matrices.inverse(information));
        List<NextCut> ranked = NextCut.rank(
                own,
                CalibrationTest.jet(400, 300),
                millimetres(8),
                List.of(CalibrationTest.jet(250, 300), CalibrationTest.jet(320, 300), CalibrationTest.jet(380, 300)),
                List.of(Way.measured(), Way.trial()));

        assertThat(ranked).hasSize(6);
        double last = Double.POSITIVE_INFINITY;
        for (NextCut next : ranked) {
            double pressure = next.jet().pressureSi() / 1e6;
            double[][] more = {information[0].clone(), information[1].clone()};
            add(more, pressure, 1);
            double gained = before - Matrices.square(at, Matrices.inverse(more));
            gained *= next.way().test() == TestCut.Test.TRIAL ? 2 / Math.PI : 1;
            assertThat(next.narrowing()).isCloseTo(1 - Math.sqrt((before - gained + 1) / (before + 1)), within(1e-6));
            assertThat(next.narrowing()).isLessThanOrEqualTo(last);
            last = next.narrowing();
            assertThat(Kind.SPEED.si(next.trialFeed()))
                    .isCloseTo(own.separationFeedSi(next.jet(), own.material(), 0.008), within(1e-9));
            assertThat(next.describe())
                    .containsEntry("narrowing", next.narrowing())
                    .containsEntry("test", next.way().test().text())
                    .containsEntry("thickness_m", 0.008)
                    .containsEntry("trial_feed_m_per_s", Kind.SPEED.si(next.trialFeed()));
        }
    }

    private static void add(double[][] information, double pressureMpa, double weight) {
        double x = Math.log(pressureMpa / 345);
        information[0][0] += weight;
        information[0][1] += weight * x;
        information[1][0] += weight * x;
        information[1][1] += weight * x * x;
    }

    /** A ladder has the information of its steps, in depth over the scatter and the spread. */
    @Test
    void aLadderNarrowsByTheInformationOfItsSteps() {
        CalibratedFeed own = own(Calibration.ofMachinability(ALLOY, MODEL));
        double between = Math.pow(own.fit().plateScatter(), 2);
        double within = Math.pow(own.fit().scatter(), 2);
        double cut = between + within;
        double before = (between + within / 3) / 4;
        double share = Gains.ladderEfficiency(Math.log(1.2) / 1.15 / Math.sqrt(cut));
        double after = 1 / (1 / before + share / cut);

        assertThat(narrowing(own, Way.ladder(0.2)))
                .isCloseTo(1 - Math.sqrt((after + cut) / (before + cut)), within(1e-6));
        Way way = Way.ladder(0.2).onPlate("P1").withCost(3);
        assertThat(way.describe())
                .containsEntry("step", 0.2)
                .containsEntry("plate", "P1")
                .containsEntry("cost", 3.0);
        assertThat(NextCut.rank(own, JET, millimetres(10), List.of(JET)))
                .singleElement()
                .satisfies(next -> assertThat(next.way()).isEqualTo(Way.measured()));
        Refusals.assertRefused(
                () -> NextCut.rank(own, JET, millimetres(0), List.of(JET)), "must-be-above", "thickness", 0);
    }

    /** Without plates in the fit no plate is known. */
    @Test
    void aPlateThatIsNotInTheFitIsUnknown() {
        List<TestCut> cuts = new ArrayList<>();
        for (double log : new double[] {0.02, -0.03, 0.01}) {
            double feed = MODEL.separationFeedSi(JET, ALLOY, 0.01) * Math.exp(log);
            cuts.add(
                    TestCut.separated(JET, millimetres(10), Kind.SPEED.of(feed)).withPlate("P0"));
        }
        CalibratedFeed own = Calibration.ofMachinability(ALLOY, MODEL).fit(cuts);

        Refusals.assertRefused(() -> narrowing(own, Way.measured().onPlate("P0")), "unknown-plate");
        CalibratedFeed onPlates = own(Calibration.ofMachinability(ALLOY, MODEL));
        assertThat(narrowing(onPlates, Way.measured().onPlate("P0"))).isPositive();
    }
}
