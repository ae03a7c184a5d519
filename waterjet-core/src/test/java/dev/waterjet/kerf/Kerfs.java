package dev.waterjet.kerf;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.List;

/** Jets, plates and kerfs of the workshop on Hollow Ridge, for the tests of this package. */
final class Kerfs {

    static final FeedModel FEEDS = MachinabilityFeed.published();
    static final KerfModel MODEL = KerfModel.standard();
    static final AbrasiveJet JET = jet(0.33, 1, 2, 400, 380);
    static final Evidence OWN = Evidence.of(EvidenceGrade.FITTED, Source.of("test cuts of Hollow Ridge"));

    private Kerfs() {}

    static AbrasiveJet jet(double orificeMm, double tubeMm, double standOffMm, double gramsPerMinute, double pressure) {
        return CuttingHead.of(
                        Orifice.sapphire(millimetres(orificeMm)),
                        FocusingTube.of(millimetres(tubeMm), millimetres(80 * tubeMm)))
                .withStandOff(millimetres(standOffMm))
                .jet(megapascals(pressure), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(gramsPerMinute));
    }

    static CutConditions cut(AbrasiveJet jet, String material, double thicknessMm) {
        return CutConditions.of(jet, Workpiece.of(Materials.standard().get(material), millimetres(thicknessMm)), FEEDS);
    }

    static CutConditions steel(double thicknessMm) {
        return cut(JET, "mild-steel", thicknessMm);
    }

    static Kerf kerf(KerfModel model, double thicknessMm, double index, double depthRelative) {
        return model.kerf(
                steel(thicknessMm),
                Estimate.withinFactor(Kind.LENGTH, index * thicknessMm / 1000, depthRelative, List.of()));
    }

    static Kerf kerf(double thicknessMm, double index) {
        return kerf(MODEL, thicknessMm, index, 0.15);
    }
}
