package dev.waterjet.water;

import static dev.waterjet.water.Iapws95Coefficients.CRITICAL_DENSITY_KG_PER_M3;
import static dev.waterjet.water.Iapws95Coefficients.CRITICAL_TEMPERATURE_K;
import static dev.waterjet.water.Iapws95Coefficients.D;
import static dev.waterjet.water.Iapws95Coefficients.GAS_CONSTANT_J_PER_KG_K;
import static dev.waterjet.water.Iapws95Coefficients.GROUP_C;
import static dev.waterjet.water.Iapws95Coefficients.GROUP_START;
import static dev.waterjet.water.Iapws95Coefficients.IDEAL_1;
import static dev.waterjet.water.Iapws95Coefficients.IDEAL_2;
import static dev.waterjet.water.Iapws95Coefficients.IDEAL_3;
import static dev.waterjet.water.Iapws95Coefficients.IDEAL_GAMMA;
import static dev.waterjet.water.Iapws95Coefficients.IDEAL_N;
import static dev.waterjet.water.Iapws95Coefficients.N;
import static dev.waterjet.water.Iapws95Coefficients.T;

/**
 * The reduced Helmholtz energy phi(delta, tau) of IAPWS R6-95(2018) and what follows from it, with delta = rho/rho_c and
 * tau = T_c/T.
 *
 * <p>An instance is a sheet of scratch paper: {@link #at} fills it, the properties read it, the next {@link #at} fills it
 * anew. One thread, one solve, one sheet. Derivatives are kept as logarithmic ones, such as {@code delta phi_delta},
 * which is what every property asks for.
 *
 * <p>All powers come from multiplications and three square roots; what is left are the exponentials of the release. Terms
 * whose exponential is below 1e-43 are skipped: no double would notice them.
 */
final class Iapws95Kernel {

    /** exp(-x) of more than this is below 1e-43: no derivative lifts it to where a double would notice. */
    static final double NEGLIGIBLE = 100;

    /** exp(-delta^c) stands beside tau^50 in the last group, so that it is skipped later. */
    private static final double NEGLIGIBLE_GROUP = 200;

    private static final int HIGHEST_D = 15;
    private static final int HIGHEST_WHOLE_T = 50;
    private static final int ROOT_SLOT = HIGHEST_WHOLE_T + 1;
    private static final int CHAIN = 13;
    private static final int[] T_SLOT = slots();

    private final double[] deltaPower = new double[HIGHEST_D + 1];
    private final double[] tauPower = new double[ROOT_SLOT + 5];

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

    /** Where the power of tau of each term stands: whole exponents at their own index, eighths behind them. */
    private static int[] slots() {
        int[] slots = new int[T.length];
        for (int i = 0; i < slots.length; i++) {
            slots[i] = switch ((int) (T[i] * 8)) {
                case -4 -> ROOT_SLOT;
                case 3 -> ROOT_SLOT + 1;
                case 4 -> ROOT_SLOT + 2;
                case 6 -> ROOT_SLOT + 3;
                case 7 -> ROOT_SLOT + 4;
                default -> (int) T[i];
            };
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
        this.temperatureK = temperatureK;
        this.densityKgPerM3 = densityKgPerM3;
        delta = densityKgPerM3 / CRITICAL_DENSITY_KG_PER_M3;
        tau = CRITICAL_TEMPERATURE_K / temperatureK;
        residual = 0;
        residualD = 0;
        residualDd = 0;
        residualT = 0;
        residualTt = 0;
        residualDt = 0;
        fillPowers();
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

    private void fillPowers() {
        double power = 1;
        for (int i = 1; i <= HIGHEST_D; i++) {
            power *= delta;
            deltaPower[i] = power;
        }
        double[] p = tauPower;
        power = 1;
        for (int i = 1; i <= CHAIN; i++) {
            power *= tau;
            p[i] = power;
        }
        p[16] = p[8] * p[8];
        p[22] = p[11] * p[11];
        p[23] = p[11] * p[12];
        p[44] = p[22] * p[22];
        p[46] = p[23] * p[23];
        p[50] = p[44] * p[6];
        double half = Math.sqrt(tau);
        double quarter = Math.sqrt(half);
        double eighth = Math.sqrt(quarter);
        p[ROOT_SLOT] = 1 / half;
        p[ROOT_SLOT + 1] = eighth * quarter;
        p[ROOT_SLOT + 2] = half;
        p[ROOT_SLOT + 3] = half * quarter;
        p[ROOT_SLOT + 4] = half * quarter * eighth;
    }

    /**
     * Terms n delta^d tau^t exp(-delta^c) of one c, table 5 of the release: with k = c delta^c each brings the factor d - k
     * for delta phi_delta, (d - k)(d - 1 - k) - c k for delta^2 phi_delta_delta, t for tau phi_tau, t (t - 1) for
     * tau^2 phi_tau_tau, (d - k) t for delta tau phi_delta_tau.
     */
    private void addGroup(int from, int to, double k, int c, double exponential) {
        double sum = 0;
        double sumD = 0;
        double sumDd = 0;
        double sumT = 0;
        double sumTt = 0;
        double sumDt = 0;
        for (int i = from; i < to; i++) {
            double term = N[i] * deltaPower[D[i]] * tauPower[T_SLOT[i]];
            double termD = term * (D[i] - k);
            double termT = term * T[i];
            sum += term;
            sumD += termD;
            sumDd += termD * (D[i] - 1 - k);
            sumT += termT;
            sumTt += termT * (T[i] - 1);
            sumDt += termD * T[i];
        }
        residual += exponential * sum;
        residualD += exponential * sumD;
        residualDd += exponential * (sumDd - c * k * sum);
        residualT += exponential * sumT;
        residualTt += exponential * sumTt;
        residualDt += exponential * sumDt;
    }

    /** Equation (5) and table 4 of the release. */
    private void idealAt() {
        ideal = Math.log(delta) + IDEAL_1 + IDEAL_2 * tau + IDEAL_3 * Math.log(tau);
        idealT = IDEAL_2 * tau + IDEAL_3;
        idealTt = -IDEAL_3;
        for (int i = 0; i < IDEAL_N.length; i++) {
            double x = IDEAL_GAMMA[i] * tau;
            double decay = Math.exp(-x);
            double rest = 1 - decay;
            ideal += IDEAL_N[i] * Math.log(rest);
            idealT += IDEAL_N[i] * x * decay / rest;
            idealTt -= IDEAL_N[i] * x * x * decay / (rest * rest);
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
