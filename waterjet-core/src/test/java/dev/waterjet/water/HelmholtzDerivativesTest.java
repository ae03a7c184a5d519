package dev.waterjet.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each derivative of the equation of state against differences of the one below it, and laws that join properties. */
class HelmholtzDerivativesTest {

    private static final double STEP = 2e-6;
    private static final double CRITICAL_K = 647.096;
    private static final double CRITICAL_KG_PER_M3 = 322;

    /** A value of the equation at delta and tau, each moved by a share. */
    private static double at(
            double delta, double tau, double moveDelta, double moveTau, ToDoubleFunction<Iapws95Kernel> value) {
        Iapws95Kernel equation = new Iapws95Kernel();
        equation.at(CRITICAL_K / (tau * Math.exp(moveTau)), CRITICAL_KG_PER_M3 * delta * Math.exp(moveDelta));
        return value.applyAsDouble(equation);
    }

    private static double byDensity(double delta, double tau, ToDoubleFunction<Iapws95Kernel> value) {
        return (at(delta, tau, STEP, 0, value) - at(delta, tau, -STEP, 0, value)) / (2 * STEP);
    }

    private static double byTau(double delta, double tau, ToDoubleFunction<Iapws95Kernel> value) {
        return (at(delta, tau, 0, STEP, value) - at(delta, tau, 0, -STEP, value)) / (2 * STEP);
    }

    private static void agrees(String what, double derivative, double byDifference) {
        assertThat(derivative).as(what).isEqualTo(byDifference, within(2e-6 * (1 + Math.abs(byDifference))));
    }

    /** The whole range, and the places where only the terms 52 to 56 are steep. */
    @ParameterizedTest
    @CsvSource({
        "0.01, 3.4, 0.5, 2.7",
        "0.9, 1.1, 1.17, 1.29",
        "0.9, 1.1, 0.97, 1.03",
        "0.8, 1.2, 0.93, 1.07",
        "1.0001, 1.02, 0.995, 0.9995",
        "0.98, 0.9999, 1.001, 1.005"
    })
    void derivativesAreThoseOfTheFunctionsBelow(double minDelta, double maxDelta, double minTau, double maxTau) {
        SplittableRandom random = new SplittableRandom(Double.doubleToLongBits(minDelta + maxTau));
        for (int i = 0; i < 60; i++) {
            double delta = random.nextDouble(minDelta, maxDelta);
            double tau = random.nextDouble(minTau, maxTau);
            Iapws95Kernel equation = new Iapws95Kernel();
            equation.at(CRITICAL_K / tau, CRITICAL_KG_PER_M3 * delta);
            String place = " at delta " + delta + ", tau " + tau;
            agrees("D" + place, equation.residualD, byDensity(delta, tau, kernel -> kernel.residual));
            agrees("T" + place, equation.residualT, byTau(delta, tau, kernel -> kernel.residual));
            agrees(
                    "DD" + place,
                    equation.residualDd + equation.residualD,
                    byDensity(delta, tau, kernel -> kernel.residualD));
            agrees(
                    "TT" + place,
                    equation.residualTt + equation.residualT,
                    byTau(delta, tau, kernel -> kernel.residualT));
            agrees("DT" + place, equation.residualDt, byTau(delta, tau, kernel -> kernel.residualD));
            agrees("DT by density" + place, equation.residualDt, byDensity(delta, tau, kernel -> kernel.residualT));
            agrees("ideal T" + place, equation.idealT, byTau(delta, tau, kernel -> kernel.ideal));
            agrees("ideal TT" + place, equation.idealTt + equation.idealT, byTau(delta, tau, kernel -> kernel.idealT));
        }
    }

    /** Pressure alone is evaluated to the same as all together. */
    @Test
    void shortEvaluationsAreThoseOfTheWhole() {
        SplittableRandom random = new SplittableRandom(4);
        for (int i = 0; i < 200; i++) {
            double temperatureK = random.nextDouble(240, 1200);
            double density = random.nextDouble(1, 1200);
            Iapws95Kernel whole = new Iapws95Kernel();
            whole.at(temperatureK, density);
            Iapws95Kernel part = new Iapws95Kernel();
            part.pressureAt(temperatureK, density);
            assertThat(part.pressurePa())
                    .isEqualTo(whole.pressurePa(), within(1e-12 * Math.abs(whole.pressurePa()) + 1e-3));
            assertThat(part.pressureByDensity())
                    .isEqualTo(whole.pressureByDensity(), within(1e-10 * Math.abs(whole.pressureByDensity()) + 1e-3));
            part.residualAt(temperatureK, density);
            assertThat(part.pressureByTemperature()).isEqualTo(whole.pressureByTemperature());
        }
    }

