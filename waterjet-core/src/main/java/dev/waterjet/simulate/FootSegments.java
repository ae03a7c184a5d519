package dev.waterjet.simulate;

import java.util.Arrays;

/**
 * Straight segments of the path on which the jet acts at one depth, each run at a constant pace, in flat arrays; in m, s.
 * A segment of length zero is a dwell. Neighbouring segments in one line and at one pace are one.
 */
final class FootSegments {

    /** A shorter segment is a dwell. */
    private static final double DWELL_M = 1e-12;

    private static final double SAME_PACE = 1e-9;
    private static final double SAME_DIRECTION = 1e-10;

    int count;
    double[] x;
    double[] y;
    /** Unit direction. */
    double[] ux;

    double[] uy;
    double[] length;
    /** Time over length; of a dwell the time. */
    double[] pace;
    /** Number that the caller gave to the start of each segment. */
    int[] node;

    FootSegments(int capacity) {
        x = new double[capacity];
        y = new double[capacity];
        ux = new double[capacity];
        uy = new double[capacity];
        length = new double[capacity];
        pace = new double[capacity];
        node = new int[capacity];
    }

    void clear() {
        count = 0;
    }

    private void grow() {
        int capacity = 2 * count + 16;
        x = Arrays.copyOf(x, capacity);
        y = Arrays.copyOf(y, capacity);
        ux = Arrays.copyOf(ux, capacity);
        uy = Arrays.copyOf(uy, capacity);
        length = Arrays.copyOf(length, capacity);
        pace = Arrays.copyOf(pace, capacity);
        node = Arrays.copyOf(node, capacity);
    }

    /** Adds a segment that takes a time above 0. */
    void add(double fromX, double fromY, double toX, double toY, double timeS, int startNode) {
        double dx = toX - fromX;
        double dy = toY - fromY;
        double long0 = Math.sqrt(dx * dx + dy * dy);
        boolean isDwell = long0 < DWELL_M;
        double pace0 = isDwell ? timeS : timeS / long0;
        if (!isDwell && count > 0 && continues(fromX, fromY, dx / long0, dy / long0, pace0)) {
            int last = count - 1;
            double time = pace[last] * length[last] + timeS;
            set(last, x[last], y[last], toX - x[last], toY - y[last]);
            pace[last] = time / length[last];
            return;
        }
        if (count == x.length) {
            grow();
        }
        set(count, fromX, fromY, dx, dy);
        if (isDwell) {
            length[count] = 0;
            ux[count] = 1;
            uy[count] = 0;
        }
        pace[count] = pace0;
        node[count] = startNode;
        count++;
    }

    private void set(int i, double fromX, double fromY, double dx, double dy) {
        double size = Math.sqrt(dx * dx + dy * dy);
        x[i] = fromX;
        y[i] = fromY;
        ux[i] = dx / size;
        uy[i] = dy / size;
        length[i] = size;
    }

    private boolean continues(double fromX, double fromY, double directionX, double directionY, double newPace) {
        int last = count - 1;
        double gapX = x[last] + length[last] * ux[last] - fromX;
        double gapY = y[last] + length[last] * uy[last] - fromY;
        return length[last] > 0
                && Math.abs(newPace - pace[last]) <= SAME_PACE * newPace
                && directionX * ux[last] + directionY * uy[last] > 0
                && Math.abs(directionX * uy[last] - directionY * ux[last]) <= SAME_DIRECTION
                && gapX * gapX + gapY * gapY <= DWELL_M * DWELL_M;
    }

    double endX(int i) {
        return x[i] + length[i] * ux[i];
    }

    double endY(int i) {
        return y[i] + length[i] * uy[i];
    }
}
