package dev.waterjet.water;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.kelvins;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Formulas from which searches start, and the margins that rest on them. */
class LiquidStartTest {

    private final Water stable = Water.stable();

    /** The margins between plain liquid and boiling water are three times the error of the formula. */
    @Test
    void formulaForSaturatedLiquidIsWithinTheMargins() {
        for (double temperatureK = 273.16; temperatureK < 620; temperatureK += 0.5) {
            double ratio = SaturationKernel.liquidDensityStart(temperatureK)
                    / Saturation.at(kelvins(temperatureK)).liquid().densitySi();
            assertThat(ratio).as("%s K", temperatureK).isCloseTo(1, within(temperatureK <= 450 ? 7e-6 : 3.4e-4));
        }
    }

    @Test
    void vapourBelowTheTriplePointIsLeftOut() {
        for (Water water : List.of(Water.stable(), Water.metastable())) {
            assertRefused(
                    () -> water.atDensitySi(1e-4, 260), "must-be-at-least", "temperature of water vapour", 273.16);
        }
        assertThat(stable.atDensitySi(1e-3, 280).pressureSi()).isBetween(100.0, 200.0);
    }

    /** One Newton step from the polynomial gives the same water as a search from a rough start. */
    @Test
    void densityDoesNotDependOnTheStart() {
        for (double pressurePa = 0.2e6; pressurePa < 990e6; pressurePa += 23e6) {
            for (double temperatureK = 275; temperatureK < 373; temperatureK += 7) {
                if (temperatureK > MeltingKernel.temperatureK(pressurePa)) {
                    WaterState found = stable.atSi(pressurePa, temperatureK);
                    Iapws95Kernel exact = new Iapws95Kernel();
                    exact.at(temperatureK, found.densitySi());
                    double missing = (pressurePa - exact.pressurePa()) / exact.pressureByDensity();
                    assertThat(missing).isCloseTo(0, within(1e-12 * found.densitySi()));
                }
            }
        }
    }
}
