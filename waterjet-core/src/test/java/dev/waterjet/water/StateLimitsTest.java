package dev.waterjet.water;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kelvins;
import static dev.waterjet.measure.Measures.megapascals;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** States at both sides of each limit. */
class StateLimitsTest {

    private static final String PRESSURE = "absolute pressure of water";
    static final String TEMPERATURE = "temperature of water";
    private static final String DENSITY = "density of water";

    private final Water stable = Water.stable();
    private final Water metastable = Water.metastable();

    @Test
    void pressureIsLimitedTo1000MpaWithinRounding() {
        assertThat(stable.atSi(1e9 * (1 + 1e-7), 330).pressureSi()).isGreaterThan(1e9);
        assertRefused(() -> stable.atSi(1e9 * (1 + 1e-5), 330), "must-be-at-most", PRESSURE, 1e9);
    }

    @Test
    void temperatureIsLimitedTo235And1273K() {
        assertThat(metastable.atSi(1e5, 235).isMetastable()).isTrue();
        assertRefused(() -> metastable.atSi(1e5, 234.9), "must-be-at-least", TEMPERATURE, 235);
        assertThat(stable.atDensitySi(10, 1273).temperatureSi()).isEqualTo(1273);
        assertRefused(() -> stable.atDensitySi(10, 1273.1), "must-be-at-most", TEMPERATURE, 1273);
        assertThat(stable.atSi(30e6, 647.096).densitySi()).isGreaterThan(322);
        assertRefused(() -> stable.atSi(30e6, 647.1), "supercritical-water", TEMPERATURE, 647.096);
        assertRefused(() -> stable.atDensitySi(0, 300), "must-be-above", DENSITY, 0);
    }

    @Test
    void waterBoilsBelowItsSaturationPressureAndNotAtIt() {
        for (double temperatureK : new double[] {280, 373.15, 500, 640}) {
            double boilingPa = Saturation.pressurePa(temperatureK);
            assertThat(stable.atSi(boilingPa, temperatureK).isMetastable()).isFalse();
            assertThat(stable.atSi(boilingPa * 1.02, temperatureK).isMetastable())
                    .isFalse();
            assertRefused(() -> stable.atSi(boilingPa * (1 - 1e-5), temperatureK), "water-boils", PRESSURE, boilingPa);
            assertThat(metastable.atSi(boilingPa * (1 - 1e-5), temperatureK).isMetastable())
                    .isTrue();
        }
        assertThat(stable.atSi(22.064e6, 640).isMetastable()).isFalse();
    }

    /** The liquid of IAPWS-95 ends at 593.4 K for 0.1 MPa (spinodal, computed outside this project). */
    @Test
    void superheatedLiquidEndsAtTheSpinodal() {
        assertThat(metastable.atSi(101_325, 592.5).densitySi()).isGreaterThan(450);
        assertRefused(() -> metastable.atSi(101_325, 594.5), "liquid-ends");
        assertRefused(() -> metastable.atSi(101_325, 600), "liquid-ends");
        assertRefused(() -> stable.atSi(101_325, 600), "water-boils");
        assertRefused(() -> metastable.atDensitySi(342.9, 600), "water-separates");
        for (double temperatureK = 590; temperatureK < 646; temperatureK += 3.7) {
            for (double pressurePa = 50_000; pressurePa < 21e6; pressurePa *= 1.3) {
                try {
                    WaterState state = metastable.atSi(pressurePa, temperatureK);
                    assertThat(state.isochoricHeatCapacitySi()).isBetween(2000.0, 10_000.0);
                    assertThat(state.entropySi()).isBetween(3000.0, 4410.0);
                    assertThat(metastable
                                    .atDensitySi(state.densitySi(), temperatureK)
                                    .soundSpeedSi())
                            .isPositive();
                } catch (dev.waterjet.measure.DomainException e) {
                    assertThat(e.code()).isEqualTo("liquid-ends");
                    assertThat(e.limit().orElseThrow()).isGreaterThan(pressurePa / 1e6);
                }
            }
        }
    }

