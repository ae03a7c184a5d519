package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Rows {@code |l x_(i-1) + c x_i + r x_(i+1)| <= (dt_(i-1) + dt_i)/2} at inner nodes: change of the acceleration along the
 * path or of one axis from the middle of one interval to that of the next, over the limit of jerk.
 *
 * <p>The right side is convex in x. Its tangent at the present x lies below it, so that each step of the method stays inside
 * the true rows. The upper sides come first in the slacks, then the lower ones.
 */
final class JerkRows {

    private static final double FLOOR = 0.2;

    private int[] node;
    private double[] left;
    private double[] centre;
    private double[] right;
    private byte[] why;
    private int rows;
    private Slacks slacks;

    JerkRows(int capacity) {
        node = new int[capacity];
        left = new double[capacity];
        centre = new double[capacity];
        right = new double[capacity];
        why = new byte[capacity];
        slacks = new Slacks(2 * capacity);
    }

    Slacks slacks() {
        return slacks;
    }

    int rows() {
        return rows;
    }

    int node(int row) {
        return node[row];
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
     * @param i node
     * @param l factor of the square before the node
     * @param r factor of the square behind it
     * @param more what the factor of the node's own square is below -(l + r)
     * @param limit code of the limit
     */
    void add(int i, double l, double r, double more, byte limit) {
        if (rows == node.length) {
            int room = 2 * rows;
            node = Arrays.copyOf(node, room);
            left = Arrays.copyOf(left, room);
            centre = Arrays.copyOf(centre, room);
            right = Arrays.copyOf(right, room);
            why = Arrays.copyOf(why, room);
            slacks = new Slacks(2 * room);
        }
        node[rows] = i;
        left[rows] = l;
        centre[rows] = -l - r - more;
        right[rows] = r;
        why[rows] = limit;
        rows++;
        slacks.setCount(2 * rows);
    }

    private double value(int row, double[] x) {
        int i = node[row];
        return left[row] * x[i - 1] + centre[row] * x[i] + right[row] * x[i + 1];
    }

    /** Rounding of the value of a row. */
    private double noise(int row, double[] x) {
        int i = node[row];
        double terms = Math.abs(left[row]) * x[i - 1] + Math.abs(centre[row]) * x[i] + Math.abs(right[row]) * x[i + 1];
        return Slacks.ROUNDING * terms;
    }

    void start(double[] x, TravelTime time) {
        for (int row = 0; row < rows; row++) {
            double value = value(row, x);
            double bound = bound(node[row], time);
            slacks.start(row, value - bound, FLOOR * bound);
            slacks.start(row + rows, -value - bound, FLOOR * bound);
        }
    }

    /** Time between the middles of the two intervals at a node. */
    static double bound(int i, TravelTime time) {
        return 0.5 * (time.timeS[i - 1] + time.timeS[i]);
    }

    /**
     * Takes the values of all rows; returns the greatest excess over a limit, relative to it. What rounding can make of a
     * row is no excess: over an interval of nanometres the value is the small difference of large terms.
     */
    double evaluate(double[] x, TravelTime time) {
        double worst = 0;
        for (int row = 0; row < rows; row++) {
            double value = value(row, x);
            double bound = bound(node[row], time);
            double noise = noise(row, x);
            double upper = slacks.take(row, value - bound) - noise;
            double lower = slacks.take(row + rows, -value - bound) - noise;
            if (upper > worst * bound) {
                worst = upper / bound;
            }
            if (lower > worst * bound) {
                worst = lower / bound;
            }
        }
        return worst;
    }

    /** Largest factor of all squares with which the rows are kept; rows grow in proportion, bounds fall with the root. */
    double largestShare(double[] x, TravelTime time) {
        double share = Double.POSITIVE_INFINITY;
        for (int row = 0; row < rows; row++) {
            double ratio = (Math.abs(value(row, x)) - noise(row, x)) / bound(node[row], time);
            if (ratio > 0) {
                share = Math.min(share, 1 / Math.cbrt(ratio * ratio));
            }
        }
        return share;
    }

    /** Adds the rows to the matrix and to the right side of the predictor. */
    void assemble(BandMatrix matrix, double[] side, TravelTime time) {
        for (int row = 0; row < rows; row++) {
            int i = node[row];
            double dl = 0.5 * time.byStart[i - 1];
            double dc = 0.5 * (time.byEnd[i - 1] + time.byStart[i]);
            double dr = 0.5 * time.byEnd[i];
            double upper = slacks.weight(row);
            double lower = slacks.weight(row + rows);
            // the gradients of the two sides are +-(l, c, r) - (dl, dc, dr)
            double both = upper + lower;
            double odd = lower - upper;
            double l = left[row];
            double c = centre[row];
            double r = right[row];
            matrix.diagonal[i - 1] += both * (l * l + dl * dl) + 2 * odd * l * dl;
            matrix.diagonal[i] += both * (c * c + dc * dc) + 2 * odd * c * dc;
            matrix.diagonal[i + 1] += both * (r * r + dr * dr) + 2 * odd * r * dr;
            matrix.first[i - 1] += both * (l * c + dl * dc) + odd * (l * dc + dl * c);
            matrix.first[i] += both * (c * r + dc * dr) + odd * (c * dr + dc * r);
            matrix.second[i - 1] += both * (l * r + dl * dr) + odd * (l * dr + dl * r);
            double upperForce = slacks.predictorForce(row);
            double lowerForce = slacks.predictorForce(row + rows);
            push(row, side, time, upperForce - lowerForce, 0.5 * (upperForce + lowerForce));
        }
    }

    void predict(double[] change, TravelTime time) {
        for (int row = 0; row < rows; row++) {
            double rise = value(row, change);
            double wider = wider(node[row], change, time);
            slacks.predict(row, rise - wider);
            slacks.predict(row + rows, -rise - wider);
        }
    }

    void addForces(double[] side, TravelTime time, double product) {
        for (int row = 0; row < rows; row++) {
            double upper = slacks.correctorForce(row, product);
            double lower = slacks.correctorForce(row + rows, product);
            push(row, side, time, upper - lower, 0.5 * (upper + lower));
        }
    }

    private void push(int row, double[] side, TravelTime time, double plain, double wider) {
        int i = node[row];
        side[i - 1] -= plain * left[row] - wider * time.byStart[i - 1];
        side[i] -= plain * centre[row] - wider * (time.byEnd[i - 1] + time.byStart[i]);
        side[i + 1] -= plain * right[row] - wider * time.byEnd[i];
    }

    void correct(double[] change, TravelTime time, double product) {
        for (int row = 0; row < rows; row++) {
            double rise = value(row, change);
            double wider = wider(node[row], change, time);
            slacks.correct(row, rise - wider, product);
            slacks.correct(row + rows, -rise - wider, product);
        }
    }

    /** Change of the bound at a node, in first order. */
    private static double wider(int i, double[] change, TravelTime time) {
        return 0.5
                * (time.byStart[i - 1] * change[i - 1]
                        + (time.byEnd[i - 1] + time.byStart[i]) * change[i]
                        + time.byEnd[i] * change[i + 1]);
    }
}
