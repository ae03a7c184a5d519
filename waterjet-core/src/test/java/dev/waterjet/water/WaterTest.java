package dev.waterjet.water;

import com.hummeling.if97.IF97;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kelvins;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static dev.waterjet.measure.Measures.megapascals;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class WaterTest {

    private final Water stable = Water.stable();
    private final Water metastable = Water.metastable();

    /**
     * IAPWS-IF97, an independent formulation for industry, by the open-source library com.hummeling:if97. The two
     * formulations themselves differ by 1e-5 in density from 20 to 35 C and by up to 1.7e-5 elsewhere.
     */
    @Test
    void industrialFormulationIsOfTheSameOpinionUpTo100Mpa() {
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

    @Test
    void frozenWaterIsRefusedWithItsMeltingTemperature() {
        assertThatThrownBy(() -> stable.at(megapascals(800), celsius(10)))
                .isInstanceOf(DomainException.class)
                .hasMessage("temperature of water is 10 C; it must be at least 13.5745 C"
                        + " (at that pressure it freezes to ice VI below)");
        assertThatThrownBy(() -> stable.at(megapascals(50), celsius(-20)))
                .hasMessageContaining("freezes to ice Ih below");
        assertThatThrownBy(() -> stable.at(megapascals(300), celsius(-20)))
                .hasMessageContaining("freezes to ice III below");
        assertThatThrownBy(() -> stable.at(megapascals(500), celsius(-20)))
                .hasMessageContaining("freezes to ice V below");
    }

    @Test
    void metastableWaterAnswersAndSaysSo() {
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
    void limitsAreNamed() {
        assertThatThrownBy(() -> stable.at(megapascals(1001), celsius(40)))
                .hasMessage("absolute pressure of water is 1001 MPa; it must be at most 1000 MPa"
                        + " (the equation of state ends there)");
        assertThatThrownBy(() -> stable.at(megapascals(0), celsius(20))).hasMessageContaining("must be above 0 MPa");
        assertThatThrownBy(() -> stable.at(megapascals(0.05), celsius(120)))
                .hasMessageContaining("must be at least 0.198674 MPa")
                .hasMessageContaining("boils");
        assertThatThrownBy(() -> stable.at(megapascals(10), celsius(400)))
                .hasMessageContaining("must be at most 373.946 C");
        assertThatThrownBy(() -> metastable.at(megapascals(10), kelvins(200)))
                .hasMessageContaining("temperature of water is 200 K; it must be at least 235 K");
        assertThatThrownBy(() -> stable.atDensity(kilogramsPerCubicMetre(10), kelvins(1400)))
                .hasMessageContaining("must be at most 1273 K");
        assertThatThrownBy(() -> stable.atDensity(kilogramsPerCubicMetre(500), kelvins(300)))
                .hasMessageContaining("must be at least 996.512 kg/m3")
                .hasMessageContaining("parts into boiling liquid and vapour");
        assertThatThrownBy(() -> metastable.atDensity(kilogramsPerCubicMetre(100), kelvins(300)))
                .hasMessageContaining("density of water is 100 kg/m3; it must be at most 0.02");
        assertThatThrownBy(() -> stable.atDensity(kilogramsPerCubicMetre(1500), kelvins(300)))
                .hasMessageContaining("must be at most 1000 MPa");
        assertThatThrownBy(() -> stable.atEntropySi(101325, 9000))
                .hasMessage("entropy of water is 9 kJ/(kg K); it must be at most 1.30692 kJ/(kg K)"
                        + " (the liquid of that pressure ends there)");
        assertThatThrownBy(() -> stable.atEnthalpySi(500e6, 9e6))
                .hasMessageContaining("enthalpy of water is 9000 kJ/kg; it must be at most 1824.49 kJ/kg");
        assertThatThrownBy(() -> stable.atEntropySi(1e5, Double.NaN)).isInstanceOf(DomainException.class);
        assertThatThrownBy(() -> Saturation.at(kelvins(650))).hasMessageContaining("must be at most 647.09 K");
        assertThatThrownBy(() -> Ice.VI.meltingPressure(kelvins(400)))
                .hasMessageContaining("must be at most 355 K (the melting line of ice VI ends there)");
        assertThatThrownBy(() -> stable.at(megapascals(600), celsius(120)).viscosity())
                .hasMessageContaining("must be at most 100 C (the formula of viscosity ends there");
    }

    @Test
    void meltingLinesMeetAndTurnRound() {
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
    void aStateReadsWell() {
        WaterState state = stable.at(megapascals(400), celsius(20));

        assertThat(state).hasToString("water of 400 MPa and 20 C").hasSameHashCodeAs(stable.atSi(400e6, 293.15));
        assertThat(Kind.PRESSURE
                        .of(state.pressureSi(), Units.MEGAPASCAL)
                        .getValue()
                        .doubleValue())
                .isEqualTo(400);
        assertThat(metastable.at(megapascals(0.1), celsius(-5)))
                .hasToString("metastable water of 0.1 MPa and -5 C")
                .isNotEqualTo(state);
        assertThat(stable).hasToString("stable water").isNotEqualTo(metastable);
        assertThat(Saturation.at(kelvins(450))).hasToString("water boiling at 0.932204 MPa and 176.85 C");
    }

    /** R12-08: 17 per cent more at 400 MPa and 20 C than in the atmosphere (worked out outside this project). */
    @Test
    void pressureThickens() {
        double still = stable.atSi(101325, 293.15).viscositySi();

        assertThat(still).isCloseTo(1.0016e-3, within(1e-6));
        assertThat(stable.atSi(400e6, 293.15).viscositySi() / still).isCloseTo(1.17, within(0.005));
    }
}
