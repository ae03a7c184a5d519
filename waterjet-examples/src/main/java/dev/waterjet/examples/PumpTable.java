package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.litresPerMinute;

import dev.waterjet.hydraulics.Compression;
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
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What a pump does to the water, and the motor that it asks for. */
@Command(name = "pump", description = "Work and heat that a pump puts into water, and the power of its motor.")
final class PumpTable extends Program {

    @Option(
            names = "--pressure",
            converter = Typed.Pressures.class,
            paramLabel = "<pressures>",
            description = "Absolute pressure behind the pump, or range. Usual: \"50 MPa..600 MPa step 50 MPa\".")
    private QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "50 MPa..600 MPa step 50 MPa");

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
            names = "--isentropic-efficiency",
            paramLabel = "<ratio>",
            description = "Work without loss over work in the water. Usual: 1, no heating beyond compression.")
    private double isentropicEfficiency = 1;

    @Option(
            names = "--overall-efficiency",
            paramLabel = "<ratio>",
            description =
                    "Work without loss over work of the motor. Usual: 0.65, as of an intensifier; direct-drive pumps"
                            + " reach 0.85 to 0.95 (common practice, no source).")
    private double overallEfficiency = 0.65;

    @Override
    protected Table table() {
        WaterState inlet = Water.stable().atSi(101_325, Kind.TEMPERATURE.si(temperature));
        Quantity<MassFlow> massFlow = Kind.MASS_FLOW.of(Kind.VOLUME_FLOW.si(flow) * inlet.densitySi());
        Table table = Table.of("Compression of water from the standard atmosphere; pressures are absolute")
                .column("pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("outlet temperature", Kind.TEMPERATURE, Units.CELSIUS, 4)
                .column("outlet density", Kind.DENSITY, Units.KILOGRAM_PER_CUBIC_METRE, 5)
                .column("isentropic work", Kind.SPECIFIC_ENERGY, Units.KILOJOULE_PER_KILOGRAM, 5)
                .column("work", Kind.SPECIFIC_ENERGY, Units.KILOJOULE_PER_KILOGRAM, 5)
                .column("water power", Kind.POWER, Units.KILOWATT, 4)
                .column("motor power", Kind.POWER, Units.KILOWATT, 4);
        for (int i = 0; i < pressures.size(); i++) {
            Compression compression = Compression.of(inlet, pressures.get(i), isentropicEfficiency);
            table.row(
                    pressures.si(i),
                    compression.outlet().temperatureSi(),
                    compression.outlet().densitySi(),
                    Kind.SPECIFIC_ENERGY.si(compression.isentropicWork()),
                    Kind.SPECIFIC_ENERGY.si(compression.work()),
                    Kind.POWER.si(compression.power(massFlow)),
                    Kind.POWER.si(compression.motorPower(massFlow, overallEfficiency)));
        }
        return table;
    }
}
