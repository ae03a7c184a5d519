package dev.waterjet.part;

import java.util.Arrays;

/**
 * Lines and arcs that replace a path, each from vertex {@code first} to vertex {@code last + 1} of it. A new piece is
 * joined with the one before where one circle keeps all vertices of both.
 */
final class PieceList {

    /** A long piece takes in a short one this often; after that the other must have grown to an eighth of it. */
    private static final int MAX_JOINS = 4;

    private static final int JOIN_RATIO = 8;

    private final EdgeArrays path;
    private final double tolerance;
    private final double flattening;
    private final PieceCheck check;
    private final EdgeCursor shape = new EdgeCursor();

    int size;
    int[] first = new int[16];
    int[] last = new int[16];
    double[] sweep = new double[16];
    double[] centreX = new double[16];
    double[] centreY = new double[16];
    double[] worst = new double[16];
    int[] worstEdge = new int[16];
    private int[] joins = new int[16];

    private double circleX;
    private double circleY;

    PieceList(EdgeArrays path, double tolerance, double flattening) {
        this.path = path;
        this.tolerance = tolerance;
        this.flattening = flattening;
        this.check = new PieceCheck(path, limit(tolerance));
    }

    /** Appends an edge of the path as it is. */
    void addEdge(int edge) {
        boolean isArc = path.sweepOf(edge) != 0;
        add(
                edge,
                edge,
                path.sweepOf(edge),
                isArc ? path.centreX()[edge] : 0,
                isArc ? path.centreY()[edge] : 0,
                0,
                edge);
    }

    /** Appends a piece if it keeps the edges that it replaces within the tolerance. */
    boolean addIfWithin(int from, int to, double sweepRad, double atX, double atY) {
        if (sweepRad == 0) {
            check.line(from, to);
        } else {
            check.arc(from, to, atX, atY, sweepRad);
        }
        if (!check.isWithin(from, to - 1)) {
            return false;
        }
        add(from, to - 1, sweepRad, atX, atY, check.worst, check.worstEdge);
        return true;
    }

    /** Replaces a piece after its check. */
    void replace(int i, int from, int to, double sweepRad, double atX, double atY, PieceCheck checked) {
        set(i, from, to, sweepRad, atX, atY, checked.worst, checked.worstEdge);
    }

    /** Tolerance with the rounding of the arithmetic. */
    static double limit(double tolerance) {
        return tolerance * (1 + 1e-9) + 1e-12;
    }

    private void add(int from, int to, double sweepRad, double atX, double atY, double deviation, int deviationEdge) {
        if (size == first.length) {
            grow();
        }
        joins[size] = 0;
        set(size++, from, to, sweepRad, atX, atY, deviation, deviationEdge);
    }

    private void set(
            int i, int from, int to, double sweepRad, double atX, double atY, double deviation, int deviationEdge) {
        first[i] = from;
        last[i] = to;
        sweep[i] = sweepRad;
        centreX[i] = atX;
        centreY[i] = atY;
        worst[i] = deviation;
        worstEdge[i] = deviationEdge;
    }

    private void grow() {
        int capacity = 2 * size;
        first = Arrays.copyOf(first, capacity);
        last = Arrays.copyOf(last, capacity);
        sweep = Arrays.copyOf(sweep, capacity);
        centreX = Arrays.copyOf(centreX, capacity);
        centreY = Arrays.copyOf(centreY, capacity);
        worst = Arrays.copyOf(worst, capacity);
        worstEdge = Arrays.copyOf(worstEdge, capacity);
        joins = Arrays.copyOf(joins, capacity);
    }

    /** Joins the last pieces as long as one circle replaces two of them. */
    void joinLast() {
        while (size > 1 && mayJoin(size - 2, size - 1) && join(size - 2, size - 1)) {
            joins[size - 2] = Math.max(joins[size - 2], joins[size - 1]) + 1;
            size--;
        }
    }

    private boolean mayJoin(int a, int b) {
        return joins[a] < MAX_JOINS || last[a] - first[a] + 1 <= JOIN_RATIO * (last[b] - first[b] + 1);
    }

    /** Joins the last piece of a closed path with the first, which then starts at the last's start. */
    void joinEnds() {
        if (size > 1 && join(size - 1, 0)) {
            size--;
        }
    }

