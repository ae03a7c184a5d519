package dev.waterjet.water;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The terms 1 to 51 of IAPWS R6-95(2018), n delta^d tau^t exp(-delta^c), and their derivatives, table 5 of the release.
 *
 * <p>With k = c delta^c the operator L = delta d/ddelta takes a term to m = d - k times it, and k to c k. So L^2 brings the factor
 * m^2 - c k, and L^3 the factor m (m^2 - 3 c k) - c^2 k; delta phi_delta is L phi, delta^2 phi_delta_delta is (L^2 - L) phi. By tau
 * a term brings the factors t and t (t - 1).
 *
 * <p>All powers are products and three square roots, those of tau once for all densities at one temperature; the exponentials of
 * the release remain. One loop runs over the terms of all groups; groups with a negligible exponential are the last ones.
 */
final class Iapws95TermsKernel {

    /** Exponent c of each group of the terms 1 to 51; 0 means no exponential factor. */
    private static final int[] GROUP_C = {0, 1, 2, 3, 4, 6};

    /** Index of the first term of each group, and the end of the last. */
    private static final int[] GROUP_START = {0, 7, 22, 42, 46, 47, 51};

    /** Terms 1 to 51, table 2: factor n. */
    private static final double[] N = {
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
    private static final double[] D = {
        1, 1, 1, 2, 2, 3, 4, 1, 1, 1, 2, 2, 3, 4, 4, 5, 7, 9, 10, 11, 13, 15, 1, 2, 2, 2, 3, 4, 4, 4, 5, 6, 6, 7, 9, 9,
        9, 9, 9, 10, 10, 12, 3, 4, 4, 5, 14, 3, 6, 6, 6
    };

    /** Terms 1 to 51, table 2: exponent t of the inverse reduced temperature. */
    private static final double[] T = {
        -0.5, 0.875, 1, 0.5, 0.75, 0.375, 1, 4, 6, 12, 1, 5, 4, 2, 13, 9, 3, 4, 11, 4, 13, 1, 7, 1, 9, 10, 10, 3, 7, 10,
        10, 6, 10, 10, 1, 2, 3, 4, 8, 6, 9, 8, 16, 22, 23, 23, 10, 50, 44, 46, 50
    };

    /**
     * Largest delta^c of each group: beyond it exp(-delta^c) times the powers is below the rounding of a double. The last group is
     * multiplied by tau^50.
     */
    private static final double[] NEGLIGIBLE_GROUP = {1, 120, 120, 120, 80, 120};

    private static final double[] DELTA_EXPONENT = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15};

    /** The exponents that occur in T, rising. */
    private static final double[] TAU_EXPONENT = {
        -0.5, 0.375, 0.5, 0.75, 0.875, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 16, 22, 23, 44, 46, 50
    };

    /** Number of exponents before the whole ones, which follow each other from 1 to 13. */
    private static final int ROOTS = 5;

    private static final int CHAIN = 13;

    /** Index of the powers of delta and tau of each term. */
    private static final int[] DELTA_SLOT = slots(D, DELTA_EXPONENT);

    private static final int[] TAU_SLOT = slots(T, TAU_EXPONENT);

    /** Products of the exponents of each term: d^2, d^3, d t, d^2 t, t (t - 1), d t (t - 1). */
    private static final double[] DD = products(i -> D[i] * D[i]);

    private static final double[] DDD = products(i -> D[i] * D[i] * D[i]);
    private static final double[] DT = products(i -> D[i] * T[i]);
    private static final double[] DDT = products(i -> D[i] * D[i] * T[i]);
    private static final double[] TT = products(i -> T[i] * (T[i] - 1));
    private static final double[] DTT = products(i -> D[i] * T[i] * (T[i] - 1));

    private final double[] deltaPower = new double[DELTA_EXPONENT.length];
    private final double[] tauPower = new double[TAU_EXPONENT.length];

    private static int[] slots(double[] exponents, double[] among) {
        int[] slots = new int[exponents.length];
        for (int i = 0; i < slots.length; i++) {
            slots[i] = Arrays.binarySearch(among, exponents[i]);
        }
        return slots;
    }

    private static double[] products(IntToDoubleFunction product) {
        return IntStream.range(0, N.length).mapToDouble(product).toArray();
    }

    void setDelta(double delta) {
        double power = 1;
        for (int i = 1; i < deltaPower.length; i++) {
            power *= delta;
            deltaPower[i] = power;
        }
    }

