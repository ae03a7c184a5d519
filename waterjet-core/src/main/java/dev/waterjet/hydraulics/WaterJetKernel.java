package dev.waterjet.hydraulics;

/** Formulas of the pure waterjet. */
final class WaterJetKernel {

    /** Reference pressure of the Tait-type density at 25 &deg;C, in Pa. Hashish 1989, value from memory. */
    static final double TAIT_PRESSURE_PA = 300e6;

    /** Exponent of the Tait-type density at 25 &deg;C. Hashish 1989, value from memory. */
    static final double TAIT_EXPONENT = 0.1368;

    private WaterJetKernel() {}

    /** Bernoulli: v = sqrt(2 p / rho). */
    static double incompressibleSpeed(double pressurePa, double densityKgPerM3) {
        return Math.sqrt(2 * pressurePa / densityKgPerM3);
    }

    /**
     * Ratio psi of the compressible to the incompressible jet speed, from rho = rho0 (1 + p/L)^n:
     * psi = sqrt(L / (p (1 - n)) ((1 + p/L)^(1 - n) - 1)). Hashish 1989; written with expm1 and log1p, so that it tends to
     * 1 for small pressures without loss of digits.
     */
    static double taitFactor(double pressurePa) {
        double x = pressurePa / TAIT_PRESSURE_PA;
        double m = 1 - TAIT_EXPONENT;
        return x == 0 ? 1 : Math.sqrt(Math.expm1(m * Math.log1p(x)) / (m * x));
    }

    /** Volume flow q = Cd A sqrt(2 p / rho), with Cd relative to the incompressible speed. */
    static double volumeFlow(double boreM, double dischargeCoefficient, double pressurePa, double densityKgPerM3) {
        return dischargeCoefficient * area(boreM) * incompressibleSpeed(pressurePa, densityKgPerM3);
    }

    static double area(double boreM) {
        return Math.PI / 4 * boreM * boreM;
    }
}
