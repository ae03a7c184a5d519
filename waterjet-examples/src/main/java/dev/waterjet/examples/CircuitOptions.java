package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;

import dev.waterjet.circuit.Circuit;
import dev.waterjet.circuit.CircuitBuilder;
import dev.waterjet.circuit.IntensifierDrive;
import dev.waterjet.circuit.PumpDrive;
import dev.waterjet.circuit.ValveEvent;
import dev.waterjet.hydraulics.Compression;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Options that describe a circuit: pump and attenuator, supply line, manifold, and a whip to each head. */
final class CircuitOptions {

    private static final double OUTER_OVER_BORE = 3;

    /** Flow of an intensifier at full oil flow over that of the heads. */
    private static final double RESERVE = 1.4;

    private static final double RELIEF_OVER_PRESSURE = 1.05;

    @Option(
            names = "--pressure",
            converter = Typed.Pressure.class,
            paramLabel = "<pressure>",
            description = "Gauge pressure for which the pump is sized, or that an intensifier holds. Default: 380 MPa.")
    private Quantity<Pressure> pressure = megapascals(380);

    @Option(
            names = "--temperature",
            converter = Typed.Temperature.class,
            paramLabel = "<temperature>",
            description = "Water temperature at the intake. Default: 20 °C.")
    private Quantity<Temperature> temperature = celsius(20);

    @Option(
            names = "--kind",
            converter = PumpOptions.Kinds.class,
            paramLabel = "<kind>",
            description = "intensifier or direct-drive. Default: direct-drive.")
    private PumpOptions.PumpKind kind = PumpOptions.PumpKind.DIRECT_DRIVE;

    @Mixin
    private PumpOptions pumps = new PumpOptions();

    @Option(
            names = "--dead-volume",
            paramLabel = "<ratio>",
            description = "Dead volume over stroke volume. Default: 0.5 for a direct-drive pump, 0.1 for an intensifier"
                    + " (assumed).")
    private Optional<Double> deadVolume = Optional.empty();

    @Option(
            names = "--stroke-volume",
            converter = Typed.Volume.class,
            paramLabel = "<volume>",
            description = "Swept volume of one stroke. Default: what the open heads take for a direct-drive pump,"
                    + " 0.1 L for an intensifier.")
    private Optional<Quantity<Volume>> strokeVolume = Optional.empty();

    @Option(
            names = "--precompression",
            description = "An intensifier compresses the filled side before the other ends its stroke.")
    private boolean precompression;

    @Option(
            names = "--attenuator",
            converter = Typed.Volume.class,
            paramLabel = "<volume>",
            description = "Volume of the attenuator; 0 L for none. Default: 1 L.")
    private Quantity<Volume> attenuator = Kind.VOLUME.of(1e-3);

    @Option(
            names = "--diameter-ratio",
            paramLabel = "<ratio>",
            description = "Outer over inner diameter of the steel attenuator. Default: 2.5.")
    private double diameterRatio = 2.5;

