package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Speed;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/** Answers of a calibration and of a set of them at and beyond the settings of its cuts. */
class CalibratedAnswersTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final AbrasiveJet JET = jet(0.3, 0.9);
    private static final double[] NOISE = {0.03, -0.02, 0.01, -0.04, 0.02, 0.01, -0.03, 0.02};

    private static AbrasiveJet jet(double orificeMm, double tubeMm) {
        AbrasiveJet plain = CalibrationTest.jet(350, 300);
        return plain.withHead(CuttingHead.of(
                Orifice.sapphire(millimetres(orificeMm)), FocusingTube.of(millimetres(tubeMm), millimetres(76))));
    }

    private static TestCut cut(AbrasiveJet jet, int i) {
        double feed = MODEL.separationFeedSi(jet, ALLOY, 0.01) * Math.exp(1.15 * NOISE[i % 8]);
        return TestCut.separated(jet, millimetres(10), Kind.SPEED.of(feed));
    }

    private static List<TestCut> cuts(AbrasiveJet... jets) {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            cuts.add(cut(jets[i % jets.length], i));
        }
        return cuts;
    }

    private static CalibratedFeed own(AbrasiveJet... jets) {
        return Calibration.ofMachinability(ALLOY, MODEL).fit(cuts(jets));
    }

    /** Logarithm of the ratio to the nearer end, of orifice and tube together as a hypotenuse. */
    @Test
    void theDistanceIsTheLogarithmBeyondTheBoresOfTheCuts() {
        CalibratedFeed own = own(jet(0.25, 0.76), jet(0.35, 1.02));

        assertThat(own.distance(jet(0.3, 0.9))).isZero();
        assertThat(own.distance(jet(0.25, 1.02))).isZero();
        assertThat(own.distance(jet(0.2, 0.9))).isCloseTo(Math.log(0.25 / 0.2), within(1e-12));
        assertThat(own.distance(jet(0.4, 0.9))).isCloseTo(Math.log(0.4 / 0.35), within(1e-12));
        assertThat(own.distance(jet(0.3, 1.2))).isCloseTo(Math.log(1.2 / 1.02), within(1e-12));
        assertThat(own.distance(jet(0.2, 0.5)))
                .isCloseTo(Math.hypot(Math.log(0.25 / 0.2), Math.log(0.76 / 0.5)), within(1e-12));
    }

    private static List<Map<String, Object>> outside(CalibratedFeed own, AbrasiveJet jet, double depthM) {
        return own.cautions(jet, own.material(), depthM, 0.004).stream()
                .filter(caution -> caution.code().equals("outside-test-cuts"))
                .map(caution -> caution.message().parameters())
                .toList();
    }

    @Test
    void everySettingOutsideTheCutsIsNamedWithItsValue() {
        CalibratedFeed own = own(jet(0.25, 0.76), jet(0.35, 1.02));

        assertThat(outside(own, jet(0.25, 0.76), 0.01)).isEmpty();
        assertThat(outside(own, jet(0.2, 0.9), 0.01))
                .singleElement()
                .satisfies(all ->
                        assertThat(all).containsEntry("input", "orifice bore").containsEntry("value_m", 0.2e-3));
        assertThat(outside(own, jet(0.3, 1.2), 0.01))
                .singleElement()
                .satisfies(all -> assertThat(all)
                        .containsEntry("input", "focusing-tube bore")
                        .containsEntry("value_m", 1.2e-3));
        assertThat(outside(own, jet(0.3, 0.9), 0.011))
                .singleElement()
                .satisfies(
                        all -> assertThat(all).containsEntry("input", "depth").containsEntry("value_m", 0.011));
        assertThat(outside(own, JET.withAbrasiveFlow(Kind.MASS_FLOW.of(0.009)), 0.01))
                .singleElement()
                .satisfies(all -> assertThat(all)
                        .containsEntry("input", "abrasive flow rate")
                        .containsEntry("value_kg_per_s", 0.009));
    }

    /** The published model's 15 % and the scatter of the material's own. */
    @Test
    void anotherMaterialIsAsUncertainAsFifteenPercentMore() {
        CalibratedFeed own = own(JET);
        double plain = own.model().relativeUncertainty(ALLOY);

        assertThat(own.relativeUncertainty(ALLOY)).isCloseTo(Math.hypot(plain, 0.15), within(1e-12));
        assertThat(own.relativeUncertainty(own.material()))
                .isEqualTo(own.model().relativeUncertainty(own.material()));
        assertThat(own.cautions(JET, ALLOY, 0.01, 0.004))
                .filteredOn(caution -> caution.code().equals("not-the-calibrated-material"))
                .singleElement()
                .satisfies(
                        caution -> assertThat(caution.message().parameters()).containsEntry("material", ALLOY.name()));
    }

    /** Quantile 0.9 of Student's distribution below the median, with seven degrees of freedom. */
    @Test
    void aFeedRateThatSeparatesIsAQuantile() {
        CalibratedFeed own = own(JET);
        Estimate<Speed> next = own.feed(JET, Workpiece.of(own.material(), millimetres(10)), 1);
        double t = new TDistribution(null, 7).inverseCumulativeProbability(0.9);

        assertThat(next.degreesOfFreedom()).isEqualTo(7);
        assertThat(Kind.SPEED.si(own.feedThatSeparates(JET, millimetres(10), 0.9)))
                .isCloseTo(next.si() * Math.exp(-t * next.relativeUncertainty()), within(1e-9));
        Refusals.assertRefused(
                () -> own.feedThatSeparates(JET, millimetres(10), 0.5), "must-be-above", "probability", 0.5);
        assertThat(Kind.SPEED.si(own.feedThatSeparates(JET, millimetres(10), 0.500001)))
                .isCloseTo(next.si(), within(1e-6 * next.si()));
    }

    /** Orifices beyond those of the cuts: 0.3 of the logarithm of the ratio in depth, times 1.15. */
    @Test
    void onlyTheNextCutIsLessCertainWithAnotherHead() {
        CalibratedFeed own = own(JET);
        Workpiece plate = Workpiece.of(own.material(), millimetres(10));
        AbrasiveJet wide = jet(0.35, 0.9);
        double among = own.feed(JET, plate, 1).relativeUncertainty();
        double beyond = 1.15 * 0.3 * Math.log(0.35 / 0.3);

        assertThat(own.feed(wide, plate, 1).relativeUncertainty()).isCloseTo(Math.hypot(among, beyond), within(1e-9));
        assertThat(own.meanFeed(wide, millimetres(10), 1).relativeUncertainty())
                .isCloseTo(own.meanFeed(JET, millimetres(10), 1).relativeUncertainty(), within(1e-9));
    }

    /** The model ends at 25 m/min. */
    @Test
    void noFeedRateIsAboveThatOfTheModel() {
        CalibratedFeed own = own(JET);

        assertThat(own.meanFeed(JET, millimetres(0.05), 1).si()).isEqualTo(own.maximumFeedSi());
        assertThat(own.feedSi(JET, own.material(), 0.00005, 1)).isGreaterThan(own.maximumFeedSi());
    }

    @Test
    void aPlateHasTheMeanOfItsCuts() {
        List<TestCut> cuts = cuts(JET);
        String[] names = {"west", "east", "east", "north"};
        for (int i = 0; i < 8; i++) {
            double offset = new double[] {0.2, -0.1, -0.1, 0.3}[i % 4];
            double feed = Kind.SPEED.si(cuts.get(i).feed()) * Math.exp(offset);
            cuts.set(
                    i,
                    TestCut.separated(JET, millimetres(10), Kind.SPEED.of(feed)).withPlate(names[i % 4]));
        }
        CalibratedFeed own =
                Calibration.ofMachinability(ALLOY, MODEL).withPlates().fit(cuts);
        double middle = own.meanFeed(JET, millimetres(10), 1).si();
        double east = own.feedOnPlate(JET, millimetres(10), 1, "east").si();
        double north = own.feedOnPlate(JET, millimetres(10), 1, "north").si();
        double west = own.feedOnPlate(JET, millimetres(10), 1, "west").si();

        assertThat(east).isLessThan(middle);
        assertThat(north).isGreaterThan(west).isGreaterThan(middle);
        assertThat(Math.log(north / east)).isCloseTo(0.4, within(0.08));
        assertThat(own.feedOnPlate(JET, millimetres(10), 1, "east").relativeUncertainty())
                .isLessThan(own.feed(JET, Workpiece.of(own.material(), millimetres(10)), 1)
                        .relativeUncertainty());
        Refusals.assertRefused(() -> own.feedOnPlate(JET, millimetres(10), 1, "south"), "unknown-plate");
        assertThat(own.scatter())
                .isCloseTo(1.15 * Math.hypot(own.fit().scatter(), own.fit().plateScatter()), within(1e-9));
    }

    @Test
    void descriptionsHaveWhatIsAnswered() {
        CalibratedFeed own = own(JET);

        assertThat(own.name()).isEqualTo("machinability, fitted");
        assertThat(own.toString()).isEqualTo("machinability, fitted from 8 cuts");
        assertThat(own.describe())
                .containsEntry("model", own.name())
                .containsEntry("scatter", own.scatter())
                .containsKeys("material", "evidence", "fit", "cuts");
        assertThat(own.evidence().ranges())
                .extracting(range -> range.input())
                .containsExactly("depth", "pressure", "abrasive flow rate", "orifice bore", "focusing-tube bore");
        CalibrationSet set = CalibrationSet.of(MODEL);
        assertThat(set.name()).isEqualTo("machinability with 0 calibrations");
        assertThat(set.with(own).name()).isEqualTo("machinability with 1 calibration");
        assertThat(set.with(own).toString()).isEqualTo(set.with(own).name());
        assertThat(set.with(own).describe())
                .containsEntry("model", "machinability")
                .containsKey("evidence");
        assertThat(set.with(own).describe().get("calibrations"))
                .asInstanceOf(org.assertj.core.api.InstanceOfAssertFactories.LIST)
                .hasSize(1);
        assertThat(set.evidence()).isEqualTo(MODEL.evidence());
        assertThat(set.maximumFeedSi()).isEqualTo(MODEL.maximumFeedSi());
    }

    @Test
    void aSetWithoutCalibrationsHasNoCautionOfItsOwn() {
        CalibrationSet empty = CalibrationSet.of(MODEL);
        Material other = Material.of("ring-bronze", 120, 0.05, MaterialClass.DUCTILE);

        assertThat(empty.cautions(JET, other, 0.01, 0.004)).isEqualTo(MODEL.cautions(JET, other, 0.01, 0.004));
        assertThat(empty.with(own(JET)).cautions(JET, other, 0.01, 0.004))
                .extracting(Caution::code)
                .containsExactly("not-calibrated");
        assertThat(empty.with(own(JET)).cautions(JET, ALLOY, 0.01, 0.004)).isEmpty();
        assertThat(empty.relativeUncertainty(other)).isEqualTo(MODEL.relativeUncertainty(other));
        assertThat(empty.indexSi(JET, other, 0.01, 0.004)).isEqualTo(MODEL.indexSi(JET, other, 0.01, 0.004));
    }

    /** A fit of the whole shop says by itself which material was not cut. */
    @Test
    void aShopAsModelOfTheSetHasItsOwnCaution() {
        Material bronze = Material.of("ring-bronze", 120, 0.05, MaterialClass.DUCTILE);
        dev.waterjet.material.Materials catalogue = dev.waterjet.material.Materials.of(List.of(ALLOY, bronze));
        List<TestCut> named = cuts(JET).stream()
                .map(one -> one.withAttribute("material", ALLOY.id()))
                .toList();
        CalibrationSet set = CalibrationSet.of(ShopFit.of(named, catalogue)).with(own(JET));

        assertThat(set.cautions(JET, bronze, 0.01, 0.004))
                .extracting(Caution::code)
                .containsExactly("not-cut-in-this-shop");
    }

    /** Grooves and cuts through: the calibrated depth of a groove keeps the caution of shallow ones if any cut is deep. */
    @Test
    void theFeedExponentIsInTheModel() {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            double thickness = 0.004 * (1 + i);
            double feed = 0.02 * Math.pow(thickness / 0.004, -1.3) * Math.exp(NOISE[i]);
            cuts.add(TestCut.separated(JET, Kind.LENGTH.of(thickness), Kind.SPEED.of(feed)));
        }
        CalibratedFeed own =
                Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED).fit(cuts);
        MachinabilityFeed model = (MachinabilityFeed) own.model();

        assertThat(model.exponent(FeedExponent.FEED)).isEqualTo(own.fit().value("feed exponent"));
        assertThat(own.depth(JET, own.material(), Kind.SPEED.of(0.4)).cautions())
                .extracting(Caution::code)
                .contains("shallow-groove");
        assertThat(own.feed(JET, Workpiece.of(own.material(), millimetres(12)), 1)
                        .si())
                .isCloseTo(model.separationFeedSi(JET, own.material(), 0.012), within(1e-12));
        assertThat(own.material().relativeUncertainty())
                .isCloseTo(own.fit().standardError("machinability") / own.fit().value("machinability"), within(1e-12));
        assertThat(own.index(JET, Workpiece.of(own.material(), millimetres(12)), millimetresPerMinute(100)))
                .isCloseTo(own.separationDepthSi(JET, own.material(), 0.1 / 60) / 0.012, within(1e-9));
    }
}
