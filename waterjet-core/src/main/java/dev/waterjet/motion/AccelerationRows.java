package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Rows {@code |p x_k + q x_(k+1)| <= 1} of the squares of the feed at the ends of intervals: acceleration along
 * the path or of one axis in the middle of an interval, over its limit. The upper sides come first in the slacks, then
 * the lower ones.
 */
final class AccelerationRows {

    private static final double FLOOR = 0.2;

    private int[] interval;
    private double[] p;
    private double[] q;
    private byte[] why;
    private int rows;
    private Slacks slacks;

    AccelerationRows(int capacity) {
        interval = new int[capacity];
        p = new double[capacity];
        q = new double[capacity];
        why = new byte[capacity];
        slacks = new Slacks(2 * capacity);
    }

    Slacks slacks() {
        return slacks;
    }

    int rows() {
        return rows;
    }

    int interval(int row) {
        return interval[row];
    }

    byte why(int row) {
        return why[row];
    }

    /** Sum of the multipliers of both sides of a row. */
    double multiplier(int row) {
        return slacks.multiplier(row) + slacks.multiplier(row + rows);
    }

    void clear() {
        rows = 0;
        slacks.setCount(0);
    }

    /**
     * Adds a row.
     *
     * @param k interval
     * @param ofStart factor of the square at its start
     * @param ofEnd factor of the square at its end
     * @param limit code of the limit
     */
    void add(int k, double ofStart, double ofEnd, byte limit) {
        if (rows == interval.length) {
            int room = 2 * rows;
            interval = Arrays.copyOf(interval, room);
            p = Arrays.copyOf(p, room);
            q = Arrays.copyOf(q, room);
            why = Arrays.copyOf(why, room);
            slacks = new Slacks(2 * room);
        }
        interval[rows] = k;
        p[rows] = ofStart;
        q[rows] = ofEnd;
        why[rows] = limit;
        rows++;
        slacks.setCount(2 * rows);
    }

    private double value(int r, double[] x) {
        int k = interval[r];
        return p[r] * x[k] + q[r] * x[k + 1];
    }

    void start(double[] x) {
        for (int r = 0; r < rows; r++) {
            double value = value(r, x);
            slacks.start(r, value - 1, FLOOR);
            slacks.start(r + rows, -value - 1, FLOOR);
        }
    }

    /** Takes the values of all rows; returns the greatest excess over a limit and over rounding, relative to the limit. */
    double evaluate(double[] x) {
        double worst = 0;
        for (int r = 0; r < rows; r++) {
            double value = value(r, x);
            int k = interval[r];
            double noise = Slacks.ROUNDING * (Math.abs(p[r]) * x[k] + Math.abs(q[r]) * x[k + 1]);
            double upper = slacks.take(r, value - 1) - noise;
            double lower = slacks.take(r + rows, -value - 1) - noise;
            if (upper > worst) {
                worst = upper;
            }
            if (lower > worst) {
                worst = lower;
            }
        }
        return worst;
    }

    /** Largest factor of all squares with which the rows are kept. */
    double largestShare(double[] x) {
        double share = Double.POSITIVE_INFINITY;
        for (int r = 0; r < rows; r++) {
            double value = Math.abs(value(r, x));
            if (value > 0) {
                share = Math.min(share, 1 / value);
            }
        }
        return share;
    }

    /** Adds the rows to the matrix and to the right side of the predictor. */
    void assemble(BandMatrix matrix, double[] side) {
        for (int r = 0; r < rows; r++) {
            double weight = slacks.weight(r) + slacks.weight(r + rows);
            double force = slacks.predictorForce(r) - slacks.predictorForce(r + rows);
            int k = interval[r];
            double ofStart = p[r];
            double ofEnd = q[r];
            matrix.diagonal[k] += weight * ofStart * ofStart;
            matrix.diagonal[k + 1] += weight * ofEnd * ofEnd;
            matrix.first[k] += weight * ofStart * ofEnd;
            side[k] -= force * ofStart;
            side[k + 1] -= force * ofEnd;
        }
    }

    void predict(double[] change) {
        for (int r = 0; r < rows; r++) {
            double rise = rise(r, change);
            slacks.predict(r, rise);
            slacks.predict(r + rows, -rise);
        }
    }

    void addForces(double[] side, double product) {
        for (int r = 0; r < rows; r++) {
            double force = slacks.correctorForce(r, product) - slacks.correctorForce(r + rows, product);
            int k = interval[r];
            side[k] -= force * p[r];
            side[k + 1] -= force * q[r];
        }
    }

    void correct(double[] change, double product) {
        for (int r = 0; r < rows; r++) {
            double rise = rise(r, change);
            slacks.correct(r, rise, product);
            slacks.correct(r + rows, -rise, product);
        }
    }

    private double rise(int r, double[] change) {
        int k = interval[r];
        return p[r] * change[k] + q[r] * change[k + 1];
    }
}
