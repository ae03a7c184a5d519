package dev.waterjet.examples;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Properties of liquid water. */
@Command(
        name = "water",
        description =
                "Print properties of liquid water up to 1000 MPa by the international equation of state (IAPWS-95).")
final class WaterTable extends Program {

    @Option(
            names = "--absolute-pressure",
            converter = Typed.Pressures.class,
            paramLabel = "<pressures>",
            description = "Absolute pressure or range. Default: \"50 MPa..600 MPa step 50 MPa\".")
    private QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "50 MPa..600 MPa step 50 MPa");

    @Option(
            names = "--temperature",
            converter = Typed.Temperatures.class,
            paramLabel = "<temperatures>",
            description = "Temperature or range. Default: 20 °C.")
    private QuantityArray<Temperature> temperatures = QuantityArray.parse(Kind.TEMPERATURE, "20 C");

    @Option(
            names = "--metastable",
            description = "Print metastable states too: liquid below its freezing or above its boiling temperature.")
    private boolean metastable;

    @Override
    protected Table table() {
        Table table = Table.of("Water by IAPWS-95, viscosity by IAPWS R12-08")
                .column("temperature", Kind.TEMPERATURE, Units.CELSIUS, 5)
                .column("absolute pressure", Kind.PRESSURE, Units.MEGAPASCAL, 5)
                .column("density", Kind.DENSITY, Units.KILOGRAM_PER_CUBIC_METRE, 6)
                .column("sound speed", Kind.SPEED, Units.METRE_PER_SECOND, 5)
                .column("enthalpy", Kind.SPECIFIC_ENERGY, Units.KILOJOULE_PER_KILOGRAM, 5)
                .column("entropy", Kind.SPECIFIC_HEAT, Units.KILOJOULE_PER_KILOGRAM_KELVIN, 5)
                .column("isobaric heat capacity", Kind.SPECIFIC_HEAT, Units.KILOJOULE_PER_KILOGRAM_KELVIN, 5)
                .column("viscosity", Kind.DYNAMIC_VISCOSITY, Units.MILLIPASCAL_SECOND, 4)
                .note("The relative uncertainty of density is about 2 in 10 000 near 400 MPa.");
        Water water = metastable ? Water.metastable() : Water.stable();
        for (int t = 0; t < temperatures.size(); t++) {
            for (int p = 0; p < pressures.size(); p++) {
                WaterState state = water.atSi(pressures.si(p), temperatures.si(t));
                table.row(
                        state.temperatureSi(),
                        state.pressureSi(),
                        state.densitySi(),
                        state.soundSpeedSi(),
                        state.enthalpySi(),
                        state.entropySi(),
                        state.isobaricHeatCapacitySi(),
                        state.viscositySi());
            }
        }
        return table;
    }
}
