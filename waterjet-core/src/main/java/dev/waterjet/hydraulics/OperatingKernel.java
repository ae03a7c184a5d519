package dev.waterjet.hydraulics;

import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Balance of pump, supply line and orifices. Pressures are gauge. */
final class OperatingKernel {

    private static final int MAX_EVALUATIONS = 200;
    private static final int MAX_ROUNDS = 8;

    private final SupplyLine line;
    private final double temperatureK;
    private final double ambientDensityKgPerM3;

    /** Sum of Cd A of all orifices, in m2. */
    private final double effectiveAreaM2;

    OperatingKernel(SupplyLine line, double temperatureK, double ambientDensityKgPerM3, double effectiveAreaM2) {
        this.line = line;
        this.temperatureK = temperatureK;
        this.ambientDensityKgPerM3 = ambientDensityKgPerM3;
        this.effectiveAreaM2 = effectiveAreaM2;
    }

    static WaterState inLine(double gaugePa, double temperatureK) {
        return Water.stable().atSi(gaugePa + IsentropicKernel.ATMOSPHERE_PA, temperatureK);
    }

    /** m = Cd A sqrt(2 rho p). */
    double massFlow(double headPa) {
        return effectiveAreaM2 * Math.sqrt(2 * ambientDensityKgPerM3 * headPa);
    }

    /** p = (m/(Cd A))^2/(2 rho). */
    double headPressureOfFlow(double massFlowKgPerS) {
        double perArea = massFlowKgPerS / effectiveAreaM2;
        return perArea * perArea / (2 * ambientDensityKgPerM3);
    }

    /** Root of p_head + loss(m(p_head)) = p_pump between 0 and the pump pressure; the left side increases with p_head. */
    double headPressure(double pumpPa) {
        WaterState water = inLine(pumpPa, temperatureK);
        return new BrentSolver(1e-12, pumpPa * 1e-12)
                .solve(MAX_EVALUATIONS, headPa -> headPa + line.lossSi(massFlow(headPa), water) - pumpPa, 0, pumpPa);
    }

    /** p_pump = p_head + loss, with the water of the line at p_pump: fixed-point iteration, since the loss depends little on it. */
    double pumpPressure(double headPa) {
        double pumpPa = headPa;
        for (int i = 0; i < MAX_ROUNDS; i++) {
            pumpPa = headPa + line.lossSi(massFlow(headPa), inLine(pumpPa, temperatureK));
        }
        return pumpPa;
    }
}
