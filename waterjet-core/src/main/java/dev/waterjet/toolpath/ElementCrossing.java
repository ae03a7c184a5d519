package dev.waterjet.toolpath;

import dev.waterjet.part.EdgeCursor;

/**
 * Points that two lines or arcs share, within a tolerance, so that an end that lies on the other element counts, and so
 * does a touch. Elements on one line or circle share a stretch: its ends are given. In metres.
 */
final class ElementCrossing {

    /** Distance within which elements touch. */
    static final double TOUCH_M = 1e-9;

    private static final int MAX_POINTS = 4;

    final double[] x = new double[MAX_POINTS];
    final double[] y = new double[MAX_POINTS];
    int count;

    void find(EdgeCursor a, EdgeCursor b) {
        count = 0;
        if (a.isArc() && b.isArc()) {
            arcs(a, b);
        } else if (a.isArc()) {
            lineAndArc(b, a);
        } else if (b.isArc()) {
            lineAndArc(a, b);
        } else {
            lines(a, b);
        }
    }

    private void lines(EdgeCursor a, EdgeCursor b) {
        double ax = a.endX() - a.startX();
        double ay = a.endY() - a.startY();
        double bx = b.endX() - b.startX();
        double by = b.endY() - b.startY();
        double cross = ax * by - ay * bx;
        double lengthA = Math.hypot(ax, ay);
        double lengthB = Math.hypot(bx, by);
        if (Math.abs(cross) <= 1e-12 * lengthA * lengthB) {
            ends(a, b);
            return;
        }
        double gapX = b.startX() - a.startX();
        double gapY = b.startY() - a.startY();
        double alongA = (gapX * by - gapY * bx) / cross;
        double alongB = (gapX * ay - gapY * ax) / cross;
        if (isWithin(alongA, lengthA) && isWithin(alongB, lengthB)) {
            put(a.startX() + alongA * ax, a.startY() + alongA * ay);
        }
    }

    private static boolean isWithin(double share, double length) {
        double slack = TOUCH_M / length;
        return share >= -slack && share <= 1 + slack;
    }

    private void lineAndArc(EdgeCursor line, EdgeCursor arc) {
        double dx = line.endX() - line.startX();
        double dy = line.endY() - line.startY();
        double length = Math.hypot(dx, dy);
        double ux = dx / length;
        double uy = dy / length;
        double along = (arc.centreX() - line.startX()) * ux + (arc.centreY() - line.startY()) * uy;
        double off = (arc.centreX() - line.startX()) * uy - (arc.centreY() - line.startY()) * ux;
        double apart = arc.radius() - Math.abs(off);
        if (apart < -TOUCH_M) {
            return;
        }
        double half = Math.sqrt(Math.max(0, apart * (arc.radius() + Math.abs(off))));
        for (int way = -1; way <= 1; way += 2) {
            double at = along + way * half;
            double px = line.startX() + at * ux;
            double py = line.startY() + at * uy;
            if (at >= -TOUCH_M && at <= length + TOUCH_M && isOn(arc, px, py)) {
                put(px, py);
            }
        }
    }

    private void arcs(EdgeCursor a, EdgeCursor b) {
        double dx = b.centreX() - a.centreX();
        double dy = b.centreY() - a.centreY();
        double apart = Math.hypot(dx, dy);
        if (apart <= TOUCH_M) {
            if (Math.abs(a.radius() - b.radius()) <= TOUCH_M) {
                ends(a, b);
            }
            return;
        }
        double along = (apart * apart + (a.radius() - b.radius()) * (a.radius() + b.radius())) / (2 * apart);
        double room = a.radius() - Math.abs(along);
        // touching within the tolerance, from outside or inside
        double gap = Math.max(apart - a.radius() - b.radius(), Math.abs(a.radius() - b.radius()) - apart);
        if (gap > TOUCH_M) {
            return;
        }
        double half = Math.sqrt(Math.max(0, room * (a.radius() + Math.abs(along))));
        double reach = room < 0 ? Math.copySign(a.radius(), along) : along;
        for (int way = -1; way <= 1; way += 2) {
            double px = a.centreX() + (reach * dx - way * half * dy) / apart;
            double py = a.centreY() + (reach * dy + way * half * dx) / apart;
            if (isOn(a, px, py) && isOn(b, px, py)) {
                put(px, py);
            }
        }
    }

    /** Ends of one element that lie on the other. */
    private void ends(EdgeCursor a, EdgeCursor b) {
        putIfOn(b, a.startX(), a.startY());
        putIfOn(b, a.endX(), a.endY());
        putIfOn(a, b.startX(), b.startY());
        putIfOn(a, b.endX(), b.endY());
    }

    private void putIfOn(EdgeCursor on, double px, double py) {
        if (distance(on, px, py) <= TOUCH_M) {
            put(px, py);
        }
    }

    private static boolean isOn(EdgeCursor arc, double px, double py) {
        return arc.spans(px, py)
                || Math.hypot(px - arc.startX(), py - arc.startY()) <= TOUCH_M
                || Math.hypot(px - arc.endX(), py - arc.endY()) <= TOUCH_M;
    }

    private static double distance(EdgeCursor edge, double px, double py) {
        if (edge.isArc() && edge.spans(px, py)) {
            return Math.abs(Math.hypot(px - edge.centreX(), py - edge.centreY()) - edge.radius());
        }
        double dx = edge.endX() - edge.startX();
        double dy = edge.endY() - edge.startY();
        double share = ((px - edge.startX()) * dx + (py - edge.startY()) * dy) / (dx * dx + dy * dy);
        if (!edge.isArc() && share > 0 && share < 1) {
            return Math.abs((px - edge.startX()) * dy - (py - edge.startY()) * dx) / Math.hypot(dx, dy);
        }
        return Math.min(
                Math.hypot(px - edge.startX(), py - edge.startY()), Math.hypot(px - edge.endX(), py - edge.endY()));
    }

    private void put(double px, double py) {
        for (int i = 0; i < count; i++) {
            if (Math.hypot(x[i] - px, y[i] - py) <= TOUCH_M) {
                return;
            }
        }
        if (count < MAX_POINTS) {
            x[count] = px;
            y[count++] = py;
        }
    }
}
