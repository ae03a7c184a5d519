package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Limits that govern a window's motion, by the multipliers of its rows. A multiplier says how much time a looser limit
 * would save: with squares of the feed, accelerations and jerks as limits, the savings of a relative change are 2 z cap for
 * a speed, z for an acceleration over its limit, and z dt for a jerk.
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
        Arrays.fill(weight, 0, n, 0);
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

    /**
     * Adds the savings of relative changes of the limits, by code.
     *
     * @param savings sums to add to, in s
     * @param last last node that counts, and end of the last interval that counts
     */
    void addSavings(double[] savings, int last) {
        // the node behind a given interval counted in the window before, unless that fixed it at its cap
        int first = window.isAtRestFirst() || window.isSteadyFirst() ? 1 : 2;
        for (int i = first; i <= last; i++) {
            // next to rest the cap stands for the jerk, to the power 2/3
            double power = window.isCapOfJerk(i) ? 2.0 / 3 : 2;
            savings[window.capWhy(i)] += power * window.speed.multiplier(i) * window.cap[i];
        }
        AccelerationRows rows = window.acceleration;
        for (int r = 0; r < rows.rows(); r++) {
            if (rows.interval(r) < last) {
                savings[rows.why(r)] += rows.multiplier(r);
            }
        }
        JerkRows jerks = window.jerk;
        for (int r = 0; r < jerks.rows(); r++) {
            int i = jerks.node(r);
            if (i >= first && i <= last) {
                savings[jerks.why(r)] += jerks.multiplier(r) * JerkRows.bound(i, window.time);
            }
        }
        addSteady(savings, last);
    }

    /** Nodes that are fixed at their cap save half of the time of each interval beside them. */
    private void addSteady(double[] savings, int last) {
        double[] time = window.time.timeS;
        if (window.isSteadyFirst()) {
            savings[window.capWhy(1)] += time[1] / 2;
        }
        if (!window.isAtRestLast() && last == window.intervals()) {
            savings[window.capWhy(last)] += time[last - 1] + time[last - 2] / 2;
        }
    }
}
