package dev.waterjet.water;

import static dev.waterjet.water.Iapws95Constants.CRITICAL_DENSITY_KG_PER_M3;
import static dev.waterjet.water.Iapws95Constants.CRITICAL_TEMPERATURE_K;
import static dev.waterjet.water.Iapws95Constants.GAS_CONSTANT_J_PER_KG_K;

/**
 * Reduced Helmholtz energy phi(delta, tau) of IAPWS R6-95(2018) and its derivatives, with delta = rho/rho_c and
 * tau = T_c/T.
 *
 * <p>An instance is reused: {@link #at} evaluates it, the properties read it, the next {@link #at} overwrites it. It is for
 * one thread. Derivatives are kept multiplied by their arguments, such as {@code delta phi_delta}: the form in which every
 * property needs them.
 *
 * <p>What depends on temperature alone is kept for all densities at one temperature. Terms whose exponential is below 1e-43 are
 * skipped: they are below the rounding of a double.
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

    /** For larger x exp(-x) is below 1e-43, and its derivatives are below the rounding of a double. */
    static final double NEGLIGIBLE = 100;

    /** For larger x n x^2 exp(-x) is below 1e-16 in the ideal part: a vibration that is not excited. */
    private static final double NOT_EXCITED = 45;

    private final Iapws95TermsKernel terms = new Iapws95TermsKernel();

    /** exp(-gamma tau) of each vibration. */
    private final double[] decay = new double[IDEAL_N.length];

    private double idealTemperatureK;
    private double idealWithoutDensity;

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

    /** delta times the derivatives by delta of residualDd, residualDt and residualTt, without the terms 52 to 56. */
    double residualDdRate;

    double residualDtRate;
    double residualTtRate;

    /** Evaluates everything at a temperature and a density. */
    void at(double temperatureK, double densityKgPerM3) {
        residualAt(temperatureK, densityKgPerM3, false);
        idealAt();
    }

    /**
     * Evaluates everything near a solution, with the rates that {@link #moveBy} needs. Only where the terms 52 to 56 are negligible,
     * as they are in dense water below 100 &deg;C.
     */
    void nearAt(double temperatureK, double densityKgPerM3) {
        residualAt(temperatureK, densityKgPerM3, true);
        idealAt();
    }

    /** Evaluates the residual part only: enough for pressure and its derivatives. */
    void residualAt(double temperatureK, double densityKgPerM3) {
        residualAt(temperatureK, densityKgPerM3, false);
    }

    private void residualAt(double temperatureK, double densityKgPerM3, boolean withRates) {
        begin(temperatureK, densityKgPerM3);
        terms.addAll(this, withRates);
        Iapws95CriticalKernel.addGauss(this);
        Iapws95CriticalKernel.addCritical(this);
    }

    /** Evaluates pressure and its derivative by density only; derivatives by temperature are left wrong. */
    void pressureAt(double temperatureK, double densityKgPerM3) {
        begin(temperatureK, densityKgPerM3);
        terms.addPressure(this);
        Iapws95CriticalKernel.addGauss(this);
        Iapws95CriticalKernel.addCritical(this);
    }

    /** Moves everything that {@link #nearAt} has evaluated to a density larger by a small share, to first order in it. */
    void moveBy(double step) {
        densityKgPerM3 *= 1 + step;
        delta *= 1 + step;
        ideal += step;
        residual += step * residualD;
        residualT += step * residualDt;
        residualD += step * (residualD + residualDd);
        residualDd += step * residualDdRate;
        residualDt += step * residualDtRate;
        residualTt += step * residualTtRate;
    }

    private void begin(double temperatureK, double densityKgPerM3) {
        if (this.temperatureK != temperatureK) {
            this.temperatureK = temperatureK;
            tau = CRITICAL_TEMPERATURE_K / temperatureK;
            terms.setTau(tau);
        }
        this.densityKgPerM3 = densityKgPerM3;
        delta = densityKgPerM3 / CRITICAL_DENSITY_KG_PER_M3;
        terms.setDelta(delta);
        residual = 0;
        residualD = 0;
        residualDd = 0;
        residualT = 0;
        residualTt = 0;
        residualDt = 0;
        residualDdRate = 0;
        residualDtRate = 0;
        residualTtRate = 0;
    }

    private void idealAt() {
        if (idealTemperatureK != temperatureK) {
            idealTemperatureK = temperatureK;
            idealAtTemperature();
        }
        ideal = Math.log(delta) + idealWithoutDensity;
    }

    /** Equation (5) and table 4 of the release; gamma increases, so vibrations that are not excited are the last ones. */
    private void idealAtTemperature() {
        double sum = IDEAL_1 + IDEAL_2 * tau + IDEAL_3 * Math.log(tau);
        idealT = IDEAL_2 * tau + IDEAL_3;
        idealTt = -IDEAL_3;
        int excited = 0;
        while (excited < IDEAL_N.length && IDEAL_GAMMA[excited] * tau <= NOT_EXCITED) {
            decay[excited] = Math.exp(-IDEAL_GAMMA[excited] * tau);
            excited++;
        }
        for (int i = 0; i < excited; i++) {
            double x = IDEAL_GAMMA[i] * tau;
            double planck = x * decay[i] / (1 - decay[i]);
            sum += IDEAL_N[i] * logOfOneLess(decay[i]);
            idealT += IDEAL_N[i] * planck;
            idealTt -= IDEAL_N[i] * planck * (x + planck);
        }
        idealWithoutDensity = sum;
    }

    /** ln(1 - x) for x from 0 to below 1; its series below 1e-3, where the next term is below rounding. */
    private static double logOfOneLess(double x) {
        return x > 1e-3 ? Math.log(1 - x) : -x * (1 + x * (1 / 2.0 + x * (1 / 3.0 + x * (1 / 4.0 + x / 5))));
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
