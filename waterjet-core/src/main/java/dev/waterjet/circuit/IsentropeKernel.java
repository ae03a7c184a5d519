package dev.waterjet.circuit;

import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;

/**
 * Density of water along an isentrope as a Chebyshev series in z = 4 p/(p + 1 GPa) - 1, from 0 to 1000 MPa absolute. 1/w^2 is the
 * derivative of the same series, so that mass balances close to rounding. Degree 20 represents IAPWS-95 within 1e-12.
 */
final class IsentropeKernel {

    /** Standard atmosphere. */
    static final double ATMOSPHERE_PA = 101_325;

    static final double MAX_PRESSURE_PA = 1e9;

    private static final double MAP_PA = 1e9;
    private static final int NODES = 40;
    private static final int DEGREE = 20;

    private final double entropyJPerKgK;
    private final double[] terms = new double[DEGREE + 1];

    IsentropeKernel(WaterState through) {
        entropyJPerKgK = through.entropySi();
        for (int k = 0; k < NODES; k++) {
            double angle = Math.PI * (k + 0.5) / NODES;
            double share = (Math.cos(angle) + 1) / 4;
            double density = at(MAP_PA * share / (1 - share)).densitySi();
            for (int n = 0; n <= DEGREE; n++) {
                terms[n] += (n == 0 ? 1.0 : 2.0) / NODES * density * Math.cos(n * angle);
            }
        }
    }

    /** Exact state at an absolute pressure. */
    WaterState at(double pressurePa) {
        return Water.metastable().atEntropySi(pressurePa, entropyJPerKgK);
    }

    double density(double pressurePa) {
        double z = 4 * pressurePa / (pressurePa + MAP_PA) - 1;
        double b1 = 0;
        double b2 = 0;
        for (int n = DEGREE; n > 0; n--) {
            double b = 2 * z * b1 - b2 + terms[n];
            b2 = b1;
            b1 = b;
        }
        return z * b1 - b2 + terms[0];
    }

    /** d(rho)/dp = 1/w^2, in s2/m2. */
    double perPressure(double pressurePa) {
        double z = 4 * pressurePa / (pressurePa + MAP_PA) - 1;
        double b1 = 0;
        double b2 = 0;
        // T_n' = n U_(n-1), summed by the recurrence of U
        for (int n = DEGREE; n > 0; n--) {
            double b = 2 * z * b1 - b2 + n * terms[n];
            b2 = b1;
            b1 = b;
        }
        double sum = pressurePa + MAP_PA;
        return b1 * 4 * MAP_PA / (sum * sum);
    }
}
