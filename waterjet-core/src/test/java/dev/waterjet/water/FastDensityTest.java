package dev.waterjet.water;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FastDensityTest {

    /** Between the nodes of the fit and at the ends of the range, where water is liquid or superheated. */
    @Test
    void agreesWithTheEquationOfState() {
        double worst = 0;
        for (double pressurePa = 1; pressurePa <= 1e9; pressurePa += 12_345_678) {
            for (double temperatureK = 273.15; temperatureK <= 373.15; temperatureK += 1.6129) {
                double exact = Water.metastable().atSi(pressurePa, temperatureK).densitySi();
                double fast = DensityKernel.density(pressurePa, temperatureK);
                worst = Math.max(worst, Math.abs(fast / exact - 1));
            }
        }
        assertThat(worst).isLessThan(1e-8);
        for (double temperatureK : new double[] {304, 330, 373.15}) {
            assertThat(Water.fastDensitySi(1e9 * 0.8, temperatureK))
                    .isCloseTo(Water.stable().atSi(1e9 * 0.8, temperatureK).densitySi(), within(1.3e-5));
        }
    }

    @Test
    void theTableIsThatOfTheFit() {
        double[][] powers = DensityFit.powers();
        for (double x = -1; x <= 1; x += 0.125) {
            for (double y = -1; y <= 1; y += 0.125) {
                double sum = 0;
                for (int j = powers.length - 1; j >= 0; j--) {
                    double row = 0;
                    for (int i = powers[j].length - 1; i >= 0; i--) {
                        row = row * x + powers[j][i];
                    }
                    sum = sum * y + row;
                }
                double u = (x + 1) / 4;
                assertThat(DensityKernel.density(1e9 * u / (1 - u), 323.15 + 50 * y))
                        .isCloseTo(sum, within(1e-8));
            }
        }
    }

    @Test
    void iceAndStatesOutOfRangeAreRefused() {
        assertRefused(() -> Water.fastDensitySi(900e6, 290), "water-freezes");
        assertRefused(() -> Water.fastDensitySi(-1, 300), "must-be-at-least", "absolute pressure of water", 0);
        assertRefused(() -> Water.fastDensitySi(1.1e9, 370), "must-be-at-most", "absolute pressure of water", 1e9);
        assertRefused(() -> Water.fastDensitySi(1e6, 374), "must-be-at-most", "temperature of water", 373.15);
        assertRefused(() -> Water.fastDensitySi(Double.NaN, 300), "must-be-at-least", "absolute pressure of water", 0);
    }
}
