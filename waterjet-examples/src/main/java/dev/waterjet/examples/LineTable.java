package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.hydraulics.FrictionCorrelation;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Program that prints the pressure loss of a supply line over its bore. */
@Command(
        name = "line",
        description = "Print the pressure loss between pump and head, with the properties of water at that pressure.")
final class LineTable extends Program {

    @Option(
            names = "--bore",
            converter = Typed.Lengths.class,
            paramLabel = "<bores>",
            description = "Bore of the supply line, or range. Default: \"2 mm..8 mm step 1 mm\".")
    private QuantityArray<Length> bores = QuantityArray.parse(Kind.LENGTH, "2 mm..8 mm step 1 mm");

    @Option(
            names = "--length",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Length of the supply line. Default: 15 m.")
    private Quantity<Length> length = metres(15);

    @Option(
            names = "--roughness",
            converter = Typed.Length.class,
            paramLabel = "<roughness>",
            description = "Wall roughness. Default: 1.5 µm, that of drawn tubing.")
    private Optional<Quantity<Length>> roughness = Optional.empty();

    @Option(
            names = "--fittings",
            paramLabel = "<sum>",
            description = "Sum of the loss coefficients of the fittings. Default: 0.")
    private double fittings;

    @Option(
            names = "--flow",
            converter = Typed.VolumeFlow.class,
            paramLabel = "<flow>",
            description = "Water flow rate at ambient density. Default: 3.8 L/min.")
    private Quantity<VolumeFlow> flow = litresPerMinute(3.8);

    @Option(
            names = "--pressure",
            converter = Typed.Pressure.class,
            paramLabel = "<pressure>",
            description = "Gauge pressure in the supply line. Default: 380 MPa.")
    private Quantity<Pressure> pressure = megapascals(380);

    @Option(
            names = "--temperature",
            converter = Typed.Temperature.class,
            paramLabel = "<temperature>",
            description = "Water temperature in the supply line. Default: 20 °C.")
    private Quantity<Temperature> temperature = celsius(20);

    @Option(
            names = "--friction",
            paramLabel = "<correlation>",
            description = "Friction correlation: ${COMPLETION-CANDIDATES}. Default: COLEBROOK.")
    private FrictionCorrelation correlation = FrictionCorrelation.COLEBROOK;

    @Override
    protected Table table() {
        Quantity<Pressure> absolute = absolute("gauge pressure in the supply line", pressure);
        WaterState water = Water.stable().at(absolute, temperature);
        double atRest =
                Water.stable().atSi(ATMOSPHERE_PA, water.temperatureSi()).densitySi();
        Quantity<MassFlow> massFlow = Kind.MASS_FLOW.of(Kind.VOLUME_FLOW.si(flow) * atRest);
        Table table = Table.of("Pressure loss of the supply line")
                .column("bore", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("length", Kind.LENGTH, Units.METRE, 4)
                .column("mass flow", Kind.MASS_FLOW, Units.KILOGRAM_PER_MINUTE, 4)
                .number("Reynolds number", 4)
                .column("loss", Kind.PRESSURE, Units.MEGAPASCAL, 3)
                .column("loss uncertainty", Kind.PRESSURE, Units.MEGAPASCAL, 2)
                .column("surge", Kind.PRESSURE, Units.MEGAPASCAL, 3)
                .note("Uncertainties are standard uncertainties. Surge is the pressure rise if the whole flow stops"
                        + " at once.");
        for (int i = 0; i < bores.size(); i++) {
            SupplyLine.Section section =
                    SupplyLine.Section.ofBore(bores.get(i)).withLength(length).withFittings(fittings);
            SupplyLine line = SupplyLine.of(
                            roughness.map(section::withRoughness).orElse(section))
                    .withFrictionCorrelation(correlation);
            Estimate<Pressure> loss = line.loss(massFlow, water);
            table.row(
                    bores.si(i),
                    Kind.LENGTH.si(length),
                    Kind.MASS_FLOW.si(massFlow),
                    line.reynolds(massFlow, water),
                    loss.si(),
                    loss.standardUncertaintySi(),
                    Kind.PRESSURE.si(line.surge(massFlow, water)));
        }
        return table;
    }
}