    @Test
    void undercooledWaterWithoutHeatCapacityIsRefused() {
        assertRefused(() -> metastable.atSi(1e9, 235), "water-unstable");
        for (double pressurePa = 1e5; pressurePa <= 1e9; pressurePa += 24.9e6) {
            for (double temperatureK = 235; temperatureK < 250; temperatureK += 0.7) {
                try {
                    WaterState state = metastable.atSi(pressurePa, temperatureK);
                    assertThat(state.soundSpeedSi()).isPositive();
                    assertThat(state.isochoricHeatCapacitySi()).isPositive();
                    assertThat(state.describe()).isNotEmpty();
                } catch (dev.waterjet.measure.DomainException e) {
                    assertThat(e.code()).isEqualTo("water-unstable");
                }
            }
        }
    }

    /** Pairs of pressure and entropy or enthalpy next to boiling, of states that the library has made by temperature. */
    @Test
    void statesNearBoilingAreFoundAgain() {
        assertThat(stable.atEntropySi(18_721_767.39, 3920.5141).densitySi()).isCloseTo(526.2, within(0.05));
        java.util.SplittableRandom random = new java.util.SplittableRandom(354);
        for (int i = 0; i < 400; i++) {
            double temperatureK = random.nextDouble(620, 645);
            double pressurePa = Saturation.pressurePa(temperatureK) * (1 + Math.pow(10, random.nextDouble(-5, -1)));
            WaterState state = stable.atSi(pressurePa, temperatureK);
            assertThat(stable.atEntropySi(pressurePa, state.entropySi()).temperatureSi())
                    .isCloseTo(temperatureK, within(1e-4));
            assertThat(stable.atEnthalpySi(pressurePa, state.enthalpySi()).densitySi())
                    .isCloseTo(state.densitySi(), within(1e-3));
        }
    }

    /** The short cut for plainly liquid water moves no state to another class. */
    @Test
    void theClassOfAStateIsThatOfTheSaturationLine() {
        for (double temperatureK = 273.5; temperatureK < 646; temperatureK += 2.3) {
            double boiling = Saturation.atSi(temperatureK).liquid().densitySi();
            for (double share = -0.002; share <= 0.002; share += 0.00031) {
                double density = boiling * (1 + share);
                double t = temperatureK;
                boolean isLiquid;
                try {
                    isLiquid = !stable.atDensitySi(density, t).isMetastable();
                } catch (dev.waterjet.measure.DomainException e) {
                    isLiquid = false;
                }
                assertThat(isLiquid).as(density + " kg/m3, " + t + " K").isEqualTo(share > 0);
            }
        }
    }

    @Test
    void statesBetweenLiquidAndVapourAreNotStable() {
        Saturation boiling = Saturation.at(kelvins(500));
        double dense = boiling.liquid().densitySi();
        double thin = boiling.vapour().densitySi();

        assertThat(stable.atDensitySi(dense, 500).isMetastable()).isFalse();
        assertThat(stable.atDensitySi(thin, 500).isMetastable()).isFalse();
        assertThat(stable.atDensitySi(dense * 1.01, 500).isMetastable()).isFalse();
        assertThat(stable.atDensitySi(thin * 0.9, 500).isMetastable()).isFalse();
        assertThat(assertRefused(() -> stable.atDensitySi(dense * 0.999, 500), "water-separates", DENSITY, dense, 2e-6)
                        .parameters())
                .containsEntry("relation", "at least");
        assertThat(assertRefused(() -> stable.atDensitySi(thin * 1.001, 500), "water-separates", DENSITY, thin, 2e-6)
                        .parameters())
                .containsEntry("relation", "at most");
        assertThat(metastable.atDensitySi(dense * 0.999, 500).isMetastable()).isTrue();
        assertThat(metastable.atDensitySi(thin * 1.001, 500).isMetastable()).isTrue();
        // where pressure falls with density no water can be
        assertRefused(() -> metastable.atDensitySi(400, 500), "water-separates");
        // stretched water, below zero pressure
        assertRefused(() -> metastable.atDensitySi(980, 300), "water-separates");
        // above the critical point there is no gap
        assertThat(stable.atDensitySi(322, 650).isMetastable()).isFalse();
    }

