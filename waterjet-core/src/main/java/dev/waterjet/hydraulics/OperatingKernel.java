package dev.waterjet.hydraulics;

import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Balance of pump, line and orifices on SI doubles. Pressures are gauge. */
final class OperatingKernel {

    private static final int MOST_EVALUATIONS = 200;

    private final SupplyLine line;
    private final double temperatureK;
    private final double densityAtRestKgPerM3;

    /** Sum of Cd A of all orifices, in m2. */
    private final double passageM2;

    OperatingKernel(SupplyLine line, double temperatureK, double densityAtRestKgPerM3, double passageM2) {
        this.line = line;
        this.temperatureK = temperatureK;
        this.densityAtRestKgPerM3 = densityAtRestKgPerM3;
        this.passageM2 = passageM2;
    }

    static WaterState inLine(double gaugePa, double temperatureK) {
        return Water.stable().atSi(gaugePa + IsentropicKernel.ATMOSPHERE_PA, temperatureK);
    }

    /** m = Cd A sqrt(2 rho p). */
    double massFlow(double headPa) {
        return passageM2 * Math.sqrt(2 * densityAtRestKgPerM3 * headPa);
    }

    /** p = (m/(Cd A))^2/(2 rho). */
    double headPressureOfFlow(double massFlowKgPerS) {
        double perPassage = massFlowKgPerS / passageM2;
        return perPassage * perPassage / (2 * densityAtRestKgPerM3);
    }

    /** Root of p_head + loss(m(p_head)) = p_pump between nothing and the pump's pressure; the left side only rises. */
    double headPressure(double pumpPa) {
        WaterState water = inLine(pumpPa, temperatureK);
        return new BrentSolver(1e-12, pumpPa * 1e-12)
                .solve(MOST_EVALUATIONS, headPa -> headPa + line.lossSi(massFlow(headPa), water) - pumpPa, 0, pumpPa);
    }

    /** p_pump = p_head + loss, with the water of the line at p_pump: two rounds settle what little the loss depends on it. */
    double pumpPressure(double headPa) {
        double pumpPa = headPa;
        for (int i = 0; i < 8; i++) {
            pumpPa = headPa + line.lossSi(massFlow(headPa), inLine(pumpPa, temperatureK));
        }
        return pumpPa;
    }
}
