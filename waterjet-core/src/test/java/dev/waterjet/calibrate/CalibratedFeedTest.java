package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Answers of a calibrated model, from cuts so few or so regular that they can be computed by hand. */
class CalibratedFeedTest {

    private static final Material ALLOY = Material.of("mirror-mount-alloy", 137, 0, MaterialClass.DUCTILE);
    private static final MachinabilityFeed PUBLISHED = MachinabilityFeed.published();

    /** The feed goes with the machinability to this power: Zeng, Kim, Wallace (1992), from memory. */
    private static final double MACHINABILITY_EXPONENT = 1.15;

    private static TestCut cut(AbrasiveJet jet, double thicknessMm, double factor) {
        double feed = PUBLISHED.separationFeedSi(jet, ALLOY, thicknessMm / 1000) * factor;
        return TestCut.separated(jet, millimetres(thicknessMm), Kind.SPEED.of(feed));
    }

    private static CalibratedFeed calibrated(List<TestCut> cuts, FeedExponent... freed) {
        return Calibration.ofMachinability(ALLOY, PUBLISHED, freed).fit(cuts);
    }

    private static List<TestCut> alternating(int count, double noise) {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            cuts.add(cut(CalibrationTest.jet(350, 300), 10, Math.exp(i % 2 == 0 ? noise : -noise)));
        }
        return cuts;
    }

    /** Two cuts alike, one a tenth faster in the logarithm and one slower: the fit lies between, one degree is left. */
    @Test
    void scatterIsTheDeviationOfTheCutsFromTheFit() {
        List<TestCut> cuts = alternating(2, 0.1);
        CalibratedFeed own = calibrated(cuts);
        double scatter = 0.1 * Math.sqrt(2);

        assertThat(own.scatter()).isCloseTo(scatter, within(1e-7));
        assertThat(own.material().machinabilitySi()).isCloseTo(137, within(1e-5));
        assertThat(own.material().relativeUncertainty())
                .isCloseTo(scatter / Math.sqrt(2) / MACHINABILITY_EXPONENT, within(1e-6));
        assertThat(own.cuts()).isEqualTo(cuts);
    }

    /** Cuts 1 % from their mean, each stated to be uncertain by 10 %: their spread holds scatter and deviation. */
    @Test
    void deviationsLargerThanTheSpreadAreInTheSpread() {
        List<TestCut> cuts = alternating(4, 0.01).stream()
                .map(one -> one.withRelativeDeviation(0.1))
                .toList();

        assertThat(calibrated(cuts).scatter()).isCloseTo(0.01 * Math.sqrt(4 / 3.0), within(1e-7));
    }

    /** One more cut scatters as the others do, about a fit that is itself uncertain by the scatter over root two. */
    @Test
    void aFeedIsAsUncertainAsOneMoreCut() {
        CalibratedFeed own = calibrated(alternating(2, 0.1));
        AbrasiveJet jet = CalibrationTest.jet(350, 300);
        double relative = Math.hypot(0.1 * Math.sqrt(2), 0.1);

        assertThat(own.feed(jet, Workpiece.of(own.material(), millimetres(10)), 1)
                        .relativeUncertainty())
                .isCloseTo(relative, within(1e-6));
        assertThat(own.feed(jet, Workpiece.of(ALLOY, millimetres(10)), 1).relativeUncertainty())
                .as("of a material that was not fitted, as the model has it")
                .isCloseTo(own.relativeUncertainty(ALLOY), within(1e-12));
    }

    @Test
    void itAnswersAsTheModelWithTheFittedNumbers() {
        CalibratedFeed own = calibrated(alternating(6, 0.02));
        AbrasiveJet jet = CalibrationTest.jet(320, 400);

        assertThat(own.separationDepthSi(jet, ALLOY, 0.002)).isEqualTo(PUBLISHED.separationDepthSi(jet, ALLOY, 0.002));
        assertThat(own.indexSi(jet, ALLOY, 0.01, 0.001)).isEqualTo(PUBLISHED.indexSi(jet, ALLOY, 0.01, 0.001));
        assertThat(own.feedSi(jet, ALLOY, 0.01, 2)).isEqualTo(PUBLISHED.feedSi(jet, ALLOY, 0.01, 2));
        assertThat(own.maximumFeedSi()).isEqualTo(PUBLISHED.maximumFeedSi());
    }

    @Test
    void sixCutsAreNotFew() {
        assertThat(calibrated(alternating(6, 0.02)).remarks()).isEmpty();
        assertThat(calibrated(alternating(5, 0.02)).remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.code()).isEqualTo("few-cuts"))
                .satisfies(remark -> assertThat(remark.message().parameters()).containsEntry("cuts", 5L));
    }

    @Test
    void aCutWithoutALabelIsNamedByItsPlace() {
        List<TestCut> cuts = alternating(20, 0.01);
        cuts.set(7, cut(CalibrationTest.jet(350, 300), 10, 1.6));

        assertThat(calibrated(cuts).remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.code()).isEqualTo("outlier"))
                .satisfies(remark -> assertThat(remark.message().parameters()).containsEntry("cut", "cut 8"));
    }

    /** Only one cut was made at another pressure: it determines the pressure exponent alone. */
    @Test
    void aCutThatDeterminesAParameterAloneIsNamed() {
        List<TestCut> cuts = alternating(8, 0.01);
        cuts.add(cut(CalibrationTest.jet(200, 300), 10, 1).withLabel("low pressure"));

        assertThat(calibrated(cuts, FeedExponent.PRESSURE).remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.code()).isEqualTo("leverage"))
                .satisfies(remark -> assertThat(remark.message().parameters()).containsEntry("cut", "low pressure"));
        assertThat(calibrated(cuts).remarks()).as("with one parameter").isEmpty();
    }

    @Test
    void anAnswerOutsideTheCutsHasACaution() {
        List<TestCut> cuts = alternating(6, 0.02);
        cuts.add(cut(CalibrationTest.jet(300, 250), 5, 1));
        double graded = PUBLISHED.feedSi(CalibrationTest.jet(300, 250), ALLOY, 0.01, 3);
        cuts.add(TestCut.graded(CalibrationTest.jet(300, 250), millimetres(10), 3, Kind.SPEED.of(graded)));
        CalibratedFeed own = calibrated(cuts);

        assertThat(outside(own, CalibrationTest.jet(320, 280), 29)).isEmpty();
        assertThat(outside(own, CalibrationTest.jet(320, 280), 31)).containsExactly("depth");
        assertThat(outside(own, CalibrationTest.jet(320, 600), 10)).containsExactly("abrasive flow rate");
        assertThat(outside(own, CalibrationTest.jet(250, 280), 10)).containsExactly("pressure");
    }

    private static List<Object> outside(CalibratedFeed own, AbrasiveJet jet, double depthMm) {
        return own.cautions(jet, own.material(), depthMm / 1000, 0.001).stream()
                .filter(caution -> caution.code().equals("outside-test-cuts"))
                .map(caution -> caution.message().parameters().get("input"))
                .toList();
    }

    @Test
    void anyOtherMaterialHasACaution() {
        CalibratedFeed own = calibrated(alternating(6, 0.02));
        AbrasiveJet jet = CalibrationTest.jet(350, 300);

        assertThat(own.feed(jet, Workpiece.of(ALLOY, millimetres(10)), 1).cautions())
                .extracting(Caution::code)
                .contains("not-the-calibrated-material");
        assertThat(own.feed(jet, Workpiece.of(own.material(), millimetres(10)), 1)
                        .cautions())
                .extracting(Caution::code)
                .doesNotContain("not-the-calibrated-material");
    }

    @Test
    void aCalibrationIsItsFamilyFitAndCuts() {
        ValueContract.of(() -> calibrated(alternating(6, 0.02)))
                .has("cuts", CalibratedFeed::cuts, alternating(6, 0.02))
                .differs("noise", calibrated(alternating(6, 0.03)))
                .differs("exponent", calibrated(variedPressure(), FeedExponent.PRESSURE))
                .differs("cuts", calibrated(variedPressure()))
                .check();
    }

    private static List<TestCut> variedPressure() {
        List<TestCut> cuts = alternating(6, 0.02);
        cuts.add(cut(CalibrationTest.jet(200, 300), 10, 1.01));
        cuts.add(cut(CalibrationTest.jet(250, 300), 10, 0.99));
        return cuts;
    }
}
