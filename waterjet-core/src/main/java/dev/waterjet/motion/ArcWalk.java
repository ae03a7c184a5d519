package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Walks along one arc with limits of the axes, on a grid of short intervals: back for the largest squares of the feed from
 * which the rest of the path can still be kept (controllable sets), and forward with the largest feed within them.
 *
 * <p>Each interval keeps the acceleration limits at both of its ends for a constant acceleration along the path, so that
 * the motion is within them everywhere up to second order of the angle; its time is above the optimum in first order, by 2e-4
 * for a circle of 2000 intervals.
 */
final class ArcWalk {

    /** Fewest intervals of an arc, so that one of small angle can both speed up and slow down. */
    private static final int FEWEST = 32;

    private final DynamicLimits limits;
    private final Stretches stretches;
    private final double angleStep;
    private final AxisStep step;

    private int stretch;
    private int intervals;
    private double intervalM;
    private double curvature;
    private double capSquare;
    private boolean keepsCap;
    private double[] tx = new double[FEWEST + 1];
    private double[] ty = new double[FEWEST + 1];
    private double[] controllable = new double[FEWEST + 1];

    ArcWalk(Stretches stretches, double angleStepRad) {
        this.stretches = stretches;
        this.limits = stretches.limits;
        this.angleStep = angleStepRad;
        this.step = new AxisStep(limits);
    }

    /**
     * Walks back over an arc.
     *
     * @param index index of the stretch
     * @param startSquare largest square that the node at its start allows
     * @param endSquare largest square from which the path behind the arc can be kept
     * @return the largest square at the start from which the rest of the path can be kept
     */
    double back(int index, double startSquare, double endSquare) {
        if (isSteady(index, endSquare)) {
            return startSquare;
        }
        lay(index);
        return walkBack(startSquare, endSquare);
    }

    /**
     * Walks forward over an arc and adds it to the motion.
     *
     * @param index index of the stretch
     * @param startSquare square of the feed at its start
     * @param endSquare largest square at its end
     * @param curve motion up to the start of the arc
     * @return the square of the feed at the end
     */
    double forward(int index, double startSquare, double endSquare, MotionCurve curve) {
        double cap = stretches.capSquare(index);
        if (startSquare >= cap && isSteady(index, endSquare)) {
            curve.add(stretches.startM(index + 1), cap, stretches.capWhy(index));
            return cap;
        }
        lay(index);
        walkBack(stretches.squareAt(index), endSquare);
        return walkForward(startSquare, endSquare, curve);
    }

    /** Whether the arc can be run at its cap throughout, whatever its direction. */
    private boolean isSteady(int index, double endSquare) {
        return endSquare >= stretches.capSquare(index) && keepsCap(index);
    }

    /** Whether the limits allow the cap of an arc in every direction. */
    private boolean keepsCap(int index) {
        double cap = stretches.capSquare(index);
        double weakest = Math.min(limits.x().accelerationMPerS2(), limits.y().accelerationMPerS2());
        double slowest = Math.min(limits.x().speedMPerS(), limits.y().speedMPerS());
        return cap * Math.abs(stretches.curvature(index)) <= weakest && cap <= slowest * slowest;
    }

    private void lay(int index) {
        stretch = index;
        curvature = stretches.curvature(index);
        capSquare = stretches.capSquare(index);
        keepsCap = keepsCap(index);
        double length = stretches.lengthM(index);
        double angle = curvature * length;
        intervals = Math.max(FEWEST, (int) Math.ceil(Math.abs(angle) / angleStep));
        intervalM = length / intervals;
        if (tx.length <= intervals) {
            int room = Math.max(intervals + 1, 2 * tx.length);
            tx = new double[room];
            ty = new double[room];
            controllable = new double[room];
        }
        double heading = stretches.headingAt(index, stretches.startM(index));
        tx[0] = Math.cos(heading);
        ty[0] = Math.sin(heading);
        double c = Math.cos(angle / intervals);
        double s = Math.sin(angle / intervals);
        for (int i = 0; i < intervals; i++) {
            tx[i + 1] = tx[i] * c - ty[i] * s;
            ty[i + 1] = ty[i] * c + tx[i] * s;
        }
    }

    /** Square of the cap at an inner node: that of the stretch, and the speed of the axes. */
    private double capAt(int i) {
        double speed = limits.axisSpeed(tx[i], ty[i]);
        return Math.min(capSquare, speed * speed);
    }

    private double walkBack(double startSquare, double endSquare) {
        double square = Math.min(endSquare, capAt(intervals));
        controllable[intervals] = square;
        for (int i = intervals - 1; i >= 0; i--) {
            if (keepsCap && square >= capSquare) {
                Arrays.fill(controllable, 0, i + 1, capSquare);
                controllable[0] = Math.min(startSquare, capSquare);
                return controllable[0];
            }
            step.lay(tx[i], ty[i], tx[i + 1], ty[i + 1], curvature, 2 * intervalM);
            square = step.largestStart(i == 0 ? Math.min(startSquare, capAt(0)) : capAt(i), square);
            controllable[i] = square;
        }
        return square;
    }

    private double walkForward(double startSquare, double endSquare, MotionCurve curve) {
        double x = startSquare;
        for (int i = 0; i < intervals; i++) {
            if (keepsCap && x >= capSquare && controllable[i + 1] >= capSquare) {
                while (i + 1 < intervals && controllable[i + 2] >= capSquare) {
                    i++;
                }
                curve.add(endOf(i), capSquare, stretches.capWhy(stretch));
                continue;
            }
            step.lay(tx[i], ty[i], tx[i + 1], ty[i + 1], curvature, 2 * intervalM);
            double y = step.largestEnd(x, controllable[i + 1]);
            curve.add(endOf(i), y, why(i, x, y));
            x = y;
        }
        return Math.min(x, endSquare);
    }

    /** Distance along the path at the end of an interval. */
    private double endOf(int i) {
        return i == intervals - 1 ? stretches.startM(stretch + 1) : stretches.startM(stretch) + (i + 1) * intervalM;
    }

    private byte why(int i, double x, double y) {
        double least = Math.min(x, y) * (1 + 1e-12);
        if (least >= capSquare) {
            return stretches.capWhy(stretch);
        }
        if (least >= Math.min(capAt(i), capAt(i + 1))) {
            return limits.axisSpeedLimit(tx[i + 1], ty[i + 1]).code();
        }
        return step.tightest(x, y).code();
    }
}
