package dev.waterjet.part;

/** Distances and crossings of lines and arcs, in metres. */
final class EdgeKernel {

    /** Crossings nearer than this to a common end of neighbours are the rounding of coordinates. */
    static final double ROUNDING_M = 1e-5;

    private static final double TOUCH_M = EdgeArrays.TOUCH_M;

    private EdgeKernel() {}

    /** Distance of a point from an edge. */
    static double distance(EdgeCursor edge, double x, double y) {
        if (edge.isArc()) {
            return edge.spans(x, y)
                    ? Math.abs(Math.hypot(x - edge.cx, y - edge.cy) - edge.radius)
                    : Math.min(Math.hypot(x - edge.x0, y - edge.y0), Math.hypot(x - edge.x1, y - edge.y1));
        }
        double dx = edge.x1 - edge.x0;
        double dy = edge.y1 - edge.y0;
        double share = ((x - edge.x0) * dx + (y - edge.y0) * dy) / (dx * dx + dy * dy);
        share = Math.max(0, Math.min(1, share));
        return Math.hypot(x - edge.x0 - share * dx, y - edge.y0 - share * dy);
    }

    /**
     * Distance of two edges. It is zero where they cross, else taken at an end of one of them, or on the line that meets
     * both at right angles: through the centre of an arc.
     */
    static double distance(EdgeCursor a, EdgeCursor b, double[] scratch) {
        if (crossings(a, b, scratch) > 0) {
            return 0;
        }
        double least = Math.min(
                Math.min(distance(b, a.x0, a.y0), distance(b, a.x1, a.y1)),
                Math.min(distance(a, b.x0, b.y0), distance(a, b.x1, b.y1)));
        if (a.isArc() && b.isArc()) {
            return Math.min(least, alongCentres(a, b));
        }
        if (a.isArc()) {
            return Math.min(least, throughCentre(a, b));
        }
        return b.isArc() ? Math.min(least, throughCentre(b, a)) : least;
    }

    private static double throughCentre(EdgeCursor arc, EdgeCursor line) {
        double dx = line.x1 - line.x0;
        double dy = line.y1 - line.y0;
        double share = ((arc.cx - line.x0) * dx + (arc.cy - line.y0) * dy) / (dx * dx + dy * dy);
        return share < 0 || share > 1
                ? Double.POSITIVE_INFINITY
                : distance(arc, line.x0 + share * dx, line.y0 + share * dy);
    }

    private static double alongCentres(EdgeCursor a, EdgeCursor b) {
        double dx = b.cx - a.cx;
        double dy = b.cy - a.cy;
        double apart = Math.hypot(dx, dy);
        if (apart == 0) {
            return Double.POSITIVE_INFINITY;
        }
        double ux = dx / apart * a.radius;
        double uy = dy / apart * a.radius;
        double least = Double.POSITIVE_INFINITY;
        for (int side = -1; side <= 1; side += 2) {
            double x = a.cx + side * ux;
            double y = a.cy + side * uy;
            if (a.spans(x, y)) {
                least = Math.min(least, distance(b, x, y));
            }
        }
        return least;
    }

    /**
     * Points that two edges share, written as x, y pairs into {@code into} (four numbers). Edges on the same line or
     * circle share a stretch: its ends are given.
     *
     * @return number of points, 0 to 2
     */
    static int crossings(EdgeCursor a, EdgeCursor b, double[] into) {
        if (a.isArc() && b.isArc()) {
            return arcAndArc(a, b, into);
        }
        if (a.isArc()) {
            return lineAndArc(b, a, into);
        }
        return b.isArc() ? lineAndArc(a, b, into) : lineAndLine(a, b, into);
    }

    private static int lineAndLine(EdgeCursor a, EdgeCursor b, double[] into) {
        double ax = a.x1 - a.x0;
        double ay = a.y1 - a.y0;
        double bx = b.x1 - b.x0;
        double by = b.y1 - b.y0;
        double cross = ax * by - ay * bx;
        double lengths = Math.hypot(ax, ay) * Math.hypot(bx, by);
        if (Math.abs(cross) <= 1e-12 * lengths) {
            return onSameCurve(a, b, into);
        }
        double gapX = b.x0 - a.x0;
        double gapY = b.y0 - a.y0;
        double alongA = (gapX * by - gapY * bx) / cross;
        double alongB = (gapX * ay - gapY * ax) / cross;
        if (alongA < 0 || alongA > 1 || alongB < 0 || alongB > 1) {
            return 0;
        }
        into[0] = a.x0 + alongA * ax;
        into[1] = a.y0 + alongA * ay;
        return 1;
    }

