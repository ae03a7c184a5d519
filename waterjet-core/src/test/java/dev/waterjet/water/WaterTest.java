package dev.waterjet.water;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kelvins;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static dev.waterjet.measure.Measures.megapascals;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.hummeling.if97.IF97;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import java.util.List;
import javax.measure.quantity.Pressure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaterTest {

    private static final String PRESSURE = "absolute pressure of water";
    private static final String TEMPERATURE = "temperature of water";
    private static final String DENSITY = "density of water";

    private final Water stable = Water.stable();
    private final Water metastable = Water.metastable();

    /**
     * IAPWS-IF97, an independent formulation for industry, by the open-source library com.hummeling:if97. The two
     * formulations themselves differ by 1e-5 in density from 20 to 35 C and by up to 1.7e-5 elsewhere.
     */
    @Test
    void theIndustrialFormulationAgreesUpTo100Mpa() {
        IF97 industrial = new IF97(IF97.UnitSystem.SI);
        for (double pressurePa = 0.1e6; pressurePa <= 100e6; pressurePa += 3.33e6) {
            for (double temperatureK = 273.15 + 0.1; temperatureK <= 370; temperatureK += 5) {
                WaterState state = stable.atSi(pressurePa, temperatureK);
                assertThat(state.densitySi() * industrial.specificVolumePT(pressurePa, temperatureK))
                        .as("density at %s Pa and %s K", pressurePa, temperatureK)
                        .isCloseTo(1, within(temperatureK > 293 && temperatureK < 307 ? 1e-5 : 2e-5));
                assertThat(state.soundSpeedSi() / industrial.speedOfSoundPT(pressurePa, temperatureK))
                        .isCloseTo(1, within(2.5e-3));
                assertThat(state.isobaricHeatCapacitySi() / industrial.isobaricHeatCapacityPT(pressurePa, temperatureK))
                        .isCloseTo(1, within(2e-3));
            }
        }
    }

    /** Melting temperatures of IAPWS R14-08(2011) by its own equations: 13.5745 C at 800 MPa. */
    @Test
    void frozenWaterIsRefusedWithItsMeltingTemperature() {
        WaterjetException refusal = assertRefused(
                () -> stable.at(megapascals(800), celsius(10)),
                "water-freezes",
                "temperature of water",
                286.7245,
                1e-6);

        assertThat(refusal.parameters()).containsEntry("ice", "ice VI").containsEntry("pressure_Pa", 800e6);
    }

    @ParameterizedTest
    @CsvSource({"50, ice Ih", "300, ice III", "500, ice V", "800, ice VI"})
    void theRefusalNamesTheIce(double pressureMpa, String ice) {
        assertThat(assertRefused(() -> stable.at(megapascals(pressureMpa), celsius(-20)), "water-freezes")
                        .parameters())
                .containsEntry("ice", ice);
    }

    @Test
    void surfaceTensionFallsToZeroAtTheCriticalPoint() {
        double last = 1;
        for (double temperatureK = 248.15; temperatureK < 647.096; temperatureK += 5.7) {
            double tension = Kind.SURFACE_TENSION.si(Saturation.surfaceTension(kelvins(temperatureK)));
            assertThat(tension).isBetween(0.0, last);
            last = tension;
        }
        assertThat(Kind.SURFACE_TENSION.si(Saturation.surfaceTension(kelvins(647.096))))
                .isZero();
        assertRefused(() -> Saturation.surfaceTension(kelvins(648)), "must-be-at-most", TEMPERATURE, 647.096);
        assertRefused(() -> Saturation.surfaceTension(kelvins(248)), "must-be-at-least", TEMPERATURE, 248.15);
    }

    @Test
    void metastableStatesAreMarked() {
        assertThat(metastable.at(megapascals(800), celsius(10)).isMetastable()).isTrue();
        assertThat(metastable.at(megapascals(800), celsius(20)).isMetastable()).isFalse();
        assertThat(metastable.at(megapascals(0.05), celsius(120)).isMetastable())
                .isTrue();
        assertThat(metastable.at(megapascals(0.1), celsius(-10)).isMetastable()).isTrue();
        assertThat(metastable
                        .atDensity(kilogramsPerCubicMetre(943.05), celsius(120))
                        .isMetastable())
                .isTrue();
        assertThat(stable.at(megapascals(400), celsius(20))).isEqualTo(metastable.at(megapascals(400), celsius(20)));
    }

    @Test
    void aRefusalGivesTheLimit() {
        assertRefused(() -> stable.at(megapascals(1001), celsius(40)), "must-be-at-most", PRESSURE, 1e9);
        assertRefused(() -> stable.at(megapascals(0), celsius(20)), "must-be-above", PRESSURE, 0);
        assertRefused(() -> stable.at(megapascals(0.05), celsius(120)), "water-boils", PRESSURE, 0.198674e6, 1e-5);
        assertRefused(() -> stable.at(megapascals(10), celsius(400)), "supercritical-water", TEMPERATURE, 647.096);
        assertRefused(() -> metastable.at(megapascals(10), kelvins(200)), "must-be-at-least", TEMPERATURE, 235);
        assertRefused(
                () -> stable.atDensity(kilogramsPerCubicMetre(10), kelvins(1400)),
                "must-be-at-most",
                TEMPERATURE,
                1273);
        assertRefused(
                () -> stable.atDensity(kilogramsPerCubicMetre(500), kelvins(300)),
                "water-separates",
                DENSITY,
                996.512,
                1e-6);
        assertRefused(
                () -> metastable.atDensity(kilogramsPerCubicMetre(100), kelvins(300)),
                "water-separates",
                DENSITY,
                0.0256,
                0.01);
        assertRefused(
                () -> stable.atDensity(kilogramsPerCubicMetre(1500), kelvins(300)), "must-be-at-most", PRESSURE, 1e9);
        assertRefused(() -> stable.atEntropySi(101325, 9000), "must-be-at-most", "entropy of water", 1306.92, 1e-5);
        assertRefused(() -> stable.atEnthalpySi(500e6, 9e6), "must-be-at-most", "enthalpy of water", 1824.49e3, 1e-5);
        assertRefused(() -> stable.atEntropySi(1e5, Double.NaN), "must-be-at-most");
    }

    @Test
    void meltingLinesMeetAndHaveAnInverse() {
        assertThat(Ice.III.pressurePa(256.164)).isCloseTo(350.1e6, within(0.05e6));
        assertThat(Ice.V.pressurePa(273.31)).isCloseTo(632.4e6, within(0.1e6));
        assertThat(Ice.VI.pressurePa(355)).isCloseTo(2216e6, within(1e6));
        assertThat(Ice.IH.pressurePa(251.165)).isCloseTo(208.566e6, within(0.01e6));
        for (Ice ice : new Ice[] {Ice.IH, Ice.III, Ice.V, Ice.VI}) {
            double coldK = ice == Ice.VI ? 274 : ice == Ice.V ? 257 : 252;
            double hotK = ice == Ice.VI ? 350 : ice == Ice.III ? 256 : 273;
            for (double temperatureK = coldK; temperatureK < hotK; temperatureK += 0.7) {
                double pressurePa = ice.pressurePa(temperatureK);
                assertThat(MeltingKernel.temperatureK(pressurePa)).isCloseTo(temperatureK, within(1e-9));
                assertThat(Ice.at(pressurePa)).isEqualTo(ice);
            }
        }
        assertThat(Ice.meltingTemperature(megapascals(0.101325)).getValue().doubleValue())
                .isCloseTo(273.1525, within(1e-4));
        assertThat(Ice.at(megapascals(900)).toString()).isEqualTo("ice VI");
    }

    @Test
    void aStateConvertsToOtherUnits() {
        WaterState state = stable.at(megapascals(400), celsius(20));

        assertThat(state).hasSameHashCodeAs(stable.atSi(400e6, 293.15));
        assertThat(Kind.PRESSURE
                        .of(state.pressureSi(), Units.MEGAPASCAL)
                        .getValue()
                        .doubleValue())
                .isEqualTo(400);
        assertThat(stable).isNotEqualTo(metastable);
    }

    /** R12-08: 17 % more at 400 MPa and 20 C than in the atmosphere (worked out outside this project). */
    @Test
    void viscosityRisesWithPressure() {
        double still = stable.atSi(101325, 293.15).viscositySi();

        assertThat(still).isCloseTo(1.0016e-3, within(1e-6));
        assertThat(stable.atSi(400e6, 293.15).viscositySi() / still).isCloseTo(1.17, within(0.005));
    }

    @Test
    void isothermIsTheStatesOfItsPressures() {
        QuantityArray<Pressure> pressures = QuantityArray.ofSi(Kind.PRESSURE, 0.2e6, 380e6, 5e6, 800e6);
        List<WaterState> states = Water.stable().at(pressures, celsius(25));
        for (int i = 0; i < pressures.size(); i++) {
            assertThat(states.get(i)).isEqualTo(Water.stable().atSi(pressures.si(i), 298.15));
        }
        assertRefused(
                () -> Water.stable().at(QuantityArray.ofSi(Kind.PRESSURE, 380e6, 990e6), celsius(5)), "water-freezes");
    }
}
