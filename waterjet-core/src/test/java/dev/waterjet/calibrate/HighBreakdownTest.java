package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fits that withstand a bad series of cuts. */
class HighBreakdownTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final Calibration PLAIN = Calibration.ofMachinability(ALLOY, MODEL);

    private static TestCut cut(AbrasiveJet jet, double log) {
        double feed = MODEL.separationFeedSi(jet, ALLOY, 0.01) * Math.exp(1.15 * log);
        return TestCut.separated(jet, millimetres(10), Kind.SPEED.of(feed));
    }

    /** Cuts with a scatter of 4 %, of which the first are wrong by a factor in depth. */
    private static List<TestCut> cuts(int count, int wrong, double factor, long seed) {
        Random random = new Random(seed);
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            AbrasiveJet jet = CalibrationTest.jet(i % 2 == 0 ? 300 : 380, 300);
            cuts.add(cut(jet, 0.04 * random.nextGaussian() + (i < wrong ? Math.log(factor) : 0)));
        }
        return cuts;
    }

    private static double error(CalibratedFeed own) {
        return Math.log(own.fit().value("machinability") / 115);
    }

    /** A heavy-tailed likelihood gives way at four of twenty; this one at ten. */
    @ParameterizedTest
    @CsvSource({"20, 0, 3", "20, 4, 3", "20, 8, 3", "20, 9, 3", "20, 9, 0.2", "11, 5, 10", "7, 3, 2", "3, 1, 5"})
    void nearlyHalfOfTheCutsMayBeWrong(int count, int wrong, double factor) {
        CalibratedFeed own = PLAIN.withHighBreakdown().fit(cuts(count, wrong, factor, 3));

        assertThat(error(own)).isCloseTo(0, within(0.08));
        assertThat(own.fit().withstoodCuts()).isGreaterThanOrEqualTo(wrong);
        assertThat(own.fit().scatter()).isBetween(0.01, 0.12);
        assertThat(own.fit().lower("machinability", 0.99)).isLessThan(115);
        assertThat(own.fit().upper("machinability", 0.99)).isGreaterThan(115);
        double[] weights = own.fit().weights();
        assertThat(IntStream.range(0, wrong)).allMatch(i -> weights[i] == 0);
        assertThat(own.remarks().stream().map(Caution::code).anyMatch("cuts-left-out"::equals))
                .isEqualTo(IntStream.range(0, count).anyMatch(i -> weights[i] == 0));
    }

    @Test
    void aLargerFactorMovesNothing() {
        CalibratedFeed far = PLAIN.withHighBreakdown().fit(cuts(20, 7, 10, 5));
        CalibratedFeed farther = PLAIN.withHighBreakdown().fit(cuts(20, 7, 1000, 5));

        assertThat(error(farther)).isCloseTo(error(far), within(1e-9));
    }

    /** Ten good cuts at two pressures, and four at a third that are wrong together: their slope is not believed. */
    @Test
    void wrongCutsFarOutDoNotBendTheSlope() {
        Random random = new Random(8);
        List<TestCut> cuts = new ArrayList<>();
        for (double pressure : new double[] {250, 280, 310, 330, 350, 370, 290, 320, 340, 360}) {
            cuts.add(cut(CalibrationTest.jet(pressure, 300), 0.02 * random.nextGaussian()));
        }
        for (int i = 0; i < 4; i++) {
            cuts.add(cut(CalibrationTest.jet(180 + 2 * i, 300), Math.log(2) + 0.02 * random.nextGaussian()));
        }
        Calibration slope = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE);
        CutFit robust = slope.withHighBreakdown().fit(cuts).fit();

        assertThat(robust.value("pressure exponent")).isCloseTo(1.594, within(0.2));
        assertThat(slope.fit(cuts).fit().value("pressure exponent")).isLessThan(1);
        assertThat(robust.withstoodCuts()).isEqualTo(6);
    }

    @Test
    void aSlopeThatFewCutsDetermineIsRefused() {
        List<TestCut> cuts = new ArrayList<>(IntStream.range(0, 9)
                .mapToObj(i -> cut(CalibrationTest.jet(350, 300), 0.01 * i))
                .toList());
        cuts.add(cut(CalibrationTest.jet(200, 300), 0.5));
        Calibration slope = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE);

        Refusals.assertRefused(() -> slope.withStudentErrors(4).fit(cuts), "no-reserve-for-robust-fit");
        Refusals.assertRefused(() -> slope.withHighBreakdown().fit(cuts), "no-reserve-for-robust-fit");
        cuts.add(cut(CalibrationTest.jet(200, 300), 0));
        Refusals.assertRefused(() -> slope.withHighBreakdown().fit(cuts), "no-reserve-for-robust-fit");
        cuts.add(cut(CalibrationTest.jet(200, 300), 0.02));
        assertThat(slope.withHighBreakdown().fit(cuts).fit().withstoodCuts()).isEqualTo(1);
        assertThat(slope.fit(cuts).fit().withstoodCuts()).isZero();
    }

    @Test
    void whatCannotBeJudgedIsRefused() {
        AbrasiveJet jet = CalibrationTest.jet(350, 300);
        List<TestCut> same = List.of(cut(jet, 0), cut(jet, 0), cut(jet, 0), cut(jet, 0.1));
        List<TestCut> trials = new ArrayList<>(cuts(5, 0, 1, 1));
        trials.add(TestCut.trial(jet, millimetres(10), trials.get(0).feed(), true));

        Refusals.assertRefused(() -> PLAIN.withHighBreakdown().fit(same), "half-without-scatter");
        Refusals.assertRefused(() -> PLAIN.withHighBreakdown().fit(trials), "measured-cuts-only");
    }

    /** Four degrees of freedom: less than one in five. */
    @Test
    void theBreakdownOfHeavyTailsIsTold() {
        assertThat(PLAIN.withStudentErrors(4).fit(cuts(20, 0, 1, 2)).fit().withstoodCuts())
                .isEqualTo(3);
        assertThat(PLAIN.withStudentErrors(4).fit(cuts(5, 0, 1, 2)).fit().withstoodCuts())
                .isZero();
        assertThat(PLAIN.withStudentErrors(4).fit(cuts(6, 0, 1, 2)).fit().withstoodCuts())
                .isEqualTo(1);
        // of estimated tails three in ten, rounded down
        assertThat(PLAIN.withStudentErrors().fit(cuts(19, 0, 1, 2)).fit().withstoodCuts())
                .isEqualTo(5);
    }

    @Test
    void thousandsOfCutsAreFittedAlikeEveryTime() {
        List<TestCut> many = cuts(1200, 500, 3, 4);
        CalibratedFeed own = PLAIN.withHighBreakdown().fit(many);

        assertThat(error(own)).isCloseTo(0, within(0.01));
        assertThat(PLAIN.withHighBreakdown().fit(many).fit().values())
                .isEqualTo(own.fit().values());
    }
}
