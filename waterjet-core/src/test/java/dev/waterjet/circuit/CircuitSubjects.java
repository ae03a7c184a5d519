package dev.waterjet.circuit;

import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import org.apache.commons.math3.complex.Complex;

/** Subjects of the reference suite in this package. */
public final class CircuitSubjects implements Subjects {

    private static final double ATMOSPHERE_PA = 101_325;
    private static final int REACHES = 160;
    private static final String STEEL = "200 GPa";
    private static final double STEEL_POISSON = 0.29;

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "line-closure-peak",
                in -> answer(in, Kind.PRESSURE.si(closure(in).highest("head"))),
                "line-steady-head",
                in -> answer(in, closure(in).pressure("head").si(0)),
                "line-steady-flow",
                in -> Computed.of(Kind.MASS_FLOW, closure(in).massFlow("head").get(0)),
                "circuit-vessel-swing",
                in -> Computed.of(Kind.PRESSURE, periodic(in).ripple().at("vessel")),
                "circuit-head-swing",
                in -> Computed.of(Kind.PRESSURE, periodic(in).ripple().at(hasLine(in) ? "head" : "vessel")),
                "line-transfer-magnitude",
                in -> Computed.of(transfer(in)),
                "line-quarter-wave",
                in -> Computed.of(Kind.FREQUENCY, Kind.FREQUENCY.of(waves(in).quarterWaveHz())),
                "line-flow-energy",
                in -> Computed.of(Kind.ENERGY, Kind.ENERGY.of(flowEnergy(in))));
    }

    private static Computed answer(Inputs in, double gaugePa) {
        boolean isGauge = in.has("answer") && in.text("answer").equals("gauge");
        return Computed.of(Kind.PRESSURE, Kind.PRESSURE.of(gaugePa + (isGauge ? 0 : ATMOSPHERE_PA)));
    }

    /** Gauge pressure of an input that may say what it is measured from: absolute unless it says gauge. */
    private static Quantity<Pressure> gauge(Inputs in, String name) {
        String text = in.text(name);
        String plain = text.replaceAll("\\b(absolute|abs|gauge)\\b", "").strip();
        double pa = Kind.PRESSURE.si(Kind.PRESSURE.parse(plain));
        return Kind.PRESSURE.of(text.contains("gauge") ? pa : pa - ATMOSPHERE_PA);
    }

    private static WaterState tap(Inputs in) {
        return Water.stable()
                .atSi(ATMOSPHERE_PA, in.has("temperature") ? in.si("temperature", Kind.TEMPERATURE) : 293.15);
    }

    /** Orifice of "0.33 mm", with cd beside it or behind the bore. */
    private static Orifice orifice(Inputs in) {
        Matcher text = Pattern.compile("(.+?)(?:,?\\s*(?:with )?cd\\s+(\\S+))?").matcher(in.text("orifice"));
        if (!text.matches()) {
            throw new IllegalArgumentException(in.text("orifice"));
        }
        double coefficient =
                text.group(2) == null ? in.has("cd") ? in.number("cd") : 0.65 : Double.parseDouble(text.group(2));
        return Orifice.sapphire(Kind.LENGTH.parse(text.group(1))).withDischargeCoefficient(coefficient);
    }

    private static SupplyLine.Section section(Inputs in) {
        Quantity<Length> bore = in.get("bore", Kind.LENGTH);
        SupplyLine.Section section = SupplyLine.Section.ofBore(bore).withLength(in.get("length", Kind.LENGTH));
        if (in.has("roughness")) {
            section = section.withRoughness(in.get("roughness", Kind.LENGTH));
        }
        if (!in.has("outer")) {
            return section;
        }
        return section.withWall(
                wall(
                        bore,
                        in.get("outer", Kind.LENGTH),
                        in.has("E") ? in.text("E") : STEEL,
                        in.has("nu") ? in.number("nu") : STEEL_POISSON),
                in.has("ends") ? Ends.valueOf(in.text("ends").toUpperCase(Locale.ROOT)) : Ends.OPEN);
    }

    private static ThickTube wall(Quantity<Length> bore, Quantity<Length> outer, String modulus, double poisson) {
        return ThickTube.of(bore, outer).withElasticity(Kind.PRESSURE.parse(modulus), poisson);
    }

    /** Reservoir, line and a head that shuts as the row says. */
    private static PressureHistory closure(Inputs in) {
        double closingS = in.remark("(?:falls|closes|shuts)[a-z ]* in ([0-9.]+ ?[a-z]+)")
                .map(words -> Kind.TIME.si(Kind.TIME.parse(words.group(1))))
                .orElse(0.0);
        SupplyLine.Section section = section(in);
        Circuit circuit = Circuit.around(gauge(in, "reservoir"), tap(in))
                .reservoir("reservoir")
                .line("reservoir", "head", section)
                .head("head", orifice(in), ValveEvent.closing(Kind.TIME.of(0), Kind.TIME.of(closingS)))
                .build();
        return circuit.run(Kind.TIME.of(closingS + 8 * Kind.LENGTH.si(section.length()) / 2000), REACHES);
    }

    private static boolean hasLine(Inputs in) {
        return in.has("line") && !in.text("line").equals("none");
    }

    private static final Pattern LINE =
            Pattern.compile("(.+?) of ([0-9.]+)(?:/([0-9.]+))? mm(?: \\w+)?(?:, roughness (.+))?");

    /** "20 m of 4.8/14.4 mm, roughness 1.5 um". */
    private static SupplyLine.Section section(String text) {
        Matcher line = LINE.matcher(text);
        if (!line.matches()) {
            throw new IllegalArgumentException(text);
        }
        Quantity<Length> bore = Kind.LENGTH.parse(line.group(2) + " mm");
        SupplyLine.Section section = SupplyLine.Section.ofBore(bore).withLength(Kind.LENGTH.parse(line.group(1)));
        if (line.group(4) != null) {
            section = section.withRoughness(Kind.LENGTH.parse(line.group(4)));
        }
        return line.group(3) == null
                ? section
                : section.withWall(
                        wall(bore, Kind.LENGTH.parse(line.group(3) + " mm"), STEEL, STEEL_POISSON), Ends.OPEN);
    }

    private static final Pattern VESSEL = Pattern.compile(
            "(.+?)(?:, (?:wall )?(open|closed) k=([0-9.]+)(?: E=([0-9.]+ \\w+))?(?: nu=([0-9.]+))?|, .*)?");

    /** "1 L, wall open k=2.5". */
    private static Attenuator attenuator(String text) {
        Matcher vessel = VESSEL.matcher(text);
        if (!vessel.matches()) {
            throw new IllegalArgumentException(text);
        }
        Attenuator attenuator = Attenuator.of(Kind.VOLUME.parse(vessel.group(1)));
        if (vessel.group(2) == null) {
            return attenuator;
        }
        ThickTube wall = wall(
                Kind.LENGTH.of(1),
                Kind.LENGTH.of(Double.parseDouble(vessel.group(3))),
                vessel.group(4) == null ? STEEL : vessel.group(4),
                vessel.group(5) == null ? STEEL_POISSON : Double.parseDouble(vessel.group(5)));
        return attenuator.withWall(wall, Ends.valueOf(vessel.group(2).toUpperCase(Locale.ROOT)));
    }

    private static Circuit periodic(Inputs in) {
        Orifice orifice = in.remark("a ([0-9.]+ ?\\w+) orifice with cd ([0-9.]+)")
                .map(words -> Orifice.sapphire(Kind.LENGTH.parse(words.group(1)))
                        .withDischargeCoefficient(Double.parseDouble(words.group(2))))
                .orElseGet(() -> orifice(in));
        Quantity<Pressure> mean = gauge(in, "mean pressure");
        CircuitBuilder circuit = Circuit.around(mean, tap(in))
                .vessel("vessel", attenuator(in.text("attenuator")))
                .pump("vessel", PumpDrive.of(pump(in, orifice, mean)));
        if (!hasLine(in)) {
            return circuit.head("vessel", orifice).build();
        }
        return circuit.line("vessel", "head", section(in.text("line")))
                .head("head", orifice)
                .build();
    }

    /** Pump whose stroke feeds an orifice at a gauge pressure. */
    private static DirectDrivePump pump(Inputs in, Orifice orifice, Quantity<Pressure> mean) {
        WaterState tap = tap(in);
        double outPa = Kind.PRESSURE.si(mean) + ATMOSPHERE_PA;
        double out = Water.stable().atEntropySi(outPa, tap.entropySi()).densitySi();
        double flow = CircuitNode.effectiveArea(orifice) * Math.sqrt(2 * tap.densitySi() * Kind.PRESSURE.si(mean));
        DirectDrivePump unit = DirectDrivePump.of(
                        (int) in.number("plungers"), Kind.VOLUME.of(1), in.get("turns", Kind.FREQUENCY))
                .withRodRatio(in.number("rod-ratio"))
                .withDeadVolume(in.number("dead-volume"));
        double perTurn = unit.deliveredVolumeSi(0, 2 * Math.PI, out / tap.densitySi()) * out;
        double strokeM3 = flow / (perTurn * in.si("turns", Kind.FREQUENCY));
        return DirectDrivePump.of(
                        (int) in.number("plungers"), Kind.VOLUME.of(strokeM3), in.get("turns", Kind.FREQUENCY))
                .withRodRatio(in.number("rod-ratio"))
                .withDeadVolume(in.number("dead-volume"));
    }

    private static LineWaves waves(Inputs in) {
        WaterState water = Water.stable()
                .atEntropySi(Kind.PRESSURE.si(gauge(in, "pressure")) + ATMOSPHERE_PA, tap(in).entropySi());
        return new LineWaves(0, 1, section(in), water, 1e-4);
    }

    /** Pressure at the head over that at the begin of the line, for small changes. */
    private static double transfer(Inputs in) {
        Circuit circuit = Circuit.around(gauge(in, "pressure"), tap(in))
                .reservoir("begin")
                .line("begin", "head", section(in))
                .head("head", orifice(in))
                .build();
        CircuitRun run = circuit.started(circuit.stepS(REACHES));
        LineWaves line = run.lines().get(0);
        double headPa = run.nodes().get(1).pressure();
        if (in.has("friction") && in.text("friction").equals("none")) {
            line.leaveFrictionOut();
            headPa = run.nodes().get(0).pressure();
        }
        double angularHz = 2 * Math.PI * in.si("frequency", Kind.FREQUENCY);
        Complex[] ends = line.admittances(line.flowAtEnd(), angularHz);
        Complex head = run.nodes().get(1).admittance(headPa, angularHz);
        return ends[1].negate().divide(ends[0].add(head)).abs();
    }

    /** Energy of a flow in a line at the reference pressure, which stays in it once both ends are shut. */
    private static double flowEnergy(Inputs in) {
        WaterState water = Water.stable().atDensitySi(in.si("density", Kind.DENSITY), 303.15);
        LineWaves line = new LineWaves(0, 1, section(in), water, 1e-4);
        line.leaveFrictionOut();
        line.start(water.pressureSi(), in.si("flow", Kind.MASS_FLOW));
        return line.energy();
    }
}
