package dev.waterjet.water;

/** The terms 52 to 56 of IAPWS R6-95(2018), which shape the neighbourhood of the critical point. */
final class Iapws95CriticalKernel {

    /** Terms 52 to 54, table 2, with d = 3 and alpha = 20 in all of them. */
    private static final double[] GAUSS_N = {-31.306260323435, 31.546140237781, -2521.3154341695};

    private static final int GAUSS_D = 3;

    private static final double GAUSS_ALPHA = 20;

    private static final double[] GAUSS_T = {0, 1, 4};

    private static final double[] GAUSS_BETA = {150, 150, 250};

    private static final double[] GAUSS_GAMMA = {1.21, 1.21, 1.25};

    /** Terms 55 and 56, table 2, with a = 3.5, beta = 0.3, A = 0.32 and B = 0.2 in both. */
    private static final double[] CRITICAL_N = {-0.14874640856724, 0.31806110878444};

    private static final double CRITICAL_SMALL_A = 3.5;

    private static final double CRITICAL_BETA = 0.3;

    private static final double CRITICAL_A = 0.32;

    private static final double CRITICAL_B = 0.2;

    private static final double[] CRITICAL_SMALL_B = {0.85, 0.95};

    private static final double[] CRITICAL_C = {28, 32};

    private static final double[] CRITICAL_D = {700, 800};

    private Iapws95CriticalKernel() {}

    /** Terms n delta^d tau^t exp(-alpha (delta - 1)^2 - beta (tau - gamma)^2), derivatives of table 5. */
    static void addGauss(Iapws95Kernel equation) {
        double delta = equation.delta;
        double tau = equation.tau;
        double fromDensity = GAUSS_ALPHA * (delta - 1) * (delta - 1);
        if (fromDensity > Iapws95Kernel.NEGLIGIBLE) {
            return;
        }
        for (int i = 0; i < GAUSS_N.length; i++) {
            double away = tau - GAUSS_GAMMA[i];
            double exponent = fromDensity + GAUSS_BETA[i] * away * away;
            if (exponent > Iapws95Kernel.NEGLIGIBLE) {
                continue;
            }
            double power = i == 0 ? 1 : i == 1 ? tau : tau * tau * tau * tau;
            double term = GAUSS_N[i] * delta * delta * delta * power * Math.exp(-exponent);
            double d = GAUSS_D - 2 * GAUSS_ALPHA * delta * (delta - 1);
            double t = GAUSS_T[i] - 2 * GAUSS_BETA[i] * tau * away;
            equation.residual += term;
            equation.residualD += term * d;
            equation.residualDd += term * (d * d - GAUSS_D - 2 * GAUSS_ALPHA * delta * delta);
            equation.residualT += term * t;
            equation.residualTt += term * (t * t - GAUSS_T[i] - 2 * GAUSS_BETA[i] * tau * tau);
            equation.residualDt += term * d * t;
        }
    }

    /**
     * Terms n Delta^b delta psi with Delta = theta^2 + B x^a, theta = 1 - tau + A x^(1/(2 beta)), x = (delta - 1)^2 and
     * psi = exp(-C x - D (tau - 1)^2), derivatives of table 5. Powers of x are joined before they are taken, so that
     * nothing is divided by delta - 1; at the critical point itself, where derivatives of Delta^b have no limit, the terms
     * count as zero.
     */
    static void addCritical(Iapws95Kernel equation) {
        double delta = equation.delta;
        double tau = equation.tau;
        double off = delta - 1;
        double x = off * off;
        double cold = tau - 1;
        if (CRITICAL_C[0] * x + CRITICAL_D[0] * cold * cold > Iapws95Kernel.NEGLIGIBLE) {
            return;
        }
        double xToHalfBeta = Math.pow(x, 1 / (2 * CRITICAL_BETA));
        double xToHalfBetaLess = Math.pow(x, 1 / (2 * CRITICAL_BETA) - 1);
        double xToALess = Math.pow(x, CRITICAL_SMALL_A - 1);
        double theta = -cold + CRITICAL_A * xToHalfBeta;
        double distance = theta * theta + CRITICAL_B * xToALess * x;
        if (distance == 0) {
            return;
        }
        // dDelta/ddelta divided by (delta - 1), then the first and second derivative of Delta
        double perOff =
                CRITICAL_A * theta * 2 / CRITICAL_BETA * xToHalfBetaLess + 2 * CRITICAL_B * CRITICAL_SMALL_A * xToALess;
        double distanceD = off * perOff;
        double distanceDd = perOff
                + 4 * CRITICAL_B * CRITICAL_SMALL_A * (CRITICAL_SMALL_A - 1) * xToALess
                + 2 * (CRITICAL_A / CRITICAL_BETA) * (CRITICAL_A / CRITICAL_BETA) * xToHalfBetaLess * xToHalfBeta
                + CRITICAL_A * theta * 4 / CRITICAL_BETA * (1 / (2 * CRITICAL_BETA) - 1) * xToHalfBetaLess;
        for (int i = 0; i < CRITICAL_N.length; i++) {
            double b = CRITICAL_SMALL_B[i];
            double power = Math.pow(distance, b);
            double powerLess = b * power / distance;
            double powerLessLess = (b - 1) * powerLess / distance;
            double powerD = powerLess * distanceD;
            double powerDd = powerLess * distanceDd + powerLessLess * distanceD * distanceD;
            double powerT = -2 * theta * powerLess;
            double powerTt = 2 * powerLess + 4 * theta * theta * powerLessLess;
            double powerDt = -CRITICAL_A * 2 / CRITICAL_BETA * powerLess * off * xToHalfBetaLess
                    - 2 * theta * powerLessLess * distanceD;

            double c = CRITICAL_C[i];
            double d = CRITICAL_D[i];
            double psi = Math.exp(-c * x - d * cold * cold);
            double psiD = -2 * c * off * psi;
            double psiDd = (2 * c * x - 1) * 2 * c * psi;
            double psiT = -2 * d * cold * psi;
            double psiTt = (2 * d * cold * cold - 1) * 2 * d * psi;
            double psiDt = 4 * c * d * off * cold * psi;
            double grown = psi + delta * psiD;

            double n = CRITICAL_N[i];
            equation.residual += n * power * delta * psi;
            equation.residualD += n * delta * (power * grown + powerD * delta * psi);
            equation.residualDd += n
                    * delta
                    * delta
                    * (power * (2 * psiD + delta * psiDd) + 2 * powerD * grown + powerDd * delta * psi);
            equation.residualT += n * delta * tau * (powerT * psi + power * psiT);
            equation.residualTt += n * delta * tau * tau * (powerTt * psi + 2 * powerT * psiT + power * psiTt);
            equation.residualDt += n
                    * delta
                    * tau
                    * (power * (psiT + delta * psiDt) + delta * powerD * psiT + powerT * grown + powerDt * delta * psi);
        }
    }
}
