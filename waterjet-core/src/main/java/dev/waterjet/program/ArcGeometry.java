package dev.waterjet.program;

/** Centres and lengths of arcs, in m. */
final class ArcGeometry {

    /** Minimum length of a move. */
    static final double MIN_LENGTH_M = 1e-9;

    /** Maximum difference of the two radii: programs round to a micrometre or a ten-thousandth of an inch. */
    static final double ROUNDING_M = 1e-5;

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

    /** Length of an arc; an arc that ends where it starts is a full circle. */
    static double length(double x0, double y0, double x1, double y1, double atX, double atY, int turn) {
        double radius = Math.hypot(x0 - atX, y0 - atY);
        double angle = turn * (Math.atan2(y1 - atY, x1 - atX) - Math.atan2(y0 - atY, x0 - atX));
        double fullTurn = 2 * Math.PI;
        double sweep = angle - fullTurn * Math.floor(angle / fullTurn);
        return radius * (Math.hypot(x1 - x0, y1 - y0) < MIN_LENGTH_M ? fullTurn : sweep);
    }
}
