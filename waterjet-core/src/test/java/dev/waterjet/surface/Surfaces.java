package dev.waterjet.surface;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;

/** Jet, plate and cut surfaces of the workshop on Hollow Ridge, for the tests of this package. */
final class Surfaces {

    static final SurfaceModel MODEL = SurfaceModel.standard();
    static final AbrasiveJet JET = jet(80);
    static final CutConditions CUT = cut("mild-steel", 12);
    static final Evidence OWN = Evidence.of(EvidenceGrade.FITTED, Source.of("cut surfaces of Hollow Ridge"));

    private Surfaces() {}

    static AbrasiveJet jet(int mesh) {
        return CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1), millimetres(80)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(mesh)), gramsPerMinute(400));
    }

    static CutConditions cut(String material, double thicknessMm) {
        return CutConditions.of(
                JET,
                Workpiece.of(Materials.standard().get(material), millimetres(thicknessMm)),
                MachinabilityFeed.published());
    }

    static CutSurface surface(double index) {
        return MODEL.surface(CUT, CUT.feed(index).value());
    }
}
