package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import java.util.List;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class PlainWaterFeedTest {

    private static final Material SOFT = Materials.standard().all().iterator().next();

    /** 20 mm of soft material at 10 m/min with 0.15 mm, 350 MPa and 5 mm of stand-off. */
    private static PlainWaterFeed shop() {
        return PlainWaterFeed.of(
                SOFT,
                WaterJet.of(Orifice.sapphire(millimetres(0.15)), megapascals(350), celsius(20)),
                millimetres(5),
                millimetres(20),
                millimetresPerMinute(10_000));
    }

    private static AbrasiveJet jet(double pressureMpa, double boreMm, double standOffMm) {
        return CuttingHead.of(
                        Orifice.sapphire(millimetres(boreMm)), FocusingTube.of(millimetres(0.76), millimetres(76)))
                .withStandOff(millimetres(standOffMm))
                .jet(megapascals(pressureMpa), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(200));
    }

    @Nested
    class Contract extends FeedModelContract {

        @Override
        FeedModel model() {
            return shop().withThreshold(megapascals(20));
        }

        @Override
        Iterable<Material> materials() {
            return List.of(SOFT);
        }
    }

    @Test
    void referenceCutIsReproduced() {
        PlainWaterFeed model = shop().withThreshold(megapascals(60));
        assertThat(model.separationFeedSi(jet(350, 0.15, 5), SOFT, 0.02)).isCloseTo(10 / 60.0, within(1e-12));
        assertThat(model.separationDepthSi(jet(350, 0.15, 5), SOFT, 10 / 60.0)).isCloseTo(0.02, within(1e-15));
    }

    /** Values by hand from the power law. */
    @Test
    void depthScalesByThePowerLaw() {
        PlainWaterFeed model = shop().withThreshold(megapascals(50)).withExponents(1.1, 1.4, 0.8);
        double expected = 20 * Math.pow(2, 1.1) * Math.pow((200 - 50) / 300.0, 1.4) * Math.pow(0.25, 0.8);
        assertThat(model.separationDepthSi(jet(200, 0.30, 5), SOFT, 40 / 60.0) * 1000)
                .isCloseTo(expected, within(1e-9));
        // coherent up to 100 diameters of 0.828 x 0.15 mm; at twice that half of the pressure
        double far = 20 * Math.pow((175 - 50) / 300.0, 1.4);
        assertThat(model.separationDepthSi(jet(350, 0.15, 24.84), SOFT, 10 / 60.0) * 1000)
                .isCloseTo(far, within(1e-9));
    }

    @Test
    void belowTheThresholdNothingIsCut() {
        PlainWaterFeed model = shop().withThreshold(megapascals(60));
        assertThat(model.separationFeedSi(jet(59, 0.15, 5), SOFT, 0.02)).isZero();
        assertThat(model.separationDepthSi(jet(60, 0.15, 5), SOFT, 0.1)).isZero();
        assertRefused(() -> shop().withThreshold(megapascals(350)), "must-be-above");
        assertRefused(() -> shop().withExponents(1, 0, 1), "must-be-above", "exponent of the pressure", 0);
    }

    @Test
    void answersSayThatTheyAreForPureWater() {
        Estimate<Speed> near = shop().feed(jet(350, 0.15, 5), Workpiece.of(SOFT, millimetres(20)), 1);
        assertThat(near.cautions()).extracting(Caution::code).contains("pure-waterjet");
        assertThat(near.cautions()).extracting(Caution::code).doesNotContain("far-from-reference-cut");
        assertThat(near.relativeUncertainty()).isGreaterThanOrEqualTo(0.25);
        Estimate<Speed> far = shop().feed(jet(200, 0.15, 5), Workpiece.of(SOFT, millimetres(20)), 1);
        assertThat(far.cautions()).extracting(Caution::code).contains("far-from-reference-cut");
        Material other = Materials.standard().all().stream()
                .filter(material -> !material.equals(SOFT))
                .findFirst()
                .orElseThrow();
        assertRefused(() -> shop().separationFeedSi(jet(350, 0.15, 5), other, 0.02), "other-material");
    }

    @Test
    void jetWithoutAbrasiveIsAnsweredDirectly() {
        PlainWaterFeed model = shop().withThreshold(megapascals(60));
        WaterJet water = WaterJet.of(Orifice.sapphire(millimetres(0.2)), megapascals(300), celsius(20));
        Workpiece sheet = Workpiece.of(SOFT, millimetres(15));
        Estimate<Speed> direct = model.feed(water, millimetres(8), sheet, 1.5);
        assertThat(direct.si())
                .isEqualTo(model.feed(jet(300, 0.2, 8), sheet, 1.5).si());
        assertThat(direct.relativeUncertainty()).isCloseTo(0.25, within(1e-12));
        assertThat(direct.cautions()).extracting(Caution::code).doesNotContain("pure-waterjet");
        assertThat(model.depth(water, millimetres(8), SOFT, direct.value()).si())
                .isCloseTo(1.5 * 0.015, within(1e-12));
        assertRefused(() -> model.feed(water.withPressure(megapascals(50)), millimetres(8), sheet, 1), "no-cut");
        assertRefused(() -> model.feed(water, millimetres(-1), sheet, 1), "must-be-at-least", "stand-off distance", 0);
        Workpiece stack = Workpiece.sheets(sheet, 3);
        assertRefused(() -> model.feed(water, millimetres(8), stack, 1), "stack-by-pure-water");
    }

    private static PlainWaterFeed reference(double boreMm, double mpa, double standOffMm, double depthMm, double feed) {
        return PlainWaterFeed.of(
                SOFT,
                WaterJet.of(Orifice.sapphire(millimetres(boreMm)), megapascals(mpa), celsius(20)),
                millimetres(standOffMm),
                millimetres(depthMm),
                millimetresPerMinute(feed));
    }

    @Test
    void modelIsItsReferenceCutAndParameters() {
        ValueContract.of(PlainWaterFeedTest::shop)
                .change(
                        "threshold",
                        model -> model.withThreshold(megapascals(60)),
                        PlainWaterFeed::threshold,
                        megapascals(60))
                .differs("exponents", shop().withExponents(1.1, 1.4, 0.8))
                .differs("bore", reference(0.16, 350, 5, 20, 10_000))
                .differs("pressure", reference(0.15, 340, 5, 20, 10_000))
                .differs("stand-off", reference(0.15, 350, 6, 20, 10_000))
                .differs("depth", reference(0.15, 350, 5, 21, 10_000))
                .differs("feed", reference(0.15, 350, 5, 20, 11_000))
                .check();
        assertThat(shop().withExponents(1.1, 1.4, 0.8).describe())
                .containsEntry("material", SOFT.id())
                .containsEntry("orifice_bore_m", 0.15e-3)
                .containsEntry("pressure_Pa", 350e6)
                .containsEntry("stand_off_m", 0.005)
                .containsEntry("depth_m", 0.02)
                .containsEntry("bore_exponent", 1.1)
                .containsEntry("pressure_exponent", 1.4)
                .containsEntry("feed_exponent", 0.8)
                .containsKeys("threshold_Pa", "relative_uncertainty", "evidence");
    }
}
