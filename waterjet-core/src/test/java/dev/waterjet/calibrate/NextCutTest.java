package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.calibrate.NextCut.Way;
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
}
