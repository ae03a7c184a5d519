package dev.waterjet.program;

/** Centres and angles of arcs, in m and rad. */
final class ArcGeometry {

    /** Minimum length of a move. */
    static final double MIN_LENGTH_M = 1e-9;

    /** Maximum difference of the two radii: programs round to a micrometre or a ten-thousandth of an inch. */
    static final double ROUNDING_M = 1e-5;

    /** A ten-thousandth of an inch. */
    private static final double ONE_POINT_M = 2.55e-6;

    private static final double FULL_TURN = 2 * Math.PI;

    private ArcGeometry() {}

    /**
     * Distance of the centre from the middle of the chord, along the chord's left normal, for radius {@code r}. The arc
     * turns left (1) or right (-1); {@code r} below zero takes the longer way. Half the chord may exceed {@code r} by
     * rounding.
     */
    static double centreOffset(double chordM, double radiusM, int turn) {
        double half = chordM / 2;
        double height = Math.sqrt(Math.max(0, radiusM * radiusM - half * half));
        return turn * Math.signum(radiusM) * height;
    }

    /**
     * Whether the ends of an arc are one point, so that it is a full circle. They are if they are nearer than the last place
     * of a program in inches; up to the accepted rounding, if they differ across the path rather than along it.
     */
    static boolean isFullCircle(double x0, double y0, double x1, double y1, double atX, double atY) {
        double chord = Math.hypot(x1 - x0, y1 - y0);
        double atStart = Math.hypot(x0 - atX, y0 - atY);
        double atEnd = Math.hypot(x1 - atX, y1 - atY);
        boolean isWide = Math.min(atStart, atEnd) > 10 * ROUNDING_M;
        boolean isAcross = Math.abs(atStart - atEnd) > chord / 2;
        return chord < MIN_LENGTH_M || (isWide && (chord <= ONE_POINT_M || (chord <= ROUNDING_M && isAcross)));
    }

    /** Signed angle of an arc; an arc that ends where it starts is a full circle. */
    static double sweep(double x0, double y0, double x1, double y1, double atX, double atY, int turn) {
        if (Math.hypot(x1 - x0, y1 - y0) < MIN_LENGTH_M) {
            return turn * FULL_TURN;
        }
        double cross = (x0 - atX) * (y1 - atY) - (y0 - atY) * (x1 - atX);
        double dot = (x0 - atX) * (x1 - atX) + (y0 - atY) * (y1 - atY);
        double angle = turn * Math.atan2(cross, dot);
        return turn * (angle > 0 ? angle : angle + FULL_TURN);
    }

    /** Length of an arc; an arc that ends where it starts is a full circle. */
    static double length(double x0, double y0, double x1, double y1, double atX, double atY, int turn) {
        return Math.hypot(x0 - atX, y0 - atY) * Math.abs(sweep(x0, y0, x1, y1, atX, atY, turn));
    }
}
