package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Layers of several materials in the models that take the conditions of a cut. */
class LayeredPlanTest {

    private static final Workpiece STEEL = Jobs.plate("mild-steel-a36", 10);
    private static final Workpiece ALUMINIUM = Jobs.plate("aluminium-6061-t6", 10);

    private static CutConditions cut(FeedModel model, Workpiece workpiece) {
        return CutConditions.of(Jobs.JET, workpiece, model);
    }

    /** Ten millimetres of half steel, half aluminium lie between ten of either. */
    @Test
    void theirFeedKerfLagAndPierceLieBetweenThoseOfTheirMaterials() {
        CutConditions mixed = cut(
                ErosionFeed.standard(),
                Workpiece.layers(
                        List.of(STEEL.withThickness(millimetres(5)), ALUMINIUM.withThickness(millimetres(5)))));
        CutConditions steel = cut(ErosionFeed.standard(), STEEL);
        CutConditions aluminium = cut(ErosionFeed.standard(), ALUMINIUM);
        double feed = steel.feed(3).si();

        assertThat(mixed.feed(3).si()).isBetween(feed, aluminium.feed(3).si());
        assertThat(exitLag(mixed, feed)).isBetween(exitLag(aluminium, feed), exitLag(steel, feed));
        assertThat(exitWidth(mixed, feed)).isBetween(exitWidth(steel, feed), exitWidth(aluminium, feed));
        PierceSelector pierces = PierceSelector.of(PierceSettings.defaults());
        assertThat(pierces.select(mixed).time().si())
                .isBetween(
                        pierces.select(aluminium).time().si(),
                        pierces.select(steel).time().si());
    }

    private static double exitLag(CutConditions cut, double feed) {
        return LagModel.standard().lag(cut, Kind.SPEED.of(feed)).atExit().si();
    }

    private static double exitWidth(CutConditions cut, double feed) {
        return KerfModel.standard().kerf(cut, Kind.SPEED.of(feed)).exitWidth().si();
    }

    @Test
    void aDelicateLayerDecidesThePierce() {
        Workpiece glassOnSteel = Workpiece.layers(List.of(Jobs.plate("float-glass", 6), STEEL));

        assertThat(PierceSelector.of(PierceSettings.defaults())
                        .select(cut(MachinabilityFeed.published(), glassOnSteel))
                        .method())
                .isEqualTo(PierceMethod.LOW_PRESSURE);
    }
}
