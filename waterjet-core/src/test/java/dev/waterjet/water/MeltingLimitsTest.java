package dev.waterjet.water;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kelvins;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.pascals;
import static dev.waterjet.water.StateLimitsTest.TEMPERATURE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Limits of the melting lines and of viscosity. */
class MeltingLimitsTest {

    private final Water stable = Water.stable();

    @Test
    void meltingLinesMeetAtTheTriplePointsOfTheRelease() {
        assertThat(Ice.at(pascals(208.566e6))).isEqualTo(Ice.IH);
        assertThat(Ice.at(pascals(208.567e6))).isEqualTo(Ice.III);
        assertThat(Ice.at(pascals(350.1e6))).isEqualTo(Ice.III);
        assertThat(Ice.at(pascals(350.2e6))).isEqualTo(Ice.V);
        assertThat(Ice.at(pascals(632.4e6))).isEqualTo(Ice.V);
        assertThat(Ice.at(pascals(632.5e6))).isEqualTo(Ice.VI);
        assertThat(MeltingKernel.temperatureK(208.566e6)).isCloseTo(251.165, within(1e-3));
        assertThat(MeltingKernel.temperatureK(350.1e6)).isCloseTo(256.164, within(1e-3));
        assertThat(MeltingKernel.temperatureK(632.4e6)).isCloseTo(273.31, within(2e-3));
        assertThat(MeltingKernel.temperatureK(2216e6)).isCloseTo(355, within(2e-2));
        assertThat(MeltingKernel.temperatureK(1)).isCloseTo(273.16, within(1e-12));
        assertRefused(() -> Ice.at(pascals(611)), "must-be-at-least", "melting pressure", 611.657);
        assertRefused(() -> Ice.meltingTemperature(megapascals(2217)), "must-be-at-most", "melting pressure", 2216e6);
        assertThat(Ice.VII.meltingPressure(kelvins(355)).getValue().doubleValue())
                .isCloseTo(2216e6, within(1.0));
        assertRefused(() -> Ice.VII.meltingPressure(kelvins(716)), "must-be-at-most", "melting temperature", 715);
        assertRefused(() -> Ice.VI.meltingPressure(kelvins(400)), "must-be-at-most", "melting temperature", 355);
        assertRefused(() -> Ice.IH.meltingPressure(celsius(1)), "must-be-at-most", "melting temperature", 273.16);
    }

    @Test
    void theTangentOfIceSixIsAboveEveryMeltingLine() {
        for (double pressurePa = 1e5; pressurePa < 2.2e9; pressurePa += 11e6) {
            double meltingK = MeltingKernel.temperatureK(pressurePa);
            assertThat(MeltingKernel.isPlainlyWarmer(pressurePa, meltingK - 0.01))
                    .isFalse();
            assertThat(MeltingKernel.isPlainlyWarmer(pressurePa, meltingK + 60)).isTrue();
        }
        assertThat(MeltingKernel.isPlainlyWarmer(1e5, 273.31)).isTrue();
        // the tangent at 632.4 MPa is the slope of the line there
        double slope = (MeltingKernel.temperatureK(633.4e6) - MeltingKernel.temperatureK(632.4e6)) / 1e6;
        assertThat(MeltingKernel.isPlainlyWarmer(732.4e6, 273.31 + 101e6 * slope))
                .isTrue();
        assertThat(MeltingKernel.isPlainlyWarmer(732.4e6, 273.31 + 99e6 * slope))
                .isFalse();
        assertThatCode(() -> Water.checkNotFrozenSi(800e6, 293.15)).doesNotThrowAnyException();
        assertRefused(() -> Water.checkNotFrozenSi(900e6, 293.15), "water-freezes");
        assertThat(stable.atSi(500e6, MeltingKernel.temperatureK(500e6)).isMetastable())
                .isFalse();
    }

    /** R12-08, section 2.6: 900 C to 300 MPa, 600 C to 350 MPa, 160 C to 500 MPa, 100 C to 1000 MPa. */
    @Test
    void viscosityIsLimitedToTheRangeOfItsRelease() {
        assertThat(ViscosityKernel.maximumTemperatureK(300e6)).isEqualTo(1173.15);
        assertThat(ViscosityKernel.maximumTemperatureK(300.1e6)).isEqualTo(873.15);
        assertThat(ViscosityKernel.maximumTemperatureK(350e6)).isEqualTo(873.15);
        assertThat(ViscosityKernel.maximumTemperatureK(350.1e6)).isEqualTo(433.15);
        assertThat(ViscosityKernel.maximumTemperatureK(500e6)).isEqualTo(433.15);
        assertThat(ViscosityKernel.maximumTemperatureK(500.1e6)).isEqualTo(373.15);
        assertRefused(() -> stable.atSi(400e6, 440).viscositySi(), "must-be-at-most", TEMPERATURE, 433.15);
        assertRefused(() -> stable.atSi(600e6, 393.15).viscositySi(), "must-be-at-most", TEMPERATURE, 373.15);
        assertThat(stable.atSi(400e6, 433).viscositySi()).isPositive();
    }
}
