package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

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
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import java.util.HashMap;
import java.util.Map;

/** Subjects of the reference suite in this package. */
public final class FeedSubjects implements Subjects {

    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)))
            .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));

    @Override
    public Map<String, Subject> subjects() {
        Map<String, Subject> all = new HashMap<>(published());
        all.put("threshold-depth", FeedSubjects::thresholdDepth);
        all.put("declination", FeedSubjects::declination);
        all.put("plain-water-depth-ratio", FeedSubjects::plainWater);
        return all;
    }

    /** Depth in mild steel; the unit of the feed rate is 1 mm/min. */
    private static Computed thresholdDepth(Inputs in) {
        AbrasiveJet jet = JET.withPressure(in.get("pressure", Kind.PRESSURE));
        Material steel = Materials.standard().get("mild-steel");
        FeedModel model = ThresholdFeed.of(
                steel, jet, in.number("coefficient"), in.get("threshold", Kind.PRESSURE), Kind.SPEED.of(1e-3 / 60));
        return Computed.of(model.depth(jet, steel, in.get("feed", Kind.SPEED)));
    }

    private static Computed declination(Inputs in) {
        FeedModel base = MachinabilityFeed.published();
        DeclinationFeed model = DeclinationFeed.linear(base)
                .withExponent(in.number("exponent"))
                .withLimitingAngle(in.get("limit", Kind.ANGLE));
        Workpiece piece = Workpiece.of(Materials.standard().get("titanium"), millimetres(6));
        double separation = base.feed(JET, piece, 1).si();
        return Computed.of(model.declination(JET, piece, Kind.SPEED.of(in.number("speed-ratio") * separation)));
    }

    /** Depth over that of the reference cut, at the same stand-off distance; exponents of bore, pressure and feed rate. */
    private static Computed plainWater(Inputs in) {
        Material any = Materials.standard().get("titanium");
        WaterJet reference = WaterJet.of(Orifice.sapphire(millimetres(0.2)), megapascals(300));
        PlainWaterFeed model = PlainWaterFeed.of(any, reference, millimetres(3), millimetres(10), Kind.SPEED.of(0.1))
                .withExponents(in.number("alpha"), in.number("beta"), in.number("n"));
        if (in.has("threshold")) {
            model = model.withThreshold(in.get("threshold", Kind.PRESSURE));
        }
        WaterJet jet = WaterJet.of(Orifice.sapphire(millimetres(0.2)), in.get("pressure", Kind.PRESSURE));
        return Computed.of(model.depth(jet, millimetres(3), any, Kind.SPEED.of(0.1 * in.number("feed-ratio")))
                        .si()
                / 0.01);
    }

    private static Map<String, Subject> published() {
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
        Workpiece piece = Workpiece.of(Materials.standard().get("titanium"), millimetres(6));
        FeedModel model = MachinabilityFeed.published();
        return Computed.of(model.feed(JET, piece, in.number("index")).si()
                / model.feed(JET, piece, 1).si());
    }
}
