package dev.waterjet.kerf;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** Lag of the cut front, and the errors that follow from it on arcs and at corners, on SI doubles. */
final class LagKernel {

    private static final int SCAN_STEPS = 60;
    private static final double SCAN_END = 3;

    private LagKernel() {}

    /**
     * Coefficient k of the front x(z) = k z^2 / H from a critical point: at z = r H the front makes an angle with the axis
     * of the jet, dx/dz = 2 k r = tan(angle).
     */
    static double coefficient(double criticalRatio, double angleRad) {
        return Math.tan(angleRad) / (2 * criticalRatio);
    }

    /** x(z) = k z^2 / H. */
    static double lag(double coefficient, double depthM, double separationDepthM) {
        return coefficient * depthM * depthM / separationDepthM;
    }

    /** Angle between the front and the axis of the jet: tan = 2 k z / H. */
    static double angle(double coefficient, double depthM, double separationDepthM) {
        return Math.atan(2 * coefficient * depthM / separationDepthM);
    }

    /** e = sqrt(R^2 + L^2) - R, written so that a small lag keeps its digits. */
    static double tangentError(double lagM, double radiusM) {
        return lagM * lagM / (Math.hypot(radiusM, lagM) + radiusM);
    }

    /** e = R - sqrt(R^2 - L^2) for L up to R; with a longer lag the exit point is drawn to the centre and stays there. */
    static double tractrixError(double lagM, double radiusM) {
        if (lagM >= radiusM) {
            return radiusM;
        }
        return lagM * lagM / (radiusM + Math.sqrt((radiusM - lagM) * (radiusM + lagM)));
    }

    /** L = sqrt(2 R e + e^2). */
    static double tangentLag(double errorM, double radiusM) {
        return Math.sqrt(errorM * (2 * radiusM + errorM));
    }

    /** L = sqrt(2 R e - e^2) for e below R; from there any lag is allowed. */
    static double tractrixLag(double errorM, double radiusM) {
        return errorM >= radiusM ? Double.POSITIVE_INFINITY : Math.sqrt(errorM * (2 * radiusM - errorM));
    }

    /**
     * Past a corner the exit point lies L behind, along the new edge: L sin(turn) beside the old edge, L from a right angle
     * on.
     */
    static double tangentCorner(double lagM, double turnRad) {
        return lagM * Math.sin(Math.min(turnRad, Math.PI / 2));
    }

    /**
     * Minimum distance between the corner and the tractrix on which the exit point is drawn round it, L behind the head. With
     * tan(psi/2) = tan(turn/2) exp(-t), t the distance past the corner over L, the exit point is
     * sqrt(t^2 - 2 t cos(psi) + 1) L from the corner.
     */
    static double tractrixCorner(double lagM, double turnRad) {
        if (turnRad >= Math.PI) {
            return lagM;
        }
        double half = Math.tan(turnRad / 2);
        UnivariateFunction squared = t -> {
            double ratio = half * Math.exp(-t);
            double cosine = (1 - ratio * ratio) / (1 + ratio * ratio);
            return t * t - 2 * t * cosine + 1;
        };
        double best = 0;
        for (int i = 1; i <= SCAN_STEPS; i++) {
            double t = i * SCAN_END / SCAN_STEPS;
            best = squared.value(t) < squared.value(best) ? t : best;
        }
        if (best == 0) {
            // so sharp a corner that the exit point only moves away from it
            return lagM;
        }
        double step = SCAN_END / SCAN_STEPS;
        double least = new BrentOptimizer(1e-9, 1e-12)
                .optimize(
                        new UnivariateObjectiveFunction(squared),
                        GoalType.MINIMIZE,
                        new SearchInterval(best - step, best + step, best),
                        MaxEval.unlimited())
                .getValue();
        return lagM * Math.sqrt(Math.max(0, least));
    }
}
