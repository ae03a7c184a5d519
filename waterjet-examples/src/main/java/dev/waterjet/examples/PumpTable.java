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

/** Program that prints work, heat and motor power of a pump. */
@Command(
        name = "pump",
        description = "Print the work and heat that a pump transfers to water, and the power of its motor.")
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
                .column("motor power", Kind.POWER, Units.KILOWATT, 4);
        for (int i = 0; i < pressures.size(); i++) {
            Quantity<Pressure> outlet = absolute("gauge pressure at the pump outlet", pressures.get(i));
            Compression compression = Compression.of(inlet, outlet, isentropicEfficiency);
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
