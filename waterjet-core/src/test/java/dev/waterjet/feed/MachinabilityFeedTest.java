package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.inches;
import static dev.waterjet.measure.Measures.ksi;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.poundsPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class MachinabilityFeedTest {

    @Nested
    class OrificeForm extends FeedModelContract {
        @Override
        FeedModel model() {
            return MachinabilityFeed.published();
        }
    }

    @Nested
    class WaterFlowForm extends FeedModelContract {
        @Override
        FeedModel model() {
            return MachinabilityFeed.publishedByWaterFlow();
        }
    }

    private final AbrasiveJet jet = FeedModelContract.jet(345, 0.35, 1.0, 600);
    private final Workpiece steel = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(10));

    @Test
    void unitsOfTheCallerDoNotMatter() {
        AbrasiveJet metric = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.254)), FocusingTube.of(millimetres(0.762), millimetres(76.2)))
                .jet(
                        megapascals(Kind.PRESSURE.si(ksi(55)) / 1e6),
                        Abrasive.garnet(Mesh.of(80)),
                        gramsPerMinute(317.514659));
        AbrasiveJet us = CuttingHead.of(Orifice.sapphire(inches(0.010)), FocusingTube.of(inches(0.030), inches(3)))
                .jet(ksi(55), Abrasive.garnet(Mesh.of(80)), poundsPerMinute(0.7));

        assertThat(MachinabilityFeed.published()
                        .feed(us, steel, CutQuality.FINE)
                        .si())
                .isCloseTo(
                        MachinabilityFeed.published()
                                .feed(metric, steel, CutQuality.FINE)
                                .si(),
                        within(1e-12));
    }

    @Test
    void uncertaintyJoinsModelAndMaterial() {
        var estimate = MachinabilityFeed.published().feed(jet, steel, 3);

        assertThat(estimate.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 1.15 * 0.10), within(1e-12));
        assertThat(MachinabilityFeed.published()
                        .withModelUncertainty(0)
                        .feed(jet, steel, 3)
                        .relativeUncertainty())
                .isCloseTo(0.115, within(1e-12));
    }

    @Test
    void cautionsOfJetMaterialAndModelArrive() {
        AbrasiveJet odd = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.35)), FocusingTube.of(millimetres(0.76), millimetres(76)))
                .jet(
                        megapascals(380),
                        Abrasive.of("olivine", Kind.DENSITY.parse("3300 kg/m3"), Mesh.of(80), 0.8),
                        gramsPerMinute(300));
        Workpiece graphite = Workpiece.of(Materials.standard().get("graphite"), millimetres(10));

        assertThat(MachinabilityFeed.published()
                        .feed(odd, graphite, CutQuality.MEDIUM)
                        .cautions())
                .extracting(Caution::code)
                .contains("bore-ratio", "unsure-machinability", "abrasive-factor");
    }
}
