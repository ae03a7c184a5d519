package dev.waterjet.part;

/**
 * View of one line or arc, laid out for arithmetic in SI. It is loaded again and again, so that loops over edges allocate
 * nothing:
 *
 * <pre>{@code
 * EdgeCursor edge = new EdgeCursor();
 * for (int i = 0; i < contour.size(); i++) {
 *     contour.load(i, edge);
 *     sum += edge.length();
 * }
 * }</pre>
 *
 * <p>A cursor is for one thread.
 */
public final class EdgeCursor {

    /** Directions within this of an end of an arc count as its end. */
    private static final double END_RAD = 1e-12;

    double x0;
    double y0;
    double x1;
    double y1;
    double cx;
    double cy;
    /** Radius in m; zero for a line. */
    public double radius;
    /** Signed angle in rad; zero for a line. */
    double sweep;

    /** Creates a cursor that holds no edge yet. */
    public EdgeCursor() {}

    /** {@return whether the edge is an arc} */
    public boolean isArc() {
        return sweep != 0;
    }

    /** {@return x of the start, in m} */
    public double startX() {
        return x0;
    }

    /** {@return y of the start, in m} */
    public double startY() {
        return y0;
    }

    /** {@return x of the end, in m} */
    public double endX() {
        return x1;
    }

    /** {@return y of the end, in m} */
    public double endY() {
        return y1;
    }

    /** {@return x of the centre of an arc, in m} */
    public double centreX() {
        return cx;
    }

    /** {@return y of the centre of an arc, in m} */
    public double centreY() {
        return cy;
    }

    /** {@return radius of an arc, in m; zero for a line} */
    public double radius() {
        return radius;
    }

    /** {@return angle by which the direction turns along the edge, in rad, positive to the left; zero for a line} */
    public double sweep() {
        return sweep;
    }

    /**
     * Takes a line.
     *
     * @param fromX x of its start, in m
     * @param fromY y of its start, in m
     * @param toX x of its end, in m
     * @param toY y of its end, in m
     */
    public void line(double fromX, double fromY, double toX, double toY) {
        x0 = fromX;
        y0 = fromY;
        x1 = toX;
        y1 = toY;
        cx = 0;
        cy = 0;
        radius = 0;
        sweep = 0;
    }

    /**
     * Takes an arc.
     *
     * @param fromX x of its start, in m
     * @param fromY y of its start, in m
     * @param toX x of its end, in m
     * @param toY y of its end, in m
     * @param centreX x of its centre, in m
     * @param centreY y of its centre, in m
     * @param sweepRad angle by which the direction turns, in rad, positive to the left, not zero
     */
    public void arc(
            double fromX, double fromY, double toX, double toY, double centreX, double centreY, double sweepRad) {
        line(fromX, fromY, toX, toY);
        cx = centreX;
        cy = centreY;
        sweep = sweepRad;
        radius = Math.sqrt((fromX - centreX) * (fromX - centreX) + (fromY - centreY) * (fromY - centreY));
    }

    /** {@return length along the edge, in m} */
    public double length() {
        return isArc() ? radius * Math.abs(sweep) : Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
    }

    /** {@return x of the unit vector along the path at the start} */
    public double startDirectionX() {
        return isArc() ? -Math.signum(sweep) * (y0 - cy) / radius : (x1 - x0) / length();
    }

    /** {@return y of the unit vector along the path at the start} */
    public double startDirectionY() {
        return isArc() ? Math.signum(sweep) * (x0 - cx) / radius : (y1 - y0) / length();
    }

    /** {@return x of the unit vector along the path at the end} */
    public double endDirectionX() {
        return isArc() ? -Math.signum(sweep) * (y1 - cy) / radius : (x1 - x0) / length();
    }

    /** {@return y of the unit vector along the path at the end} */
    public double endDirectionY() {
        return isArc() ? Math.signum(sweep) * (x1 - cx) / radius : (y1 - y0) / length();
    }

    /**
     * Returns a place on the edge.
     *
     * @param share share of the length, 0 to 1
     * @return x of the place, in m
     */
    public double xAt(double share) {
        if (!isArc()) {
            return x0 + share * (x1 - x0);
        }
        double angle = share * sweep;
        return cx + (x0 - cx) * Math.cos(angle) - (y0 - cy) * Math.sin(angle);
    }

    /**
     * Returns a place on the edge.
     *
     * @param share share of the length, 0 to 1
     * @return y of the place, in m
     */
    public double yAt(double share) {
        if (!isArc()) {
            return y0 + share * (y1 - y0);
        }
        double angle = share * sweep;
        return cy + (x0 - cx) * Math.sin(angle) + (y0 - cy) * Math.cos(angle);
    }

