package dev.waterjet.water;

/** Surface tension of ordinary water, IAPWS R1-76(2014). */
final class SurfaceTensionKernel {

    static final double MIN_TEMPERATURE_K = 248.15;

    private static final double SCALE_N_PER_M = 0.2358;
    private static final double EXPONENT = 1.256;
    private static final double CORRECTION = 0.625;

    private SurfaceTensionKernel() {}

    /** B tau^mu (1 - b tau), tau = 1 - T/Tc, in N/m. */
    static double newtonsPerMetre(double temperatureK) {
        double tau = 1 - temperatureK / Iapws95Constants.CRITICAL_TEMPERATURE_K;
        return SCALE_N_PER_M * Math.pow(tau, EXPONENT) * (1 - CORRECTION * tau);
    }
}
