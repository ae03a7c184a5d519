package dev.waterjet.water;

/** Melting lines of the ices by IAPWS R14-08(2011), on SI doubles. */
final class MeltingKernel {

    static final double TRIPLE_PRESSURE_PA = 611.657;
    static final double IH_III_PA = 208.566e6;
    static final double III_V_PA = 350.1e6;
    static final double V_VI_PA = 632.4e6;
    static final double VI_VII_PA = 2216e6;

    static final double IH_III_K = 251.165;
    static final double III_V_K = 256.164;
    static final double V_VI_K = 273.31;
    static final double VI_VII_K = 355;
    static final double TRIPLE_K = 273.16;
    static final double LAST_VII_K = 715;

    private static final double[] IH_A = {0.119539337e7, 0.808183159e5, 0.333826860e4};
    private static final double[] IH_B = {3, 25.75, 103.75};
    private static final double III_A = 0.299948;
    private static final double III_B = 60;
    private static final double V_A = 1.18721;
    private static final double V_B = 8;
    private static final double VI_A = 1.07476;
    private static final double VI_B = 4.6;

    private static final double VI_SLOPE_K_PER_PA = V_VI_K / (VI_A * VI_B * V_VI_PA);

    private static final int MAX_STEPS = 60;

    private MeltingKernel() {}

    /** Equation (1): pi = 1 + sum a_i (1 - theta^b_i), with theta = T/273.16 K and pi = p/611.657 Pa. */
    static double pressureIhPa(double temperatureK) {
        double theta = temperatureK / TRIPLE_K;
        double pi = 1;
        for (int i = 0; i < IH_A.length; i++) {
            pi += IH_A[i] * (1 - Math.pow(theta, IH_B[i]));
        }
        return pi * TRIPLE_PRESSURE_PA;
    }

    /** Equation (2): pi = 1 - 0.299948 (1 - theta^60). */
    static double pressureIiiPa(double temperatureK) {
        return IH_III_PA * (1 - III_A * (1 - Math.pow(temperatureK / IH_III_K, III_B)));
    }

    /** Equation (3): pi = 1 - 1.18721 (1 - theta^8). */
    static double pressureVPa(double temperatureK) {
        return III_V_PA * (1 - V_A * (1 - Math.pow(temperatureK / III_V_K, V_B)));
    }

    /** Equation (4): pi = 1 - 1.07476 (1 - theta^4.6). */
    static double pressureViPa(double temperatureK) {
        return V_VI_PA * (1 - VI_A * (1 - Math.pow(temperatureK / V_VI_K, VI_B)));
    }

    /** Equation (5): ln pi = 1.73683 (1 - 1/theta) - 0.0544606 (1 - theta^5) + 0.806106e-7 (1 - theta^22). */
    static double pressureViiPa(double temperatureK) {
        double theta = temperatureK / VI_VII_K;
        return VI_VII_PA
                * Math.exp(1.73683 * (1 - 1 / theta)
                        - 0.0544606 * (1 - Math.pow(theta, 5))
                        + 0.806106e-7 * (1 - Math.pow(theta, 22)));
    }

    /** Temperature at which water of a pressure from 611.657 Pa to 2216 MPa freezes: inverse of equations (1) to (4). */
    static double temperatureK(double pressurePa) {
        if (pressurePa <= IH_III_PA) {
            return temperatureIhK(pressurePa);
        }
        if (pressurePa <= III_V_PA) {
            return inverse(pressurePa / IH_III_PA, III_A, III_B, IH_III_K);
        }
        if (pressurePa <= V_VI_PA) {
            return inverse(pressurePa / III_V_PA, V_A, V_B, III_V_K);
        }
        return inverse(pressurePa / V_VI_PA, VI_A, VI_B, V_VI_K);
    }

    /**
     * Whether a temperature is above the tangent to the melting line of ice VI at its beginning. The line is concave, and all
     * forms of ice at lower pressure melt below that temperature.
     */
    static boolean isPlainlyWarmer(double pressurePa, double temperatureK) {
        return temperatureK >= V_VI_K + Math.max(0, pressurePa - V_VI_PA) * VI_SLOPE_K_PER_PA;
    }

    private static double inverse(double pi, double a, double b, double startK) {
        return startK * Math.pow(1 + (pi - 1) / a, 1 / b);
    }

    /** Newton's method from the triple point: the line is concave there, and no step overshoots. */
    private static double temperatureIhK(double pressurePa) {
        double theta = 1;
        double pi = Math.max(1, pressurePa / TRIPLE_PRESSURE_PA);
        for (int i = 0; i < MAX_STEPS; i++) {
            double gap = 1 - pi;
            double slope = 0;
            for (int k = 0; k < IH_A.length; k++) {
                double power = Math.pow(theta, IH_B[k]);
                gap += IH_A[k] * (1 - power);
                slope -= IH_A[k] * IH_B[k] * power / theta;
            }
            double step = gap / slope;
            theta -= step;
            if (Math.abs(step) < 1e-15) {
                break;
            }
        }
        return theta * TRIPLE_K;
    }
}