    /** Release R6-95, section 3: 22.064 MPa at 647.096 K and 322 kg/m3. */
    @Test
    void theCriticalPointHasFiniteProperties() {
        Iapws95Kernel equation = new Iapws95Kernel();
        equation.at(647.096, 322);
        assertThat(equation.pressurePa()).isCloseTo(22.064e6, within(1e2));
        for (double temperatureK : new double[] {640, 647, 650, 660}) {
            equation.at(temperatureK, 322);
            double at = equation.pressurePa();
            double slope = equation.pressureByDensity();
            equation.at(temperatureK, 322.001);
            assertThat(equation.pressurePa() - at)
                    .isCloseTo(0.001 * slope, within(0.02 * 0.001 * Math.abs(slope) + 0.5));
        }
    }

    /** An equation that is evaluated again gives the bits of a fresh one. */
    @Test
    void anEquationKeepsNothingOfEarlierStates() {
        Iapws95Kernel used = new Iapws95Kernel();
        for (double[] state :
                new double[][] {{300, 1000}, {300, 1100}, {500, 1100}, {1000, 1}, {500, 0.001}, {300, 1000}}) {
            used.at(state[0], state[1]);
            Iapws95Kernel fresh = new Iapws95Kernel();
            fresh.at(state[0], state[1]);
            assertThat(used.pressurePa()).isEqualTo(fresh.pressurePa());
            assertThat(used.entropyJPerKgK()).isEqualTo(fresh.entropyJPerKgK());
            assertThat(used.soundSpeedMPerS()).isEqualTo(fresh.soundSpeedMPerS());
        }
    }

    /** Steam so thin that it is an ideal gas: p = rho R T, and c_p - c_v = R. */
    @Test
    void thinSteamIsAnIdealGas() {
        Iapws95Kernel equation = new Iapws95Kernel();
        equation.at(600, 1e-6);

        assertThat(equation.pressurePa()).isCloseTo(1e-6 * 461.51805 * 600, within(1e-8));
        assertThat(equation.isobaricHeatCapacityJPerKgK() - equation.isochoricHeatCapacityJPerKgK())
                .isCloseTo(461.51805, within(1e-4));
        assertThat(equation.expansionPerK()).isCloseTo(1 / 600.0, within(1e-9));
    }

    @Test
    void searchesAreLimitedToTheLiquid() {
        // at 500 MPa the liquid begins where ice V melts; metastable it goes on, at 400 MPa to 235 K
        double meltingK = MeltingKernel.temperatureK(500e6);
        double least = stable.atSi(500e6, meltingK).entropySi();
        assertThat(stable.atEntropySi(500e6, least).temperatureSi()).isCloseTo(meltingK, within(1e-6));
        assertRefused(() -> stable.atEntropySi(500e6, least - 5), "water-freezes");
        assertThat(metastable.atEntropySi(500e6, least - 5).isMetastable()).isTrue();
        double coldest = metastable.atSi(400e6, 235).entropySi();
        assertRefused(
                () -> metastable.atEntropySi(400e6, coldest - 5),
                "must-be-at-least",
                "entropy of water",
                coldest,
                1e-6);
        // at 1 MPa it ends where it boils, at 30 MPa at the critical temperature
        Saturation boiling = Saturation.at(kelvins(453.028));
        double most = boiling.liquid().enthalpySi();
        double boilingPa = boiling.liquid().pressureSi();
        assertThat(stable.atEnthalpySi(boilingPa, most - 1).temperatureSi()).isCloseTo(453.028, within(1e-3));
        assertRefused(() -> stable.atEnthalpySi(boilingPa, most + 100_000), "water-boils");
        assertThat(metastable.atEnthalpySi(boilingPa, most + 100_000).isMetastable())
                .isTrue();
        assertRefused(
                () -> stable.atEnthalpySi(boilingPa, 3 * most), "must-be-at-most", "enthalpy of water", most, 1e-6);
        double critical = stable.atSi(30e6, 647.096).enthalpySi();
        assertThat(stable.atEnthalpySi(30e6, critical - 10).temperatureSi()).isCloseTo(647.096, within(0.01));
        assertRefused(
                () -> stable.atEnthalpySi(30e6, critical + 100_000),
                "must-be-at-most",
                "enthalpy of water",
                critical,
                1e-6);
        assertRefused(() -> stable.atEnthalpySi(1e6, Double.POSITIVE_INFINITY), "must-be-at-most");
    }

