package dev.waterjet.program;

/**
 * One cutting move of a program, in metres of the program's own coordinates.
 *
 * @param line line of the program, from 1
 * @param shape straight or curved
 * @param startX where it starts
 * @param startY where it starts
 * @param endX where it ends
 * @param endY where it ends
 * @param centreX centre of an arc; the start of a line
 * @param centreY centre of an arc; the start of a line
 */
public record ProgramMove(
        int line, Shape shape, double startX, double startY, double endX, double endY, double centreX, double centreY) {

    /** Shape of a move. */
    public enum Shape {
        /** Straight line, G1. */
        LINE,
        /** Arc clockwise, G2. */
        CLOCKWISE,
        /** Arc counter-clockwise, G3. */
        COUNTER_CLOCKWISE
    }

    /**
     * Whether the move is an arc.
     *
     * @return true for an arc, false for a line
     */
    public boolean isArc() {
        return shape != Shape.LINE;
    }

    /**
     * Radius of an arc.
     *
     * @return radius in m; zero for a line
     */
    public double radius() {
        return isArc() ? Math.hypot(startX - centreX, startY - centreY) : 0;
    }

    /**
     * Angle that an arc sweeps, counter-clockwise positive. An arc that ends where it starts is a whole circle.
     *
     * @return angle in rad, from -2 pi to 2 pi; zero for a line
     */
    public double sweep() {
        if (!isArc()) {
            return 0;
        }
        double from = Math.atan2(startY - centreY, startX - centreX);
        double to = Math.atan2(endY - centreY, endX - centreX);
        boolean isCircle = startX == endX && startY == endY;
        double turn = isCircle ? 0 : to - from;
        if (shape == Shape.COUNTER_CLOCKWISE) {
            return turn <= 0 ? turn + 2 * Math.PI : turn;
        }
        return turn >= 0 ? turn - 2 * Math.PI : turn;
    }

    /**
     * Length of the move.
     *
     * @return length in m
     */
    public double length() {
        return isArc() ? radius() * Math.abs(sweep()) : Math.hypot(endX - startX, endY - startY);
    }
}
