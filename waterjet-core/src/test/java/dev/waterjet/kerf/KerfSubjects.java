package dev.waterjet.kerf;

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
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Length;

/** Subjects of the reference suite in this package. */
public final class KerfSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "exit-lag", in -> Computed.of(kerf(in).lag().atExit()),
                "exit-angle", in -> Computed.of(kerf(in).lag().exitAngle()),
                "lag-error-tangent", in -> arc(in, LagGeometry.TANGENT),
                "lag-error-trailer", in -> arc(in, LagGeometry.TRACTRIX),
                "allowed-lag",
                        in -> Computed.of(
                                Kind.LENGTH,
                                LagGeometry.TANGENT
                                        .allowedLag(in.get("radius", Kind.LENGTH), in.get("error", Kind.LENGTH))
                                        .orElseThrow()),
                "kerf-exit-width", in -> Computed.of(kerf(in).exitWidth()),
                "kerf-entry-width", in -> Computed.of(kerf(in).entryWidth()));
    }

    private static Computed arc(Inputs in, LagGeometry geometry) {
        return Computed.of(kerf(in).lag().errorOnArc(in.get("radius", Kind.LENGTH), geometry));
    }

    /** A kerf at {@code index} in steel of {@code thickness}; where given, {@code stand-off} and worn {@code exit-bore}. */
    static Kerf kerf(Inputs in) {
        double thickness = in.si("thickness", Kind.LENGTH);
        FocusingTube tube = FocusingTube.of(millimetres(1), millimetres(80));
        if (in.has("exit-bore")) {
            tube = tube.withExitBore(in.get("exit-bore", Kind.LENGTH));
        }
        CuttingHead head = CuttingHead.of(Orifice.sapphire(millimetres(0.33)), tube);
        if (in.has("stand-off")) {
            head = head.withStandOff(in.get("stand-off", Kind.LENGTH));
        }
        KerfModel model = KerfModel.standard();
        if (in.has("half-angle")) {
            model = model.withHalfAngle(in.get("half-angle", Kind.ANGLE), 0, model.evidence());
        }
        AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
        Estimate<Length> depth = Estimate.withinFactor(Kind.LENGTH, in.number("index") * thickness, 0.1, List.of());
        Workpiece plate = Workpiece.of(Materials.standard().get("mild-steel"), Kind.LENGTH.of(thickness));
        return model.kerf(CutConditions.of(jet, plate, MachinabilityFeed.published()), depth);
    }
}
