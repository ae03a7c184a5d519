package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import java.util.List;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Feed rates of stacks and layers. */
class LayersTest {

    private static final Material STEEL = Materials.standard().get("mild-steel-a36");
    private static final Material ALUMINIUM = Materials.standard().get("aluminium-6061-t6");
    private static final Material GRAPHITE = Materials.standard().get("graphite");

    private final AbrasiveJet jet = FeedModelContract.jet(380, 0.3, 0.9, 400);
    private final Workpiece plate = Workpiece.of(STEEL, millimetres(12));
    private final Workpiece clad = Workpiece.layers(List.of(Workpiece.of(ALUMINIUM, millimetres(6)), plate));
    private final MachinabilityFeed published = MachinabilityFeed.published();

    private static List<String> codes(Estimate<?> estimate) {
        return estimate.cautions().stream().map(Caution::code).toList();
    }

    /** Sheets of one material are one plate of the whole thickness, in every model. */
    @Test
    void sheetsOfOneMaterialAreOnePlate() {
        Workpiece stack = Workpiece.sheets(plate.withThickness(millimetres(3)), 4);

        for (FeedModel model : List.of(published, ErosionFeed.standard(), SpecificEnergyFeed.ofSteel())) {
            assertThat(model.feed(jet, stack, 2).si())
                    .isCloseTo(model.feed(jet, plate, 2).si(), within(1e-12));
        }
        assertThat(codes(published.feed(jet, stack, 2))).contains("stack");
        assertThat(codes(published.feed(jet, plate, 2))).doesNotContain("stack");
    }

