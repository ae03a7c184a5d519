package dev.waterjet.simulate;

import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;

/**
 * Circle of the jet around the corner of its path, where the part is re-entrant: it touches both edges. In m.
 *
 * @param centreX x of the corner of the path
 * @param centreY y of the corner of the path
 * @param radius distance of the path from the part
 * @param before length at the end of the edge before that no jet can reach
 * @param after length at the start of the edge after that no jet can reach
 * @param normalX x of the unit normal from the edge before towards the path, where the circle touches it
 * @param normalY y of that normal
 * @param turn angle from that normal to the one of the edge after
 */
record Fillet(
        double centreX,
        double centreY,
        double radius,
        double before,
        double after,
        double normalX,
        double normalY,
        double turn) {

    /** Circle between two edges of a contour, of which the path runs on the left (1) or right (-1). */
    static Fillet of(Contour contour, int before, int after, int sign, double radius) {
        EdgeCursor first = new EdgeCursor();
        EdgeCursor second = new EdgeCursor();
        contour.load(before, first);
        contour.load(after, second);
        EdgeCursor besideFirst = new EdgeCursor();
        EdgeCursor besideSecond = new EdgeCursor();
        double[] places = new double[4];
        int count = shift(first, sign * radius, besideFirst) && shift(second, sign * radius, besideSecond)
                ? besideFirst.crossings(besideSecond, places)
                : 0;
        if (count == 0) {
            return ofTangents(first, second, sign, radius);
        }
        double shareFirst = 0;
        double shareSecond = 0;
        double most = Double.NEGATIVE_INFINITY;
        int best = 0;
        for (int i = 0; i < count; i++) {
            double one = besideFirst.shareAt(places[2 * i], places[2 * i + 1]);
            double other = besideSecond.shareAt(places[2 * i], places[2 * i + 1]);
            double kept = one * first.length() - other * second.length();
            if (kept > most) {
                most = kept;
                best = i;
                shareFirst = one;
                shareSecond = other;
            }
        }
        double nx = -sign * first.directionYAt(shareFirst);
        double ny = sign * first.directionXAt(shareFirst);
        double mx = -sign * second.directionYAt(shareSecond);
        double my = sign * second.directionXAt(shareSecond);
        return new Fillet(
                places[2 * best],
                places[2 * best + 1],
                radius,
                (1 - shareFirst) * first.length(),
                shareSecond * second.length(),
                nx,
                ny,
                Math.atan2(nx * my - ny * mx, nx * mx + ny * my));
    }

    /** The edge at a distance to the left, below 0 to the right; false if it vanishes. */
    private static boolean shift(EdgeCursor edge, double toLeft, EdgeCursor into) {
        double x0 = edge.startX() - toLeft * edge.startDirectionY();
        double y0 = edge.startY() + toLeft * edge.startDirectionX();
        double x1 = edge.endX() - toLeft * edge.endDirectionY();
        double y1 = edge.endY() + toLeft * edge.endDirectionX();
        if (!edge.isArc()) {
            into.line(x0, y0, x1, y1);
            return true;
        }
        if (edge.radius() - Math.signum(edge.sweep()) * toLeft <= 0) {
            return false;
        }
        into.arc(x0, y0, x1, y1, edge.centreX(), edge.centreY(), edge.sweep());
        return true;
    }

    /** Circle between the tangents of two edges that are too short for one that touches them. */
    private static Fillet ofTangents(EdgeCursor first, EdgeCursor second, int sign, double radius) {
        double turn = second.turnFrom(first);
        double nx = -sign * first.endDirectionY();
        double ny = sign * first.endDirectionX();
        double half = turn / 2;
        double toCentre = radius / Math.cos(half);
        double setBack = radius * Math.tan(Math.abs(half));
        return new Fillet(
                first.endX() + toCentre * (nx * Math.cos(half) - ny * Math.sin(half)),
                first.endY() + toCentre * (nx * Math.sin(half) + ny * Math.cos(half)),
                radius,
                setBack,
                setBack,
                nx,
                ny,
                turn);
    }
}
