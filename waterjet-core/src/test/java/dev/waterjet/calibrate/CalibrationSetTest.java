package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Speed;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class CalibrationSetTest {

    private static final MachinabilityFeed PUBLISHED = MachinabilityFeed.published();
    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);
    private static final Material STEEL = Material.of("rail-steel", 87.6, 0.15, MaterialClass.DUCTILE);
    private static final Material TITANIUM = Material.of("dome-titanium", 115, 0.15, MaterialClass.DUCTILE);
    private static final Material GLASS = Material.of("window-glass", 320, 0.15, MaterialClass.BRITTLE);

    /** Cuts of a batch whose machinability is another than that of its material in a list. */
    private static CalibratedFeed calibrated(Material start, double machinability) {
        return calibrated(start, machinability, JET);
    }

    private static CalibratedFeed calibrated(Material start, double machinability, AbrasiveJet jet) {
        Material truth = Material.of(start.id(), machinability, 0, start.materialClass());
        List<TestCut> cuts = new ArrayList<>();
        for (double thickness : new double[] {4, 6, 8, 12, 16, 24}) {
            double feed = PUBLISHED.separationFeedSi(jet, truth, thickness / 1000) * (thickness > 8 ? 1.03 : 0.97);
            cuts.add(TestCut.separated(jet, millimetres(thickness), Kind.SPEED.of(feed)));
        }
        return Calibration.ofMachinability(start, PUBLISHED).fit(cuts);
    }

    private static final CalibratedFeed OWN_STEEL = calibrated(STEEL, 70);
    private static final CalibratedFeed OWN_TITANIUM = calibrated(TITANIUM, 130);
    private static final CalibrationSet SET =
            CalibrationSet.of(PUBLISHED).with(OWN_STEEL).with(OWN_TITANIUM);

    private static CutConditions cut(Material material) {
        return CutConditions.of(JET, Workpiece.of(material, millimetres(10)), SET);
    }

    /** A material without calibration is cut by the model alone, whatever is asked; a calibrated one has the cautions of its cuts. */
    @Test
    void anotherMaterialIsCutByTheModel() {
        assertThat(SET.separationFeedSi(JET, GLASS, 0.02)).isEqualTo(PUBLISHED.separationFeedSi(JET, GLASS, 0.02));
        assertThat(SET.separationDepthSi(JET, GLASS, 0.002)).isEqualTo(PUBLISHED.separationDepthSi(JET, GLASS, 0.002));
        assertThat(SET.feedSi(JET, GLASS, 0.01, 3)).isEqualTo(PUBLISHED.feedSi(JET, GLASS, 0.01, 3));
        assertThat(SET.indexSi(JET, GLASS, 0.01, 0.002)).isEqualTo(PUBLISHED.indexSi(JET, GLASS, 0.01, 0.002));
        assertThat(SET.relativeUncertainty(GLASS)).isEqualTo(PUBLISHED.relativeUncertainty(GLASS));
        assertThat(SET.maximumFeedSi()).isEqualTo(PUBLISHED.maximumFeedSi());
        assertThat(SET.cautions(JET, STEEL, 0.1, 0.002))
                .isNotEmpty()
                .isEqualTo(OWN_STEEL.cautions(JET, OWN_STEEL.material(), 0.1, 0.002));
    }

    /** The list says 87.6, the cuts 70: the set answers with the cuts, for a workpiece of the list too. */
    @Test
    void aCalibratedMaterialIsCutWithItsOwnNumber() {
        CutConditions own = CutConditions.of(JET, Workpiece.of(OWN_STEEL.material(), millimetres(10)), OWN_STEEL);

        assertThat(cut(STEEL).feed(3).si()).isEqualTo(own.feed(3).si());
        assertThat(cut(STEEL).feed(3).relativeUncertainty())
                .isEqualTo(own.feed(3).relativeUncertainty());
        assertThat(cut(STEEL).feedSi(3)).isEqualTo(own.feedSi(3));
        assertThat(cut(STEEL).separationFeedSi(0.02)).isEqualTo(own.separationFeedSi(0.02));
        assertThat(cut(STEEL).separationDepthSi(0.002)).isEqualTo(own.separationDepthSi(0.002));
        assertThat(cut(STEEL).indexSi(0.002)).isEqualTo(own.indexSi(0.002));
        assertThat(cut(STEEL).index(millimetresPerMinute(100))).isEqualTo(own.index(millimetresPerMinute(100)));
        assertThat(cut(STEEL).relativeUncertainty()).isEqualTo(own.relativeUncertainty());
        // the feed rate goes with the machinability to the power of 1.15
        assertThat(cut(STEEL).feedSi(3) / PUBLISHED.feedSi(JET, STEEL, 0.010, 3))
                .isCloseTo(Math.pow(70 / 87.6, 1.15), within(0.02));
    }

    @Test
    void eachMaterialHasItsOwnCalibration() {
        assertThat(SET.calibration(STEEL)).contains(OWN_STEEL);
        assertThat(SET.calibration(TITANIUM)).contains(OWN_TITANIUM);
        assertThat(SET.calibration(GLASS)).isEmpty();
        assertThat(SET.calibrations()).containsExactly(OWN_STEEL, OWN_TITANIUM);
    }

    @Test
    void aMaterialWithoutCalibrationIsCutByTheModelOfTheSet() {
        CutConditions published = cut(GLASS).withFeedModel(PUBLISHED);

        assertThat(cut(GLASS).feed(3).si()).isEqualTo(published.feed(3).si());
        assertThat(cut(GLASS).feed(3).relativeUncertainty())
                .isEqualTo(published.feed(3).relativeUncertainty());
        assertThat(cut(GLASS).feed(3).cautions())
                .extracting(Caution::code)
                .contains("not-calibrated")
                .containsAll(
                        published.feed(3).cautions().stream().map(Caution::code).toList());
        assertThat(cut(GLASS).depth(millimetresPerMinute(100)).si())
                .isEqualTo(published.depth(millimetresPerMinute(100)).si());
        assertThat(cut(GLASS).relativeUncertainty()).isEqualTo(published.relativeUncertainty());
    }

    @Test
    void noAnswerIsForAnotherMaterialThanTheCalibrated() {
        for (Material material : List.of(STEEL, TITANIUM, GLASS)) {
            assertThat(cut(material).feed(1).cautions())
                    .extracting(Caution::code)
                    .doesNotContain("not-the-calibrated-material");
        }
        assertThat(cut(STEEL).withFeedModel(OWN_STEEL).feed(1).cautions())
                .extracting(Caution::code)
                .contains("not-the-calibrated-material");
    }

    @Test
    void aLaterCalibrationReplacesOneOfTheSameMaterial() {
        CalibratedFeed later = calibrated(STEEL, 75);

        assertThat(SET.with(later).calibrations()).containsExactly(OWN_TITANIUM, later);
        assertThat(SET.with(later).calibration(STEEL)).contains(later);
    }

    @Test
    void ofTwoHeadsTheNearerAnswers() {
        AbrasiveJet narrow = JET.withHead(JET.head().withTube(FocusingTube.of(millimetres(0.76), millimetres(76))));
        CalibratedFeed fine = calibrated(STEEL, 60, narrow);
        CalibrationSet both = SET.with(fine);

        assertThat(both.calibrations()).containsExactly(OWN_STEEL, OWN_TITANIUM, fine);
        assertThat(both.calibration(STEEL, JET)).contains(OWN_STEEL);
        assertThat(both.calibration(STEEL, narrow)).contains(fine);
        assertThat(both.separationFeedSi(narrow, STEEL, 0.01))
                .isEqualTo(fine.separationFeedSi(narrow, fine.material(), 0.01));
        assertThat(both.relativeUncertainty(STEEL))
                .isEqualTo(Math.max(
                        OWN_STEEL.relativeUncertainty(OWN_STEEL.material()),
                        fine.relativeUncertainty(fine.material())));
    }

    /** 0.3 of the logarithm of the ratio of the bores in depth, times 1.15 in feed rate. */
    @Test
    void withAnotherTubeTheEstimateIsWiderAndHasACaution() {
        AbrasiveJet narrow = JET.withHead(JET.head().withTube(FocusingTube.of(millimetres(0.76), millimetres(76))));
        Workpiece plate = Workpiece.of(OWN_STEEL.material(), millimetres(10));
        double among = scale(OWN_STEEL.feed(JET, plate, 3));
        double outside = scale(OWN_STEEL.feed(narrow, plate, 3));

        assertThat(Math.sqrt(outside * outside - among * among))
                .isCloseTo(1.15 * 0.3 * Math.log(JET.tubeBoreSi() / narrow.tubeBoreSi()), within(1e-9));
        assertThat(OWN_STEEL.feed(narrow, plate, 3).cautions())
                .extracting(Caution::code)
                .contains("outside-test-cuts");
    }

    /** Scale of the logarithm by Student's quantile for six cuts and one parameter. */
    private static double scale(Estimate<Speed> feed) {
        return Math.log(Kind.SPEED.si(feed.upper(0.95)) / feed.si())
                / new TDistribution(5).inverseCumulativeProbability(0.975);
    }

    @Test
    void anotherMaterialIsLessCertainThanThePublishedModelIs() {
        for (Material material : List.of(STEEL, TITANIUM, GLASS)) {
            assertThat(OWN_STEEL.relativeUncertainty(material)).isGreaterThan(PUBLISHED.relativeUncertainty(material));
        }
    }

    @Test
    void aSetIsItsModelAndCalibrations() {
        ValueContract.of(() -> CalibrationSet.of(PUBLISHED).with(OWN_STEEL))
                .has("model", CalibrationSet::model, PUBLISHED)
                .differs("calibration", CalibrationSet.of(PUBLISHED).with(OWN_TITANIUM))
                .differs("more", SET)
                .check();
    }
}
