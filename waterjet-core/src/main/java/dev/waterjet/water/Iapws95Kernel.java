package dev.waterjet.water;

import static dev.waterjet.water.Iapws95Constants.CRITICAL_DENSITY_KG_PER_M3;
import static dev.waterjet.water.Iapws95Constants.CRITICAL_TEMPERATURE_K;
import static dev.waterjet.water.Iapws95Constants.GAS_CONSTANT_J_PER_KG_K;

import java.util.Arrays;

/**
 * Reduced Helmholtz energy phi(delta, tau) of IAPWS R6-95(2018) and its derivatives, with delta = rho/rho_c and
 * tau = T_c/T.
 *
 * <p>An instance is reused: {@link #at} evaluates it, the properties read it, the next {@link #at} overwrites it. It is for
 * one thread. Derivatives are kept multiplied by their arguments, such as {@code delta phi_delta}: the form in which every
 * property needs them.
 *
 * <p>All powers are products and three square roots, those of tau once for all densities at one temperature; the exponentials
 * of the release remain. Terms whose exponential is below 1e-43 are skipped: they are below the rounding of a double.
 */
final class Iapws95Kernel {

    /** Ideal gas, table 1: n1, n2, n3. */
    private static final double IDEAL_1 = -8.3204464837497;

    private static final double IDEAL_2 = 6.6832105275932;

    private static final double IDEAL_3 = 3.00632;

    /** Ideal gas, table 1: n4 to n8. */
    private static final double[] IDEAL_N = {0.012436, 0.97315, 1.2795, 0.96956, 0.24873};

    /** Ideal gas, table 1: gamma4 to gamma8. */
    private static final double[] IDEAL_GAMMA = {1.28728967, 3.53734222, 7.74073708, 9.24437796, 27.5075105};

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

    /** For larger x exp(-x) is below 1e-43, and its derivatives are below the rounding of a double. */
    static final double NEGLIGIBLE = 100;

    /** Larger for exp(-delta^c): the last group multiplies it by tau^50. */
    private static final double NEGLIGIBLE_GROUP = 120;

    /** For larger x n x^2 exp(-x) is below 1e-16 in the ideal part: a vibration that is not excited. */
    private static final double NOT_EXCITED = 45;

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

    private final double[] deltaPower = new double[DELTA_EXPONENT.length];
    private final double[] tauPower = new double[TAU_EXPONENT.length];

    double temperatureK;
    double densityKgPerM3;
    double delta;
    double tau;

    /** phi0, tau phi0_tau, tau^2 phi0_tau_tau. */
    double ideal;

    double idealT;
    double idealTt;

    /** phir, delta phir_delta, delta^2 phir_delta_delta, tau phir_tau, tau^2 phir_tau_tau, delta tau phir_delta_tau. */
    double residual;

    double residualD;
    double residualDd;
    double residualT;
    double residualTt;
    double residualDt;

    private static int[] slots(double[] exponents, double[] among) {
        int[] slots = new int[exponents.length];
        for (int i = 0; i < slots.length; i++) {
            slots[i] = Arrays.binarySearch(among, exponents[i]);
        }
        return slots;
    }

    /** Evaluates everything at a temperature and a density. */
    void at(double temperatureK, double densityKgPerM3) {
        residualAt(temperatureK, densityKgPerM3);
        idealAt();
    }

    /** Evaluates the residual part only: enough for pressure and its derivatives. */
    void residualAt(double temperatureK, double densityKgPerM3) {
        begin(temperatureK, densityKgPerM3);
        for (int group = 0; group < GROUP_C.length; group++) {
            int c = GROUP_C[group];
            double power = c == 0 ? 0 : deltaPower[c];
            if (power < NEGLIGIBLE_GROUP) {
                addGroup(GROUP_START[group], GROUP_START[group + 1], c * power, c, c == 0 ? 1 : Math.exp(-power));
            }
        }
        Iapws95CriticalKernel.addGauss(this);
        Iapws95CriticalKernel.addCritical(this);
    }

    /** Evaluates pressure and its derivative by density only; derivatives by temperature are left wrong. */
    void pressureAt(double temperatureK, double densityKgPerM3) {
        begin(temperatureK, densityKgPerM3);
        for (int group = 0; group < GROUP_C.length; group++) {
            int c = GROUP_C[group];
            double power = c == 0 ? 0 : deltaPower[c];
            if (power < NEGLIGIBLE_GROUP) {
                addPressure(group, c * power, c == 0 ? 1 : Math.exp(-power));
            }
        }
        Iapws95CriticalKernel.addGauss(this);
        Iapws95CriticalKernel.addCritical(this);
    }

    private void begin(double temperatureK, double densityKgPerM3) {
        if (this.temperatureK != temperatureK) {
            this.temperatureK = temperatureK;
            tau = CRITICAL_TEMPERATURE_K / temperatureK;
            fillTauPowers();
        }
        this.densityKgPerM3 = densityKgPerM3;
        delta = densityKgPerM3 / CRITICAL_DENSITY_KG_PER_M3;
        fillDeltaPowers();
        residual = 0;
        residualD = 0;
        residualDd = 0;
        residualT = 0;
        residualTt = 0;
        residualDt = 0;
    }

    private void fillDeltaPowers() {
        double power = 1;
        for (int i = 1; i < deltaPower.length; i++) {
            power *= delta;
            deltaPower[i] = power;
        }
    }