    private boolean join(int a, int b) {
        if (!path.isAlike(last[a], first[b]) || sweep[a] * sweep[b] < 0) {
            return false;
        }
        int from = first[a];
        int to = last[b] + 1;
        if (sweep[a] == 0 && sweep[b] == 0) {
            // lines are as long as they can be, but for those that meet at the start of a closed path
            return b == 0 && joinLines(a, from, to);
        }
        double turn = sweep[a] != 0 ? Math.signum(sweep[a]) : Math.signum(sweep[b]);
        boolean isFull = isFullTurn(a, b, from, to);
        if (!findCircle(a, b, isFull)) {
            return false;
        }
        double joined = isFull ? turn * 2 * Math.PI : sweepBetween(from, to, turn);
        if (Math.abs(joined - sweep[a] - sweep[b]) > 1) {
            return false;
        }
        check.arc(from, to, circleX, circleY, joined);
        double radius = Math.hypot(path.x()[from] - circleX, path.y()[from] - circleY);
        return isNearlyJoined(a, b)
                && isFineEnough(first[a], last[a], radius)
                && isFineEnough(first[b], last[b], radius)
                && isJoined(a, b)
                && replace(a, b, joined);
    }

    /** Whether two pieces come back to their start; at the end of an open path within the tolerance. */
    private boolean isFullTurn(int a, int b, int from, int to) {
        double gap = Math.hypot(path.x()[from] - path.x()[to], path.y()[from] - path.y()[to]);
        boolean isOpenEnd = !path.isClosed() && to == path.size();
        return gap <= (isOpenEnd && Math.abs(sweep[a] + sweep[b]) > Math.PI ? tolerance : EdgeArrays.TOUCH_M);
    }

    private boolean joinLines(int a, int from, int to) {
        check.line(from, to);
        if (!isNearlyJoined(a, 0) || !isJoined(a, 0)) {
            return false;
        }
        circleX = 0;
        circleY = 0;
        return replace(a, 0, 0);
    }

    /** A quick look at three vertices; most pairs fail here. */
    private boolean isNearlyJoined(int a, int b) {
        return check.isVertexWithin((first[a] + last[a] + 1) / 2)
                && check.isVertexWithin((first[b] + last[b] + 1) / 2)
                && check.isVertexWithin(first[b]);
    }

    private boolean isJoined(int a, int b) {
        return check.isWithin(first[a], last[a]) && check.isWithin(first[b], last[b]);
    }

    private boolean replace(int a, int b, double joined) {
        set(Math.min(a, b), first[a], last[b], joined, circleX, circleY, check.worst, check.worstEdge);
        return true;
    }

    private double sweepBetween(int from, int to, double turn) {
        double ax = path.x()[from] - circleX;
        double ay = path.y()[from] - circleY;
        double bx = path.x()[to] - circleX;
        double by = path.y()[to] - circleY;
        double angle = Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * turn;
        return turn * (angle > 0 ? angle : angle + 2 * Math.PI);
    }

    /** Whether no chord of some edges is too long for a sample of a circle. */
    boolean isFineEnough(int firstEdge, int lastEdge, double radius) {
        double limit2 = 8 * flattening * radius * (1 + 1e-9);
        for (int edge = firstEdge; edge <= lastEdge; edge++) {
            if (path.sweepOf(edge) == 0 && !path.isCurve(edge) && path.chordSquared(edge) > limit2) {
                return false;
            }
        }
        return true;
    }

    /** Circle through both ends and the middle of two pieces; of a full turn through one end and two points between. */
    private boolean findCircle(int a, int b, boolean isFull) {
        double lengthA = length(a);
        double total = lengthA + length(b);
        double[] one = pointAt(a, b, lengthA, total * (isFull ? 1.0 / 3 : 0.5));
        int to = last[b] + 1;
        double[] other = isFull ? pointAt(a, b, lengthA, total * 2 / 3) : new double[] {path.x()[to], path.y()[to]};
        double x = path.x()[first[a]];
        double y = path.y()[first[a]];
        double ax = one[0] - x;
        double ay = one[1] - y;
        double bx = other[0] - x;
        double by = other[1] - y;
        double cross = 2 * (ax * by - ay * bx);
        double a2 = ax * ax + ay * ay;
        double b2 = bx * bx + by * by;
        circleX = x + (a2 * by - b2 * ay) / cross;
        circleY = y + (b2 * ax - a2 * bx) / cross;
        return Double.isFinite(circleX) && Double.isFinite(circleY);
    }

    private void load(int piece) {
        int from = first[piece];
        int to = last[piece] + 1;
        if (sweep[piece] == 0) {
            shape.line(path.x()[from], path.y()[from], path.x()[to], path.y()[to]);
        } else {
            shape.arc(
                    path.x()[from],
                    path.y()[from],
                    path.x()[to],
                    path.y()[to],
                    centreX[piece],
                    centreY[piece],
                    sweep[piece]);
        }
    }

    private double length(int piece) {
        load(piece);
        return shape.length();
    }

    private double[] pointAt(int a, int b, double lengthA, double distance) {
        boolean isInA = distance <= lengthA;
        load(isInA ? a : b);
        double share = (isInA ? distance : distance - lengthA) / shape.length();
        return new double[] {shape.xAt(share), shape.yAt(share)};
    }
}
