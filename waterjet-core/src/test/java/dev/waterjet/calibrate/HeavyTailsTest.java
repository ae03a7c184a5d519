package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;

/** Fits with Student's distribution of the scatter. */
class HeavyTailsTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final Calibration PLAIN = Calibration.ofMachinability(ALLOY, MODEL);

    /** Twenty cuts with a scatter of 5 %, of which some are wrong by a factor of 3 in depth. */
    private static List<TestCut> cuts(int wrong) {
        Random random = new Random(11);
        AbrasiveJet jet = CalibrationTest.jet(350, 300);
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            double log = 0.05 * random.nextGaussian() + (i < wrong ? Math.log(3) : 0);
            double feed = MODEL.separationFeedSi(jet, ALLOY, 0.01) * Math.exp(1.15 * log);
            cuts.add(TestCut.separated(jet, millimetres(10), Kind.SPEED.of(feed)));
        }
        return cuts;
    }

    private static double error(CalibratedFeed own) {
        return Math.log(own.fit().value("machinability") / 115);
    }

    @Test
    void estimatedTailsWithstandAQuarterOfWrongCuts() {
        CalibratedFeed estimated = PLAIN.withStudentErrors().fit(cuts(5));

        assertThat(error(estimated)).isCloseTo(0, within(0.04));
        assertThat(Math.abs(error(PLAIN.fit(cuts(5))))).isGreaterThan(0.2);
        assertThat(estimated.fit().tailDegreesOfFreedom()).isLessThan(2);
        assertThat(estimated.remarks()).extracting(Caution::code).contains("contaminated");
        assertThat(estimated.fit().weights()[0]).isLessThan(0.05);
        assertThat(estimated.fit().weights()[12]).isGreaterThan(0.3);
    }

    @Test
    void cleanCutsHaveTailsLikeANormalScatter() {
        CalibratedFeed estimated = PLAIN.withStudentErrors().fit(cuts(0));

        assertThat(estimated.fit().tailDegreesOfFreedom()).isGreaterThan(3);
        assertThat(error(estimated)).isCloseTo(error(PLAIN.fit(cuts(0))), within(0.01));
        assertThat(estimated.remarks()).extracting(Caution::code).doesNotContain("contaminated");
    }

    /** Intervals that all overlap, and trials that never disagree, are met by a scatter as small as one likes. */
    @Test
    void cutsThatNeverDisagreeAreRefused() {
        AbrasiveJet jet = CalibrationTest.jet(350, 300);
        Quantity<Length> plate = millimetres(10);
        List<TestCut> cuts = List.of(
                TestCut.between(jet, plate, millimetresPerMinute(500), millimetresPerMinute(550)),
                TestCut.between(jet, plate, millimetresPerMinute(520), millimetresPerMinute(570)),
                TestCut.trial(jet, plate, millimetresPerMinute(510), true),
                TestCut.trial(jet, plate, millimetresPerMinute(560), false));

        for (Calibration robust : List.of(PLAIN.withStudentErrors(4), PLAIN.withStudentErrors())) {
            Refusals.assertRefused(() -> robust.fit(cuts), "undetermined-scatter");
            Refusals.assertRefused(() -> robust.fit(cuts.subList(0, 2)), "undetermined-scatter");
        }
    }

    @Test
    void statedTailsAreKept() {
        assertThat(PLAIN.withStudentErrors(4).fit(cuts(1)).fit().tailDegreesOfFreedom())
                .isEqualTo(4);
        assertThat(PLAIN.fit(cuts(1)).fit().tailDegreesOfFreedom()).isInfinite();
    }
}
