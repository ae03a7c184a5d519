package dev.waterjet.kerf;

import java.util.function.DoubleUnaryOperator;

/**
 * Second solution of the motion of the front: first-order upwind differences of dX/dt = G(-2 dX/d(z^2)) on equal steps of
 * z^2, after a long run at one feed. It knows nothing of the maximum formula; its error falls with the step.
 */
final class UpwindFront {

    private final double[] positionM;
    private final double step;
    private final DoubleUnaryOperator recession;
    private double timeS;

    /** A steady front; the recession is the speed G of a point with the slope w = -2 dX/d(z^2). */
    UpwindFront(CutFront front, double feed, int cells, DoubleUnaryOperator recession) {
        this.recession = recession;
        this.positionM = new double[cells + 1];
        double thickness = front.thicknessSi();
        this.step = thickness * thickness / cells;
        for (int i = 0; i <= cells; i++) {
            positionM[i] = -front.lagSi(feed, Math.sqrt(i * step));
        }
    }

    /** The recession of a front: u_sep(2 c / w). */
    static DoubleUnaryOperator recession(CutFront front) {
        return slope -> slope <= 0 ? 0 : front.separationFeedSi(2 * front.lagCoefficient() / slope);
    }

    /** Runs at a feed until a time, in steps that no signal outruns: at most a share of one cell. */
    void run(double feed, double untilS, double fastestSignal) {
        double longest = 0.9 * step / fastestSignal;
        while (timeS < untilS) {
            double dt = Math.min(longest, untilS - timeS);
            // from below, so that each cell still sees the old position above it
            for (int i = positionM.length - 1; i > 0; i--) {
                positionM[i] += dt * recession.applyAsDouble(-2 * (positionM[i] - positionM[i - 1]) / step);
            }
            positionM[0] += feed * dt;
            timeS = timeS + dt >= untilS ? untilS : timeS + dt;
        }
    }

    double exitLag() {
        return positionM[0] - positionM[positionM.length - 1];
    }
}
