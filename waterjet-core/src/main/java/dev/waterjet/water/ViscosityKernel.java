package dev.waterjet.water;

/**
 * Viscosity of water by IAPWS R12-08: mu = mu0(T) mu1(T, rho) in units of 1e-6 Pa s, with the enhancement at the critical
 * point set to 1, as the release recommends except close to it.
 */
final class ViscosityKernel {

    private static final double REFERENCE_PA_S = 1e-6;

    /** Equation (11), table 2. */
    private static final double[] H = {1.67752, 2.20462, 0.6366564, -0.241605};

    /** Equation (12), table 3: row i for powers of 1/T - 1, column j for powers of rho - 1, both reduced. */
    private static final double[][] H_IJ = {
        {0.520094, 0.222531, -0.281378, 0.161913, -0.0325372, 0, 0},
        {0.0850895, 0.999115, -0.906851, 0.257399, 0, 0, 0},
        {-1.08374, 1.88797, -0.772479, 0, 0, 0, 0},
        {-0.289555, 1.26613, -0.489837, 0, 0.0698452, 0, -0.00435673},
        {0, 0, -0.25704, 0, 0, 0.00872102, 0},
        {0, 0.120573, 0, 0, 0, 0, -0.000593264}
    };

    private ViscosityKernel() {}

    static double viscosityPaS(double temperatureK, double densityKgPerM3) {
        double tau = Iapws95Constants.CRITICAL_TEMPERATURE_K / temperatureK;
        double delta = densityKgPerM3 / Iapws95Constants.CRITICAL_DENSITY_KG_PER_M3;
        // (11): mu0 = 100 sqrt(T) / sum H_i / T^i
        double dilute = 100 / Math.sqrt(tau) / (H[0] + tau * (H[1] + tau * (H[2] + tau * H[3])));
        // (12): mu1 = exp(rho sum_i (1/T - 1)^i sum_j H_ij (rho - 1)^j)
        double sum = 0;
        for (int i = H_IJ.length - 1; i >= 0; i--) {
            double row = 0;
            for (int j = H_IJ[i].length - 1; j >= 0; j--) {
                row = row * (delta - 1) + H_IJ[i][j];
            }
            sum = sum * (tau - 1) + row;
        }
        return REFERENCE_PA_S * dilute * Math.exp(delta * sum);
    }

    /** Maximum temperature of the formulation at a pressure up to 1000 MPa, section 2.6 of the release. */
    static double maximumTemperatureK(double pressurePa) {
        if (pressurePa <= 300e6) {
            return 1173.15;
        }
        if (pressurePa <= 350e6) {
            return 873.15;
        }
        return pressurePa <= 500e6 ? 433.15 : 373.15;
    }
}
