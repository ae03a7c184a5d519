package dev.waterjet.motion;

/**
 * One window of a grid as an optimization: squares of the feed at its nodes, and rows of speed, acceleration and jerk. It
 * starts at rest or with a given interval, and ends at rest or with an interval at the cap; their nodes are fixed.
 */
final class JerkWindow {

    /** Change of acceleration, over that which the jerk allows from node to node, that counts as none. */
    private static final double NONE = 1e-3;

    private final GridNodes nodes;
    private final RowLayer layer;

    final double[] x;
    final double[] cap;
    final double[] lengthM;
    final TravelTime time;
    final SpeedRows speed;
    final AccelerationRows acceleration;
    final JerkRows jerk;
    private final byte[] capWhy;

    private int intervals;
    private int from;
    private int to;
    private boolean isAtRestFirst;
    private boolean isAtRestLast;

    JerkWindow(RowLayer layer, GridNodes nodes, int capacity) {
        this.nodes = nodes;
        this.layer = layer;
        x = new double[capacity + 1];
        cap = new double[capacity + 1];
        capWhy = new byte[capacity + 1];
        lengthM = new double[capacity];
        time = new TravelTime(capacity);
        speed = new SpeedRows(capacity + 1);
        acceleration = new AccelerationRows(capacity);
        jerk = new JerkRows(capacity);
    }

    /** Greatest number of intervals. */
    int capacity() {
        return lengthM.length;
    }

    int intervals() {
        return intervals;
    }

    /** First free node. */
    int from() {
        return from;
    }

    /** Last free node. */
    int to() {
        return to;
    }

    boolean hasFreeNodes() {
        return from <= to;
    }

    /** Code of what caps the feed at a node. */
    byte capWhy(int node) {
        return capWhy[node];
    }

    /**
     * Takes the first nodes of the grid.
     *
     * @param last index of the last node
     * @param isRestFirst whether the first node is at rest; else the first two nodes have their solution
     * @param isRestLast whether the last node is at rest; else the last two are at their cap
     * @param share share of the squares of the motion without limits of jerk from which the search starts
     */
    void lay(int last, boolean isRestFirst, boolean isRestLast, double share) {
        intervals = last;
        isAtRestFirst = isRestFirst;
        isAtRestLast = isRestLast;
        from = isRestFirst ? 1 : 2;
        to = isRestLast ? last - 1 : last - 2;
        System.arraycopy(nodes.capSquare, 0, cap, 0, last + 1);
        System.arraycopy(nodes.capWhy, 0, capWhy, 0, last + 1);
        for (int k = 0; k < last; k++) {
            lengthM[k] = nodes.placeM[k + 1] - nodes.placeM[k];
        }
        layStart(share);
        speed.lay(from, to);
        acceleration.clear();
        jerk.clear();
        if (hasFreeNodes()) {
            layer.layAccelerations(acceleration, from - 1, to);
            layer.layJerks(jerk, Math.max(1, from - 1), Math.min(last - 1, to + 1));
            if (isRestFirst) {
                capBesideRest(1, 0);
            }
            if (isRestLast) {
                capBesideRest(last - 1, last - 1);
            }
        }
    }

    /** Next to rest the half step of jerk up to the middle of the first interval gives {@code (2 j h^2)^(2/3)}. */
    private void capBesideRest(int node, int interval) {
        double h = lengthM[interval];
        double limit = Math.cbrt(2 * layer.tangentialJerk(interval) * h * h);
        if (limit * limit < cap[node]) {
            cap[node] = limit * limit;
            capWhy[node] = layer.tangentialJerkWhy();
        }
    }

    private void layStart(double startShare) {
        int last = intervals;
        int known = 0;
        while (known <= last && nodes.solution[known] >= 0) {
            known++;
        }
        for (int i = 0; i <= last; i++) {
            double square = Math.min(nodes.reference[i], cap[i]);
            if (isAtRestFirst) {
                square = Math.min(square, layer.rampSquare(i, nodes.placeM[i] - nodes.placeM[0]));
            }
            if (isAtRestLast) {
                square = Math.min(square, layer.rampSquare(i, nodes.placeM[last] - nodes.placeM[i]));
            }
            // from the solution of the window before to the reference
            double old = i < known ? 1 - (double) i / known : 0;
            x[i] = startShare * square * (1 - old) + (old > 0 ? old * nodes.solution[i] : 0);
        }
        x[0] = isAtRestFirst ? 0 : nodes.solution[0];
        if (!isAtRestFirst) {
            x[1] = nodes.solution[1];
        }
        x[last] = isAtRestLast ? 0 : cap[last];
        if (!isAtRestLast) {
            x[last - 1] = cap[last - 1];
        }
    }

    /** Evaluates time and rows at the start and gives each row a slack. */
    double start() {
        double total = time.evaluate(x, lengthM, intervals);
        speed.start(x, cap);
        acceleration.start(x);
        jerk.start(x, time);
        return total;
    }

    /** Evaluates time and rows; returns the time. */
    double evaluateTime() {
        return time.evaluate(x, lengthM, intervals);
    }

    /** Evaluates all rows; returns the greatest excess over a limit, relative to it. */
    double evaluateRows() {
        return Math.max(speed.evaluate(x, cap), Math.max(acceleration.evaluate(x), jerk.evaluate(x, time)));
    }

    /**
     * Slows a motion from rest to rest down until it keeps all limits. A motion that takes f times as long has 1/f of the
     * feed, 1/f^2 of the acceleration and 1/f^3 of the jerk, so that each motion has a slower one within the limits.
     */
    void scaleIntoLimits() {
        time.evaluate(x, lengthM, intervals);
        double share = Math.min(1, acceleration.largestShare(x));
        share = Math.min(share, jerk.largestShare(x, time));
        for (int i = from; i <= to; i++) {
            share = Math.min(share, cap[i] / x[i]);
        }
        for (int i = from; i <= to; i++) {
            x[i] *= share;
        }
    }

    /**
     * Whether the motion could just as well go on slower from a node of the solution: it does not slow down there, and its
     * jerk is well below the limit. Elsewhere it may follow the only motion that still keeps a cap ahead.
     */
    boolean isFree(int node) {
        double before = (x[node] - x[node - 1]) / (2 * lengthM[node - 1]);
        double behind = (x[node + 1] - x[node]) / (2 * lengthM[node]);
        double change = layer.tangentialJerk(node) * JerkRows.bound(node, time);
        return before >= -NONE * change && behind >= -NONE * change && Math.abs(behind - before) < change / 2;
    }
}
