package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/** Cautions of a fit: what gives each of them, and what does not yet. */
class FitRemarksTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final Calibration PLAIN = Calibration.ofMachinability(ALLOY, MODEL);
    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);
    private static final double[] NOISE = {0.031, -0.04, 0.013, -0.027, 0.022, 0.045, -0.036, 0.007};

    private static double feed(AbrasiveJet jet, double log) {
        return MODEL.separationFeedSi(jet, ALLOY, 0.01) * Math.exp(1.15 * log);
    }

    private static TestCut cut(AbrasiveJet jet, double log) {
        return TestCut.separated(jet, millimetres(10), Kind.SPEED.of(feed(jet, log)));
    }

    private static List<TestCut> cuts(int count, double offset) {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            cuts.add(cut(JET, offset + NOISE[i % 8] * (1 + i / 8)));
        }
        return cuts;
    }

    private static List<TestCut> onPlates(int count, int plates) {
        List<TestCut> cuts = cuts(count, 0);
        for (int i = 0; i < count; i++) {
            cuts.set(i, cuts.get(i).withPlate("P" + i % plates));
        }
        return cuts;
    }

    private static List<String> codes(Calibration calibration, List<TestCut> cuts) {
        return calibration.fit(cuts).remarks().stream().map(Caution::code).toList();
    }

    private static Map<String, Object> parameters(CalibratedFeed own, String code) {
        return own.remarks().stream()
                .filter(remark -> remark.code().equals(code))
                .findFirst()
                .orElseThrow()
                .message()
                .parameters();
    }

    @Test
    void fewPlatesAreLessThanFive() {
        assertThat(codes(PLAIN.withPlates(), onPlates(10, 2))).containsExactly("few-plates");
        assertThat(codes(PLAIN.withPlates(), onPlates(12, 4))).containsExactly("few-plates");
        assertThat(codes(PLAIN.withPlates(), onPlates(10, 5))).isEmpty();
        assertThat(parameters(PLAIN.withPlates().fit(onPlates(12, 4)), "few-plates"))
                .containsEntry("plates", 4L);
    }

    @Test
    void onePlateIsNamedWhetherItIsInTheFitOrNot() {
        assertThat(codes(PLAIN.withPlates(), onPlates(8, 1))).containsExactly("one-plate");
        assertThat(codes(PLAIN, onPlates(8, 1))).containsExactly("one-plate");
        List<TestCut> some = onPlates(8, 1);
        some.set(3, some.get(3).withPlate(""));
        assertThat(codes(PLAIN, some)).as("a cut may be of another plate").isEmpty();
        assertThat(codes(PLAIN, cuts(8, 0))).isEmpty();
    }

    @Test
    void platesThatHaveNoPartAreNamed() {
        assertThat(codes(PLAIN, onPlates(8, 2))).containsExactly("plates-not-used");
        assertThat(codes(PLAIN, onPlates(8, 7))).containsExactly("plates-not-used");
        assertThat(codes(PLAIN, onPlates(8, 8)))
                .as("each cut on a plate of its own")
                .isEmpty();
    }

    @Test
    void anIntervalOfMoreThanAFactorOfThreeIsWide() {
        List<TestCut> cuts = new ArrayList<>(cuts(8, 0));
        double feed = feed(JET, -0.4);
        cuts.add(TestCut.between(JET, millimetres(10), Kind.SPEED.of(feed), Kind.SPEED.of(2.99 * feed)));
        assertThat(codes(PLAIN, cuts)).isEmpty();
        cuts.add(TestCut.between(JET, millimetres(10), Kind.SPEED.of(feed), Kind.SPEED.of(3.01 * feed)));
        assertThat(codes(PLAIN, cuts)).containsExactly("wide-interval");
        assertThat(parameters(PLAIN.fit(cuts), "wide-interval")).containsEntry("cut", "cut 10");
    }

    @Test
    void separationsOnStepsAreALadder() {
        List<TestCut> cuts = new ArrayList<>();
        for (double mmPerMin : new double[] {300, 330, 360, 330, 300, 360}) {
            cuts.add(TestCut.separated(JET, millimetres(10), Kind.SPEED.of(mmPerMin / 60e3)));
        }
        assertThat(codes(PLAIN, cuts)).containsExactly("ladder-of-feeds");
        cuts.add(TestCut.separated(JET, millimetres(10), Kind.SPEED.of(341 / 60e3)));
        assertThat(codes(PLAIN, cuts)).isEmpty();
        // an interval is not such a separation
        cuts.set(6, TestCut.between(JET, millimetres(10), Kind.SPEED.of(341 / 60e3), Kind.SPEED.of(343 / 60e3)));
        assertThat(codes(PLAIN, cuts)).containsExactly("ladder-of-feeds");
    }

    /** By hand: an offset over 2.5 root sums of the prior's deviation 0.164 and the fit's error. */
    @Test
    void cutsFarFromTheCatalogueAreInConflictWithIt() {
        Calibration prior = PLAIN.withPrior(CutPrior.catalogue(ALLOY));

        assertThat(codes(prior, cuts(16, 0.40))).isEmpty();
        assertThat(codes(prior, cuts(16, -0.40))).isEmpty();
        assertThat(codes(prior, cuts(16, 0.43))).containsExactly("prior-conflict");
        assertThat(codes(prior, cuts(16, -0.43))).containsExactly("prior-conflict");
        double own = Math.hypot(0.1, 0.13);
        CalibratedFeed far = prior.fit(cuts(16, 0.6));
        double found = Math.log(far.fit().value("machinability") / 115);
        assertThat((double)
                        Objects.requireNonNull(parameters(far, "prior-conflict").get("deviations")))
                .isCloseTo(found / own, within(1e-9));
    }

    /** A trial far below the limit says nothing: the error of the fit is the prior's. */
    @Test
    void aPriorThatTheCutsDoNotNarrowDominates() {
        Calibration prior = PLAIN.withPrior(CutPrior.catalogue(ALLOY));
        TestCut trial = TestCut.trial(JET, millimetres(10), Kind.SPEED.of(feed(JET, -0.5)), true);
        TestCut telling = TestCut.trial(JET, millimetres(10), Kind.SPEED.of(feed(JET, 0)), true);

        assertThat(codes(prior, List.of(trial))).containsExactly("few-cuts", "prior-dominates");
        assertThat(codes(prior, List.of(telling, telling, telling, telling))).containsExactly("few-cuts");
        assertThat(codes(prior, cuts(8, 0))).isEmpty();
        assertThat(codes(PLAIN, cuts(8, 0.9))).as("without a prior").isEmpty();
    }

    /** Two-sided probability of the deleted residual times the number of cuts, at six degrees of freedom. */
    @Test
    void anOutlierIsToldWithItsProbability() {
        List<TestCut> cuts = cuts(8, 0);
        cuts.set(2, cut(JET, 0.24).withLabel("third"));
        CalibratedFeed own = PLAIN.fit(cuts);
        double deleted = own.fit().studentizedResiduals()[2];
        double probability = 8 * 2 * new TDistribution(null, 6).cumulativeProbability(-deleted);
        Map<String, Object> parameters = parameters(own, "outlier");

        assertThat(probability).isLessThan(0.05);
        assertThat(parameters).containsEntry("cut", "third");
        assertThat((double) Objects.requireNonNull(parameters.get("probability")))
                .isCloseTo(probability, within(1e-9));
        assertThat((double) Objects.requireNonNull(parameters.get("deviations")))
                .isCloseTo(deleted, within(0.005));
        cuts.set(2, cut(JET, 0.09));
        double less = PLAIN.fit(cuts).fit().studentizedResiduals()[2];
        assertThat(16 * new TDistribution(null, 6).cumulativeProbability(-less)).isGreaterThan(0.05);
        assertThat(codes(PLAIN, cuts)).isEmpty();
    }

    /** A cut at the end of a range, with a leverage below one half, that moves the line farther than its error. */
    @Test
    void aCutThatMovesTheFitIsNamed() {
        double[] pressures = {240, 260, 280, 300, 320, 340, 360, 400};
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            cuts.add(cut(CalibrationTest.jet(pressures[i], 300), i == 7 ? 0.09 : 0.4 * NOISE[i]));
        }
        CalibratedFeed own =
                Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE).fit(cuts);
        double cook = own.fit().cookDistances()[7];

        assertThat(own.fit().leverages()[7]).isLessThan(0.5);
        assertThat(cook).isGreaterThan(1);
        assertThat(parameters(own, "influential-cut")).containsEntry("cut", "cut 8");
        assertThat((double) Objects.requireNonNull(
                        parameters(own, "influential-cut").get("cook")))
                .isCloseTo(cook, within(1e-12));
        cuts.set(7, cut(CalibrationTest.jet(400, 300), 0.01));
        assertThat(codes(Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE), cuts))
                .isEmpty();
    }

    /** The bore is 0.9 mm: a groove as deep as that is not shallow. */
    @Test
    void aGrooveAsDeepAsTheBoreIsNotShallow() {
        assertThat(FitRemarks.isShallow(TestCut.groove(JET, Kind.LENGTH.of(JET.tubeBoreSi()), Kind.SPEED.of(0.1))))
                .isFalse();
        assertThat(FitRemarks.isShallow(TestCut.groove(JET, millimetres(0.89), Kind.SPEED.of(0.1))))
                .isTrue();
        assertThat(FitRemarks.isShallow(
                        TestCut.grooveBetween(JET, millimetres(0.8), millimetres(0.95), Kind.SPEED.of(0.1))))
                .isFalse();
        assertThat(FitRemarks.isShallow(TestCut.separated(JET, millimetres(0.5), Kind.SPEED.of(0.1))))
                .isFalse();
    }

    @Test
    void groovesAreCounted() {
        List<TestCut> cuts = new ArrayList<>(cuts(6, 0));
        cuts.add(TestCut.groove(JET, millimetres(0.6), Kind.SPEED.of(0.16)));
        cuts.add(TestCut.groove(JET, millimetres(0.65), Kind.SPEED.of(0.15)));

        assertThat(parameters(PLAIN.fit(cuts), "shallow-and-deep"))
                .containsEntry("count", 2L)
                .containsEntry("all", 8L);
    }

    @Test
    void cutsLeftOutAreListed() {
        List<TestCut> cuts = cuts(9, 0);
        cuts.set(0, cut(JET, 1).withLabel("first"));
        cuts.set(4, cut(JET, -1));
        CalibratedFeed own = PLAIN.withHighBreakdown().fit(cuts);

        assertThat(parameters(own, "cuts-left-out"))
                .containsEntry("count", 2L)
                .containsEntry("all", 9L)
                .containsEntry("cuts", "first, cut 5")
                .containsEntry("withstood", 4L);
        assertThat(codes(PLAIN.withHighBreakdown(), cuts(9, 0))).isEmpty();
    }
}
