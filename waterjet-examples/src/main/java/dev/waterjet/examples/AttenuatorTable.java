package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;

import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.Compression;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Program that sizes the attenuator of an intensifier. */
@Command(
        name = "attenuator",
        description =
                "Print the attenuator volume that limits the pressure ripple of an intensifier to a required value.")
final class AttenuatorTable extends Program {

    @Option(
            names = "--ripple",
            converter = Typed.Pressures.class,
            paramLabel = "<ripples>",
            description = "Required pressure ripple (peak to peak), or range. Default: \"5 MPa..25 MPa step 5 MPa\".")
    private QuantityArray<Pressure> ripples = QuantityArray.parse(Kind.PRESSURE, "5 MPa..25 MPa step 5 MPa");

    @Option(
            names = "--pressure",
            converter = Typed.Pressure.class,
            paramLabel = "<pressure>",
            description = "Mean gauge pressure. Default: 380 MPa.")
    private Quantity<Pressure> pressure = megapascals(380);

    @Option(
            names = "--temperature",
            converter = Typed.Temperature.class,
            paramLabel = "<temperature>",
            description = "Water temperature at the intake. Default: 20 °C.")
    private Quantity<Temperature> temperature = celsius(20);

    @Option(
            names = "--flow",
            converter = Typed.VolumeFlow.class,
            paramLabel = "<flow>",
            description = "Water flow rate at ambient density. Default: 3.8 L/min.")
    private Quantity<VolumeFlow> flow = litresPerMinute(3.8);

    @Option(
            names = "--stroke-volume",
            converter = Typed.Volume.class,
            paramLabel = "<volume>",
            description = "Swept volume of one stroke. Default: 0.1 L.")
    private Quantity<Volume> strokeVolume = PumpOptions.STROKE_VOLUME;

    @Option(
            names = "--reversal-time",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Reversal time: neither side delivers. Default: 0.03 s.")
    private Quantity<Time> reversalTime = seconds(0.03);

    @Option(
            names = "--diameter-ratio",
            paramLabel = "<ratio>",
            description = "Outer over inner diameter of the steel vessel. Default: 2.5.")
    private double diameterRatio = 2.5;

    @Override
    protected Table table() {
        WaterState inlet = Water.stable().atSi(ATMOSPHERE_PA, Kind.TEMPERATURE.si(temperature));
        Quantity<Pressure> outlet = absolute("mean gauge pressure", pressure);
        Compression compression = Compression.isentropic(inlet, outlet);
        Quantity<MassFlow> massFlow = Kind.MASS_FLOW.of(Kind.VOLUME_FLOW.si(flow) * inlet.densitySi());
        Intensifier pump = PumpOptions.intensifier(strokeVolume, reversalTime);
        Quantity<Volume> fluctuating = pump.fluctuatingVolume(massFlow, compression);
        Attenuator like = PumpOptions.steelAttenuator(strokeVolume, diameterRatio);
        Table table = Table.of("Attenuator behind an intensifier")
                .column("ripple", Kind.PRESSURE, Units.MEGAPASCAL, 3)
                .column("gauge pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("strokes", Kind.FREQUENCY, Units.PER_MINUTE, 3)
                .column("flow gap", Kind.VOLUME, Units.CUBIC_MILLIMETRE, 3)
                .column("effective modulus", Kind.PRESSURE, Units.GIGAPASCAL, 4)
                .column("volume", Kind.VOLUME, Units.LITRE, 3)
                .note("Danger: a vessel at this pressure stores enough energy to kill. Its maker designs it by the"
                        + " pressure-vessel code in force.");
        for (int i = 0; i < ripples.size(); i++) {
            Attenuator sized = like.forRipple(fluctuating, ripples.get(i), compression.outlet());
            table.row(
                    ripples.si(i),
                    Kind.PRESSURE.si(pressure),
                    Kind.FREQUENCY.si(pump.strokes(massFlow, inlet)),
                    Kind.VOLUME.si(fluctuating),
                    Kind.PRESSURE.si(sized.effectiveBulkModulus(compression.outlet())),
                    Kind.VOLUME.si(sized.volume()));
        }
        return table;
    }
}
