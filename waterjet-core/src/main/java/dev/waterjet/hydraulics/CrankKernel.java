package dev.waterjet.hydraulics;

import java.util.Arrays;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Flow of plungers on one crankshaft over one turn, relative to its mean, with water compressed by a ratio of densities.
 *
 * <p>Angles count from bottom dead centre, where the plunger is withdrawn. Position as a share of the stroke: x = ((1 - cos a) -
 * (l/4) (1 - cos 2a))/2, speed dx/da = v/2 with v = sin a - (l/2) sin 2a, l the radius of the crank over the length of the rod. A
 * plunger delivers from x_d = 1 + d - (1 + d - x_s)/r on, with the dead volume d in strokes, the ratio r of outlet to inlet
 * density and the position x_s at which the suction valve closes, until the delivery valve closes after top dead centre.
 */
final class CrankKernel {

    private static final double ANGLE_ACCURACY = 1e-13;
    private static final int MAX_EVALUATIONS = 200;

    /** Intervals of a smooth piece, each with one root at most. */
    private static final int INTERVALS = 48;

    private final int plungers;
    private final double rodRatio;
    private final double startRad;
    private final double endRad;

    /** Stroke that delivers, net of what flows back. */
    private final double net;

    CrankKernel(int plungers, double rodRatio, double deliveryPosition, double deliveryClosesRad) {
        this.plungers = plungers;
        this.rodRatio = rodRatio;
        this.startRad = angleAt(rodRatio, deliveryPosition);
        this.endRad = Math.PI + deliveryClosesRad;
        this.net = position(rodRatio, endRad) - deliveryPosition;
    }

    /** Position of a plunger as a share of the stroke. */
    static double position(double rodRatio, double angleRad) {
        return ((1 - Math.cos(angleRad)) - rodRatio / 4 * (1 - Math.cos(2 * angleRad))) / 2;
    }

    private static double angleAt(double rodRatio, double position) {
        if (position <= 0) {
            return 0;
        }
        return new BrentSolver(ANGLE_ACCURACY)
                .solve(MAX_EVALUATIONS, a -> position(rodRatio, a) - position, 0, Math.PI);
    }

    /** Position at which delivery begins. */
    static double deliveryPosition(double densityRatio, double deadVolumeRatio, double suctionClosed) {
        return 1 + deadVolumeRatio - (1 + deadVolumeRatio - suctionClosed) / densityRatio;
    }

    /** Strokes that one plunger has delivered from its first bottom dead centre up to an angle. */
    static double delivered(double rodRatio, double begin, double endRad, double angleRad) {
        if (begin >= 1) {
            return 0;
        }
        double turns = Math.floor(angleRad / (2 * Math.PI));
        double angle = angleRad - 2 * Math.PI * turns;
        double within = angle <= Math.PI
                ? Math.max(0, position(rodRatio, angle) - begin)
                : position(rodRatio, Math.min(angle, endRad)) - begin;
        return turns * (position(rodRatio, endRad) - begin) + within;
    }

    /** Angle at which delivery begins, from bottom dead centre. */
    double deliveryRad() {
        return startRad;
    }

    /** Share of the stroke that delivers, net of what flows back, at the density of the outlet. */
    double net() {
        return net;
    }

    private double mean() {
        return plungers * net / Math.PI;
    }

    /** Angles of one period at which plungers begin or end to deliver, and its ends. */
    private double[] pieces() {
        double period = 2 * Math.PI / plungers;
        double[] ends = {0, startRad % period, endRad % period, period};
        Arrays.sort(ends);
        return ends;
    }

    /** Sum of the speeds of the plungers that deliver at the middle of a piece, at an angle of that piece. */
    private double flow(double middleRad, double angleRad) {
        double sum = 0;
        for (int i = 0; i < plungers; i++) {
            double shift = 2 * Math.PI * i / plungers;
            if (delivers(middleRad + shift)) {
                double a = angleRad + shift;
                sum += Math.sin(a) - rodRatio / 2 * Math.sin(2 * a);
            }
        }
        return sum;
    }

    private double slope(double middleRad, double angleRad) {
        double sum = 0;
        for (int i = 0; i < plungers; i++) {
            double shift = 2 * Math.PI * i / plungers;
            if (delivers(middleRad + shift)) {
                double a = angleRad + shift;
                sum += Math.cos(a) - rodRatio * Math.cos(2 * a);
            }
        }
        return sum;
    }

    /** Integral of the flow from the begin of a piece. */
    private double swept(double middleRad, double fromRad, double toRad) {
        double sum = 0;
        for (int i = 0; i < plungers; i++) {
            double shift = 2 * Math.PI * i / plungers;
            if (delivers(middleRad + shift)) {
                sum += 2 * (position(rodRatio, toRad + shift) - position(rodRatio, fromRad + shift));
            }
        }
        return sum;
    }

    private boolean delivers(double angleRad) {
        double a = angleRad % (2 * Math.PI);
        return a > startRad && a < endRad;
    }

    /** Flow ripple, peak to peak, over the mean flow. */
    double ripple() {
        double[] ends = pieces();
        double maximum = Double.NEGATIVE_INFINITY;
        double minimum = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 1 < ends.length; i++) {
            double middle = (ends[i] + ends[i + 1]) / 2;
            for (double a : places(angle -> slope(middle, angle), ends[i], ends[i + 1])) {
                double flow = flow(middle, a);
                maximum = Math.max(maximum, flow);
                minimum = Math.min(minimum, flow);
            }
        }
        return (maximum - minimum) / mean();
    }

    /** Fluctuation, peak to peak, of the delivered volume about that of a constant flow, over the volume of one turn. */
    double fluctuation() {
        double[] ends = pieces();
        double mean = mean();
        double sum = 0;
        double maximum = 0;
        double minimum = 0;
        for (int i = 0; i + 1 < ends.length; i++) {
            double from = ends[i];
            double to = ends[i + 1];
            double middle = (from + to) / 2;
            for (double a : places(angle -> flow(middle, angle) - mean, from, to)) {
                double excess = sum + swept(middle, from, a) - mean * (a - from);
                maximum = Math.max(maximum, excess);
                minimum = Math.min(minimum, excess);
            }
            sum += swept(middle, from, to) - mean * (to - from);
        }
        return (maximum - minimum) / (2 * Math.PI * mean);
    }

    /** The ends of a piece, and the roots of a smooth function between them. */
    private static double[] places(UnivariateFunction function, double fromRad, double toRad) {
        double[] found = new double[INTERVALS + 2];
        int count = 0;
        found[count++] = fromRad;
        double step = (toRad - fromRad) / INTERVALS;
        for (int i = 0; i < INTERVALS && step > 0; i++) {
            double a = fromRad + i * step;
            double b = i + 1 == INTERVALS ? toRad : a + step;
            if (function.value(a) * function.value(b) < 0) {
                found[count++] = new BrentSolver(ANGLE_ACCURACY).solve(MAX_EVALUATIONS, function, a, b);
            }
        }
        found[count++] = toRad;
        return Arrays.copyOf(found, count);
    }
}
