package dev.waterjet.examples.svg;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.examples.drawing.StrokePen;

/** Pen that draws in the units of a drawing and maps each line and curve to metres before it is fitted. */
final class Pen {

    /** Radii below this, in units of the drawing, are none. */
    private static final double NO_RADIUS = 1e-9;

    /** Square of the least chord of an arc, in radii; a shorter one has no direction. */
    private static final double NO_CHORD = 1e-24;

    private static final double[] CUBIC = {1, 1, 1, 1};

    private final StrokePen pen;
    private AffineMap map = AffineMap.IDENTITY;
    private double startX;
    private double startY;
    private double x;
    private double y;

    Pen(StrokePen pen) {
        this.pen = pen;
    }

    /** Starts an element: what follows goes through a map to metres, and the point is the origin. */
    void use(AffineMap toMetres) {
        this.map = toMetres;
        moveTo(0, 0);
    }

    void moveTo(double toX, double toY) {
        startX = toX;
        startY = toY;
        at(toX, toY);
        pen.moveTo(map.x(toX, toY), map.y(toX, toY));
    }

    private void at(double toX, double toY) {
        x = toX;
        y = toY;
    }

    void lineTo(double toX, double toY) {
        pen.lineTo(map.x(toX, toY), map.y(toX, toY));
        at(toX, toY);
    }

    void cubicTo(double x1, double y1, double x2, double y2, double toX, double toY) {
        double[] xM = {map.x(x, y), map.x(x1, y1), map.x(x2, y2), map.x(toX, toY)};
        double[] yM = {map.y(x, y), map.y(x1, y1), map.y(x2, y2), map.y(toX, toY)};
        pen.bezierTo(xM, yM, CUBIC);
        at(toX, toY);
    }

    /** A quadratic curve is the cubic whose inner points lie two thirds of the way to its own. */
    void quadraticTo(double x1, double y1, double toX, double toY) {
        cubicTo(
                x + (x1 - x) * 2 / 3,
                y + (y1 - y) * 2 / 3,
                toX + (x1 - toX) * 2 / 3,
                toY + (y1 - toY) * 2 / 3,
                toX,
                toY);
    }

    /** An arc of an ellipse, by its ends (SVG 1.1, appendix F.6). */
    void arcTo(
            double radiusX,
            double radiusY,
            double degrees,
            boolean isLarge,
            boolean isPositive,
            double toX,
            double toY) {
        double rx = Math.abs(radiusX);
        double ry = Math.abs(radiusY);
        if (rx < NO_RADIUS || ry < NO_RADIUS) {
            lineTo(toX, toY);
            return;
        }
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        // F.6.5.1: half the chord, in the ellipse's own axes
        double ux = (cos * (x - toX) + sin * (y - toY)) / 2;
        double uy = (-sin * (x - toX) + cos * (y - toY)) / 2;
        // F.6.6: radii too small for the chord grow until it just fits
        double fit = Math.hypot(ux / rx, uy / ry);
        if (fit > 1) {
            rx *= fit;
            ry *= fit;
        }
        // F.6.5.2: the centre, in units of the radii
        double vx = ux / rx;
        double vy = uy / ry;
        double square = vx * vx + vy * vy;
        if (square < NO_CHORD) {
            lineTo(toX, toY);
            return;
        }
        double away = (isLarge == isPositive ? -1 : 1) * Math.sqrt(Math.max(0, 1 / square - 1));
        double wx = away * vy;
        double wy = -away * vx;
        double from = Math.atan2(vy - wy, vx - wx);
        double sweep = Math.atan2(-vy - wy, -vx - wx) - from;
        if (isPositive && sweep < 0) {
            sweep += 2 * Math.PI;
        } else if (!isPositive && sweep > 0) {
            sweep -= 2 * Math.PI;
        }
        // F.6.5.3: the centre in the drawing
        double centreX = cos * rx * wx - sin * ry * wy + (x + toX) / 2;
        double centreY = sin * rx * wx + cos * ry * wy + (y + toY) / 2;
        AffineMap unit = map.with(new AffineMap(cos * rx, sin * rx, -sin * ry, cos * ry, centreX, centreY));
        pen.ellipseTo(unit, from, sweep, map.x(toX, toY), map.y(toX, toY));
        at(toX, toY);
    }

    /** Closes what is being drawn, and goes back to its start. */
    void close() {
        pen.close();
        at(startX, startY);
    }

    /** Ends what is being drawn: closed where it ends at its start, else open. */
    void endOpen() {
        pen.end();
    }

    double x() {
        return x;
    }

    double y() {
        return y;
    }
}
