package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.ratio;

import dev.waterjet.hydraulics.IsentropicJet;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The jet of plain water by three laws of speed. */
@Command(
        name = "jet",
        description = "The jet of plain water: its speed by three laws, flow, power and reaction force."
                + " The isentropic speed is exact; the others stand beside it for comparison.")
final class JetTable extends Program {

    private static final double ATMOSPHERE_PA = 101_325;

    @Option(
            names = "--pressure",
            converter = Typed.Pressures.class,
            paramLabel = "<pressures>",
            description = "Absolute pressure at the orifice, or range. Usual: \"50 MPa..600 MPa step 50 MPa\".")
    private QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "50 MPa..600 MPa step 50 MPa");

    @Option(
            names = "--temperature",
            converter = Typed.Temperatures.class,
            paramLabel = "<temperatures>",
            description = "Temperature of the water before the orifice, or range. Usual: 20 C.")
    private QuantityArray<Temperature> temperatures = QuantityArray.parse(Kind.TEMPERATURE, "20 C");

    @Option(
            names = "--orifice",
            converter = Typed.Lengths.class,
            paramLabel = "<bores>",
            description = "Bore of the orifice, or range. Usual: 0.33 mm.")
    private QuantityArray<Length> bores = QuantityArray.parse(Kind.LENGTH, "0.33 mm");

    @Option(
            names = "--discharge-coefficient",
            converter = HeadOptions.Coefficient.class,
            paramLabel = "<ratio>",
            description = "Discharge coefficient, against the incompressible speed. Usual: 0.65.")
    private Quantity<Dimensionless> dischargeCoefficient = ratio(0.65);

    @Override
    protected Table table() {
        Table table = Table.of("Jet of plain water into the standard atmosphere; pressures are absolute")
                .column("temperature", Kind.TEMPERATURE, Units.CELSIUS, 4)
                .column("pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("orifice", Kind.LENGTH, Units.MILLIMETRE, 4)
                .number("discharge coefficient", 4)
                .column("incompressible speed", Kind.SPEED, Units.METRE_PER_SECOND, 5)
                .column("tait speed", Kind.SPEED, Units.METRE_PER_SECOND, 5)
                .column("isentropic speed", Kind.SPEED, Units.METRE_PER_SECOND, 5)
                .column("exit temperature", Kind.TEMPERATURE, Units.CELSIUS, 4)
                .column("mass flow", Kind.MASS_FLOW, Units.KILOGRAM_PER_MINUTE, 4)
                .column("volume flow", Kind.VOLUME_FLOW, Units.LITRE_PER_MINUTE, 4)
                .column("power", Kind.POWER, Units.KILOWATT, 4)
                .column("reaction force", Kind.FORCE, Units.NEWTON, 4)
                .note("Volume flow is told at the density of water at rest in the atmosphere; power is gauge pressure"
                        + " times volume flow; the force is mass flow times isentropic speed.");
        for (int t = 0; t < temperatures.size(); t++) {
            for (int p = 0; p < pressures.size(); p++) {
                IsentropicJet exact = IsentropicJet.of(pressures.get(p), temperatures.get(t));
                for (int b = 0; b < bores.size(); b++) {
                    addRow(table, exact, bores.get(b));
                }
            }
        }
        return table;
    }

    private void addRow(Table table, IsentropicJet exact, Quantity<Length> bore) {
        double cd = Kind.RATIO.si(dischargeCoefficient);
        double gaugePa = Require.positive(
                "gauge pressure at the orifice", exact.supply().pressureSi() - ATMOSPHERE_PA, Units.MEGAPASCAL);
        WaterJet jet = WaterJet.of(Orifice.sapphire(bore).withDischargeCoefficient(cd), Kind.PRESSURE.of(gaugePa))
                .withTemperature(exact.supply().temperature());
        table.row(
                exact.supply().temperatureSi(),
                exact.supply().pressureSi(),
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
