package dev.waterjet.water;

import static dev.waterjet.water.Iapws95Constants.CRITICAL_DENSITY_KG_PER_M3;
import static dev.waterjet.water.Iapws95Constants.CRITICAL_TEMPERATURE_K;
import static dev.waterjet.water.Iapws95Constants.GAS_CONSTANT_J_PER_KG_K;

/**
 * Equilibrium of liquid and vapour: equal pressure and equal Gibbs energy at one temperature, by Newton's method on both
 * densities.
 *
 * <p>The search starts from the supplementary equations of IAPWS SR1-86(1992), values from memory. They determine the start
 * and not the result.
 */
final class SaturationKernel {

    static final double TRIPLE_TEMPERATURE_K = 273.16;
    static final double CRITICAL_PRESSURE_PA = 22.064e6;

    private static final int MAX_STEPS = 60;
    private static final double LAST_STEP = 1e-9;
    private static final double MAX_STEP = 0.1;

    private final Iapws95Kernel liquid = new Iapws95Kernel();
    private final Iapws95Kernel vapour = new Iapws95Kernel();

    Iapws95Kernel liquid() {
        return liquid;
    }

    Iapws95Kernel vapour() {
        return vapour;
    }

    /** Evaluates both equations at equilibrium; false if the two densities cannot be resolved. */
    boolean solve(double temperatureK) {
        double dense = liquidDensityStart(temperatureK);
        double thin = vapourDensityStart(temperatureK);
        for (int i = 0; i < MAX_STEPS; i++) {
            liquid.at(temperatureK, dense);
            vapour.at(temperatureK, thin);
            // per R T: pressure difference and its derivative, then the same for the Gibbs energy, dg = dp/rho
            double rt = GAS_CONSTANT_J_PER_KG_K * temperatureK;
            double pressureGap = (liquid.pressurePa() - vapour.pressurePa()) / rt;
            double gibbsGap = gibbs(liquid) - gibbs(vapour);
            double slopeLiquid = liquid.pressureByDensity() / rt;
            double slopeVapour = vapour.pressureByDensity() / rt;
            // slopeLiquid x - slopeVapour y = -pressureGap; slopeLiquid/dense x - slopeVapour/thin y = -gibbsGap
            double moveVapour = (pressureGap - dense * gibbsGap) / (1 - dense / thin) / slopeVapour;
            double moveLiquid = (slopeVapour * moveVapour - pressureGap) / slopeLiquid;
            dense += limited(moveLiquid, dense);
            thin += limited(moveVapour, thin);
            if (Math.abs(moveLiquid) < LAST_STEP * dense && Math.abs(moveVapour) < LAST_STEP * thin) {
                liquid.at(temperatureK, dense);
                vapour.at(temperatureK, thin);
                return dense > thin;
            }
        }
        return false;
    }

    private static double limited(double move, double density) {
        return Math.max(-MAX_STEP * density, Math.min(MAX_STEP * density, move));
    }

    /** g/(R T) without the part that depends on temperature alone: ln delta + phir + delta phir_delta. */
    private static double gibbs(Iapws95Kernel equation) {
        return Math.log(equation.delta) + equation.residual + equation.residualD;
    }

    /** SR1-86(1992) equation (1), value from memory: within about 0.03 %. */
    static double pressureStart(double temperatureK) {
        double x = 1 - temperatureK / CRITICAL_TEMPERATURE_K;
        double root = Math.sqrt(x);
        double x2 = x * x;
        double x3 = x2 * x;
        double sum = -7.85951783 * x
                + 1.84408259 * x * root
                - 11.7866497 * x3
                + 22.6807411 * x3 * root
                - 15.9618719 * x2 * x2
                + 1.80122502 * x2 * x2 * x3 * root;
        return CRITICAL_PRESSURE_PA * Math.exp(CRITICAL_TEMPERATURE_K / temperatureK * sum);
    }

    /** SR1-86(1992) equation (2), value from memory. */
    static double liquidDensityStart(double temperatureK) {
        double third = Math.cbrt(Math.max(0, 1 - temperatureK / CRITICAL_TEMPERATURE_K));
        double to2 = third * third;
        double to5 = to2 * to2 * third;
        double to10 = to5 * to5;
        double to16 = to10 * to5 * third;
        double to32 = to16 * to16;
        double to43 = to32 * to10 * third;
        double to110 = to43 * to43 * to16 * to5 * to2 * third;
        return CRITICAL_DENSITY_KG_PER_M3
                * (1
                        + 1.99274064 * third
                        + 1.09965342 * to2
                        - 0.510839303 * to5
                        - 1.75493479 * to16
                        - 45.5170352 * to43
                        - 6.74694450e5 * to110);
    }

    /** SR1-86(1992) equation (3), value from memory. */
    static double vapourDensityStart(double temperatureK) {
        double sixth = Math.pow(1 - temperatureK / CRITICAL_TEMPERATURE_K, 1 / 6.0);
        return CRITICAL_DENSITY_KG_PER_M3
                * Math.exp(-2.03150240 * Math.pow(sixth, 2)
                        - 2.68302940 * Math.pow(sixth, 4)
                        - 5.38626492 * Math.pow(sixth, 8)
                        - 17.2991605 * Math.pow(sixth, 18)
                        - 44.7586581 * Math.pow(sixth, 37)
                        - 63.9201063 * Math.pow(sixth, 71));
    }
}
