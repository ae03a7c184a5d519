package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.StoredEnergy;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.vessel.TubeLimits;
import dev.waterjet.vessel.WallStress;
import dev.waterjet.vessel.YieldCriterion;
import dev.waterjet.water.Water;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Program that prints stress and stored energy of a thick-walled tube. */
@Command(
        name = "vessel",
        description =
                "Print the stress at the bore of a thick-walled tube of closed ends, the pressures at which its wall"
                        + " yields (Tresca), and the energy stored in its water. It judges no vessel.")
final class VesselTable extends Program {

    private static final Quantity<Volume> CUBIC_METRE = Kind.VOLUME.of(1);

    @Option(
            names = "--pressure",
            converter = Typed.Pressures.class,
            paramLabel = "<pressures>",
            description = "Gauge pressure, or range. Default: \"100 MPa..600 MPa step 100 MPa\".")
    private QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "100 MPa..600 MPa step 100 MPa");

    @Option(
            names = "--diameter-ratio",
            paramLabel = "<ratio>",
            description = "Outer over inner diameter. Default: 2.5.")
    private double diameterRatio = 2.5;

    @Option(
            names = "--yield-strength",
            converter = Typed.Pressure.class,
            paramLabel = "<stress>",
            description = "Yield strength of the wall in tension. Default: 900 MPa, assumed.")
    private Quantity<Pressure> yieldStrength = megapascals(900);

    @Option(
            names = "--temperature",
            converter = Typed.Temperature.class,
            paramLabel = "<temperature>",
            description = "Water temperature. Default: 20 °C.")
    private Quantity<Temperature> temperature = celsius(20);

    @Override
    protected Table table() {
        Require.above("diameter ratio", diameterRatio, 1, Units.ONE, "a wall has a thickness");
        ThickTube tube = ThickTube.of(Kind.LENGTH.of(1), Kind.LENGTH.of(diameterRatio));
        TubeLimits limits = tube.limits(YieldCriterion.TRESCA, Ends.CLOSED, yieldStrength);
        Table table = Table.of("Ideal smooth tube of closed ends")
                .column("gauge pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .number("diameter ratio", 4)
                .column("hoop stress bore", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("Tresca bore", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("first yield pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("full plastic pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("stored energy", Kind.ENERGY_DENSITY, Units.JOULE_PER_CUBIC_METRE, 4)
                .note("Danger: this is a calculation of an ideal tube and no assessment. Vessels and tubing are"
                        + " designed, inspected and retired")
                .note("by their maker and licensed engineers under the pressure-vessel code in force. Fatigue is not"
                        + " calculated; no pressure here is")
                .note("a working pressure. The stored energy is that of the water for each volume of the vessel;"
                        + " that of the wall is less.");
        for (int i = 0; i < pressures.size(); i++) {
            Quantity<Pressure> absolute = absolute("gauge pressure", pressures.get(i));
            WallStress bore = tube.stressAtBore(pressures.get(i), Ends.CLOSED);
            StoredEnergy energy =
                    StoredEnergy.of(Water.stable().at(absolute, temperature), CUBIC_METRE, tube, Ends.CLOSED);
            table.row(
                    pressures.si(i),
                    diameterRatio,
                    Kind.PRESSURE.si(bore.hoop()),
                    Kind.PRESSURE.si(bore.equivalent(YieldCriterion.TRESCA)),
                    Kind.PRESSURE.si(limits.firstYield()),
                    Kind.PRESSURE.si(limits.fullPlastic()),
                    Kind.ENERGY.si(energy.water()));
        }
        return table;
    }
}
