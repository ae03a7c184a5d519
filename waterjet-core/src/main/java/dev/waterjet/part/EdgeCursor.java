package dev.waterjet.part;

/** Shape of one edge, laid out for arithmetic. Loaded again and again, so that loops over edges allocate nothing. */
public final class EdgeCursor {

    double x0;
    double y0;
    public double x1;
    public double y1;
    double cx;
    double cy;
    /** Radius in m; zero for a line. */
    public double radius;
    /** Signed angle in rad; zero for a line. */
    double sweep;

    public boolean isArc() {
        return sweep != 0;
    }

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

    public void arc(double fromX, double fromY, double toX, double toY, double centreX, double centreY, double sweepRad) {
        line(fromX, fromY, toX, toY);
        cx = centreX;
        cy = centreY;
        sweep = sweepRad;
        radius = Math.sqrt((fromX - centreX) * (fromX - centreX) + (fromY - centreY) * (fromY - centreY));
    }

    public double length() {
        return isArc() ? radius * Math.abs(sweep) : Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
    }

    /** Direction at the start, as a component along x of a vector of length 1. */
    public double startDirectionX() {
        return isArc() ? -Math.signum(sweep) * (y0 - cy) / radius : (x1 - x0) / length();
    }

    public double startDirectionY() {
        return isArc() ? Math.signum(sweep) * (x0 - cx) / radius : (y1 - y0) / length();
    }

    public double endDirectionX() {
        return isArc() ? -Math.signum(sweep) * (y1 - cy) / radius : (x1 - x0) / length();
    }

    public double endDirectionY() {
        return isArc() ? Math.signum(sweep) * (x1 - cx) / radius : (y1 - y0) / length();
    }

    /** Place at a share of the length, 0 to 1. */
    public double xAt(double share) {
        if (!isArc()) {
            return x0 + share * (x1 - x0);
        }
        double angle = share * sweep;
        return cx + (x0 - cx) * Math.cos(angle) - (y0 - cy) * Math.sin(angle);
    }

    public double yAt(double share) {
        if (!isArc()) {
            return y0 + share * (y1 - y0);
        }
        double angle = share * sweep;
        return cy + (x0 - cx) * Math.sin(angle) + (y0 - cy) * Math.cos(angle);
    }

    /** Direction at a share of the length, along x. */
    public double directionXAt(double share) {
        double angle = share * sweep;
        return startDirectionX() * Math.cos(angle) - startDirectionY() * Math.sin(angle);
    }

    public double directionYAt(double share) {
        double angle = share * sweep;
        return startDirectionX() * Math.sin(angle) + startDirectionY() * Math.cos(angle);
    }

    /** Whether the direction from the centre to a point lies within the sweep of the arc. */
    boolean spans(double x, double y) {
        double fromX = x0 - cx;
        double fromY = y0 - cy;
        double toX = x - cx;
        double toY = y - cy;
        double angle = Math.atan2(fromX * toY - fromY * toX, fromX * toX + fromY * toY) * Math.signum(sweep);
        if (angle < 0) {
            angle += 2 * Math.PI;
        }
        double slack = 1e-12;
        return angle <= Math.abs(sweep) + slack || angle >= 2 * Math.PI - slack;
    }

    public double minimumX() {
        return isArc() && spans(cx - radius, cy) ? cx - radius : Math.min(x0, x1);
    }

    public double minimumY() {
        return isArc() && spans(cx, cy - radius) ? cy - radius : Math.min(y0, y1);
    }

    public double maximumX() {
        return isArc() && spans(cx + radius, cy) ? cx + radius : Math.max(x0, x1);
    }

    public double maximumY() {
        return isArc() && spans(cx, cy + radius) ? cy + radius : Math.max(y0, y1);
    }
}
