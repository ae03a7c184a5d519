package dev.waterjet.calibrate;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Refused is a quantity that the cuts do not determine; one that they just determine is not. */
class FitRefusalsTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;
    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final Calibration PLAIN = Calibration.ofMachinability(ALLOY, MODEL);
    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);

    private static CutRows rows(double[] lo, double[] up) {
        double[][] x = new double[lo.length][];
        Arrays.setAll(x, i -> new double[] {1});
        return new CutRows(lo, up, x, new double[lo.length], new int[lo.length], 0);
    }

    private static CutRows settings(double[]... x) {
        return CutRows.exact(new double[x.length], x);
    }

    private static List<Family.Start> starts(String... names) {
        return Arrays.stream(names)
                .map(name -> new Family.Start(name, 1, false))
                .toList();
    }

    private static Object undetermined(CutRows rows, String... names) {
        WaterjetException refusal =
                assertRefused(() -> FitRefusals.requireRank(rows, starts(names)), "undetermined-parameters");
        assertThat(refusal.parameters()).containsEntry("cuts", (long) rows.size());
        return String.valueOf(refusal.parameters().get("parameters"));
    }

    @Test
    void settingsThatGoTogetherAreNamedAlone() {
        CutRows together = settings(
                new double[] {1, 0.1, 0.3, 2},
                new double[] {1, 0.2, 0.6, 1},
                new double[] {1, 0.5, 1.5, -1},
                new double[] {1, 0.4, 1.2, 3},
                new double[] {1, 0.7, 2.1, 0});

        assertThat(undetermined(together, "a", "b", "c", "d")).isEqualTo("b, c");
        // too small to matter, but not one
        CutRows nearly = settings(
                new double[] {1, 0.1}, new double[] {1, 0.1 + 1e-6}, new double[] {1, 0.1}, new double[] {1, 0.1});
        assertThatCode(() -> FitRefusals.requireRank(nearly, starts("a", "b"))).doesNotThrowAnyException();
        CutRows same = settings(
                new double[] {1, 0.1}, new double[] {1, 0.1 + 1e-10}, new double[] {1, 0.1}, new double[] {1, 0.1});
        assertThat(undetermined(same, "a", "b")).isEqualTo("a, b");
        CutRows none = settings(new double[] {1, 0}, new double[] {1, 0}, new double[] {1, 0});
        assertThat(undetermined(none, "a", "b")).isEqualTo("b");
    }

    /** The size of a unit is of no account. */
    @Test
    void settingsOfAnySizeAreTold() {
        CutRows tiny = settings(
                new double[] {1, 1e-12}, new double[] {1, -2e-12}, new double[] {1, 3e-12}, new double[] {1, 0});

        assertThatCode(() -> FitRefusals.requireRank(tiny, starts("a", "b"))).doesNotThrowAnyException();
    }

    @Test
    void oneCutMoreThanParametersIsEnough() {
        CutRows three = settings(new double[] {1, 0}, new double[] {1, 1}, new double[] {1, 2});

        assertThatCode(() -> FitRefusals.requireRank(three, starts("a", "b"))).doesNotThrowAnyException();
        assertThat(undetermined(three.only(0, 1), "a", "b")).isEqualTo("a, b");
    }

    private static double boundOf(WaterjetException refusal) {
        return (double) Objects.requireNonNull(refusal.parameters().get("bound"));
    }

    @Test
    void trialsThatAllEndAlikeGiveTheirBound() {
        double[] none = {INFINITE, INFINITE};
        WaterjetException above = assertRefused(
                () -> FitRefusals.requireScatter(rows(new double[] {Math.log(90), Math.log(110)}, none)),
                "only-a-bound");
        WaterjetException below = assertRefused(
                () -> FitRefusals.requireScatter(
                        rows(new double[] {-INFINITE, -INFINITE}, new double[] {Math.log(90), Math.log(110)})),
                "only-a-bound");

        assertThat(boundOf(above)).isCloseTo(110, within(1e-9));
        assertThat(boundOf(below)).isCloseTo(90, within(1e-9));
    }

    @Test
    void trialsThatNeverDisagreeShowNoScatter() {
        CutRows agree = rows(new double[] {1, -INFINITE}, new double[] {INFINITE, 2});
        CutRows touch = rows(new double[] {2, -INFINITE}, new double[] {INFINITE, 2});
        CutRows disagree = rows(new double[] {2.1, -INFINITE}, new double[] {INFINITE, 2});
        CutRows measured = rows(new double[] {1, -INFINITE, 1.5}, new double[] {INFINITE, 2, 1.5});

        assertRefused(() -> FitRefusals.requireScatter(agree), "undetermined-scatter");
        assertRefused(() -> FitRefusals.requireScatter(touch), "undetermined-scatter");
        assertThatCode(() -> FitRefusals.requireScatter(disagree)).doesNotThrowAnyException();
        assertThatCode(() -> FitRefusals.requireScatter(measured)).doesNotThrowAnyException();
        assertThatCode(() -> FitRefusals.requireScatter(agree.withX(new double[][] {{1, 2}, {1, 3}})))
                .doesNotThrowAnyException();
    }

    /** Mean square of the residuals, with n - p, against the larger of a millionth and the mean of the stated squares. */
    @Test
    void cutsThatAgreeBetterThanStatedShowNoScatter() {
        double[] y = {1, 1.02, 0.98, 1};
        CutRows rows = rows(y, y);
        double square = Math.sqrt(2 * 0.02 * 0.02 / 3);
        double[] more = {1.01 * square, 1.01 * square, 1.01 * square, 1.01 * square};
        double[] less = {0.99 * square, 0.99 * square, 0.99 * square, 0.99 * square};

        assertThat(FitRefusals.isWithoutScatter(rows)).isFalse();
        assertThat(FitRefusals.isWithoutScatter(rows.withDelta(more))).isTrue();
        assertThat(FitRefusals.isWithoutScatter(rows.withDelta(less))).isFalse();
        double[] close = {1, 1 + 1.5e-6, 1, 1};
        double[] closer = {1, 1 + 1e-6, 1, 1};
        assertThat(FitRefusals.isWithoutScatter(rows(close, close))).isTrue();
        assertThat(FitRefusals.isWithoutScatter(rows(closer, closer))).isTrue();
        double[] apart = {1, 1 + 3e-6, 1, 1};
        assertThat(FitRefusals.isWithoutScatter(rows(apart, apart))).isFalse();
        // without coefficients the residuals are the rows themselves
        assertThat(FitRefusals.isWithoutScatter(rows.withX(new double[4][0]))).isFalse();
        assertThat(FitRefusals.isWithoutScatter(
                        rows(new double[4], new double[4]).withX(new double[4][0])))
                .isTrue();
    }

    @Test
    void aRobustFitNeedsCutsToSpare() {
        double[][] x = {{1, 0}, {1, 0}, {1, 0}, {1, 1}, {1, 2}};
        CutRows rows = settings(x);

        assertThatCode(() -> FitRefusals.requireReserve(rows, 2)).doesNotThrowAnyException();
        WaterjetException refusal =
                assertRefused(() -> FitRefusals.requireReserve(rows, 3), "no-reserve-for-robust-fit");
        assertThat(refusal.parameters())
                .containsEntry("reserve", 2L)
                .containsEntry("cuts", 5L)
                .containsEntry("least", 3L);
        assertThatCode(() -> FitRefusals.requireIndependent(rows)).doesNotThrowAnyException();
        assertRefused(
                () -> FitRefusals.requireIndependent(rows.withPlates(new int[] {0, 0, 1, 1, 1})),
                "plates-with-heavy-tails");
    }

    private static TestCut cut(double log) {
        double feed = MODEL.separationFeedSi(JET, ALLOY, 0.01) * Math.exp(1.15 * log);
        return TestCut.separated(JET, millimetres(10), Kind.SPEED.of(feed));
    }

    private static List<TestCut> cuts(int count) {
        return new ArrayList<>(
                IntStream.range(0, count).mapToObj(i -> cut(0.03 * (i % 3 - 1))).toList());
    }

    @Test
    void cutsOfSeveralMaterialsAreNotOneFit() {
        List<TestCut> cuts = cuts(5);
        cuts.set(1, cuts.get(1).withAttribute("material", "bronze"));
        assertThatCode(() -> PLAIN.fit(cuts)).doesNotThrowAnyException();
        cuts.set(3, cuts.get(3).withAttribute("material", "steel"));

        assertThat(assertRefused(() -> PLAIN.fit(cuts), "several-materials").parameters())
                .containsEntry("materials", "bronze, steel");
    }

    @Test
    void waysThatDoNotGoTogetherAreRefused() {
        Calibration free = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED);

        assertRefused(() -> free.withStudentErrors(4).fit(cuts(6)), "heavy-tails-not-possible");
        assertRefused(() -> free.withHighBreakdown().fit(cuts(6)), "heavy-tails-not-possible");
        assertRefused(() -> PLAIN.withStudentErrors(0.9), "must-be-at-least");
        assertThatCode(() -> PLAIN.withStudentErrors(1)).doesNotThrowAnyException();
        List<TestCut> plates = cuts(6);
        plates.replaceAll(cut -> cut.withPlate("P" + plates.indexOf(cut) % 2));
        assertRefused(() -> PLAIN.withPlates().withStudentErrors(4).fit(plates), "plates-with-heavy-tails");
        Calibration threshold = Calibration.ofThreshold(ALLOY, JET, millimetresPerMinute(1));
        assertRefused(() -> threshold.withPrior(CutPrior.catalogue(ALLOY)), "no-prior-for-model");
    }

    @Test
    void trialsAloneAreRefusedUntilTheyDisagree() {
        List<TestCut> trials = new ArrayList<>();
        for (double log : new double[] {-0.1, -0.05, 0.02}) {
            trials.add(TestCut.trial(JET, millimetres(10), cut(log).feed(), true));
        }
        WaterjetException bound = assertRefused(() -> PLAIN.fit(trials), "only-a-bound");
        assertThat(boundOf(bound)).isCloseTo(115 * Math.exp(0.02), within(1e-6));
        trials.add(TestCut.trial(JET, millimetres(10), cut(0.05).feed(), false));
        assertRefused(() -> PLAIN.fit(trials), "undetermined-scatter");
        trials.add(TestCut.trial(JET, millimetres(10), cut(-0.07).feed(), false));
        trials.add(TestCut.trial(JET, millimetres(10), cut(-0.12).feed(), true));
        assertThatCode(() -> PLAIN.fit(trials)).doesNotThrowAnyException();
    }

    @Test
    void theCorrectionOfAkaikesCriterionNeedsCuts() {
        assertRefused(() -> PLAIN.fit(cuts(3)).fit().aicc(), "must-be-above");
        assertThat(PLAIN.fit(cuts(4)).fit().aicc()).isFinite();
        assertThat(assertRefused(() -> PLAIN.fit(cuts(4)).fit().value("luck"), "unknown-parameter")
                        .parameters())
                .containsEntry("names", "machinability");
    }

    /** Six and six: tails so heavy that either group may be the good one are estimated below one degree of freedom. */
    @Test
    void twoGroupsAreNamedByTheSmaller() {
        Random random = new Random(0);
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            cuts.add(cut((i < 6 ? 1.2 : 0) + 0.01 * random.nextGaussian()).withLabel("c" + i));
        }
        WaterjetException refusal =
                assertRefused(() -> PLAIN.withStudentErrors().fit(cuts), "two-groups");

        assertThat(refusal.parameters()).containsEntry("cuts", "c0, c1, c2, c3, c4, c5");
    }
}
