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

/** The attenuator that an intensifier needs. */
@Command(
        name = "attenuator",
        description =
                "Volume of the attenuator behind an intensifier that keeps the ripple of pressure as small as wanted.")
final class AttenuatorTable extends Program {

    /** Only the stroke matters to the gap, not the ratio of areas. */
    private static final double ANY_AREA_RATIO = 20;

    private static final Quantity<Pressure> STEEL = megapascals(200_000);
    private static final double STEEL_POISSON = 0.29;

    @Option(
            names = "--ripple",
            converter = Typed.Pressures.class,
            paramLabel = "<ripples>",
            description =
                    "Wanted ripple from highest to lowest pressure, or range. Usual: \"5 MPa..25 MPa step 5 MPa\".")
    private QuantityArray<Pressure> ripples = QuantityArray.parse(Kind.PRESSURE, "5 MPa..25 MPa step 5 MPa");

    @Option(
            names = "--pressure",
            converter = Typed.Pressure.class,
            paramLabel = "<pressure>",
            description = "Mean absolute pressure. Usual: 380 MPa.")
    private Quantity<Pressure> pressure = megapascals(380);

    @Option(
            names = "--temperature",
            converter = Typed.Temperature.class,
            paramLabel = "<temperature>",
            description = "Temperature of the water that the pump draws. Usual: 20 C.")
    private Quantity<Temperature> temperature = celsius(20);

    @Option(
            names = "--flow",
            converter = Typed.VolumeFlow.class,
            paramLabel = "<flow>",
            description = "Water used, by volume at the intake. Usual: 3.8 L/min.")
    private Quantity<VolumeFlow> flow = litresPerMinute(3.8);

    @Option(
            names = "--stroke-volume",
            converter = Typed.Volume.class,
            paramLabel = "<volume>",
            description = "Volume that the plunger sweeps in one stroke. Usual: 0.1 L.")
    private Quantity<Volume> strokeVolume = Kind.VOLUME.of(1e-4);

    @Option(
            names = "--reversal-time",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Time in which neither side moves at a reversal. Usual: 0.03 s.")
    private Quantity<Time> shiftTime = seconds(0.03);

    @Option(
            names = "--diameter-ratio",
            paramLabel = "<ratio>",
            description = "Outer over inner diameter of the vessel, of steel. Usual: 2.5.")
    private double wall = 2.5;

    @Override
    protected Table table() {
        WaterState inlet = Water.stable().atSi(101_325, Kind.TEMPERATURE.si(temperature));
        Compression compression = Compression.isentropic(inlet, pressure);
        Quantity<MassFlow> massFlow = Kind.MASS_FLOW.of(Kind.VOLUME_FLOW.si(flow) * inlet.densitySi());
        Intensifier pump = Intensifier.of(ANY_AREA_RATIO, strokeVolume).withReversalTime(shiftTime);
        Quantity<Volume> gap = pump.fluctuatingVolume(massFlow, compression);
        Attenuator like = Attenuator.of(strokeVolume).withDiameterRatio(wall, STEEL, STEEL_POISSON);
        Table table = Table.of("Attenuator behind an intensifier")
                .column("ripple", Kind.PRESSURE, Units.MEGAPASCAL, 3)
                .column("pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("strokes", Kind.FREQUENCY, Units.PER_MINUTE, 3)
                .column("flow gap", Kind.VOLUME, Units.CUBIC_MILLIMETRE, 3)
                .column("effective modulus", Kind.PRESSURE, Units.GIGAPASCAL, 4)
                .column("volume", Kind.VOLUME, Units.LITRE, 3)
                .note("A vessel at this pressure stores enough energy to kill: it is for its maker to design, by the"
                        + " pressure-vessel code in force.");
        for (int i = 0; i < ripples.size(); i++) {
            Attenuator sized = like.forRipple(gap, ripples.get(i), compression.outlet());
            table.row(
                    ripples.si(i),
                    Kind.PRESSURE.si(pressure),
                    Kind.FREQUENCY.si(pump.strokes(massFlow, inlet)),
                    Kind.VOLUME.si(gap),
                    Kind.PRESSURE.si(sized.effectiveBulkModulus(compression.outlet())),
                    Kind.VOLUME.si(sized.volume()));
        }
        return table;
    }
}
