package dev.waterjet.part;

/** Loops over the edges of a contour, in metres. */
public final class ContourGeometry {

    /** Turning by more than this at the end of a line is a corner; less is the sampling of a curve. */
    public static final double CORNER_RAD = Math.toRadians(10);

    private ContourGeometry() {}

    public static double length(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        double sum = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            sum += edge.length();
        }
        return sum;
    }

    static Box box(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        double lowestX = Double.POSITIVE_INFINITY;
        double lowestY = Double.POSITIVE_INFINITY;
        double highestX = Double.NEGATIVE_INFINITY;
        double highestY = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            lowestX = Math.min(lowestX, edge.minimumX());
            lowestY = Math.min(lowestY, edge.minimumY());
            highestX = Math.max(highestX, edge.maximumX());
            highestY = Math.max(highestY, edge.maximumY());
        }
        return Box.ofSi(lowestX, lowestY, highestX, highestY);
    }

    static double signedArea(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        // about the start, so that a contour far from the origin loses no digits
        double x = contour.xM[0];
        double y = contour.yM[0];
        double sum = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            edge.x0 -= x;
            edge.x1 -= x;
            edge.y0 -= y;
            edge.y1 -= y;
            sum += EdgeKernel.areaTerm(edge);
        }
        return sum;
    }

    static int winding(Contour contour, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        int sum = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            sum += EdgeKernel.winding(edge, x, y);
        }
        int n = contour.size();
        if (!contour.isClosed()) {
            edge.line(contour.xM[n], contour.yM[n], contour.xM[0], contour.yM[0]);
            sum += EdgeKernel.winding(edge, x, y);
        }
        return sum;
    }

    static double distance(Contour contour, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            least = Math.min(least, EdgeKernel.distance(edge, x, y));
        }
        return least;
    }

    /** Angle in rad by which the path turns from one edge into the next, positive to the left, -pi to pi. */
    static double turn(EdgeCursor before, EdgeCursor after) {
        double ax = before.endDirectionX();
        double ay = before.endDirectionY();
        double bx = after.startDirectionX();
        double by = after.startDirectionY();
        return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    }

    static double minimumInnerRadius(Contour contour, int partSign) {
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor next = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        int n = contour.size();
        for (int i = 0; i < n; i++) {
            contour.load(i, edge);
            // hollow: the path turns away from the part
            if (edge.sweep * partSign < 0) {
                least = Math.min(least, edge.radius);
            }
            if (i == n - 1 && !contour.isClosed()) {
                break;
            }
            contour.load((i + 1) % n, next);
            double turn = turn(edge, next);
            if (turn * partSign < -1e-6) {
                least = Math.min(least, sampledRadius(edge, next, turn));
            }
        }
        return least;
    }

    /** Radius of the curve whose samples two lines are; zero at a corner; no limit where an arc goes on smoothly. */
    static double sampledRadius(EdgeCursor before, EdgeCursor after, double turnRad) {
        double angle = Math.abs(turnRad);
        if (angle > CORNER_RAD) {
            return 0;
        }
        if (before.isArc() || after.isArc()) {
            return Double.POSITIVE_INFINITY;
        }
        return (before.length() + after.length()) / (4 * Math.sin(angle / 2));
    }

    static Contour reversed(Contour contour) {
        int n = contour.size();
        double[] x = new double[n + 1];
        double[] y = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            x[i] = contour.xM[n - i];
            y[i] = contour.yM[n - i];
        }
        int arcs = contour.sweepRad.length;
        double[] sweep = new double[arcs];
        double[] centreX = new double[arcs];
        double[] centreY = new double[arcs];
        for (int i = 0; i < arcs; i++) {
            sweep[i] = -contour.sweepRad[n - 1 - i];
            centreX[i] = contour.centreXM[n - 1 - i];
            centreY[i] = contour.centreYM[n - 1 - i];
        }
        short[] finish = new short[n];
        for (int i = 0; i < n; i++) {
            finish[i] = contour.finishIndex[n - 1 - i];
        }
        return new Contour(x, y, sweep, centreX, centreY, finish, contour.finishes, contour.isClosed());
    }

    static Contour moved(Contour contour, double byX, double byY) {
        return new Contour(
                shifted(contour.xM, byX),
                shifted(contour.yM, byY),
                contour.sweepRad,
                shifted(contour.centreXM, byX),
                shifted(contour.centreYM, byY),
                contour.finishIndex,
                contour.finishes,
                contour.isClosed());
    }

    private static double[] shifted(double[] values, double by) {
        double[] moved = new double[values.length];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = values[i] + by;
        }
        return moved;
    }

    /** Index of the edge that holds a distance along the contour; {@code shape} is that edge, {@code offset[0]} the rest. */
    public static int locate(Contour contour, double distanceM, EdgeCursor shape, double[] offset) {
        double left = Math.max(0, distanceM);
        int n = contour.size();
        for (int i = 0; i < n; i++) {
            contour.load(i, shape);
            double length = shape.length();
            if (left < length || i == n - 1) {
                offset[0] = Math.min(left, length);
                return i;
            }
            left -= length;
        }
        throw new IllegalStateException("a contour has edges");
    }

    public static Contour startingAt(Contour contour, double distanceM) {
        EdgeCursor shape = new EdgeCursor();
        double[] offset = new double[1];
        int first = locate(contour, distanceM, shape, offset);
        double length = shape.length();
        int n = contour.size();
        if (offset[0] <= EdgeKernel.ROUNDING_M) {
            return drawn(contour, first, 0);
        }
        return length - offset[0] <= EdgeKernel.ROUNDING_M
                ? drawn(contour, (first + 1) % n, 0)
                : drawn(contour, first, offset[0] / length);
    }

    /** The closed contour from a share of an edge on, all the way round. */
    private static Contour drawn(Contour contour, int first, double share) {
        int n = contour.size();
        EdgeCursor edge = new EdgeCursor();
        contour.load(first, edge);
        double startX = edge.xAt(share);
        double startY = edge.yAt(share);
        ContourBuilder builder = Contour.fromSi(startX, startY);
        for (int step = 0; step < n; step++) {
            int i = (first + step) % n;
            contour.load(i, edge);
            builder.requirement(contour.requirement(i));
            append(builder, edge, edge.x1, edge.y1);
        }
        if (share > 0) {
            contour.load(first, edge);
            builder.requirement(contour.requirement(first));
            append(builder, edge, startX, startY);
        }
        return builder.close();
    }

    public static void append(ContourBuilder builder, EdgeCursor edge, double toX, double toY) {
        if (edge.isArc()) {
            builder.arcToSi(toX, toY, edge.cx, edge.cy, edge.sweep > 0 ? Side.LEFT : Side.RIGHT);
        } else {
            builder.lineToSi(toX, toY);
        }
    }
}
