package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import java.util.List;
import org.junit.jupiter.api.Test;

class MaterialStackTest {

    private static final Material STEEL = Materials.standard().get("mild-steel");
    private static final Material ALUMINIUM = Materials.standard().get("aluminium");
    private static final Material GRAPHITE = Materials.standard().get("graphite");

    private final AbrasiveJet jet = FeedModelContract.jet(380, 0.3, 0.9, 400);
    private final Workpiece plate = Workpiece.of(STEEL, millimetres(12));
    private final MachinabilityFeed published = MachinabilityFeed.published();

    @Test
    void stacksCarryWhatTheirLayersCarry() {
        MaterialStack clad = MaterialStack.of(Workpiece.of(GRAPHITE, millimetres(5)), plate);

        assertThat(clad.feed(published, jet, 2).cautions())
                .extracting(Caution::code)
                .contains("unsure-machinability", "stack");
        assertThat(MaterialStack.of(plate).feed(published, jet, 2).cautions())
                .extracting(Caution::code)
                .doesNotContain("stack");
        assertThat(MaterialStack.of(plate).feed(published, jet, 2).si())
                .isCloseTo(published.feed(jet, plate, 2).si(), within(1e-12));
        var foils =
                MaterialStack.sheets(plate.withThickness(millimetres(0.001)), 2).feed(published, jet, 1);
        assertThat(foils.si()).isEqualTo(FeedModel.DEFAULT_MAXIMUM_FEED_M_PER_S);
        assertThat(foils.cautions()).extracting(Caution::code).contains("thin-sheet", "feed-limit");
        assertThat(MaterialStack.sheets(plate, 1000).layers()).hasSize(1000);
        assertRefused(() -> MaterialStack.sheets(plate, 1001), "must-be-at-most", "number of layers", 1000);
        assertRefused(() -> MaterialStack.sheets(plate, 0), "must-be-at-least", "number of layers", 1);
        assertRefused(MaterialStack::of, "must-be-at-least", "number of layers", 1);
        assertRefused(() -> clad.feed(published, jet, 0.9), "must-be-at-least", "quality index", 1);
        ThresholdFeed law = ThresholdFeed.of(STEEL, jet, 8e-9, megapascals(500), millimetresPerMinute(1));
        assertThat(assertRefused(() -> MaterialStack.of(plate).feed(law, jet, 1), "no-cut")
                        .parameters())
                .containsEntry("material", STEEL.name());
        assertThat(MaterialStack.of(plate).feed(published, jet, CutQuality.FINE))
                .isEqualTo(MaterialStack.of(plate).feed(published, jet, 4));
    }

    /** A stack of one material is a plate of the whole thickness. */
    @Test
    void sheetsOfOneMaterialAreOnePlate() {
        for (FeedModel model : List.of(MachinabilityFeed.published(), ErosionFeed.standard())) {
            double stacked = MaterialStack.sheets(plate.withThickness(millimetres(3)), 4)
                    .feed(model, jet, 2)
                    .si();
            assertThat(stacked).isCloseTo(model.feed(jet, plate, 2).si(), within(1e-12));
        }
        // u goes with h^-1.15, so four sheets yield 4^-0.15 of the length in the same time
        assertThat(MaterialStack.sheets(plate, 4).timeRatio(MachinabilityFeed.published(), jet, 2))
                .isCloseTo(Math.pow(4, -0.15), within(1e-9));
    }

    /** Layers of the machinability model add up as h/N_m: closed form. */
    @Test
    void layersAddUpByTheirMachinability() {
        Workpiece clad = Workpiece.of(ALUMINIUM, millimetres(6));
        MaterialStack stack = MaterialStack.of(clad, plate);
        double equivalent = 0.006 * STEEL.machinabilitySi() / ALUMINIUM.machinabilitySi() + 0.012;
        var feed = stack.feed(MachinabilityFeed.published(), jet, 2);

        assertThat(feed.si())
                .isCloseTo(
                        MachinabilityFeed.published()
                                .feed(jet, plate.withThickness(Kind.LENGTH.of(equivalent)), 2)
                                .si(),
                        within(1e-12));
        assertThat(feed.cautions()).extracting(Caution::code).contains("stack");
        assertThat(feed.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.115), within(1e-9));
        assertThat(Kind.LENGTH.si(stack.thickness())).isCloseTo(0.018, within(1e-15));
    }
}
