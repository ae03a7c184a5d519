package dev.waterjet.part;

/**
 * Lines and arcs end to end in plain arrays, in metres: vertices {@code 0} to {@code size()}, and for each edge its signed
 * sweep (zero for a line), its centre and a key. Edges of different keys are never merged.
 *
 * @param x x of each vertex
 * @param y y of each vertex
 * @param sweep signed sweep of each edge in rad; empty if all are lines
 * @param centreX x of the centre of each edge; empty if all are lines
 * @param centreY y of the centre of each edge; empty if all are lines
 * @param key key of each edge
 * @param isCurve whether an edge is a chord of a curve by the word of the caller; empty if none is
 * @param isClosed whether the last vertex is the first
 */
record EdgeArrays(
        double[] x,
        double[] y,
        double[] sweep,
        double[] centreX,
        double[] centreY,
        short[] key,
        boolean[] isCurve,
        boolean isClosed) {

    /** Points nearer than this are one point. */
    static final double TOUCH_M = 1e-9;

    static final double[] NO_ARCS = {};
    static final boolean[] NO_CURVES = {};

    int size() {
        return key.length;
    }

    boolean hasArcs() {
        return sweep.length > 0;
    }

    double sweepOf(int edge) {
        return hasArcs() ? sweep[edge] : 0;
    }

    boolean isCurve(int edge) {
        return isCurve.length > 0 && isCurve[edge];
    }

    /** Whether two edges may become one. */
    boolean isAlike(int one, int other) {
        return key[one] == key[other] && isCurve(one) == isCurve(other);
    }

    double chordSquared(int edge) {
        double dx = x[edge + 1] - x[edge];
        double dy = y[edge + 1] - y[edge];
        return dx * dx + dy * dy;
    }

    /** Largest distance of an arc from its chord; zero for a line. */
    double sagitta(int edge) {
        double half = Math.abs(sweepOf(edge)) / 2;
        return half == 0 ? 0 : radius(edge) * (1 - Math.cos(half));
    }

    double radius(int edge) {
        return Math.hypot(x[edge] - centreX[edge], y[edge] - centreY[edge]);
    }

    /** The same closed path from another vertex on. */
    EdgeArrays startingAt(int vertex) {
        return new EdgeArrays(
                turned(x, vertex, size()),
                turned(y, vertex, size()),
                turned(sweep, vertex),
                turned(centreX, vertex),
                turned(centreY, vertex),
                turned(key, vertex),
                turned(isCurve, vertex),
                isClosed);
    }

    private static double[] turned(double[] values, int by, int n) {
        double[] turned = new double[n + 1];
        System.arraycopy(values, by, turned, 0, n - by);
        System.arraycopy(values, 0, turned, n - by, by);
        turned[n] = turned[0];
        return turned;
    }

    private static double[] turned(double[] values, int by) {
        double[] turned = new double[values.length];
        turn(values, by, turned, values.length);
        return turned;
    }

    private static short[] turned(short[] values, int by) {
        short[] turned = new short[values.length];
        turn(values, by, turned, values.length);
        return turned;
    }

    private static boolean[] turned(boolean[] values, int by) {
        boolean[] turned = new boolean[values.length];
        turn(values, by, turned, values.length);
        return turned;
    }

    @SuppressWarnings("SuspiciousSystemArraycopy")
    private static void turn(Object values, int by, Object into, int n) {
        if (n > 0) {
            System.arraycopy(values, by, into, 0, n - by);
            System.arraycopy(values, 0, into, n - by, by);
        }
    }
}
