package dev.waterjet.jet;

import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import java.util.Map;

/** Subjects of the reference suite in this package. */
public final class JetSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
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
