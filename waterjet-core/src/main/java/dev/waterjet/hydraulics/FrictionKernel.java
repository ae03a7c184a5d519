package dev.waterjet.hydraulics;

/** Darcy friction factors of round pipes, from the Reynolds number and the roughness over the bore. */
final class FrictionKernel {

    /** Maximum Reynolds number of laminar flow. Published values are between about 2040 and 2300. */
    static final double LAMINAR_REYNOLDS = 2300;

    /** Reynolds number from which the flow is taken as turbulent: common practice, no source. */
    static final double TURBULENT_REYNOLDS = 4000;

    private static final int MAX_STEPS = 50;

    private FrictionKernel() {}

    /** Hagen and Poiseuille: f = 64/Re. */
    static double laminar(double reynolds) {
        return 64 / reynolds;
    }

    /**
     * Colebrook (1939): 1/sqrt(f) = -2 lg(eps/(3.7 D) + 2.51/(Re sqrt(f))), by Newton's method on x = 1/sqrt(f), which
     * converges from any start since the right side decreases slowly with x.
     */
    static double colebrook(double reynolds, double relativeRoughness) {
        double a = relativeRoughness / 3.7;
        double b = 2.51 / reynolds;
        double x = 1 / Math.sqrt(haaland(reynolds, relativeRoughness));
        for (int i = 0; i < MAX_STEPS; i++) {
            double argument = a + b * x;
            double gap = x + 2 * Math.log10(argument);
            double step = gap / (1 + 2 * b / (argument * Math.log(10)));
            x -= step;
            if (Math.abs(step) < 1e-14 * x) {
                break;
            }
        }
        return 1 / (x * x);
    }

    /** Churchill (1977), all regimes: f = 8 ((8/Re)^12 + (A + B)^-1.5)^(1/12). */
    static double churchill(double reynolds, double relativeRoughness) {
        double a = Math.pow(2.457 * Math.log(1 / (Math.pow(7 / reynolds, 0.9) + 0.27 * relativeRoughness)), 16);
        double b = Math.pow(37_530 / reynolds, 16);
        return 8 * Math.pow(Math.pow(8 / reynolds, 12) + Math.pow(a + b, -1.5), 1 / 12.0);
    }

    /** Haaland (1983): 1/sqrt(f) = -1.8 lg((eps/(3.7 D))^1.11 + 6.9/Re). */
    static double haaland(double reynolds, double relativeRoughness) {
        double x = -1.8 * Math.log10(Math.pow(relativeRoughness / 3.7, 1.11) + 6.9 / reynolds);
        return 1 / (x * x);
    }

    /** Swamee and Jain (1976), with (6.97/Re)^0.9: 1/sqrt(f) = -2 lg(eps/(3.7 D) + (6.97/Re)^0.9). */
    static double swameeJain(double reynolds, double relativeRoughness) {
        double x = -2 * Math.log10(relativeRoughness / 3.7 + Math.pow(6.97 / reynolds, 0.9));
        return 1 / (x * x);
    }
}