    /** Close to boiling near the critical point Newton's method fails; bisection finds the liquid. */
    @Test
    void hotLiquidIsFoundByEntropyAndEnthalpy() {
        for (double temperatureK : new double[] {628.8, 629.2, 629.6, 645, 647}) {
            double pressurePa = Saturation.pressurePa(temperatureK) * 1.001;
            WaterState state = stable.atSi(pressurePa, temperatureK);
            assertThat(stable.atEntropySi(pressurePa, state.entropySi()).temperatureSi())
                    .isCloseTo(temperatureK, within(1e-6));
            assertThat(stable.atEnthalpySi(pressurePa, state.enthalpySi()).temperatureSi())
                    .isCloseTo(temperatureK, within(1e-6));
        }
        for (double pressureMpa : new double[] {17.998, 18.155}) {
            WaterState state = stable.atSi(pressureMpa * 1e6, 629.56);
            assertThat(stable.atEntropySi(pressureMpa * 1e6, state.entropySi()).temperatureSi())
                    .isCloseTo(629.56, within(1e-6));
        }
    }

    @Test
    void everySearchChecksItsPressure() {
        for (Water water : new Water[] {stable, metastable}) {
            assertRefused(() -> water.atEntropySi(1.1e9, 500), "must-be-at-most", PRESSURE, 1e9);
            assertRefused(() -> water.atEntropySi(0, 500), "must-be-above", PRESSURE, 0);
            assertRefused(() -> water.atEnthalpySi(1.1e9, 5e5), "must-be-at-most", PRESSURE, 1e9);
            assertRefused(() -> water.atDensitySi(1300, 900), "must-be-at-most", PRESSURE, 1e9);
        }
    }

    @Test
    void denseWaterColderThanIceIsMarked() {
        WaterState frozen = metastable.at(megapascals(800), celsius(10));

        assertThat(metastable.atDensitySi(frozen.densitySi(), 283.15).isMetastable())
                .isTrue();
        assertRefused(() -> stable.atDensitySi(frozen.densitySi(), 283.15), "water-freezes");
    }

    /** (drho/dp)/rho and -(drho/dT)/rho against differences. */
    @Test
    void compressibilityAndExpansionAreSlopesOfDensity() {
        WaterState state = stable.atSi(300e6, 320);
        double byPressure =
                stable.atSi(301e6, 320).densitySi() - stable.atSi(299e6, 320).densitySi();
        double byTemperature = stable.atSi(300e6, 320.1).densitySi()
                - stable.atSi(300e6, 319.9).densitySi();

        assertThat(state.compressibilitySi()).isCloseTo(byPressure / 2e6 / state.densitySi(), within(1e-15));
        assertThat(state.expansionSi()).isCloseTo(-byTemperature / 0.2 / state.densitySi(), within(1e-9));
    }

    @Test
    void saturationIsLimitedToTripleAndCriticalPoint() {
        assertThat(Saturation.pressurePa(273.15)).isZero();
        assertThat(Saturation.pressurePa(273.16)).isCloseTo(611.65, within(0.02));
        assertThat(Saturation.pressurePa(647.09)).isCloseTo(22.064e6, within(3e3));
        assertThat(Saturation.pressurePa(648)).isEqualTo(22.064e6);
        assertRefused(() -> Saturation.at(kelvins(273.15)), "must-be-at-least", "saturation temperature", 273.16);
        assertRefused(() -> Saturation.at(kelvins(650)), "must-be-at-most", "saturation temperature", 647.09);
        for (double temperatureK : new double[] {273.16, 400, 600, 647, 647.09}) {
            Saturation boiling = Saturation.at(kelvins(temperatureK));
            WaterState liquid = boiling.liquid();
            WaterState vapour = boiling.vapour();
            assertThat(liquid.densitySi()).isGreaterThan(vapour.densitySi());
            // equal Gibbs energy
            assertThat(liquid.enthalpySi() - temperatureK * liquid.entropySi())
                    .isCloseTo(vapour.enthalpySi() - temperatureK * vapour.entropySi(), within(0.01));
        }
    }