    /** In the order of the exponents: a whole exponent t up to 13 has the index ROOTS - 1 + t. */
    void setTau(double tau) {
        double[] p = tauPower;
        double half = Math.sqrt(tau);
        double quarter = Math.sqrt(half);
        double eighth = Math.sqrt(quarter);
        p[0] = 1 / half;
        p[1] = quarter * eighth;
        p[2] = half;
        p[3] = half * quarter;
        p[4] = half * quarter * eighth;
        double power = 1;
        for (int i = 0; i < CHAIN; i++) {
            power *= tau;
            p[ROOTS + i] = power;
        }
        int one = ROOTS - 1;
        double to16 = p[one + 8] * p[one + 8];
        double to22 = p[one + 11] * p[one + 11];
        double to23 = p[one + 11] * p[one + 12];
        int next = ROOTS + CHAIN;
        p[next] = to16;
        p[next + 1] = to22;
        p[next + 2] = to23;
        p[next + 3] = to22 * to22;
        p[next + 4] = to23 * to23;
        p[next + 5] = to22 * to22 * p[one + 6];
    }

    /** Adds all derivatives; with their rates if those are wanted, which costs a fifth more. */
    void addAll(Iapws95Kernel equation, boolean withRates) {
        for (int group = 0; group < GROUP_C.length; group++) {
            int c = GROUP_C[group];
            double power = c == 0 ? 0 : deltaPower[c];
            if (power < NEGLIGIBLE_GROUP[group]) {
                double exponential = c == 0 ? 1 : Math.exp(-power);
                if (withRates) {
                    addGroupWithRates(equation, group, c * power, exponential);
                } else {
                    addGroup(equation, group, c * power, exponential);
                }
            }
        }
    }

    private void addGroup(Iapws95Kernel equation, int group, double k, double exponential) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double t0 = 0;
        double t1 = 0;
        double u0 = 0;
        for (int i = GROUP_START[group]; i < GROUP_START[group + 1]; i++) {
            double term = N[i] * deltaPower[DELTA_SLOT[i]] * tauPower[TAU_SLOT[i]];
            s0 += term;
            s1 += term * D[i];
            s2 += term * DD[i];
            t0 += term * T[i];
            t1 += term * DT[i];
            u0 += term * TT[i];
        }
        equation.residual += exponential * s0;
        equation.residualD += exponential * (s1 - k * s0);
        equation.residualDd += exponential * (s2 - (2 * k + 1) * s1 + k * (k + 1 - GROUP_C[group]) * s0);
        equation.residualT += exponential * t0;
        equation.residualTt += exponential * u0;
        equation.residualDt += exponential * (t1 - k * t0);
    }

    /** As {@link #addGroup}, with the sums of three further derivatives by delta in the same loop. */
    private void addGroupWithRates(Iapws95Kernel equation, int group, double k, double exponential) {
        int c = GROUP_C[group];
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        double t0 = 0;
        double t1 = 0;
        double t2 = 0;
        double u0 = 0;
        double u1 = 0;
        for (int i = GROUP_START[group]; i < GROUP_START[group + 1]; i++) {
            double term = N[i] * deltaPower[DELTA_SLOT[i]] * tauPower[TAU_SLOT[i]];
            s0 += term;
            s1 += term * D[i];
            s2 += term * DD[i];
            s3 += term * DDD[i];
            t0 += term * T[i];
            t1 += term * DT[i];
            t2 += term * DDT[i];
            u0 += term * TT[i];
            u1 += term * DTT[i];
        }
        double kk = k * (k - c);
        double once = s1 - k * s0;
        double twice = s2 - 2 * k * s1 + kk * s0;
        equation.residual += exponential * s0;
        equation.residualD += exponential * once;
        equation.residualDd += exponential * (twice - once);
        equation.residualT += exponential * t0;
        equation.residualTt += exponential * u0;
        equation.residualDt += exponential * (t1 - k * t0);
        double thrice = s3 - 3 * k * s2 + 3 * kk * s1 - k * (k * k - 3 * c * k + c * c) * s0;
        equation.residualDdRate += exponential * (thrice - twice);
        equation.residualDtRate += exponential * (t2 - 2 * k * t1 + kk * t0);
        equation.residualTtRate += exponential * (u1 - k * u0);
    }

    /** Adds what pressure and its derivative by density need. */
    void addPressure(Iapws95Kernel equation) {
        for (int group = 0; group < GROUP_C.length; group++) {
            int c = GROUP_C[group];
            double power = c == 0 ? 0 : deltaPower[c];
            if (power < NEGLIGIBLE_GROUP[group]) {
                addPressure(equation, group, c * power, c == 0 ? 1 : Math.exp(-power));
            }
        }
    }

    private void addPressure(Iapws95Kernel equation, int group, double k, double exponential) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        for (int i = GROUP_START[group]; i < GROUP_START[group + 1]; i++) {
            double term = N[i] * deltaPower[DELTA_SLOT[i]] * tauPower[TAU_SLOT[i]];
            s0 += term;
            s1 += term * D[i];
            s2 += term * DD[i];
        }
        equation.residualD += exponential * (s1 - k * s0);
        equation.residualDd += exponential * (s2 - (2 * k + 1) * s1 + k * (k + 1 - GROUP_C[group]) * s0);
    }
}
