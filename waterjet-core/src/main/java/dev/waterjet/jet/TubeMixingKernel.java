package dev.waterjet.jet;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * One-dimensional steady mixing in the focusing tube. Water fills the tube as a mist and drags the particles; the wall slows the
 * water. Speeds are relative to that of the jet at the orifice, v_p of particles and v_w of water:
 *
 * <p>v_p dv_p/dx = K (v_w - v_p)|v_w - v_p|/v_w, dv_w/dx = -R dv_p/dx - (c/d) v_w, with the loading ratio R, the wall coefficient c
 * and K = (3/4) (phi C_D) (C_d/psi) (rho_0/rho_p) (d_o/d)^2/d_p. The drag coefficient C_D and the share phi of the water that a
 * particle meets occur as a product only. Momentum of the air is left out, about 1 % of that of the water.
 */
final class TubeMixingKernel {

    /** Wall coefficient times length over bore beyond which the water nearly stops, and the model ends. */
    static final double MAX_FRICTION = 3;

    private static final int STEPS = 64;
    private static final double ACCURACY = 1e-14;
    private static final int MAX_EVALUATIONS = 300;

    private final double dragPerM;
    private final double loading;
    private final double wallPerM;
    private final double lengthM;

    /** Exit bore over bore, of a tube that widens evenly. */
    private final double widening;

    private double particles;
    private double water = 1;

    TubeMixingKernel(double dragPerM, double loading, double wallPerM, double lengthM, double widening) {
        this.dragPerM = dragPerM;
        this.loading = loading;
        this.wallPerM = wallPerM;
        this.lengthM = lengthM;
        this.widening = widening;
        integrate();
    }

    /** K at the entry of the tube, in 1/m. */
    static double dragPerM(
            double contactDrag, double dischargeOverPsi, double densityRatio, double boreRatio, double grainM) {
        return 0.75 * contactDrag * dischargeOverPsi * densityRatio * boreRatio * boreRatio / grainM;
    }

    /** Speed of the particles at the exit over that of the jet at the orifice. */
    double particles() {
        return particles;
    }

    /** Speed of the water at the exit over that of the jet at the orifice. */
    double water() {
        return water;
    }

    /** Mixing efficiency: speed of the particles over that of an ideal exchange of momentum. */
    double efficiency() {
        return particles * (1 + loading);
    }

    /** Runge-Kutta of fourth order in the root of the distance, in which the start from rest is smooth. */
    private void integrate() {
        int steps = STEPS * (1 + (int) Math.ceil(2 * wallPerM * lengthM - 0.5));
        double h = Math.sqrt(lengthM) / steps;
        for (int i = 0; i < steps; i++) {
            double xi = i * h;
            double p1 = gain(xi, particles, water);
            double w1 = loss(xi, p1, water);
            double p2 = gain(xi + h / 2, particles + h / 2 * p1, water + h / 2 * w1);
            double w2 = loss(xi + h / 2, p2, water + h / 2 * w1);
            double p3 = gain(xi + h / 2, particles + h / 2 * p2, water + h / 2 * w2);
            double w3 = loss(xi + h / 2, p3, water + h / 2 * w2);
            double p4 = gain(xi + h, particles + h * p3, water + h * w3);
            double w4 = loss(xi + h, p4, water + h * w3);
            particles += h / 6 * (p1 + 2 * p2 + 2 * p3 + p4);
            water += h / 6 * (w1 + 2 * w2 + 2 * w3 + w4);
        }
    }

    /** dv_p/dxi with x = xi^2. In a long tube with a wall the particles overtake the water, and the sign counts. */
    private double gain(double xi, double vp, double vw) {
        double bore = boreRatio(xi);
        double drag = dragPerM / (bore * bore);
        return xi == 0 ? Math.sqrt(2 * drag * vw) : 2 * xi * drag / vw * (vw - vp) * Math.abs(vw - vp) / vp;
    }

    private double loss(double xi, double gain, double vw) {
        return -loading * gain - 2 * xi * wallPerM / boreRatio(xi) * vw;
    }

    private double boreRatio(double xi) {
        return 1 + (widening - 1) * xi * xi / lengthM;
    }

    /**
     * Efficiency without wall friction in closed form, of X = (1 + R)^2 K L and b = R/(1 + R): X = (1 - b) eta/(1 - eta) + (1 - 2 b)
     * ln(1 - eta) - b eta.
     */
    static double closed(double length, double loading) {
        double b = loading / (1 + loading);
        UnivariateFunction missing =
                eta -> (1 - b) * eta / (1 - eta) + (1 - 2 * b) * Math.log1p(-eta) - b * eta - length;
        return new BrentSolver(ACCURACY, ACCURACY).solve(MAX_EVALUATIONS, missing, 0, 1 - 1e-12);
    }
}
