package dev.waterjet.calibrate;

import java.util.Arrays;

/** Whether feed rates lie on the rungs of a ladder, of equal steps or of equal ratios. */
final class Ladder {

    private static final double TOLERANCE = 1e-3;
    private static final int MAX_RUNGS = 40;

    /** Values that happen to be whole multiples of a step far smaller than themselves show nothing. */
    private static final double MIN_STEP = 0.05;

    private Ladder() {}

    /** Whether at least {@code count} different values lie on one ladder with steps of 5 % or more. */
    static boolean isLadder(double[] values, int count) {
        double[] distinct = Arrays.stream(values).sorted().distinct().toArray();
        if (distinct.length < count) {
            return false;
        }
        return isEven(distinct, MIN_STEP * distinct[0])
                || isEven(Arrays.stream(distinct).map(Math::log).toArray(), MIN_STEP);
    }

    /** Whether all differences are whole multiples of the smallest, which is no smaller than a limit. */
    private static boolean isEven(double[] sorted, double limit) {
        double step = Double.POSITIVE_INFINITY;
        for (int i = 1; i < sorted.length; i++) {
            step = Math.min(step, sorted[i] - sorted[i - 1]);
        }
        if (step < limit) {
            return false;
        }
        for (double value : sorted) {
            double rungs = (value - sorted[0]) / step;
            if (rungs > MAX_RUNGS || Math.abs(rungs - Math.rint(rungs)) > TOLERANCE * Math.max(1, rungs)) {
                return false;
            }
        }
        return true;
    }
}
