package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Limits that govern a window's motion, by the multipliers of its rows. A multiplier says how much time a looser limit
 * would save: with squares of the feed, accelerations and jerks as limits, the savings of a relative change are 2 z cap for
 * a speed, z for an acceleration over its limit, and z dt for a jerk. An interval between fixed nodes is at their cap.
 */
final class WindowLimits {

    private final JerkWindow window;
    private double[] weight = new double[0];
    private byte[] code = new byte[0];

    WindowLimits(JerkWindow window) {
        this.window = window;
    }

    /** Finds the governing limit of each interval. */
    void find() {
        int n = window.intervals();
        if (weight.length < n) {
            weight = new double[window.capacity()];
            code = new byte[window.capacity()];
        }
        Arrays.fill(weight, 0, n, Double.POSITIVE_INFINITY);
        Arrays.fill(weight, window.from() - 1, Math.max(window.from() - 1, window.to() + 1), 0);
        for (int k = 0; k < n; k++) {
            code[k] = window.capWhy(k);
        }
        for (int i = window.from(); i <= window.to(); i++) {
            double half = window.speed.multiplier(i) * window.cap[i];
            offer(i - 1, half, window.capWhy(i));
            offer(i, half, window.capWhy(i));
        }
        AccelerationRows rows = window.acceleration;
        for (int r = 0; r < rows.rows(); r++) {
            offer(rows.interval(r), 2 * rows.multiplier(r), rows.why(r));
        }
        JerkRows jerks = window.jerk;
        for (int r = 0; r < jerks.rows(); r++) {
            int i = jerks.node(r);
            double half = 1.5 * jerks.multiplier(r) * JerkRows.bound(i, window.time);
            offer(i - 1, half, jerks.why(r));
            offer(i, half, jerks.why(r));
        }
    }

    private void offer(int k, double value, byte why) {
        if (value > weight[k]) {
            weight[k] = value;
            code[k] = why;
        }
    }

    /** Code of the limit that governs an interval. */
    byte code(int interval) {
        return code[interval];
    }
}
