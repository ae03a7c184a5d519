package dev.waterjet.hydraulics;

import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;

/** Subjects of the reference suite in this package. */
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
        all.put("friction-factor", in -> Computed.of(friction(in)));
        all.put(
                "compression-work",
                in -> Computed.of(Kind.SPECIFIC_ENERGY, compression(in).isentropicWork()));
        all.put(
                "compression-outlet-temperature",
                in -> Computed.of(Kind.TEMPERATURE, compression(in).outlet().temperature()));
        all.put("water-modulus", in -> Computed.of(Kind.PRESSURE, modulus(in)));
        all.put(
                "crank-pump-swing",
                in -> Computed.of(CrankKernel.ripple((int) in.number("plungers"), in.number("rod-ratio"))));
        return all;
    }

    private static double friction(Inputs in) {
        return FrictionCorrelation.valueOf(
                        in.text("law").toUpperCase(Locale.ROOT).replace('-', '_'))
                .factor(in.number("reynolds"), in.number("roughness"));
    }

    private static Compression compression(Inputs in) {
        WaterState inlet = Water.stable().at(in.get("inlet", Kind.PRESSURE), in.get("temperature", Kind.TEMPERATURE));
        return Compression.isentropic(inlet, in.get("outlet", Kind.PRESSURE));
    }

    private static Quantity<Pressure> modulus(Inputs in) {
        WaterState water =
                Water.stable().at(in.get("pressure", Kind.PRESSURE), in.get("temperature", Kind.TEMPERATURE));
        return Attenuator.of(Kind.VOLUME.of(1e-3)).effectiveBulkModulus(water);
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
                        in -> Computed.of(Kind.POWER, Setups.waterJet(in).ratedHydraulicPower()),
                "reaction-force",
                        in -> Computed.of(Kind.FORCE, Setups.waterJet(in).reactionForce()));
    }
}
