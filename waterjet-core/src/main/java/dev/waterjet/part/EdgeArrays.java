package dev.waterjet.part;

import java.util.Arrays;
import java.util.List;

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
@SuppressWarnings("ArrayRecordComponent")
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

    private static final double[] NO_ARCS = {};
    private static final boolean[] NO_CURVES = {};

    static EdgeArrays ofLines(double[] x, double[] y) {
        return new EdgeArrays(x, y, NO_ARCS, NO_ARCS, NO_ARCS, new short[x.length - 1], NO_CURVES, false);
    }

    int size() {
        return key.length;
    }

    void load(int edge, EdgeCursor shape) {
        if (sweep.length == 0 || sweep[edge] == 0) {
            shape.line(x[edge], y[edge], x[edge + 1], y[edge + 1]);
        } else {
            shape.arc(x[edge], y[edge], x[edge + 1], y[edge + 1], centreX[edge], centreY[edge], sweep[edge]);
        }
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

    /** The same without arrays of arcs if there are none. */
    EdgeArrays compact() {
        for (double angle : sweep) {
            if (angle != 0) {
                return this;
            }
        }
        return new EdgeArrays(x, y, NO_ARCS, NO_ARCS, NO_ARCS, key, isCurve, isClosed);
    }

    EdgeArrays withKey(short[] other) {
        return new EdgeArrays(x, y, sweep, centreX, centreY, other, isCurve, isClosed);
    }

    EdgeArrays translated(double byX, double byY) {
        return new EdgeArrays(
                shifted(x, byX),
                shifted(y, byY),
                sweep,
                shifted(centreX, byX),
                shifted(centreY, byY),
                key,
                isCurve,
                isClosed);
    }

    /** Turned about the origin by an angle whose cosine and sine are given. */
    EdgeArrays turned(double cos, double sin) {
        return new EdgeArrays(
                turned(x, y, cos, -sin),
                turned(y, x, cos, sin),
                sweep,
                turned(centreX, centreY, cos, -sin),
                turned(centreY, centreX, cos, sin),
                key,
                isCurve,
                isClosed);
    }

    private static double[] turned(double[] own, double[] other, double cos, double sin) {
        double[] turned = new double[own.length];
        for (int i = 0; i < turned.length; i++) {
            turned[i] = cos * own[i] + sin * other[i];
        }
        return turned;
    }

    private static double[] shifted(double[] values, double by) {
        double[] moved = new double[values.length];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = values[i] + by;
        }
        return moved;
    }

    EdgeArrays reversed() {
        int n = size();
        double[] backX = new double[n + 1];
        double[] backY = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            backX[i] = x[n - i];
            backY[i] = y[n - i];
        }
        int arcs = sweep.length;
        double[] backSweep = new double[arcs];
        double[] backCentreX = new double[arcs];
        double[] backCentreY = new double[arcs];
        for (int i = 0; i < arcs; i++) {
            backSweep[i] = 0.0 - sweep[n - 1 - i];
            backCentreX[i] = centreX[n - 1 - i];
            backCentreY[i] = centreY[n - 1 - i];
        }
        short[] backKey = new short[n];
        boolean[] backCurve = new boolean[isCurve.length];
        for (int i = 0; i < n; i++) {
            backKey[i] = key[n - 1 - i];
        }
        for (int i = 0; i < backCurve.length; i++) {
            backCurve[i] = isCurve[n - 1 - i];
        }
        return new EdgeArrays(backX, backY, backSweep, backCentreX, backCentreY, backKey, backCurve, isClosed);
    }

    /** Whether another path has the same geometry and marks; keys are not compared. */
    boolean isSame(EdgeArrays that) {
        return isClosed == that.isClosed
                && Arrays.equals(x, that.x)
                && Arrays.equals(y, that.y)
                && Arrays.equals(sweep, that.sweep)
                && Arrays.equals(centreX, that.centreX)
                && Arrays.equals(centreY, that.centreY)
                && Arrays.equals(isCurve, that.isCurve);
    }

    int hash() {
        int hash = Boolean.hashCode(isClosed);
        for (double[] numbers : List.of(x, y, sweep)) {
            hash = 31 * hash + Arrays.hashCode(numbers);
        }
        return 31 * hash + Arrays.hashCode(isCurve);
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

    static double[] noArcs() {
        return NO_ARCS;
    }

    static boolean[] noCurves() {
        return NO_CURVES;
    }
}