    private static int lineAndArc(EdgeCursor line, EdgeCursor arc, double[] into) {
        double dx = line.x1 - line.x0;
        double dy = line.y1 - line.y0;
        double length = Math.hypot(dx, dy);
        double ux = dx / length;
        double uy = dy / length;
        double along = (arc.cx - line.x0) * ux + (arc.cy - line.y0) * uy;
        double off = (arc.cx - line.x0) * uy - (arc.cy - line.y0) * ux;
        double half2 = (arc.radius - off) * (arc.radius + off);
        if (half2 < 0) {
            return 0;
        }
        double half = Math.sqrt(half2);
        int count = 0;
        for (int side = -1; side <= 1; side += 2) {
            double at = along + side * half;
            double x = line.x0 + at * ux;
            double y = line.y0 + at * uy;
            if (at >= 0 && at <= length && arc.spans(x, y)) {
                count = put(into, count, x, y);
            }
        }
        return count;
    }

    private static int arcAndArc(EdgeCursor a, EdgeCursor b, double[] into) {
        double dx = b.cx - a.cx;
        double dy = b.cy - a.cy;
        double apart = Math.hypot(dx, dy);
        if (apart <= TOUCH_M) {
            return Math.abs(a.radius - b.radius) <= TOUCH_M ? onSameCurve(a, b, into) : 0;
        }
        double along = (apart * apart + (a.radius - b.radius) * (a.radius + b.radius)) / (2 * apart);
        double half2 = (a.radius - along) * (a.radius + along);
        if (half2 < 0) {
            return 0;
        }
        double half = Math.sqrt(half2);
        int count = 0;
        for (int side = -1; side <= 1; side += 2) {
            double x = a.cx + (along * dx - side * half * dy) / apart;
            double y = a.cy + (along * dy + side * half * dx) / apart;
            if (a.spans(x, y) && b.spans(x, y)) {
                count = put(into, count, x, y);
            }
        }
        return count;
    }

    /** Ends of one edge that lie on the other: the ends of the stretch that two edges of one curve share. */
    private static int onSameCurve(EdgeCursor a, EdgeCursor b, double[] into) {
        int count = 0;
        if (distance(b, a.x0, a.y0) <= TOUCH_M) {
            count = put(into, count, a.x0, a.y0);
        }
        if (distance(b, a.x1, a.y1) <= TOUCH_M) {
            count = put(into, count, a.x1, a.y1);
        }
        if (distance(a, b.x0, b.y0) <= TOUCH_M) {
            count = put(into, count, b.x0, b.y0);
        }
        if (distance(a, b.x1, b.y1) <= TOUCH_M) {
            count = put(into, count, b.x1, b.y1);
        }
        return count;
    }

    private static int put(double[] into, int count, double x, double y) {
        if (count == 2 || (count == 1 && Math.hypot(into[0] - x, into[1] - y) <= TOUCH_M)) {
            return count;
        }
        into[2 * count] = x;
        into[2 * count + 1] = y;
        return count + 1;
    }

    /** Signed area between the edge and the origin: half of x dy - y dx along it. */
    static double areaTerm(EdgeCursor edge) {
        double chord = (edge.x0 * edge.y1 - edge.x1 * edge.y0) / 2;
        return edge.isArc() ? chord + segment(edge) : chord;
    }

    /** Signed area between an arc and its chord. */
    static double segment(EdgeCursor arc) {
        return arc.radius * arc.radius / 2 * excess(arc.sweep);
    }

    /** An angle less its sine, to full precision for small angles too, by the series. */
    static double excess(double rad) {
        double square = rad * rad;
        return square < 0.04
                ? rad * square / 6 * (1 - square / 20 * (1 - square / 42 * (1 - square / 72 * (1 - square / 110))))
                : rad - Math.sin(rad);
    }

    /** Contribution of the edge to the winding number of a path about a point. */
    static int winding(EdgeCursor edge, double x, double y) {
        double side = (edge.x1 - edge.x0) * (y - edge.y0) - (x - edge.x0) * (edge.y1 - edge.y0);
        int winding = 0;
        if (edge.y0 <= y && edge.y1 > y && side > 0) {
            winding = 1;
        } else if (edge.y0 > y && edge.y1 <= y && side < 0) {
            winding = -1;
        }
        // between chord and arc: the arc lies on the right of the chord where it turns left
        boolean isBetween = edge.isArc()
                && Math.hypot(x - edge.cx, y - edge.cy) < edge.radius
                && (isFullCircle(edge) || (edge.sweep > 0) == isRight(edge, side));
        return isBetween ? winding + (int) Math.signum(edge.sweep) : winding;
    }

    private static boolean isFullCircle(EdgeCursor edge) {
        return edge.x0 == edge.x1 && edge.y0 == edge.y1;
    }

    /** Whether a point is right of a chord; one on it counts as a little to the right of it on the sheet, or above, as its winding does. */
    private static boolean isRight(EdgeCursor chord, double side) {
        return side < 0 || (side == 0 && (chord.y1 > chord.y0 || (chord.y1 == chord.y0 && chord.x1 < chord.x0)));
    }
}
