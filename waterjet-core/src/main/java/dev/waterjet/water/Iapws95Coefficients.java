package dev.waterjet.water;

/**
 * Coefficients of IAPWS R6-95(2018), tables 1 and 2. The sums of the release are cut into groups of equal exponent c, so
 * that the evaluation takes one exponential for each group.
 */
final class Iapws95Coefficients {

    /** Critical temperature, in K. */
    static final double CRITICAL_TEMPERATURE_K = 647.096;

    /** Critical density, in kg/m3. */
    static final double CRITICAL_DENSITY_KG_PER_M3 = 322;

    /** Specific gas constant, in J/(kg K). Other formulations of IAPWS use another one. */
    static final double GAS_CONSTANT_J_PER_KG_K = 461.51805;

    /** Ideal gas, table 1: n1, n2, n3. */
    static final double IDEAL_1 = -8.3204464837497;

    static final double IDEAL_2 = 6.6832105275932;
    static final double IDEAL_3 = 3.00632;

    /** Ideal gas, table 1: n4 to n8. */
    static final double[] IDEAL_N = {0.012436, 0.97315, 1.2795, 0.96956, 0.24873};

    /** Ideal gas, table 1: gamma4 to gamma8. */
    static final double[] IDEAL_GAMMA = {1.28728967, 3.53734222, 7.74073708, 9.24437796, 27.5075105};

    /** Exponent c of each group of the terms 1 to 51; 0 means no exponential factor. */
    static final int[] GROUP_C = {0, 1, 2, 3, 4, 6};

    /** Index of the first term of each group, and the end of the last. */
    static final int[] GROUP_START = {0, 7, 22, 42, 46, 47, 51};

    /** Terms 1 to 51, table 2: factor n. */
    static final double[] N = {
        0.012533547935523,
        7.8957634722828,
        -8.7803203303561,
        0.31802509345418,
        -0.26145533859358,
        -0.0078199751687981,
        0.0088089493102134,
        -0.66856572307965,
        0.20433810950965,
        -6.6212605039687e-05,
        -0.19232721156002,
        -0.25709043003438,
        0.16074868486251,
        -0.040092828925807,
        3.9343422603254e-07,
        -7.5941377088144e-06,
        0.00056250979351888,
        -1.5608652257135e-05,
        1.1537996422951e-09,
        3.6582165144204e-07,
        -1.3251180074668e-12,
        -6.2639586912454e-10,
        -0.10793600908932,
        0.017611491008752,
        0.22132295167546,
        -0.40247669763528,
        0.58083399985759,
        0.0049969146990806,
        -0.031358700712549,
        -0.74315929710341,
        0.4780732991548,
        0.020527940895948,
        -0.13636435110343,
        0.014180634400617,
        0.0083326504880713,
        -0.029052336009585,
        0.038615085574206,
        -0.020393486513704,
        -0.0016554050063734,
        0.0019955571979541,
        0.00015870308324157,
        -1.638856834253e-05,
        0.043613615723811,
        0.034994005463765,
        -0.076788197844621,
        0.022446277332006,
        -6.2689710414685e-05,
        -5.5711118565645e-10,
        -0.19905718354408,
        0.31777497330738,
        -0.11841182425981
    };

    /** Terms 1 to 51, table 2: exponent d of the reduced density. */
    static final int[] D = {
        1, 1, 1, 2, 2, 3, 4, 1, 1, 1, 2, 2, 3, 4, 4, 5, 7, 9, 10, 11, 13, 15, 1, 2, 2, 2, 3, 4, 4, 4, 5, 6, 6, 7, 9, 9,
        9, 9, 9, 10, 10, 12, 3, 4, 4, 5, 14, 3, 6, 6, 6
    };

    /** Terms 1 to 51, table 2: exponent t of the inverse reduced temperature. */
    static final double[] T = {
        -0.5, 0.875, 1, 0.5, 0.75, 0.375, 1, 4, 6, 12, 1, 5, 4, 2, 13, 9, 3, 4, 11, 4, 13, 1, 7, 1, 9, 10, 10, 3, 7, 10,
        10, 6, 10, 10, 1, 2, 3, 4, 8, 6, 9, 8, 16, 22, 23, 23, 10, 50, 44, 46, 50
    };

    /** Terms 52 to 54, table 2, with d = 3 and alpha = 20 in all of them. */
    static final double[] GAUSS_N = {-31.306260323435, 31.546140237781, -2521.3154341695};

    static final int GAUSS_D = 3;
    static final double GAUSS_ALPHA = 20;
    static final double[] GAUSS_T = {0, 1, 4};
    static final double[] GAUSS_BETA = {150, 150, 250};
    static final double[] GAUSS_GAMMA = {1.21, 1.21, 1.25};

    /** Terms 55 and 56, table 2, with a = 3.5, beta = 0.3, A = 0.32 and B = 0.2 in both. */
    static final double[] CRITICAL_N = {-0.14874640856724, 0.31806110878444};

    static final double CRITICAL_SMALL_A = 3.5;
    static final double CRITICAL_BETA = 0.3;
    static final double CRITICAL_A = 0.32;
    static final double CRITICAL_B = 0.2;
    static final double[] CRITICAL_SMALL_B = {0.85, 0.95};
    static final double[] CRITICAL_C = {28, 32};
    static final double[] CRITICAL_D = {700, 800};

    private Iapws95Coefficients() {}
}