    /** In the order of the exponents: a whole exponent t up to 13 has the index ROOTS - 1 + t. */
    private void fillTauPowers() {
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

    /**
     * Terms n delta^d tau^t exp(-delta^c) of one c, table 5 of the release: with k = c delta^c each brings the factor d - k
     * for delta phi_delta, (d - k)(d - 1 - k) - c k for delta^2 phi_delta_delta, t for tau phi_tau, t (t - 1) for
     * tau^2 phi_tau_tau, (d - k) t for delta tau phi_delta_tau. Sums of the terms times d, d^2, t, t^2 and d t give them all.
     */
    private void addGroup(int from, int to, double k, int c, double exponential) {
        double sum = 0;
        double sumD = 0;
        double sumDd = 0;
        double sumT = 0;
        double sumTt = 0;
        double sumDt = 0;
        for (int i = from; i < to; i++) {
            double term = N[i] * deltaPower[DELTA_SLOT[i]] * tauPower[TAU_SLOT[i]];
            double termD = term * D[i];
            double termT = term * T[i];
            sum += term;
            sumD += termD;
            sumDd += termD * D[i];
            sumT += termT;
            sumTt += termT * T[i];
            sumDt += termD * T[i];
        }
        residual += exponential * sum;
        residualD += exponential * (sumD - k * sum);
        residualDd += exponential * (sumDd - (2 * k + 1) * sumD + k * (k + 1 - c) * sum);
        residualT += exponential * sumT;
        residualTt += exponential * (sumTt - sumT);
        residualDt += exponential * (sumDt - k * sumT);
    }

    /** The part of {@link #addGroup} that pressure and its derivative by density need. */
    private void addPressure(int group, double k, double exponential) {
        double sum = 0;
        double sumD = 0;
        double sumDd = 0;
        for (int i = GROUP_START[group]; i < GROUP_START[group + 1]; i++) {
            double term = N[i] * deltaPower[DELTA_SLOT[i]] * tauPower[TAU_SLOT[i]];
            double termD = term * D[i];
            sum += term;
            sumD += termD;
            sumDd += termD * D[i];
        }
        residualD += exponential * (sumD - k * sum);
        residualDd += exponential * (sumDd - (2 * k + 1) * sumD + k * (k + 1 - GROUP_C[group]) * sum);
    }

    /** Equation (5) and table 4 of the release; gamma increases, so vibrations that are not excited are the last ones. */
    private void idealAt() {
        ideal = Math.log(delta) + IDEAL_1 + IDEAL_2 * tau + IDEAL_3 * Math.log(tau);
        idealT = IDEAL_2 * tau + IDEAL_3;
        idealTt = -IDEAL_3;
        for (int i = 0; i < IDEAL_N.length; i++) {
            double x = IDEAL_GAMMA[i] * tau;
            if (x > NOT_EXCITED) {
                break;
            }
            double decay = Math.exp(-x);
            double planck = x * decay / (1 - decay);
            ideal += IDEAL_N[i] * Math.log(1 - decay);
            idealT += IDEAL_N[i] * planck;
            idealTt -= IDEAL_N[i] * planck * (x + planck);
        }
    }

    /** p = rho R T (1 + delta phir_delta), table 3. */
    double pressurePa() {
        return densityKgPerM3 * GAS_CONSTANT_J_PER_KG_K * temperatureK * (1 + residualD);
    }

    /** (dp/drho) at constant T = R T (1 + 2 delta phir_delta + delta^2 phir_delta_delta), in J/kg. */
    double pressureByDensity() {
        return GAS_CONSTANT_J_PER_KG_K * temperatureK * (1 + 2 * residualD + residualDd);
    }

    /** (dp/dT) at constant rho = rho R (1 + delta phir_delta - delta tau phir_delta_tau), in Pa/K. */
    double pressureByTemperature() {
        return densityKgPerM3 * GAS_CONSTANT_J_PER_KG_K * (1 + residualD - residualDt);
    }

    /** alpha = (dp/dT)/(rho dp/drho). */
    double expansionPerK() {
        return pressureByTemperature() / (densityKgPerM3 * pressureByDensity());
    }

    /** h = R T (1 + tau (phi0_tau + phir_tau) + delta phir_delta). */
    double enthalpyJPerKg() {
        return GAS_CONSTANT_J_PER_KG_K * temperatureK * (1 + idealT + residualT + residualD);
    }

    /** s = R (tau (phi0_tau + phir_tau) - phi0 - phir). */
    double entropyJPerKgK() {
        return GAS_CONSTANT_J_PER_KG_K * (idealT + residualT - ideal - residual);
    }

    /** c_v = -R tau^2 (phi0_tau_tau + phir_tau_tau). */
    double isochoricHeatCapacityJPerKgK() {
        return -GAS_CONSTANT_J_PER_KG_K * (idealTt + residualTt);
    }

    /** c_p = c_v + T (dp/dT)^2 / (rho^2 dp/drho). */
    double isobaricHeatCapacityJPerKgK() {
        double slope = pressureByTemperature() / densityKgPerM3;
        return isochoricHeatCapacityJPerKgK() + temperatureK * slope * slope / pressureByDensity();
    }

    /** w^2 = dp/drho at constant s = (dp/drho at constant T) c_p / c_v. */
    double soundSpeedMPerS() {
        return Math.sqrt(pressureByDensity() * isobaricHeatCapacityJPerKgK() / isochoricHeatCapacityJPerKgK());
    }
}