    /**
     * Returns the share of the length at which the edge passes a point: that of the foot of the perpendicular on a line, or of
     * the direction from the centre of an arc. A point beyond an end belongs to the nearer end.
     *
     * @param x x of a point on the edge or beside it, in m
     * @param y y of the point, in m
     * @return the share, 0 to 1
     */
    public double shareAt(double x, double y) {
        if (!isArc()) {
            double dx = x1 - x0;
            double dy = y1 - y0;
            return Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy)));
        }
        double turn = Math.abs(sweep);
        double fromX = x0 - cx;
        double fromY = y0 - cy;
        double angle = Math.atan2(fromX * (y - cy) - fromY * (x - cx), fromX * (x - cx) + fromY * (y - cy))
                * Math.signum(sweep);
        double around = angle < -EdgeArrays.TOUCH_M / radius ? angle + 2 * Math.PI : Math.max(0, angle);
        return 2 * Math.PI - around < around - turn ? 0 : Math.min(1, around / turn);
    }

    /**
     * Returns the direction at a place on the edge.
     *
     * @param share share of the length, 0 to 1
     * @return x of the unit vector along the path
     */
    public double directionXAt(double share) {
        double angle = share * sweep;
        return startDirectionX() * Math.cos(angle) - startDirectionY() * Math.sin(angle);
    }

    /**
     * Returns the direction at a place on the edge.
     *
     * @param share share of the length, 0 to 1
     * @return y of the unit vector along the path
     */
    public double directionYAt(double share) {
        double angle = share * sweep;
        return startDirectionX() * Math.sin(angle) + startDirectionY() * Math.cos(angle);
    }

    /**
     * Returns the angle by which the path turns from another edge into this one.
     *
     * @param before edge that ends where this one starts
     * @return the angle in rad, positive to the left, from -pi to pi
     */
    public double turnFrom(EdgeCursor before) {
        double ax = before.endDirectionX();
        double ay = before.endDirectionY();
        double bx = startDirectionX();
        double by = startDirectionY();
        return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    }

    /**
     * Returns whether the direction from the centre of an arc to a point lies within its sweep.
     *
     * @param x x of the point, in m
     * @param y y of the point, in m
     * @return true if it does
     */
    public boolean spans(double x, double y) {
        double ax = x - cx;
        double ay = y - cy;
        double sign = sweep > 0 ? 1 : -1;
        double slack = -END_RAD * radius * Math.sqrt(ax * ax + ay * ay);
        boolean isPastStart = sign * ((x0 - cx) * ay - (y0 - cy) * ax) >= slack;
        boolean isBeforeEnd = sign * (ax * (y1 - cy) - ay * (x1 - cx)) >= slack;
        if (sign * sweep > Math.PI) {
            return isPastStart || isBeforeEnd;
        }
        // of a short arc the opposite direction is as good as parallel to both ends
        return isPastStart && isBeforeEnd && (sign * sweep > 1 || (x0 - cx) * ax + (y0 - cy) * ay >= 0);
    }

    /**
     * Returns the distance of a point from the edge.
     *
     * @param x x of the point, in m
     * @param y y of the point, in m
     * @return the distance, in m
     */
    public double distance(double x, double y) {
        return EdgeKernel.distance(this, x, y);
    }

    /**
     * Finds where the edge crosses or touches another one.
     *
     * @param other the other edge
     * @param into receives x and y of up to two places, in m; of two edges on one line or circle, the ends of what they share
     * @return the number of places, 0 to 2
     */
    public int crossings(EdgeCursor other, double[] into) {
        return EdgeKernel.crossings(this, other, into);
    }

    /** {@return minimum x of the edge, in m} */
    public double minimumX() {
        return isArc() && spans(cx - radius, cy) ? cx - radius : Math.min(x0, x1);
    }

    /** {@return minimum y of the edge, in m} */
    public double minimumY() {
        return isArc() && spans(cx, cy - radius) ? cy - radius : Math.min(y0, y1);
    }

    /** {@return maximum x of the edge, in m} */
    public double maximumX() {
        return isArc() && spans(cx + radius, cy) ? cx + radius : Math.max(x0, x1);
    }

    /** {@return maximum y of the edge, in m} */
    public double maximumY() {
        return isArc() && spans(cx, cy + radius) ? cy + radius : Math.max(y0, y1);
    }
}
