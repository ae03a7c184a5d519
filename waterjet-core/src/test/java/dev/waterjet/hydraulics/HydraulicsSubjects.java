package dev.waterjet.hydraulics;

import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import java.util.HashMap;
import java.util.Map;

/** What the suite can ask of this package. */
public final class HydraulicsSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        Map<String, Subject> all = new HashMap<>(ofJets());
        all.put(
                "isentropic-jet-speed",
                in -> Computed.of(Kind.SPEED, isentropic(in).speed()));
        all.put(
                "isentropic-exit-temperature",
                in -> Computed.of(Kind.TEMPERATURE, isentropic(in).exitTemperature()));
        return all;
    }

    private static IsentropicJet isentropic(Inputs in) {
        return IsentropicJet.of(in.get("pressure", Kind.PRESSURE), in.get("temperature", Kind.TEMPERATURE));
    }

    private static Map<String, Subject> ofJets() {
        return Map.of(
                "jet-speed", in -> Computed.of(Kind.SPEED, Setups.waterJet(in).speed()),
                "water-volume-flow",
                        in -> Computed.of(Kind.VOLUME_FLOW, Setups.waterJet(in).volumeFlow()),
                "water-mass-flow",
                        in -> Computed.of(Kind.MASS_FLOW, Setups.waterJet(in).massFlow()),
                "hydraulic-power",
                        in -> Computed.of(Kind.POWER, Setups.waterJet(in).hydraulicPower()),
                "reaction-force",
                        in -> Computed.of(Kind.FORCE, Setups.waterJet(in).reactionForce()));
    }
}
