package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.litresPerMinute;

import dev.waterjet.hydraulics.Compression;
import dev.waterjet.hydraulics.DirectDrivePump;
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
import javax.measure.quantity.Volume;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Program that prints work, heat, motor power and flow ripple of a pump. */
@Command(
        name = "pump",
        description =
                "Print the work and heat that a pump transfers to water, the power of its motor, and the ripple of"
                        + " its flow.")
final class PumpTable extends Program {

    @Option(
            names = "--pressure",
            converter = Typed.Pressures.class,
            paramLabel = "<pressures>",
            description = "Gauge pressure at the pump outlet, or range. Default: \"50 MPa..600 MPa step 50 MPa\".")
    private QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "50 MPa..600 MPa step 50 MPa");

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
            names = "--isentropic-efficiency",
            paramLabel = "<ratio>",
            description = "Isentropic work over work transferred to the water. Default: 1, no heat from losses.")
    private double isentropicEfficiency = 1;

    @Option(
            names = "--overall-efficiency",
            paramLabel = "<ratio>",
            description = "Isentropic work over motor work. Default: 0.65, typical of intensifiers; direct-drive pumps"
                    + " reach 0.85 to 0.95 (common practice, no source).")
    private double overallEfficiency = 0.65;

    @Option(
            names = "--kind",
            converter = PumpOptions.Kinds.class,
            paramLabel = "<kind>",
            description = "intensifier or direct-drive. Default: intensifier.")
    private PumpOptions.PumpKind kind = PumpOptions.PumpKind.INTENSIFIER;

    @Option(
            names = "--dead-volume",
            paramLabel = "<ratio>",
            description =
                    "Dead volume over stroke volume of a direct-drive pump. Default: 0.5 (assumed). The dead volume"
                            + " of an intensifier is neglected.")
    private double deadVolume = 0.5;

    @Option(
            names = "--stroke-volume",
            converter = Typed.Volume.class,
            paramLabel = "<volume>",
            description = "Swept volume of one stroke of an intensifier. Default: 0.1 L. That of a direct-drive pump"
                    + " follows from flow and speed.")
    private Quantity<Volume> strokeVolume = PumpOptions.STROKE_VOLUME;

    @Mixin
    private PumpOptions pumps = new PumpOptions();

    /** Flow ripple and fluctuating volume. */
    private double[] ripple(Quantity<MassFlow> massFlow, Compression compression) {
        if (kind == PumpOptions.PumpKind.INTENSIFIER) {
            Intensifier pump = pumps.intensifier(strokeVolume);
            return new double[] {
                Kind.RATIO.si(pump.flowRipple(massFlow, compression)),
                Kind.VOLUME.si(pump.fluctuatingVolume(massFlow, compression))
            };
        }
        DirectDrivePump like = pumps.directDrive(Kind.VOLUME.of(1), deadVolume);
        double strokeM3 = Kind.VOLUME_FLOW.si(flow) / Kind.VOLUME_FLOW.si(like.flow(compression));
        return new double[] {
            Kind.RATIO.si(like.flowRipple(compression)), strokeM3 * Kind.VOLUME.si(like.fluctuatingVolume(compression))
        };
    }

    @Override
    protected Table table() {
        WaterState inlet = Water.stable().atSi(ATMOSPHERE_PA, Kind.TEMPERATURE.si(temperature));
        Quantity<MassFlow> massFlow = Kind.MASS_FLOW.of(Kind.VOLUME_FLOW.si(flow) * inlet.densitySi());
        Table table = Table.of("Compression of water from the standard atmosphere")
                .column("gauge pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("outlet temperature", Kind.TEMPERATURE, Units.CELSIUS, 4)
                .column("outlet density", Kind.DENSITY, Units.KILOGRAM_PER_CUBIC_METRE, 5)
                .column("isentropic work", Kind.SPECIFIC_ENERGY, Units.KILOJOULE_PER_KILOGRAM, 5)
                .column("work", Kind.SPECIFIC_ENERGY, Units.KILOJOULE_PER_KILOGRAM, 5)
                .column("water power", Kind.POWER, Units.KILOWATT, 4)
                .column("motor power", Kind.POWER, Units.KILOWATT, 4)
                .column("rated power", Kind.POWER, Units.KILOWATT, 4)
                .number("flow ripple", 3)
                .column("fluctuating volume", Kind.VOLUME, Units.CUBIC_MILLIMETRE, 3)
                .note("Rated power is gauge pressure times flow rate at ambient density; water power is the work on"
                        + " the water.")
                .note("Danger: high-pressure water injures without being felt. The pump's manual decides how it is"
                        + " run.");
        for (int i = 0; i < pressures.size(); i++) {
            Quantity<Pressure> outlet = absolute("gauge pressure at the pump outlet", pressures.get(i));
            Compression compression = Compression.of(inlet, outlet, isentropicEfficiency);
            double[] ripple = ripple(massFlow, compression);
            table.row(
                    pressures.si(i),
                    compression.outlet().temperatureSi(),
                    compression.outlet().densitySi(),
                    Kind.SPECIFIC_ENERGY.si(compression.isentropicWork()),
                    Kind.SPECIFIC_ENERGY.si(compression.work()),
                    Kind.POWER.si(compression.power(massFlow)),
                    Kind.POWER.si(compression.motorPower(massFlow, overallEfficiency)),
                    pressures.si(i) * Kind.VOLUME_FLOW.si(flow),
                    ripple[0],
                    ripple[1]);
        }
        return table;
    }
}
