package dev.waterjet.surface;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutOff;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Length;

/** Subjects of the reference suite in this package. */
public final class SurfaceSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "iso9013-perpendicularity-limit",
                        in -> Computed.of(Kind.LENGTH, standard(in).perpendicularityLimit(range(in))),
                "iso9013-profile-height-limit",
                        in -> Computed.of(Kind.LENGTH, standard(in).profileHeightLimit(range(in))),
                "iso9013-edge-height",
                        in -> Computed.of(Kind.LENGTH, standard(in).edgeHeight()),
                "cut-off",
                        in -> Computed.of(
                                Kind.LENGTH,
                                CutOff.forRa(in.get("ra", Kind.LENGTH)).length()),
                "smooth-zone", in -> Computed.of(roughness(in).smoothZone()),
                "pz-over-pa", SurfaceSubjects::profileRatio);
    }

    private static Iso9013 standard(Inputs in) {
        return Iso9013.forThickness(in.get("thickness", Kind.LENGTH));
    }

    private static int range(Inputs in) {
        return Integer.parseInt(in.text("range"));
    }

    private static Computed profileRatio(Inputs in) {
        return Computed.of(RoughnessModel.standard().numbers().pzOverPa());
    }

    private static SurfaceRoughness roughness(Inputs in) {
        Workpiece piece = Setups.workpiece(in);
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
        Estimate<Length> depth =
                Estimate.withinFactor(Kind.LENGTH, in.number("index") * piece.thicknessSi(), 0.1, List.of());
        CutConditions cut = CutConditions.of(jet, piece, MachinabilityFeed.published());
        return RoughnessModel.standard().roughness(KerfModel.standard().kerf(cut, depth));
    }
}
