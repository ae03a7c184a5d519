package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import java.util.Map;

/** Subjects of the reference suite in this package. */
public final class FeedSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "machinability-feed",
                in -> feed(MachinabilityFeed.published(), in),
                "machinability-feed-by-flow",
                in -> feed(MachinabilityFeed.publishedByWaterFlow(), in),
                "index-speed-ratio",
                FeedSubjects::indexRatio,
                "specific-energy-depth",
                in -> depth(SpecificEnergyFeed.ofSteel(), in),
                "implied-specific-energy",
                FeedSubjects::impliedEnergy,
                "erosion-over-machinability",
                FeedSubjects::erosionOverMachinability);
    }

    private static Computed feed(FeedModel model, Inputs in) {
        return Computed.of(model.feed(Setups.abrasiveJet(in), Setups.workpiece(in), in.number("index")));
    }

    private static Computed depth(FeedModel model, Inputs in) {
        return Computed.of(model.depth(
                Setups.abrasiveJet(in), Materials.standard().get(in.text("material")), in.get("feed", Kind.SPEED)));
    }

    private static Computed impliedEnergy(Inputs in) {
        return Computed.of(SpecificEnergyFeed.impliedBy(
                MachinabilityFeed.published(), Setups.abrasiveJet(in), Setups.workpiece(in)));
    }

    private static Computed erosionOverMachinability(Inputs in) {
        return Computed.of(depth(ErosionFeed.standard(), in).si()
                / depth(MachinabilityFeed.published(), in).si());
    }

    private static Computed indexRatio(Inputs in) {
        CuttingHead head = CuttingHead.of(
                Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)));
        AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));
        Workpiece piece = Workpiece.of(Materials.standard().get("titanium"), millimetres(6));
        FeedModel model = MachinabilityFeed.published();
        return Computed.of(model.feed(jet, piece, in.number("index")).si()
                / model.feed(jet, piece, 1).si());
    }
}