    /** Layers of the machinability model add up as h/N_m: closed form. */
    @Test
    void layersAddUpByTheirMachinability() {
        double equivalent = 0.006 * STEEL.machinabilitySi() / ALUMINIUM.machinabilitySi() + 0.012;
        Estimate<Speed> feed = published.feed(jet, clad, 2);

        assertThat(feed.si())
                .isCloseTo(
                        published
                                .feed(jet, plate.withThickness(Kind.LENGTH.of(equivalent)), 2)
                                .si(),
                        withinPercentage(1e-9));
        assertThat(feed.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.115), within(1e-9));
    }

    /** The law that defines layers, with depths of a model whose slope differs with the material's strength. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1.7, 4})
    void sharesOfTheSeparationDepthsAddUpToOneOverTheIndex(double index) {
        ErosionFeed model = ErosionFeed.standard();
        double feed = model.feed(jet, clad, index).si();
        double shares = 0;
        for (Workpiece layer : clad.layers()) {
            shares += layer.thicknessSi() / model.separationDepthSi(jet, layer.material(), feed);
        }

        assertThat(shares).isCloseTo(1 / index, withinPercentage(1e-9));
        assertThat(model.index(jet, clad, Kind.SPEED.of(feed))).isCloseTo(index, withinPercentage(1e-9));
    }

    /** The order of the layers, and a layer cut in two, change nothing. */
    @Test
    void orderAndSplittingOfLayersDoNotMatter() {
        Workpiece turned = Workpiece.layers(List.of(plate, Workpiece.of(ALUMINIUM, millimetres(6))));
        Workpiece split = Workpiece.layers(List.of(
                Workpiece.sheets(Workpiece.of(ALUMINIUM, millimetres(2)), 3), plate.withThickness(millimetres(12))));

        for (Workpiece other : List.of(turned, split)) {
            assertThat(ErosionFeed.standard().feed(jet, other, 2).si())
                    .isCloseTo(ErosionFeed.standard().feed(jet, clad, 2).si(), withinPercentage(1e-9));
        }
    }

    @Test
    void conditionsOfACutReckonWithEveryLayer() {
        CutConditions cut = CutConditions.of(jet, clad, ErosionFeed.standard());
        double feed = cut.feed(CutQuality.MEDIUM).si();

        assertThat(feed).isEqualTo(ErosionFeed.standard().feed(jet, clad, 3).si());
        assertThat(cut.indexSi(feed)).isCloseTo(3, withinPercentage(1e-9));
        assertThat(cut.separationFeedSi(cut.separationDepthSi(feed))).isCloseTo(feed, withinPercentage(1e-9));
        assertThat(cut.withWorkpiece(plate).feedModel()).isEqualTo(ErosionFeed.standard());
        assertThat(cut.withWorkpiece(plate).withWorkpiece(clad)).isEqualTo(cut);
        assertThat(cut.cautions()).extracting(Caution::code).contains("stack");
    }

    @Test
    void layersCarryTheCautionsOfTheirMaterials() {
        Workpiece graphite = Workpiece.layers(List.of(Workpiece.of(GRAPHITE, millimetres(5)), plate));

        assertThat(codes(published.feed(jet, graphite, 2))).contains("unsure-machinability", "stack");
        Workpiece foils = Workpiece.sheets(plate.withThickness(millimetres(0.001)), 2);
        assertThat(published.feed(jet, foils, 1).si()).isEqualTo(FeedModel.DEFAULT_MAXIMUM_FEED_M_PER_S);
        assertThat(codes(published.feed(jet, foils, 1))).contains("thin-sheet", "feed-limit");
        ThresholdFeed law = ThresholdFeed.of(STEEL, jet, 8e-9, megapascals(500), millimetresPerMinute(1));
        assertThat(Refusals.of(() -> law.feed(jet, Workpiece.sheets(plate, 2), 1)))
                .isEqualTo("no-cut");
    }

    /** Of the layers: the mean by shares of h/N_m, and the cautions of each once; of any other material: those of the model. */
    @Test
    void layersAreAsUncertainAsTheirShares() {
        Workpiece graphite = Workpiece.layers(
                List.of(Workpiece.of(GRAPHITE, millimetres(50)), plate, Workpiece.of(GRAPHITE, millimetres(5))));
        FeedModel layered = LayeredFeed.of(published, graphite);
        double ofGraphite = 0.055 / GRAPHITE.machinabilitySi();
        double ofSteel = 0.012 / STEEL.machinabilitySi();
        double expected =
                (ofGraphite * published.relativeUncertainty(GRAPHITE) + ofSteel * published.relativeUncertainty(STEEL))
                        / (ofGraphite + ofSteel);
        assertThat(layered.relativeUncertainty(graphite.material())).isCloseTo(expected, within(1e-12));
        assertThat(expected).isNotCloseTo(published.relativeUncertainty(STEEL), within(1e-3));
        for (Material other : List.of(STEEL, GRAPHITE, ALUMINIUM)) {
            assertThat(layered.relativeUncertainty(other)).isEqualTo(published.relativeUncertainty(other));
            assertThat(layered.separationFeedSi(jet, other, 0.01))
                    .isEqualTo(published.separationFeedSi(jet, other, 0.01));
            assertThat(layered.separationDepthSi(jet, other, 0.01))
                    .isEqualTo(published.separationDepthSi(jet, other, 0.01));
            assertThat(layered.feedSi(jet, other, 0.01, 2)).isEqualTo(published.feedSi(jet, other, 0.01, 2));
            assertThat(layered.indexSi(jet, other, 0.01, 0.002)).isEqualTo(published.indexSi(jet, other, 0.01, 0.002));
            assertThat(layered.cautions(jet, other, 0.01, 0.2)).isEqualTo(published.cautions(jet, other, 0.01, 0.2));
        }
        assertThat(layered.cautions(jet, graphite.material(), 0.01, 0.2))
                .extracting(Caution::code)
                .containsExactly("thin-sheet");
        assertThat(LayeredFeed.of(layered, plate)).isEqualTo(published);
        assertThat(LayeredFeed.of(layered, graphite)).isEqualTo(layered);
    }
}
