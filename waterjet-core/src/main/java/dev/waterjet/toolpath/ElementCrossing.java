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
        double ax = a.x1 - a.x0;
        double ay = a.y1 - a.y0;
        double bx = b.x1 - b.x0;
        double by = b.y1 - b.y0;
        double cross = ax * by - ay * bx;
        double lengthA = Math.hypot(ax, ay);
        double lengthB = Math.hypot(bx, by);
        if (Math.abs(cross) <= 1e-12 * lengthA * lengthB) {
            ends(a, b);
            return;
        }
        double gapX = b.x0 - a.x0;
        double gapY = b.y0 - a.y0;
        double alongA = (gapX * by - gapY * bx) / cross;
        double alongB = (gapX * ay - gapY * ax) / cross;
        if (isWithin(alongA, lengthA) && isWithin(alongB, lengthB)) {
            put(a.x0 + alongA * ax, a.y0 + alongA * ay);
        }
    }

    private static boolean isWithin(double share, double length) {
        double slack = TOUCH_M / length;
        return share >= -slack && share <= 1 + slack;
    }

    private void lineAndArc(EdgeCursor line, EdgeCursor arc) {
        double dx = line.x1 - line.x0;
        double dy = line.y1 - line.y0;
        double length = Math.hypot(dx, dy);
        double ux = dx / length;
        double uy = dy / length;
        double along = (arc.cx - line.x0) * ux + (arc.cy - line.y0) * uy;
        double off = (arc.cx - line.x0) * uy - (arc.cy - line.y0) * ux;
        double apart = arc.radius - Math.abs(off);
        if (apart < -TOUCH_M) {
            return;
        }
        double half = Math.sqrt(Math.max(0, apart * (arc.radius + Math.abs(off))));
        for (int way = -1; way <= 1; way += 2) {
            double at = along + way * half;
            double px = line.x0 + at * ux;
            double py = line.y0 + at * uy;
            if (at >= -TOUCH_M && at <= length + TOUCH_M && isOn(arc, px, py)) {
                put(px, py);
            }
        }
    }

    private void arcs(EdgeCursor a, EdgeCursor b) {
        double dx = b.cx - a.cx;
        double dy = b.cy - a.cy;
        double apart = Math.hypot(dx, dy);
        if (apart <= TOUCH_M) {
            if (Math.abs(a.radius - b.radius) <= TOUCH_M) {
                ends(a, b);
            }
            return;
        }
        double along = (apart * apart + (a.radius - b.radius) * (a.radius + b.radius)) / (2 * apart);
        double room = a.radius - Math.abs(along);
        // touching within the tolerance, from outside or inside
        double gap = Math.max(apart - a.radius - b.radius, Math.abs(a.radius - b.radius) - apart);
        if (gap > TOUCH_M) {
            return;
        }
        double half = Math.sqrt(Math.max(0, room * (a.radius + Math.abs(along))));
        double reach = room < 0 ? Math.copySign(a.radius, along) : along;
        for (int way = -1; way <= 1; way += 2) {
            double px = a.cx + (reach * dx - way * half * dy) / apart;
            double py = a.cy + (reach * dy + way * half * dx) / apart;
            if (isOn(a, px, py) && isOn(b, px, py)) {
                put(px, py);
            }
        }
    }

    /** Ends of one element that lie on the other. */
    private void ends(EdgeCursor a, EdgeCursor b) {
        putIfOn(b, a.x0, a.y0);
        putIfOn(b, a.x1, a.y1);
        putIfOn(a, b.x0, b.y0);
        putIfOn(a, b.x1, b.y1);
    }

    private void putIfOn(EdgeCursor on, double px, double py) {
        if (distance(on, px, py) <= TOUCH_M) {
            put(px, py);
        }
    }

    private static boolean isOn(EdgeCursor arc, double px, double py) {
        return arc.spans(px, py)
                || Math.hypot(px - arc.x0, py - arc.y0) <= TOUCH_M
                || Math.hypot(px - arc.x1, py - arc.y1) <= TOUCH_M;
    }

    private static double distance(EdgeCursor edge, double px, double py) {
        if (edge.isArc() && edge.spans(px, py)) {
            return Math.abs(Math.hypot(px - edge.cx, py - edge.cy) - edge.radius);
        }
        double dx = edge.x1 - edge.x0;
        double dy = edge.y1 - edge.y0;
        double share = ((px - edge.x0) * dx + (py - edge.y0) * dy) / (dx * dx + dy * dy);
        if (!edge.isArc() && share > 0 && share < 1) {
            return Math.abs((px - edge.x0) * dy - (py - edge.y0) * dx) / Math.hypot(dx, dy);
        }
        return Math.min(Math.hypot(px - edge.x0, py - edge.y0), Math.hypot(px - edge.x1, py - edge.y1));
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

    /** Share of the length of an element at a point of it, 0 to 1. */
    static double share(EdgeCursor edge, double px, double py) {
        if (!edge.isArc()) {
            double dx = edge.x1 - edge.x0;
            double dy = edge.y1 - edge.y0;
            return clamp(((px - edge.x0) * dx + (py - edge.y0) * dy) / (dx * dx + dy * dy));
        }
        double fromX = edge.x0 - edge.cx;
        double fromY = edge.y0 - edge.cy;
        double toX = px - edge.cx;
        double toY = py - edge.cy;
        double angle = Math.atan2(fromX * toY - fromY * toX, fromX * toX + fromY * toY) * Math.signum(edge.sweep);
        // just before the start is the start, not the end of a full turn
        double slack = TOUCH_M / edge.radius;
        return clamp((angle < -slack ? angle + 2 * Math.PI : Math.max(0, angle)) / Math.abs(edge.sweep));
    }

    private static double clamp(double share) {
        return Math.max(0, Math.min(1, share));
    }
}
