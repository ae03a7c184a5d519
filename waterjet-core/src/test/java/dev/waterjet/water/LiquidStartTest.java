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

    /** Around the saturated liquid the short cut for ordinary water classifies as the saturation itself does. */
    @Test
    void ordinaryWaterIsClassifiedAsByTheSaturation() {
        for (double temperatureK = 273.2; temperatureK < 380; temperatureK += 1.37) {
            double saturatedKgPerM3 =
                    Saturation.at(kelvins(temperatureK)).liquid().densitySi();
            for (int i = -60; i <= 60; i++) {
                double densityKgPerM3 = saturatedKgPerM3 * (1 + 1e-3 * i * Math.abs(i) / 60.0);
                double pressurePa = pressurePa(temperatureK, densityKgPerM3);
                if (i == 0 || pressurePa <= 0) {
                    continue;
                }
                assertThat(Water.metastable()
                                .atDensitySi(densityKgPerM3, temperatureK)
                                .isMetastable())
                        .as("%s kg/m3, %s K", densityKgPerM3, temperatureK)
                        .isEqualTo(i < 0);
            }
        }
    }

    /** The short cut holds because the isotherms have no false loop there that reaches the saturation pressure. */
    @Test
    void pressureOfStretchedOrdinaryWaterIsBelowSaturation() {
        for (double temperatureK = 273.2; temperatureK <= 373.15; temperatureK += 1.1) {
            Saturation saturation = Saturation.at(kelvins(temperatureK));
            double saturatedKgPerM3 = saturation.liquid().densitySi();
            double saturatedPa = saturation.liquid().pressureSi();
            for (double densityKgPerM3 = 900; densityKgPerM3 < saturatedKgPerM3; densityKgPerM3 += 0.25) {
                assertThat(pressurePa(temperatureK, densityKgPerM3)).isLessThan(saturatedPa);
            }
        }
    }

    private static double pressurePa(double temperatureK, double densityKgPerM3) {
        Iapws95Kernel equation = new Iapws95Kernel();
        equation.at(temperatureK, densityKgPerM3);
        return equation.pressurePa();
    }

    @Test
    void vapourBelowTheTriplePointIsLeftOut() {
        for (Water water : List.of(Water.stable(), Water.metastable())) {
            assertRefused(
                    () -> water.atDensitySi(1e-4, 260), "must-be-at-least", "temperature of water vapour", 273.16);
        }
        assertThat(stable.atDensitySi(1e-3, 280).pressureSi()).isBetween(100.0, 200.0);
    }

    /** A step from the polynomial, taken to first order in all properties, gives the equation of state at the density found. */
    @Test
    void propertiesAreThoseOfTheEquationAtTheDensityFound() {
        for (double pressurePa = 0.2e6; pressurePa < 990e6; pressurePa += 23e6) {
            for (double temperatureK = 275; temperatureK < 373; temperatureK += 7) {
                if (temperatureK > MeltingKernel.temperatureK(pressurePa)) {
                    WaterState found = stable.atSi(pressurePa, temperatureK);
                    WaterState exact = stable.atDensitySi(found.densitySi(), temperatureK);
                    double pressureErrorPa = pressurePa - exact.pressureSi();
                    assertThat(pressureErrorPa * exact.compressibilitySi()).isCloseTo(0, within(1e-12));
                    assertSame(found.enthalpySi(), exact.enthalpySi(), 1e5);
                    assertSame(found.entropySi(), exact.entropySi(), 100);
                    assertSame(found.isobaricHeatCapacitySi(), exact.isobaricHeatCapacitySi(), 0);
                    assertSame(found.isochoricHeatCapacitySi(), exact.isochoricHeatCapacitySi(), 0);
                    assertSame(found.soundSpeedSi(), exact.soundSpeedSi(), 0);
                    assertSame(found.compressibilitySi(), exact.compressibilitySi(), 0);
                    assertSame(found.expansionSi(), exact.expansionSi(), 1e-3);
                }
            }
        }
    }

    private static void assertSame(double found, double exact, double least) {
        assertThat(found).isCloseTo(exact, within(1e-12 * Math.max(least, Math.abs(exact))));
    }

    /** The derivatives by density that move a state are those of the equation: compared with differences. */
    @Test
    void movedStatesAreThoseOfTheEquation() {
        Iapws95Kernel moved = new Iapws95Kernel();
        Iapws95Kernel there = new Iapws95Kernel();
        for (double densityKgPerM3 : new double[] {965, 998, 1060, 1129, 1230}) {
            for (double temperatureK : new double[] {274, 300, 330, 373}) {
                double step = 1e-5;
                moved.nearAt(temperatureK, densityKgPerM3);
                moved.moveBy(step);
                there.at(temperatureK, densityKgPerM3 * (1 + step));
                assertThat(moved.pressurePa()).isCloseTo(there.pressurePa(), within(2.0));
                assertThat(moved.pressureByDensity() / there.pressureByDensity())
                        .isCloseTo(1, within(1e-8));
                assertThat(moved.pressureByTemperature() / there.pressureByTemperature())
                        .isCloseTo(1, within(2e-7));
                assertThat(moved.isochoricHeatCapacityJPerKgK() / there.isochoricHeatCapacityJPerKgK())
                        .isCloseTo(1, within(1e-8));
            }
        }
    }
}
