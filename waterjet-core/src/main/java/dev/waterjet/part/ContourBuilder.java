package dev.waterjet.part;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Draws a contour edge by edge. Each edge is checked as it is drawn; a fault is told with the edge and its place. A
 * builder is for one thread.
 */
public final class ContourBuilder {

    private static final int MOST_FINISHES = Short.MAX_VALUE;

    private double[] x = new double[16];
    private double[] y = new double[16];
    private double[] sweep = new double[16];
    private double[] centreX = new double[16];
    private double[] centreY = new double[16];
    private short[] finish = new short[16];
    private final List<EdgeRequirement> finishes = new ArrayList<>();
    private short current;
    private int edges;
    private boolean hasArcs;

    ContourBuilder(double startX, double startY) {
        x[0] = startX;
        y[0] = startY;
        finishes.add(EdgeRequirement.defaults());
        requireFinite(startX, startY);
    }

    /**
     * The finish of the edges that follow.
     *
     * @param next what is asked of them
     * @return this builder
     */
    public ContourBuilder requirement(EdgeRequirement next) {
        int index = finishes.indexOf(next);
        if (index < 0) {
            index = finishes.size();
            if (index == MOST_FINISHES) {
                throw fault(x[edges], y[edges], "a contour has at most " + MOST_FINISHES + " different finishes");
            }
            finishes.add(next);
        }
        current = (short) index;
        return this;
    }

    /**
     * A straight line.
     *
     * @param end where it ends
     * @return this builder
     * @throws GeometryException if the line has no length
     */
    public ContourBuilder lineTo(Point end) {
        return lineToSi(end.xSi(), end.ySi());
    }

    /**
     * A straight line, in numbers.
     *
     * @param endX x of its end in m
     * @param endY y of its end in m
     * @return this builder
     * @throws GeometryException if the line has no length or an end is no number
     */
    public ContourBuilder lineToSi(double endX, double endY) {
        requireFinite(endX, endY);
        if (isHere(endX, endY)) {
            throw fault(endX, endY, "the line has no length; the point is given twice");
        }
        return add(endX, endY, 0, 0, 0);
    }

    /**
     * An arc about a centre. An arc that ends where it starts is a full circle.
     *
     * @param end where it ends
     * @param centre centre of the circle, as far from the end as from the start within 10 um
     * @param turn left for counter-clockwise, right for clockwise
     * @return this builder
     * @throws GeometryException if the arc has no radius, or start and end lie at different distances from the centre
     */
    public ContourBuilder arcTo(Point end, Point centre, Side turn) {
        return arcToSi(end.xSi(), end.ySi(), centre.xSi(), centre.ySi(), turn);
    }

    /**
     * An arc about a centre, in numbers. An arc that ends where it starts is a full circle.
     *
     * @param endX x of its end in m
     * @param endY y of its end in m
     * @param atX x of the centre in m
     * @param atY y of the centre in m
     * @param turn left for counter-clockwise, right for clockwise
     * @return this builder
     * @throws GeometryException if the arc has no radius, or start and end lie at different distances from the centre
     */
    public ContourBuilder arcToSi(double endX, double endY, double atX, double atY, Side turn) {
        requireFinite(endX, endY);
        requireFinite(atX, atY);
        double startX = x[edges];
        double startY = y[edges];
        double atStart = Math.hypot(startX - atX, startY - atY);
        double atEnd = Math.hypot(endX - atX, endY - atY);
        if (Math.min(atStart, atEnd) <= EdgeKernel.TOUCH_M) {
            throw fault(startX, startY, "the arc has no radius");
        }
        if (Math.abs(atStart - atEnd) > EdgeKernel.ROUNDING_M) {
            throw fault(
                    startX,
                    startY,
                    "the arc starts " + told(atStart) + " from its centre and ends " + told(atEnd)
                            + " from it; the two must be the same within 0.01 mm");
        }
        if (isHere(endX, endY)) {
            return add(startX, startY, turn.sign * 2 * Math.PI, atX, atY);
        }
        // move the centre onto the line of equal distances, so that both ends lie on one circle
        double chordX = endX - startX;
        double chordY = endY - startY;
        double chord2 = chordX * chordX + chordY * chordY;
        double off = ((atX - (startX + endX) / 2) * chordX + (atY - (startY + endY) / 2) * chordY) / chord2;
        double onX = atX - off * chordX;
        double onY = atY - off * chordY;
        double cross = (startX - onX) * (endY - onY) - (startY - onY) * (endX - onX);
        double dot = (startX - onX) * (endX - onX) + (startY - onY) * (endY - onY);
        double angle = Math.atan2(cross, dot) * turn.sign;
        return add(endX, endY, turn.sign * (angle > 0 ? angle : angle + 2 * Math.PI), onX, onY);
    }

