package dev.waterjet.motion;

/**
 * Fastest motion under limits of speed and acceleration, from rest to rest: a walk back over all stretches for what can
 * still be kept, a walk forward with the largest feed. Exact on straight stretches, on a grid along arcs with limits of the
 * axes. The work grows in proportion to the stretches.
 */
final class AccelerationWalk {

    private final Stretches stretches;
    private final DynamicLimits limits;
    private final ArcWalk arcs;
    private final MotionCurve curve;

    private AccelerationWalk(Stretches stretches, double angleStepRad) {
        this.stretches = stretches;
        this.limits = stretches.limits;
        this.arcs = new ArcWalk(stretches, angleStepRad);
        this.curve = new MotionCurve(2 * stretches.count());
    }

    /**
     * Computes the motion.
     *
     * @param stretches path with its caps
     * @param angleStepRad angle of an interval on arcs with limits of the axes
     */
    static MotionCurve run(Stretches stretches, double angleStepRad) {
        AccelerationWalk walk = new AccelerationWalk(stretches, angleStepRad);
        walk.forward(walk.back());
        return walk.curve;
    }

    /** Squares at the nodes from which the rest of the path can be kept. */
    private double[] back() {
        int n = stretches.count();
        double[] square = new double[n + 1];
        double last = stretches.squareAt(n);
        square[n] = last;
        for (int i = n - 1; i >= 0; i--) {
            double cap = stretches.squareAt(i);
            last = stretches.isTurning(i)
                    ? arcs.back(i, cap, last)
                    : Math.min(cap, last + 2 * stretches.tangentialAcceleration(i, 0) * stretches.lengthM(i));
            square[i] = last;
        }
        return square;
    }

    private void forward(double[] square) {
        int n = stretches.count();
        double last = square[0];
        for (int i = 0; i < n; i++) {
            last = stretches.isTurning(i)
                    ? arcs.forward(i, last, square[i + 1], curve)
                    : straight(i, last, square[i + 1]);
        }
    }

    /** Speeds up, runs at the cap and slows down within one stretch. */
    private double straight(int i, double startSquare, double endSquare) {
        double a = stretches.tangentialAcceleration(i, 0);
        double length = stretches.lengthM(i);
        double start = stretches.startM(i);
        double end = stretches.startM(i + 1);
        double last = Math.min(endSquare, startSquare + 2 * a * length);
        double peak = Math.min(stretches.capSquare(i), (startSquare + last) / 2 + a * length);
        double up = (peak - startSquare) / (2 * a);
        double down = (peak - last) / (2 * a);
        byte why = limits.tangentialAccelerationLimit(stretches.directionX(i), stretches.directionY(i))
                .code();
        double tiny = 1e-12 * length;
        boolean isSlowing = down > tiny;
        boolean isSteady = length - up - down > tiny;
        double top = isSlowing ? peak : last;
        if (up > tiny) {
            curve.add(isSlowing || isSteady ? start + up : end, top, why);
        }
        if (isSteady) {
            curve.add(isSlowing ? end - down : end, top, stretches.capWhy(i));
        }
        if (isSlowing) {
            curve.add(end, last, why);
        }
        return last;
    }
}
