package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.ratio;

import dev.waterjet.hydraulics.IsentropicJet;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Program that prints pure waterjets by three jet speed models. */
@Command(
        name = "jet",
        description = "Print speed, flow, power and reaction force of a pure waterjet."
                + " Speeds follow three models: the isentropic one is the reference, the others are for comparison.")
final class JetTable extends Program {

    @Option(
            names = "--pressure",
            converter = Typed.Pressures.class,
            paramLabel = "<pressures>",
            description = "Gauge pressure at the orifice, or range. Default: \"50 MPa..600 MPa step 50 MPa\".")
    private QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "50 MPa..600 MPa step 50 MPa");

    @Option(
            names = "--temperature",
            converter = Typed.Temperatures.class,
            paramLabel = "<temperatures>",
            description = "Temperature of the water before the orifice, or range. Default: 20 °C.")
    private QuantityArray<Temperature> temperatures = QuantityArray.parse(Kind.TEMPERATURE, "20 C");

    @Option(
            names = "--orifice",
            converter = Typed.Lengths.class,
            paramLabel = "<bores>",
            description = "Bore of the orifice, or range. Default: 0.33 mm.")
    private QuantityArray<Length> bores = QuantityArray.parse(Kind.LENGTH, "0.33 mm");

    @Option(
            names = "--discharge-coefficient",
            converter = HeadOptions.Coefficient.class,
            paramLabel = "<ratio>",
            description = "Discharge coefficient, relative to the incompressible speed. Default: 0.65.")
    private Quantity<Dimensionless> dischargeCoefficient = ratio(0.65);

    @Override
    protected Table table() {
        Table table = Table.of("Pure waterjet into the standard atmosphere")
                .column("temperature", Kind.TEMPERATURE, Units.CELSIUS, 4)
                .column("gauge pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("orifice", Kind.LENGTH, Units.MILLIMETRE, 4)
                .number("discharge coefficient", 4)
                .column("incompressible speed", Kind.SPEED, Units.METRE_PER_SECOND, 5)
                .column("Tait speed", Kind.SPEED, Units.METRE_PER_SECOND, 5)
                .column("isentropic speed", Kind.SPEED, Units.METRE_PER_SECOND, 5)
                .column("exit temperature", Kind.TEMPERATURE, Units.CELSIUS, 4)
                .column("mass flow", Kind.MASS_FLOW, Units.KILOGRAM_PER_MINUTE, 4)
                .column("volume flow", Kind.VOLUME_FLOW, Units.LITRE_PER_MINUTE, 4)
                .column("power", Kind.POWER, Units.KILOWATT, 4)
                .column("reaction force", Kind.FORCE, Units.NEWTON, 4)
                .note("Volume flow is stated at ambient density. Power is the rated hydraulic power, gauge pressure"
                        + " times volume flow. Reaction force is mass flow times isentropic speed.");
        for (int t = 0; t < temperatures.size(); t++) {
            for (int p = 0; p < pressures.size(); p++) {
                IsentropicJet exact = IsentropicJet.of(
                        absolute("gauge pressure at the orifice", pressures.get(p)), temperatures.get(t));
                for (int b = 0; b < bores.size(); b++) {
                    addRow(table, exact, pressures.get(p), bores.get(b));
                }
            }
        }
        return table;
    }

    private void addRow(Table table, IsentropicJet exact, Quantity<Pressure> gauge, Quantity<Length> bore) {
        double cd = Kind.RATIO.si(dischargeCoefficient);
        WaterJet jet = WaterJet.of(Orifice.sapphire(bore).withDischargeCoefficient(cd), gauge)
                .withTemperature(exact.supply().temperature());
        table.row(
                exact.supply().temperatureSi(),
                Kind.PRESSURE.si(gauge),
                jet.orifice().boreSi(),
                cd,
                jet.withSpeedModel(JetSpeedModel.INCOMPRESSIBLE).speedSi(),
                jet.withSpeedModel(JetSpeedModel.TAIT).speedSi(),
                exact.speedSi(),
                exact.exit().temperatureSi(),
                jet.massFlowSi(),
                jet.volumeFlowSi(),
                Kind.POWER.si(jet.ratedHydraulicPower()),
                jet.massFlowSi() * exact.speedSi());
    }
}