    /**
     * An arc through a point.
     *
     * @param middle a point of the arc between its ends
     * @param end where it ends
     * @return this builder
     * @throws GeometryException if the three points lie on a straight line
     */
    public ContourBuilder arcThrough(Point middle, Point end) {
        double ax = middle.xSi() - x[edges];
        double ay = middle.ySi() - y[edges];
        double bx = end.xSi() - x[edges];
        double by = end.ySi() - y[edges];
        double cross = ax * by - ay * bx;
        double a2 = ax * ax + ay * ay;
        double b2 = bx * bx + by * by;
        if (Math.abs(cross) <= 1e-12 * Math.sqrt(a2 * b2)) {
            throw fault(x[edges], y[edges], "an arc cannot pass three points of one straight line");
        }
        double atX = x[edges] + (a2 * by - b2 * ay) / (2 * cross);
        double atY = y[edges] + (b2 * ax - a2 * bx) / (2 * cross);
        return arcToSi(end.xSi(), end.ySi(), atX, atY, cross > 0 ? Side.LEFT : Side.RIGHT);
    }

    /**
     * The contour, as a path with two ends.
     *
     * @return the open contour
     * @throws GeometryException if nothing was drawn
     */
    public Contour open() {
        if (edges == 0) {
            throw fault(x[0], y[0], "the path has no edges");
        }
        return build(false);
    }

    /**
     * The contour, closed: by a line back to the start where the last edge does not end there.
     *
     * @return the closed contour
     * @throws GeometryException if fewer than two lines or one arc were drawn
     */
    public Contour close() {
        if (edges == 0) {
            throw fault(x[0], y[0], "the path has no edges");
        }
        if (Math.hypot(x[edges] - x[0], y[edges] - y[0]) > EdgeKernel.TOUCH_M) {
            add(x[0], y[0], 0, 0, 0);
        } else {
            x[edges] = x[0];
            y[edges] = y[0];
        }
        if (!hasArcs && edges < 3) {
            throw fault(x[0], y[0], "the closed contour has no area");
        }
        return build(true);
    }

    /**
     * The contour, closed, if the last edge ends where the first started.
     *
     * @param gap greatest distance between start and end that still counts as closed, filled by a line
     * @return the closed contour
     * @throws GeometryException if the gap is wider
     */
    public Contour closeWithin(Quantity<Length> gap) {
        double apart = Math.hypot(x[edges] - x[0], y[edges] - y[0]);
        if (apart > Kind.LENGTH.si(gap)) {
            throw new GeometryException(
                    Math.max(0, edges - 1),
                    x[edges],
                    y[edges],
                    "the contour is open: its end lies " + told(apart) + " from its start " + Point.told(x[0], y[0]));
        }
        return close();
    }

    private Contour build(boolean isClosed) {
        int nodes = edges + 1;
        return new Contour(
                Arrays.copyOf(x, nodes),
                Arrays.copyOf(y, nodes),
                hasArcs ? Arrays.copyOf(sweep, edges) : new double[0],
                hasArcs ? Arrays.copyOf(centreX, edges) : new double[0],
                hasArcs ? Arrays.copyOf(centreY, edges) : new double[0],
                Arrays.copyOf(finish, edges),
                finishes,
                isClosed);
    }

    private ContourBuilder add(double endX, double endY, double sweepRad, double atX, double atY) {
        if (edges == finish.length) {
            int room = Math.max(edges + 1, (int) Math.min(Integer.MAX_VALUE - 16L, edges * 2L));
            x = Arrays.copyOf(x, room + 1);
            y = Arrays.copyOf(y, room + 1);
            sweep = Arrays.copyOf(sweep, room);
            centreX = Arrays.copyOf(centreX, room);
            centreY = Arrays.copyOf(centreY, room);
            finish = Arrays.copyOf(finish, room);
        }
        if (edges + 1 == x.length) {
            x = Arrays.copyOf(x, x.length + 1);
            y = Arrays.copyOf(y, y.length + 1);
        }
        sweep[edges] = sweepRad;
        centreX[edges] = atX;
        centreY[edges] = atY;
        finish[edges] = current;
        hasArcs |= sweepRad != 0;
        edges++;
        x[edges] = endX;
        y[edges] = endY;
        return this;
    }

    private boolean isHere(double endX, double endY) {
        return Math.hypot(endX - x[edges], endY - y[edges]) <= EdgeKernel.TOUCH_M;
    }

    private void requireFinite(double pointX, double pointY) {
        if (!Double.isFinite(pointX) || !Double.isFinite(pointY)) {
            throw fault(pointX, pointY, "a coordinate is not a finite number");
        }
    }

    private GeometryException fault(double atX, double atY, String text) {
        return new GeometryException(edges, atX, atY, text);
    }

    public static String told(double lengthM) {
        return QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(lengthM), Units.MILLIMETRE, 6);
    }
}