    /** IAPWS SR1-86(1992): the formulas that a search starts from are close by, all the way. */
    @Test
    void searchesStartClose() {
        for (double temperatureK = 273.16; temperatureK < 645; temperatureK += 6) {
            Saturation boiling = Saturation.at(kelvins(temperatureK));
            assertThat(SaturationKernel.pressureStart(temperatureK)
                            / boiling.liquid().pressureSi())
                    .isCloseTo(1, within(1e-3));
            assertThat(SaturationKernel.liquidDensityStart(temperatureK)
                            / boiling.liquid().densitySi())
                    .isCloseTo(1, within(3e-3));
            assertThat(SaturationKernel.vapourDensityStart(temperatureK)
                            / boiling.vapour().densitySi())
                    .isCloseTo(1, within(3e-3));
        }
        for (double pressurePa = 1e6; pressurePa < 1e9; pressurePa += 37e6) {
            for (double temperatureK = 275; temperatureK < 353; temperatureK += 6) {
                if (temperatureK > MeltingKernel.temperatureK(pressurePa)) {
                    assertThat(LiquidKernel.start(pressurePa, temperatureK)
                                    / stable.atSi(pressurePa, temperatureK).densitySi())
                            .isCloseTo(1, within(0.02));
                }
            }
            for (double temperatureK = 354; temperatureK < 450; temperatureK += 12) {
                assertThat(LiquidKernel.start(pressurePa, temperatureK)
                                / stable.atSi(pressurePa, temperatureK).densitySi())
                        .isCloseTo(1, within(0.06));
            }
        }
    }

    /** ds = c_p dT/T - alpha/rho dp and dh = c_p dT + (1 - alpha T)/rho dp against differences. */
    @Test
    void slopesOfASearchAreThoseOfTheWater() {
        for (CaloricProperty property : CaloricProperty.values()) {
            double up = value(property, 300e6 + 1e4, 320);
            double down = value(property, 300e6 - 1e4, 320);
            Iapws95Kernel equation = equation(300e6, 320);
            assertThat(property.perPressure(equation))
                    .isCloseTo((up - down) / 2e4, within(1e-6 * Math.abs(up - down) / 2e4));
            double warm = value(property, 300e6, 320.01);
            double cold = value(property, 300e6, 319.99);
            assertThat(property.perLogTemperature(equation))
                    .isCloseTo(
                            (warm - cold) / Math.log(320.01 / 319.99),
                            within(1e-6 * property.perLogTemperature(equation)));
        }
        assertThat(CaloricProperty.ENTROPY.label()).isEqualTo("entropy");
    }

    private static double value(CaloricProperty property, double pressurePa, double temperatureK) {
        return property.value(equation(pressurePa, temperatureK));
    }

    private static Iapws95Kernel equation(double pressurePa, double temperatureK) {
        LiquidKernel kernel = new LiquidKernel();
        assertThat(kernel.solve(pressurePa, temperatureK)).isTrue();
        return kernel.found();
    }

    /** The equation is evaluated at the solution, to the last bit; a search that fails returns false. */
    @Test
    void aSearchLeavesTheEquationAtItsSolution() {
        LiquidKernel kernel = new LiquidKernel();
        double entropy = stable.atSi(300e6, 310).entropySi();

        assertThat(kernel.solve(400e6, 300)).isTrue();
        assertThat(kernel.found().densityKgPerM3).isEqualTo(kernel.densityKgPerM3());
        assertThat(kernel.newton(CaloricProperty.ENTROPY, 300e6, entropy)).isTrue();
        assertThat(kernel.found().densityKgPerM3).isEqualTo(kernel.densityKgPerM3());
        assertThat(kernel.found().temperatureK).isEqualTo(kernel.temperatureK());
        assertThat(kernel.newton(CaloricProperty.ENTROPY, 300e6, Double.NaN)).isFalse();
    }
}