    @Option(
            names = "--line",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Length of the supply line from pump to manifold. Default: 20 m.")
    private Quantity<Length> lineLength = metres(20);

    @Option(
            names = "--line-bore",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Bore of the supply line, of steel three times as wide. Default: 4.8 mm.")
    private Quantity<Length> lineBore = millimetres(4.8);

    @Option(
            names = "--whip",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Length of the whip from the manifold to each head. Default: 3 m.")
    private Quantity<Length> whipLength = metres(3);

    @Option(
            names = "--whip-bore",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Bore of the whips. Default: 2.4 mm.")
    private Quantity<Length> whipBore = millimetres(2.4);

    @Option(
            names = "--orifice",
            converter = Typed.Length.class,
            split = ",",
            paramLabel = "<length>",
            description = "Bore of the orifice of each head, separated by commas. Default: \"0.25 mm,0.25 mm\".")
    private List<Quantity<Length>> orifices = List.of(millimetres(0.25), millimetres(0.25));

    @Option(
            names = "--close",
            paramLabel = "<head>",
            description = "Number of a head that shuts, counted from 1. Default: none does.")
    private Optional<Integer> closing = Optional.empty();

    @Option(
            names = "--close-at",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Time at which it begins to shut. Default: 0.5 s.")
    private Quantity<Time> closeAt = seconds(0.5);

    @Option(
            names = "--close-time",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Time that the valve takes to shut, or to open again. Default: 0.02 s.")
    private Quantity<Time> closeTime = seconds(0.02);

    @Option(
            names = "--open-at",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Time at which the shut head begins to open again. Default: it stays shut.")
    private Optional<Quantity<Time>> openAt = Optional.empty();

    @Option(
            names = "--relief",
            converter = Typed.Pressure.class,
            paramLabel = "<pressure>",
            description = "Gauge pressure at which the relief valve at the pump opens. Default: 5 %% above --pressure.")
    private Optional<Quantity<Pressure>> relief = Optional.empty();

    @Option(
            names = "--relief-bore",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Bore of the open relief valve. Default: 0.6 mm.")
    private Quantity<Length> reliefBore = millimetres(0.6);

    Circuit circuit() {
        WaterState inlet = Water.stable().atSi(Program.ATMOSPHERE_PA, Kind.TEMPERATURE.si(temperature));
        CircuitBuilder circuit = Circuit.around(pressure, inlet);
        if (Kind.VOLUME.si(attenuator) != 0) {
            circuit.vessel("pump", PumpOptions.steelAttenuator(attenuator, diameterRatio));
        }
        circuit.pump("pump", drive(inlet))
                .line("pump", "manifold", tubing(lineBore).withLength(lineLength))
                .reliefValve("pump", Orifice.sapphire(reliefBore), reliefPressure(), seconds(0.005));
        for (int i = 0; i < orifices.size(); i++) {
            circuit.line("manifold", head(i), tubing(whipBore).withLength(whipLength))
                    .head(head(i), Orifice.sapphire(orifices.get(i)), events(i));
        }
        return circuit.build();
    }

    /** {@return the name of a head} */
    static String head(int index) {
        return "head " + (index + 1);
    }

    /** {@return the time of the first motion of a valve, if there is one} */
    Optional<Quantity<Time>> event() {
        return closing.map(head -> closeAt);
    }

    private Quantity<Pressure> reliefPressure() {
        return relief.orElseGet(() -> Kind.PRESSURE.of(RELIEF_OVER_PRESSURE * Kind.PRESSURE.si(pressure)));
    }

    private static SupplyLine.Section tubing(Quantity<Length> bore) {
        ThickTube wall = ThickTube.of(bore, Kind.LENGTH.of(OUTER_OVER_BORE * Kind.LENGTH.si(bore)))
                .withElasticity(PumpOptions.STEEL_MODULUS, PumpOptions.STEEL_POISSON_RATIO);
        return SupplyLine.Section.ofBore(bore).withWall(wall, Ends.OPEN);
    }

    private ValveEvent[] events(int head) {
        if (closing.isEmpty()) {
            return new ValveEvent[0];
        }
        Require.between("number of the head that shuts", closing.get(), 1, orifices.size(), Units.ONE, "");
        if (closing.get() != head + 1) {
            return new ValveEvent[0];
        }
        ValveEvent shut = ValveEvent.closing(closeAt, closeTime);
        return openAt.map(at -> new ValveEvent[] {shut, ValveEvent.opening(at, closeTime)})
                .orElseGet(() -> new ValveEvent[] {shut});
    }

    private double volumeFlow() {
        return orifices.stream()
                .mapToDouble(bore -> WaterJet.of(Orifice.sapphire(bore), pressure, temperature)
                        .volumeFlowSi())
                .sum();
    }

    private PumpDrive drive(WaterState inlet) {
        if (kind == PumpOptions.PumpKind.INTENSIFIER) {
            Intensifier pump = pumps.intensifier(strokeVolume.orElse(PumpOptions.STROKE_VOLUME));
            double needed = Kind.FREQUENCY.si(pump.strokes(Kind.MASS_FLOW.of(volumeFlow() * inlet.densitySi()), inlet));
            IntensifierDrive drive = PumpDrive.of(pump, pressure, Kind.FREQUENCY.of(RESERVE * needed))
                    .withDeadVolume(deadVolume.orElse(0.1));
            return precompression ? drive.withPrecompression() : drive;
        }
        double dead = deadVolume.orElse(0.5);
        return PumpDrive.of(pumps.directDrive(strokeVolume.orElseGet(() -> stroke(inlet, dead)), dead));
    }

    /** Stroke volume by which the pump feeds all heads. */
    private Quantity<Volume> stroke(WaterState inlet, double dead) {
        Compression compression =
                Compression.isentropic(inlet, Program.absolute("gauge pressure of the circuit", pressure));
        DirectDrivePump unit = pumps.directDrive(Kind.VOLUME.of(1), dead);
        return Kind.VOLUME.of(volumeFlow() / Kind.VOLUME_FLOW.si(unit.flow(compression)));
    }
}
