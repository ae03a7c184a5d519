package dev.waterjet.examples.svg;

import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Draws contours in metres from the lines and curves of a drawing in its own units. Curves are first mapped, then cut into so
 * many chords that none is farther from its curve than the tolerance: between two points a step h apart in the parameter, a
 * curve B leaves its chord by at most {@code h^2 max|B''| / 8}.
 */
final class Pen {

    private static final int MOST_CHORDS_OF_A_CURVE = 100_000;
    private static final int MOST_EDGES = 1_000_000;

    /** Moves shorter than this draw nothing, in m. */
    private static final double NOTHING_M = 1e-9;

    /** Farthest point from the lower left corner of the page, and greatest radius that stays an arc. */
    private static final double FARTHEST_M = 1000;

    /** Radii below this, in units of the drawing, are none. */
    private static final double NO_RADIUS = 1e-9;

    /** Square of the least chord of an arc, in radii; a shorter one has no direction. */
    private static final double NO_CHORD = 1e-24;

    private final double toleranceM;
    private final List<Contour> contours = new ArrayList<>();
    private Matrix matrix = Matrix.IDENTITY;
    private EdgeRequirement finish = EdgeRequirement.defaults();
    private @Nullable ContourBuilder drawing;
    private int edgesOfDrawing;
    private long edges;
    private double startX;
    private double startY;
    private double x;
    private double y;
    private double lastX;
    private double lastY;

    Pen(double toleranceM) {
        this.toleranceM = toleranceM;
    }

    /** What is drawn from here on goes through a map to metres and has a finish. */
    void use(Matrix toMetres, EdgeRequirement next) {
        this.matrix = toMetres;
        this.finish = next;
    }

    List<Contour> contours() {
        return contours;
    }

    void moveTo(double toX, double toY) {
        endOpen();
        startX = toX;
        startY = toY;
        x = toX;
        y = toY;
    }

    void lineTo(double toX, double toY) {
        count(1);
        lineMapped(matrix.x(toX, toY), matrix.y(toX, toY));
        x = toX;
        y = toY;
    }

    private void lineMapped(double atX, double atY) {
        ContourBuilder builder = builder();
        double fromX = lastX;
        double fromY = lastY;
        requireNear(atX, atY);
        if (Math.hypot(atX - fromX, atY - fromY) > NOTHING_M) {
            edgesOfDrawing++;
            builder.lineToSi(atX, atY);
            lastX = atX;
            lastY = atY;
        }
    }

    private ContourBuilder builder() {
        ContourBuilder at = drawing;
        if (at == null) {
            lastX = matrix.x(x, y);
            lastY = matrix.y(x, y);
            requireNear(lastX, lastY);
            at = Contour.fromSi(lastX, lastY).requirement(finish);
            drawing = at;
            edgesOfDrawing = 0;
        }
        return at;
    }

    /** Counts edges before they are drawn. */
    private void count(int more) {
        edges += more;
        if (edges > MOST_EDGES) {
            throw new TextException("the drawing has more than " + MOST_EDGES + " edges at this tolerance");
        }
    }

    private static void requireNear(double atX, double atY) {
        if (!(Math.hypot(atX, atY) <= FARTHEST_M)) {
            throw new TextException(
                    "a point lies more than " + (int) FARTHEST_M + " m from the lower left corner of the page");
        }
    }

    void cubicTo(double x1, double y1, double x2, double y2, double toX, double toY) {
        double p0x = matrix.x(x, y);
        double p0y = matrix.y(x, y);
        double p1x = matrix.x(x1, y1);
        double p1y = matrix.y(x1, y1);
        double p2x = matrix.x(x2, y2);
        double p2y = matrix.y(x2, y2);
        double p3x = matrix.x(toX, toY);
        double p3y = matrix.y(toX, toY);
        // |B''| of a cubic is greatest at an end: 6 |P0 - 2 P1 + P2| or 6 |P1 - 2 P2 + P3|
        double bend = 6
                * Math.max(
                        Math.hypot(p0x - 2 * p1x + p2x, p0y - 2 * p1y + p2y),
                        Math.hypot(p1x - 2 * p2x + p3x, p1y - 2 * p2y + p3y));
        int chords = chords(bend, 1);
        for (int i = 1; i < chords; i++) {
            double t = (double) i / chords;
            double s = 1 - t;
            double b0 = s * s * s;
            double b1 = 3 * s * s * t;
            double b2 = 3 * s * t * t;
            double b3 = t * t * t;
            lineMapped(b0 * p0x + b1 * p1x + b2 * p2x + b3 * p3x, b0 * p0y + b1 * p1y + b2 * p2y + b3 * p3y);
        }
        lineTo(toX, toY);
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
        if (rx == ry && matrix.isSimilarity() && rx * Math.hypot(matrix.a(), matrix.b()) <= FARTHEST_M) {
            circleTo(toX, toY, centreX, centreY, sweep > 0);
        } else {
            Matrix unit = matrix.with(new Matrix(cos * rx, sin * rx, -sin * ry, cos * ry, centreX, centreY));
            // |B''| of an ellipse c cos t + d sin t is at most the root of |c|^2 + |d|^2
            int chords = chords(Math.hypot(Math.hypot(unit.a(), unit.b()), Math.hypot(unit.c(), unit.d())), sweep);
            builder();
            for (int i = 1; i < chords; i++) {
                double t = from + sweep * i / chords;
                lineMapped(unit.x(Math.cos(t), Math.sin(t)), unit.y(Math.cos(t), Math.sin(t)));
            }
            lineTo(toX, toY);
        }
    }

    private void circleTo(double toX, double toY, double centreX, double centreY, boolean isPositive) {
        ContourBuilder builder = builder();
        double atX = matrix.x(toX, toY);
        double atY = matrix.y(toX, toY);
        requireNear(atX, atY);
        if (Math.hypot(atX - lastX, atY - lastY) > NOTHING_M) {
            count(1);
            edgesOfDrawing++;
            // with y downwards a positive angle turns right; a map that turns the plane over makes it left
            Side turn = isPositive == matrix.isMirror() ? Side.RIGHT : Side.LEFT;
            builder.arcToSi(atX, atY, matrix.x(centreX, centreY), matrix.y(centreX, centreY), turn);
            lastX = atX;
            lastY = atY;
        }
        x = toX;
        y = toY;
    }

    private int chords(double bend, double range) {
        double chords = Math.ceil(Math.abs(range) * Math.sqrt(bend / (8 * toleranceM)));
        if (!(chords <= MOST_CHORDS_OF_A_CURVE)) {
            throw new TextException("a curve needs more than " + MOST_CHORDS_OF_A_CURVE + " chords at this tolerance");
        }
        count((int) chords);
        return Math.max(1, (int) chords);
    }

    /** Closes what is being drawn, and goes back to its start. */
    void close() {
        ContourBuilder builder = drawing;
        if (builder != null && edgesOfDrawing > 0) {
            contours.add(builder.close());
        }
        drawing = null;
        x = startX;
        y = startY;
    }

    /** Ends what is being drawn: closed where it ends at its start, else open. */
    void endOpen() {
        ContourBuilder builder = drawing;
        if (builder == null || edgesOfDrawing == 0) {
            drawing = null;
            return;
        }
        boolean isClosed = Math.hypot(lastX - matrix.x(startX, startY), lastY - matrix.y(startX, startY)) <= NOTHING_M;
        drawing = null;
        contours.add(isClosed ? builder.close() : builder.open());
    }

    double x() {
        return x;
    }

    double y() {
        return y;
    }
}