    /** In dense, cool water a state moved by a small share of its density is the state there. */
    @Test
    void aStateIsMovedToItsNeighbour() {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 100; i++) {
            double temperatureK = random.nextDouble(274, 360);
            double density = random.nextDouble(1000, 1150);
            double share = random.nextDouble(-1e-6, 1e-6);
            Iapws95Kernel moved = new Iapws95Kernel();
            moved.nearAt(temperatureK, density);
            moved.moveBy(share);
            Iapws95Kernel there = new Iapws95Kernel();
            there.at(temperatureK, density * (1 + share));
            assertThat(moved.pressurePa()).isEqualTo(there.pressurePa(), within(1e-1));
            assertThat(moved.pressureByDensity())
                    .isEqualTo(there.pressureByDensity(), within(1e-9 * there.pressureByDensity()));
            assertThat(moved.pressureByTemperature())
                    .isEqualTo(there.pressureByTemperature(), within(1e-9 * there.pressureByTemperature()));
            assertThat(moved.isochoricHeatCapacityJPerKgK())
                    .isEqualTo(there.isochoricHeatCapacityJPerKgK(), within(1e-7));
            assertThat(moved.entropyJPerKgK()).isEqualTo(there.entropyJPerKgK(), within(1e-8));
            assertThat(moved.enthalpyJPerKg()).isEqualTo(there.enthalpyJPerKg(), within(1e-4));
        }
    }

    /** At one density the energy rises by c_v; at one pressure the enthalpy by c_p, and dT ds by dh. */
    @ParameterizedTest
    @CsvSource({"1000, 300", "1100, 350", "700, 590", "0.5, 500", "30, 800", "400, 700"})
    void energyAndEntropyFollowTheHeatCapacities(double density, double temperatureK) {
        Water water = Water.stable();
        double h = 0.01;
        WaterState state = water.atDensitySi(density, temperatureK);
        WaterState cold = water.atDensitySi(density, temperatureK - h);
        WaterState hot = water.atDensitySi(density, temperatureK + h);
        double cv = state.isochoricHeatCapacitySi();
        assertThat((hot.internalEnergySi() - cold.internalEnergySi()) / (2 * h)).isEqualTo(cv, within(1e-4 * cv));
        assertThat((hot.entropySi() - cold.entropySi()) / (2 * h) * temperatureK)
                .isEqualTo(cv, within(1e-4 * cv));
        double perK = (hot.pressureSi() - cold.pressureSi()) / (2 * h);
        WaterState dense = water.atDensitySi(density * (1 + 1e-5), temperatureK);
        WaterState thin = water.atDensitySi(density * (1 - 1e-5), temperatureK);
        // Maxwell: rho^2 ds/drho at one temperature is -dp/dT at one density
        assertThat(density * (dense.entropySi() - thin.entropySi()) / 2e-5).isEqualTo(-perK, within(2e-4 * perK));
        double byDensity = (dense.pressureSi() - thin.pressureSi()) / (2e-5 * density);
        double cp = cv + temperatureK * perK * perK / (density * density * byDensity);
        assertThat(state.isobaricHeatCapacitySi()).isEqualTo(cp, within(1e-3 * cp));
        double sound = Math.sqrt(byDensity * cp / cv);
        assertThat(state.soundSpeedSi()).isEqualTo(sound, within(1e-3 * sound));
        assertThat(state.internalEnergySi()).isEqualTo(state.enthalpySi() - state.pressureSi() / density, within(1e-6));
    }

    /** The convention of the release: energy and entropy of the liquid are 0 at the triple point. */
    @Test
    void energyIsZeroAtTheTriplePoint() {
        WaterState liquid = Saturation.atSi(273.16).liquid();
        assertThat(liquid.internalEnergySi()).isEqualTo(0, within(0.01));
        assertThat(liquid.entropySi()).isEqualTo(0, within(1e-4));
        assertThat(dev.waterjet.measure.Kind.SPECIFIC_ENERGY.si(
                        Water.stable().atSi(1e6, 320).internalEnergy()))
                .isEqualTo(Water.stable().atSi(1e6, 320).internalEnergySi());
    }

    /** Both saturated states have one pressure and one Gibbs energy, and the heat of evaporation follows Clapeyron. */
    @ParameterizedTest
    @CsvSource({"274", "373", "450", "580", "640", "646.5"})
    void saturatedStatesAreInEquilibrium(double temperatureK) {
        Saturation saturation = Saturation.atSi(temperatureK);
        WaterState liquid = saturation.liquid();
        WaterState vapour = saturation.vapour();
        Iapws95Kernel dense = new Iapws95Kernel();
        dense.at(temperatureK, liquid.densitySi());
        Iapws95Kernel thin = new Iapws95Kernel();
        thin.at(temperatureK, vapour.densitySi());
        assertThat(dense.pressurePa()).isEqualTo(thin.pressurePa(), within(20.0 + 1e-6 * thin.pressurePa()));
        assertThat(dense.enthalpyJPerKg() - temperatureK * dense.entropyJPerKgK())
                .isEqualTo(thin.enthalpyJPerKg() - temperatureK * thin.entropyJPerKgK(), within(0.05));
        double h = 0.01;
        double slope = (Saturation.pressurePa(temperatureK + h) - Saturation.pressurePa(temperatureK - h)) / (2 * h);
        double clapeyron =
                (vapour.entropySi() - liquid.entropySi()) / (1 / vapour.densitySi() - 1 / liquid.densitySi());
        assertThat(slope).isEqualTo(clapeyron, within(1e-4 * clapeyron));
    }

    /** Surface tension of IAPWS R1-76(2014) at 20, 100, 200 and 300 °C in mN/m; values of its table from memory. */
    @ParameterizedTest
    @CsvSource({"293.15, 72.74", "373.15, 58.91", "473.15, 37.67", "573.15, 14.36"})
    void surfaceTensionIsThatOfTheRelease(double temperatureK, double millinewtonsPerMetre) {
        assertThat(1e3 * SurfaceTensionKernel.newtonsPerMetre(temperatureK))
                .isEqualTo(millinewtonsPerMetre, within(0.02));
    }
}
