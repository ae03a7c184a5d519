package dev.waterjet.jet;

import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import java.util.HashMap;
import java.util.Map;

/** Subjects of the reference suite in this package. */
public final class JetSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        Map<String, Subject> all = new HashMap<>(ofHeads());
        all.put(
                "mixing-efficiency-closed",
                in -> Computed.of(TubeMixingKernel.closed(in.number("X"), in.number("loading"))));
        all.put(
                "plain-jet-core-pressure",
                in -> Computed.of(PlainJet.pressureRatio(
                        in.si("stand-off", Kind.LENGTH) / in.si("jet", Kind.LENGTH),
                        in.number("coherent"),
                        in.number("drops"))));
        all.put("drag-coefficient", in -> Computed.of(drag(in)));
        all.put(
                "catcher-depth",
                in -> Computed.of(
                        Kind.LENGTH,
                        Kind.LENGTH.of(DragKernel.submergedDistance(
                                in.si("thrust", Kind.FORCE),
                                in.si("density", Kind.DENSITY),
                                in.si("speed", Kind.SPEED)))));
        all.put("mixing-efficiency-tube", in -> Computed.of(mixing(in).efficiency()));
        all.put("tube-exit-water-ratio", in -> Computed.of(mixing(in).water()));
        return all;
    }

    /** By Haider and Levenspiel: of a sphere, or of a sphericity. */
    private static double drag(Inputs in) {
        double reynolds = in.number("reynolds");
        return in.has("sphericity")
                ? DragKernel.ofSphericity(in.number("sphericity"), reynolds)
                : DragKernel.sphere(reynolds);
    }

    private static TubeMixingKernel mixing(Inputs in) {
        double tubeM = in.si("tube", Kind.LENGTH);
        double exitM = in.has("exit-bore") ? in.si("exit-bore", Kind.LENGTH) : tubeM;
        double drag = TubeMixingKernel.dragPerM(
                in.number("contact-drag"),
                in.number("cd") / in.number("psi"),
                in.number("rho0") / in.si("grain-density", Kind.DENSITY),
                in.si("orifice", Kind.LENGTH) / tubeM,
                in.si("grain", Kind.LENGTH));
        return new TubeMixingKernel(
                drag, in.number("loading"), in.number("wall") / tubeM, in.si("length", Kind.LENGTH), exitM / tubeM);
    }

    private static Map<String, Subject> ofHeads() {
        return Map.of(
                "abrasive-speed", in -> Computed.of(Setups.abrasiveJet(in).particleSpeed()),
                "loading-ratio",
                        in -> Computed.of(Kind.RATIO, Setups.abrasiveJet(in).loadingRatio()),
                "mesh-mean", in -> Computed.of(Kind.LENGTH, mesh(in).meanGrainSize()),
                "mesh-smallest", in -> Computed.of(Kind.LENGTH, mesh(in).minimumGrainSize()),
                "mesh-largest", in -> Computed.of(Kind.LENGTH, mesh(in).maximumGrainSize()));
    }

    private static Mesh mesh(Inputs in) {
        return in.has("fepa") ? Mesh.fepa((int) in.number("fepa")) : Mesh.of((int) in.number("mesh"));
    }
}
