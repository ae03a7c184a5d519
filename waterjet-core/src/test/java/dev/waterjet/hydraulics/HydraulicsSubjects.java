package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import dev.waterjet.vessel.CrackLeak;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;

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
        all.put("pressure-cycles-per-hour", in -> Computed.of(cycles(in)));
        all.put("leak-flow", in -> Computed.of(leak(in)));
        all.put("water-modulus", in -> Computed.of(Kind.PRESSURE, modulus(in)));
        addPumps(all);
        all.put("jet-contraction", in -> Computed.of(contraction(in).coefficient()));
        all.put("jet-diameter", in -> Computed.of(Kind.LENGTH, contraction(in).diameter()));
        all.put("jet-reynolds", in -> Computed.of(contraction(in).reynolds()));
        all.put("jet-weber", in -> Computed.of(contraction(in).weber()));
        all.put("vessel-blowdown-time", in -> Computed.of(blowDown(in)));
        // in MPa/s, a number without unit in the rows
        all.put("vessel-pressure-rise", in -> Computed.of(pressureRate(in) / 1e6));
        all.put("line-wave-speed", in -> Computed.of(Kind.SPEED, section(in).waveSpeed(inLine(in))));
        all.put("line-loss", in -> Computed.of(lineLoss(in)));
        all.put(
                "line-surge",
                in -> Computed.of(
                        Kind.PRESSURE, SupplyLine.of(section(in)).surge(in.get("change", Kind.MASS_FLOW), inLine(in))));
        all.put("attenuator-ripple-isentropic", in -> Computed.of(Kind.PRESSURE, ripple(in)));
        return all;
    }

    private static void addPumps(Map<String, Subject> all) {
        all.put("crank-pump-swing", in -> Computed.of(Kind.RATIO, pump(in).flowRipple()));
        all.put(
                "crank-pump-swing-compressible",
                in -> Computed.of(
                        Kind.RATIO,
                        isIncompressible(in) ? pump(in).flowRipple() : pump(in).flowRipple(compression(in))));
        all.put("crank-pump-gap-compressible", in -> Computed.of(fluctuation(in)));
        all.put(
                "crank-pump-volumetric-efficiency",
                in -> Computed.of(Kind.RATIO, pump(in).volumetricEfficiency(compression(in))));
        all.put("crank-pump-delivery-angle", in -> Computed.of(Kind.ANGLE, pump(in).deliveryAngle(compression(in))));
        all.put(
                "pump-isentropic-work",
                in -> Computed.of(Kind.SPECIFIC_ENERGY, fromAtmosphere(in).isentropicWork()));
        all.put("rated-over-isentropic-power", in -> Computed.of(ratedOverIsentropic(in)));
    }

    /** Of a crank, or of one side of an intensifier. */
    private static double cycles(Inputs in) {
        Compression compression = Compression.isentropic(tap(in), Kind.PRESSURE.of(380e6));
        if (in.has("turns")) {
            return PressureCycles.ofCylinder(
                            DirectDrivePump.of(3, Kind.VOLUME.of(1e-5), in.get("turns", Kind.FREQUENCY)), compression)
                    .perHour();
        }
        double strokeM3 = 1e-4;
        double flow = in.si("strokes", Kind.FREQUENCY) * strokeM3 * tap(in).densitySi();
        return PressureCycles.ofSide(Intensifier.of(20, Kind.VOLUME.of(strokeM3)), Kind.MASS_FLOW.of(flow), compression)
                .perHour();
    }

    private static Estimate<MassFlow> leak(Inputs in) {
        return CrackLeak.of(in.get("length", Kind.LENGTH), in.get("stress", Kind.PRESSURE), in.get("E", Kind.PRESSURE))
                .massFlow(Kind.PRESSURE.of(absolutePa(in, "pressure") - 101_325), tap(in));
    }

    private static boolean isIncompressible(Inputs in) {
        return in.text("outlet").equals("incompressible");
    }

    private static DirectDrivePump pump(Inputs in) {
        DirectDrivePump pump = DirectDrivePump.of(
                        (int) in.number("plungers"), Kind.VOLUME.of(1e-5), Kind.FREQUENCY.of(10))
                .withRodRatio(in.number("rod-ratio"));
        if (in.has("dead-volume")) {
            pump = pump.withDeadVolume(in.number("dead-volume"));
        }
        return in.has("suction-closes") || in.has("delivery-closes")
                ? pump.withValveTiming(angle(in, "suction-closes"), angle(in, "delivery-closes"))
                : pump;
    }

    private static Quantity<Angle> angle(Inputs in, String name) {
        return in.has(name) ? in.get(name, Kind.ANGLE) : Kind.ANGLE.of(0);
    }

    /** Fluctuating volume over the volume of one turn, both at the outlet. */
    private static double fluctuation(Inputs in) {
        DirectDrivePump pump = pump(in);
        if (isIncompressible(in)) {
            return Kind.VOLUME.si(pump.fluctuatingVolume()) / (Kind.VOLUME_FLOW.si(pump.flow()) / 10);
        }
        Compression compression = compression(in);
        double massPerTurn = Kind.VOLUME_FLOW.si(pump.flow(compression))
                / 10
                * compression.inlet().densitySi();
        return Kind.VOLUME.si(pump.fluctuatingVolume(compression))
                * compression.outlet().densitySi()
                / massPerTurn;
    }

    private static Compression fromAtmosphere(Inputs in) {
        WaterState inlet = Water.stable().atSi(101_325, in.si("inlet", Kind.TEMPERATURE));
        return Compression.isentropic(inlet, Kind.PRESSURE.of(absolutePa(in, "outlet")));
    }

    private static double ratedOverIsentropic(Inputs in) {
        Compression compression = fromAtmosphere(in);
        double gaugePa = absolutePa(in, "outlet") - 101_325;
        return gaugePa / compression.inlet().densitySi() / Kind.SPECIFIC_ENERGY.si(compression.isentropicWork());
    }

    /** A pressure that may say what it is measured from: absolute unless it says gauge. */
    private static double absolutePa(Inputs in, String name) {
        String text = in.text(name);
        String plain = text.replaceAll("\\b(absolute|abs|gauge)\\b", "").strip();
        return Kind.PRESSURE.si(Kind.PRESSURE.parse(plain)) + (text.contains("gauge") ? 101_325 : 0);
    }

    private static Quantity<Pressure> ripple(Inputs in) {
        WaterState water = Water.stable().atSi(absolutePa(in, "pressure"), in.si("temperature", Kind.TEMPERATURE));
        Attenuator vessel = walled(Attenuator.of(Kind.VOLUME.of(1e-3)), in.text("wall"));
        return vessel.ripple(Kind.VOLUME.of(1e-3 * in.number("drawn")), water);
    }

    private static WaterState tap(Inputs in) {
        return Water.stable().atSi(101_325, in.has("temperature") ? in.si("temperature", Kind.TEMPERATURE) : 293.15);
    }

    private static Attenuator vessel(Inputs in) {
        String volume = in.text("volume").replace("at rest", "").strip();
        return walled(Attenuator.of(Kind.VOLUME.parse(volume)), in.text("wall"));
    }

    private static Estimate<Time> blowDown(Inputs in) {
        Orifice orifice = Orifice.sapphire(in.get("orifice", Kind.LENGTH)).withDischargeCoefficient(in.number("cd"));
        return vessel(in)
                .blowDownTime(
                        orifice,
                        Kind.PRESSURE.of(absolutePa(in, "from") - 101_325),
                        Kind.PRESSURE.of(absolutePa(in, "to") - 101_325),
                        tap(in));
    }

    private static double pressureRate(Inputs in) {
        double outKgPerS = in.text("flow out").equals("0") ? 0 : in.si("flow out", Kind.MASS_FLOW);
        WaterState water = Water.stable().atEntropySi(absolutePa(in, "pressure"), tap(in).entropySi());
        return vessel(in).pressureRateSi(Kind.MASS_FLOW.of(in.si("flow in", Kind.MASS_FLOW) - outKgPerS), water);
    }

    private static JetContraction contraction(Inputs in) {
        Orifice orifice = Orifice.sapphire(in.get("orifice", Kind.LENGTH)).withDischargeCoefficient(in.number("cd"));
        Quantity<Pressure> gauge = Kind.PRESSURE.of(absolutePa(in, "pressure") - 101_325);
        return JetContraction.of(WaterJet.of(orifice, gauge, in.get("temperature", Kind.TEMPERATURE)), in.number("cv"));
    }

    /** Water compressed from 20 C and the standard atmosphere, unless the row gives a temperature at the intake. */
    private static WaterState inLine(Inputs in) {
        double intakeK = in.has("temperature") ? in.si("temperature", Kind.TEMPERATURE) : 293.15;
        WaterState intake = Water.stable().atSi(101_325, intakeK);
        return Water.stable().atEntropySi(absolutePa(in, "pressure"), intake.entropySi());
    }

    private static SupplyLine.Section section(Inputs in) {
        Quantity<Length> bore = in.get("bore", Kind.LENGTH);
        SupplyLine.Section section = SupplyLine.Section.ofBore(bore);
        if (!in.has("outer")) {
            return section;
        }
        ThickTube wall = ThickTube.of(bore, in.get("outer", Kind.LENGTH))
                .withElasticity(in.get("E", Kind.PRESSURE), in.number("nu"));
        return section.withWall(wall, Ends.valueOf(in.text("ends").toUpperCase(Locale.ROOT)));
    }

    /** By Colebrook, with the properties at the pressure and temperature of the row. */
    private static Estimate<Pressure> lineLoss(Inputs in) {
        SupplyLine.Section section = SupplyLine.Section.ofBore(in.get("bore", Kind.LENGTH))
                .withLength(in.get("length", Kind.LENGTH))
                .withRoughness(in.get("roughness", Kind.LENGTH));
        WaterState water = Water.stable().atSi(absolutePa(in, "pressure"), in.si("temperature", Kind.TEMPERATURE));
        return SupplyLine.of(section)
                .withFrictionCorrelation(FrictionCorrelation.COLEBROOK)
                .loss(in.get("flow", Kind.MASS_FLOW), water);
    }

    /** "stiff", or "open tube k=2.5 E=200 GPa nu=0.29". */
    private static Attenuator walled(Attenuator vessel, String wall) {
        Matcher tube =
                Pattern.compile("(open|closed).*?k=(\\S+) E=(.+) nu=(\\S+)").matcher(wall);
        if (!tube.matches()) {
            return vessel;
        }
        ThickTube walls = ThickTube.of(Kind.LENGTH.of(1), Kind.LENGTH.of(Double.parseDouble(tube.group(2))))
                .withElasticity(Kind.PRESSURE.parse(tube.group(3)), Double.parseDouble(tube.group(4)));
        return vessel.withWall(walls, Ends.valueOf(tube.group(1).toUpperCase(Locale.ROOT)));
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
