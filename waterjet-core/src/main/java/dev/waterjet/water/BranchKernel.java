package dev.waterjet.water;

/**
 * Branches of an isotherm below the critical temperature. Between the saturated phases the equation of state has false loops on
 * which pressure rises with density again. A state belongs to a phase only if pressure rises with density all the way from the
 * saturated phase to it.
 */
final class BranchKernel {

    /** Below this temperature the liquid has no end above zero pressure: the spinodal is at 0.1 MPa and 593.4 K. */
    static final double SPINODAL_FROM_K = 580;

    private static final int SAMPLES = 96;
    private static final int BISECTIONS = 50;

    private final Iapws95Kernel equation = new Iapws95Kernel();

    /** Whether pressure rises with density from the saturated phase to a density. */
    boolean isReached(double temperatureK, double saturatedKgPerM3, double densityKgPerM3) {
        return Double.isNaN(end(temperatureK, saturatedKgPerM3, densityKgPerM3));
    }

    /** Density at which the branch ends on the way; NaN if it does not. */
    private double end(double temperatureK, double saturatedKgPerM3, double densityKgPerM3) {
        double last = saturatedKgPerM3;
        for (int i = 1; i <= SAMPLES; i++) {
            double next = saturatedKgPerM3 + (densityKgPerM3 - saturatedKgPerM3) * i / SAMPLES;
            if (!isRising(temperatureK, next)) {
                return bisected(temperatureK, last, next);
            }
            last = next;
        }
        return Double.NaN;
    }

    private double bisected(double temperatureK, double risingKgPerM3, double fallingKgPerM3) {
        double rising = risingKgPerM3;
        double falling = fallingKgPerM3;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (rising + falling) / 2;
            if (isRising(temperatureK, middle)) {
                rising = middle;
            } else {
                falling = middle;
            }
        }
        return rising;
    }

    private boolean isRising(double temperatureK, double densityKgPerM3) {
        equation.residualAt(temperatureK, densityKgPerM3);
        return equation.pressureByDensity() > 0;
    }

    /** Lowest pressure of the superheated liquid, at the spinodal. */
    double lowestPressurePa(double temperatureK, double saturatedKgPerM3) {
        double end = end(temperatureK, saturatedKgPerM3, Iapws95Constants.CRITICAL_DENSITY_KG_PER_M3);
        equation.residualAt(temperatureK, Double.isNaN(end) ? Iapws95Constants.CRITICAL_DENSITY_KG_PER_M3 : end);
        return equation.pressurePa();
    }
}
