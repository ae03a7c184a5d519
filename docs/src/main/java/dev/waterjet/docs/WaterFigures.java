package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.examples.chart.Chart;
import dev.waterjet.hydraulics.IsentropicJet;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/** Figures about water, its jet and its line. */
final class WaterFigures {

    private static final double[] TEMPERATURES_C = {5, 20, 60};

    private WaterFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("water-density", WaterFigures::density),
                new Figure("water-sound-speed", WaterFigures::soundSpeed),
                new Figure("jet-speeds", WaterFigures::jetSpeeds),
                new Figure("jet-speed-errors", WaterFigures::jetSpeedErrors),
                new Figure("jet-exit-temperature", WaterFigures::exitTemperature),
                new Figure("line-loss", WaterFigures::lineLoss));
    }

    private static QuantityArray<Pressure> pressures(double fromMpa, double toMpa) {
        return QuantityArray.evenly(Kind.PRESSURE, megapascals(fromMpa), megapascals(toMpa), 100);
    }

    private static String density() {
        Chart chart = Chart.of(
                        "Density of water over pressure",
                        "Density of liquid water increases from 1000 kg/m³ to about 1130 kg/m³ at 400 MPa, less"
                                + " steeply at higher pressure; cold water is denser. The line of 5 °C ends where water"
                                + " freezes.")
                .x("absolute pressure [MPa]")
                .y("density [kg/m³]");
        overPressure(chart, WaterState::densitySi);
        return chart.svg(720, 420);
    }

    private static String soundSpeed() {
        Chart chart = Chart.of(
                        "Speed of sound in water over pressure",
                        "Speed of sound in liquid water increases from about 1500 m/s at atmospheric pressure to 2100"
                                + " m/s at 400 MPa.")
                .x("absolute pressure [MPa]")
                .y("speed of sound [m/s]");
        overPressure(chart, WaterState::soundSpeedSi);
        return chart.svg(720, 420);
    }

    private static void overPressure(Chart chart, ToDoubleFunction<WaterState> property) {
        for (double temperatureC : TEMPERATURES_C) {
            // ice VI begins below 690 MPa and 5 C, at 890 MPa and 20 C
            QuantityArray<Pressure> range = pressures(0.2, temperatureC < 10 ? 680 : temperatureC < 30 ? 885 : 1000);
            chart.line(
                    (int) temperatureC + " °C",
                    range.to(Units.MEGAPASCAL),
                    range.stream()
                            .map(pressurePa ->
                                    property.applyAsDouble(Water.stable().atSi(pressurePa, temperatureC + 273.15)))
                            .toArray());
        }
    }

    private static WaterJet jet(double pressurePa, JetSpeedModel model) {
        return WaterJet.of(Orifice.sapphire(millimetres(0.33)), Kind.PRESSURE.of(pressurePa))
                .withSpeedModel(model);
    }

    private static double speed(double pressurePa, JetSpeedModel model) {
        return jet(pressurePa, model).speedSi();
    }

    private static String jetSpeeds() {
        QuantityArray<Pressure> range = pressures(10, 700);
        Chart chart = Chart.of(
                        "Jet speed by three models",
                        "Speed of a waterjet from 20 °C over gauge pressure: the Tait-type model agrees with the"
                                + " isentropic speed, the incompressible model is 5 % above it at 600 MPa.")
                .x("gauge pressure [MPa]")
                .y("speed [m/s]");
        for (JetSpeedModel model : JetSpeedModel.values()) {
            chart.line(
                    word(model),
                    range.to(Units.MEGAPASCAL),
                    range.stream().map(pressurePa -> speed(pressurePa, model)).toArray());
        }
        return chart.svg(720, 420);
    }

    private static String jetSpeedErrors() {
        QuantityArray<Pressure> range = pressures(10, 700);
        Chart chart = Chart.of(
                        "Error of approximate jet speeds",
                        "Error against the isentropic speed at 20 °C: the incompressible model is 1 % high at"
                                + " 100 MPa and 5 % at 600 MPa; the Tait-type model stays below 0.5 %.")
                .x("gauge pressure [MPa]")
                .y("error of the speed [%]");
        for (JetSpeedModel model : List.of(JetSpeedModel.INCOMPRESSIBLE, JetSpeedModel.TAIT)) {
            chart.line(
                    word(model),
                    range.to(Units.MEGAPASCAL),
                    range.stream()
                            .map(pressurePa ->
                                    100 * (speed(pressurePa, model) / speed(pressurePa, JetSpeedModel.ISENTROPIC) - 1))
                            .toArray());
        }
        return chart.svg(720, 420);
    }

    private static String word(JetSpeedModel model) {
        return model == JetSpeedModel.TAIT ? "Tait-type" : model.name().toLowerCase(java.util.Locale.ROOT);
    }

    private static String exitTemperature() {
        Chart chart = Chart.of(
                        "Temperature of the jet",
                        "The jet is colder than its supply: from 20 °C and 400 MPa it leaves at 10.5 °C."
                                + " From 5 °C it leaves below the melting point of ice above about 310 MPa.")
                .x("absolute pressure of the supply [MPa]")
                .y("temperature of the jet [°C]");
        for (double temperatureC : TEMPERATURES_C) {
            QuantityArray<Pressure> range = pressures(10, temperatureC < 10 ? 680 : 700);
            chart.line(
                    "supply of " + (int) temperatureC + " °C",
                    range.to(Units.MEGAPASCAL),
                    range.stream()
                            .map(pressurePa -> IsentropicJet.of(Kind.PRESSURE.of(pressurePa), celsius(temperatureC))
                                            .exit()
                                            .temperatureSi()
                                    - 273.15)
                            .toArray());
        }
        return chart.svg(720, 420);
    }

    /** Losses in 15 m of line in MPa. */
    private static double[] losses(double[] boresM, double massFlow, WaterState water) {
        return Arrays.stream(boresM)
                .map(boreM -> SupplyLine.of(SupplyLine.Section.ofBore(Kind.LENGTH.of(boreM))
                                        .withLength(metres(15)))
                                .loss(Kind.MASS_FLOW.of(massFlow), water)
                                .si()
                        / 1e6)
                .toArray();
    }

    private static String lineLoss() {
        QuantityArray<Length> bores = QuantityArray.evenly(Kind.LENGTH, millimetres(1.6), millimetres(8), 100);
        WaterState water = Water.stable().at(megapascals(380), celsius(20));
        double atRest = Water.stable().at(megapascals(0.101325), celsius(20)).densitySi();
        Chart chart = Chart.of(
                        "Pressure loss of a supply line over its bore",
                        "Pressure loss in 15 m of supply line at 380 MPa is inversely proportional to about the fifth"
                                + " power of the bore: at 3.8 L/min from over 30 MPa at 2 mm to less than 1 MPa above 4.5"
                                + " mm. Markers are bores in common use: 2.1, 3.2, 4.8 and 7.9 mm.")
                .x("bore [mm]")
                .y("pressure loss [MPa]")
                .logY();
        for (double litres : new double[] {1.9, 3.8, 7.6}) {
            double massFlow = Kind.VOLUME_FLOW.si(litresPerMinute(litres)) * atRest;
            chart.line(litres + " L/min", bores.to(Units.MILLIMETRE), losses(bores.toSi(), massFlow, water));
        }
        double[] common = {2.11e-3, 3.18e-3, 4.78e-3, 7.92e-3};
        double middle = Kind.VOLUME_FLOW.si(litresPerMinute(3.8)) * atRest;
        chart.points(
                "common tubing",
                Arrays.stream(common).map(bore -> 1e3 * bore).toArray(),
                losses(common, middle, water));
        return chart.svg(720, 420);
    }
}
