package dev.waterjet.part;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Builder of a contour, edge by edge. Each edge is checked as it is drawn; a refusal names the edge and its place. A builder
 * is for one thread.
 */
public final class ContourBuilder {

    private static final int MAX_REQUIREMENTS = Short.MAX_VALUE;

    /** Largest distance of a Bézier curve from its chords: half the tolerance of conditioning. */
    private static final double CURVE_M = 2.5e-6;

    private double[] x = new double[17];
    private double[] y = new double[17];
    private double[] sweep = new double[16];
    private double[] centreX = new double[16];
    private double[] centreY = new double[16];
    private short[] key = new short[16];
    private boolean[] curve = new boolean[16];
    private final List<EdgeRequirement> requirements = new ArrayList<>();
    private short current;
    private boolean isCurve;
    private int edges;
    private boolean hasArcs;
    private boolean hasCurves;

    ContourBuilder(double startX, double startY) {
        x[0] = startX + 0.0;
        y[0] = startY + 0.0;
        requirements.add(EdgeRequirement.defaults());
        requireFinite(startX, startY);
    }

    /**
     * Sets the requirement on the edges that follow.
     *
     * @param next the requirement
     * @return this builder
     */
    public ContourBuilder requirement(EdgeRequirement next) {
        Objects.requireNonNull(next, "next");
        if (next.equals(requirements.get(current))) {
            return this;
        }
        int index = requirements.indexOf(next);
        if (index < 0) {
            index = requirements.size();
            if (index == MAX_REQUIREMENTS) {
                throw fault(
                        x[edges],
                        y[edges],
                        Message.of(
                                        "too-many-requirements",
                                        "a contour has at most {limit} different requirements on its edges")
                                .with("limit", MAX_REQUIREMENTS));
            }
            requirements.add(next);
        }
        current = (short) index;
        return this;
    }

    /**
     * Marks the edges that follow as chords of a smooth curve, or not. Between two such chords there is no corner, whatever
     * their lengths and the angle between them.
     *
     * @param isChord true for chords of a curve
     * @return this builder
     */
    public ContourBuilder asCurve(boolean isChord) {
        isCurve = isChord;
        hasCurves |= isChord;
        return this;
    }

    /**
     * Draws a line.
     *
     * @param end point at which it ends
     * @return this builder
     * @throws GeometryException with code {@code zero-length-edge} if the line has no length
     */
    public ContourBuilder lineTo(Point end) {
        Objects.requireNonNull(end, "end");
        return lineToSi(end.xSi(), end.ySi());
    }

    /**
     * Draws a line, in numbers.
     *
     * @param endX x of its end in m
     * @param endY y of its end in m
     * @return this builder
     * @throws GeometryException with code {@code zero-length-edge} if the line has no length, or {@code coordinate-not-finite}
     */
    public ContourBuilder lineToSi(double endX, double endY) {
        requireFinite(endX, endY);
        if (isHere(endX, endY)) {
            throw fault(endX, endY, ContourCheck.noLength());
        }
        return add(endX, endY, 0, 0, 0);
    }

    /**
     * Draws an arc about a centre. An arc that ends where it starts is a full circle; so is one whose ends differ by no more
     * than the rounding of coordinates.
     *
     * @param end point at which it ends
     * @param centre centre of the circle, as far from the end as from the start within 10 µm
     * @param turn left for counter-clockwise, right for clockwise
     * @return this builder
     * @throws GeometryException with code {@code arc-without-radius}, or with {@code arc-radii-differ} if no circle about a
     *     point near the centre passes through both ends
     */
    public ContourBuilder arcTo(Point end, Point centre, Side turn) {
        return arcToSi(end.xSi(), end.ySi(), centre.xSi(), centre.ySi(), turn);
    }

    /**
     * Draws an arc about a centre, in numbers. See {@link #arcTo}.
     *
     * @param endX x of its end in m
     * @param endY y of its end in m
     * @param atX x of the centre in m
     * @param atY y of the centre in m
     * @param turn left for counter-clockwise, right for clockwise
     * @return this builder
     * @throws GeometryException with code {@code arc-without-radius}, {@code arc-radii-differ} or {@code coordinate-not-finite}
     */
    public ContourBuilder arcToSi(double endX, double endY, double atX, double atY, Side turn) {
        requireFinite(endX, endY);
        requireFinite(atX, atY);
        RoundedArc arc = RoundedArc.of(x[edges], y[edges], endX, endY, atX, atY, turn.sign);
        if (arc.fault() != null) {
            throw fault(x[edges], y[edges], arc.fault());
        }
        return arc.isFullCircle()
                ? add(x[edges], y[edges], arc.sweepRad(), atX, atY)
                : add(endX, endY, arc.sweepRad(), arc.centreX(), arc.centreY());
    }

    /**
     * Draws an arc through a point.
     *
     * @param middle point of the arc between its ends
     * @param end point at which it ends
     * @return this builder
     * @throws GeometryException with code {@code arc-through-line} if the three points lie on a straight line
     */
    public ContourBuilder arcThrough(Point middle, Point end) {
        Objects.requireNonNull(end, "end");
        Objects.requireNonNull(middle, "middle");
        double ax = middle.xSi() - x[edges];
        double ay = middle.ySi() - y[edges];
        double bx = end.xSi() - x[edges];
        double by = end.ySi() - y[edges];
        double cross = ax * by - ay * bx;
        double a2 = ax * ax + ay * ay;
        double b2 = bx * bx + by * by;
        if (Math.abs(cross) <= 1e-12 * Math.sqrt(a2 * b2)) {
            throw fault(
                    x[edges],
                    y[edges],
                    Message.of("arc-through-line", "no arc passes through three points of a straight line"));
        }
        double atX = x[edges] + (a2 * by - b2 * ay) / (2 * cross);
        double atY = y[edges] + (b2 * ax - a2 * bx) / (2 * cross);
        return arcToSi(end.xSi(), end.ySi(), atX, atY, cross > 0 ? Side.LEFT : Side.RIGHT);
    }

    /**
     * Draws a cubic Bézier curve, as chords that stay within 2.5 µm of it and are marked as a curve. Quadratic curves and
     * segments of splines are of this form.
     *
     * @param first control point towards which the curve leaves
     * @param second control point from which it reaches its end
     * @param end point at which it ends
     * @return this builder
     * @throws GeometryException with code {@code zero-length-edge} if all points coincide
     */
    public ContourBuilder splineTo(Point first, Point second, Point end) {
        Objects.requireNonNull(end, "end");
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
        double px = x[edges];
        double py = y[edges];
        double bend = Math.max(
                Math.hypot(bend(px, first.xSi(), second.xSi()), bend(py, first.ySi(), second.ySi())),
                Math.hypot(bend(first.xSi(), second.xSi(), end.xSi()), bend(first.ySi(), second.ySi(), end.ySi())));
        // the second derivative is at most six times that, and a chord over dt leaves the curve by an eighth of it dt^2
        int chords = 1 + (int) Math.sqrt(6 * bend / (8 * CURVE_M));
        boolean before = isCurve;
        asCurve(true);
        for (int i = 1; i <= chords; i++) {
            double t = (double) i / chords;
            double atX = bezier(px, first.xSi(), second.xSi(), end.xSi(), t);
            double atY = bezier(py, first.ySi(), second.ySi(), end.ySi(), t);
            if (i == chords) {
                lineTo(end);
            } else if (!isHere(atX, atY)) {
                lineToSi(atX, atY);
            }
        }
        isCurve = before;
        return this;
    }

    private static double bend(double a, double b, double c) {
        return a - 2 * b + c;
    }

    private static double bezier(double a, double b, double c, double d, double t) {
        double s = 1 - t;
        return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
    }

    /**
     * Draws chords through samples of a smooth curve, marked as a curve.
     *
     * @param points the samples in order, without the point at which the curve starts
     * @return this builder
     * @throws GeometryException with code {@code zero-length-edge} if two neighbours coincide
     */
    public ContourBuilder smoothThrough(List<Point> points) {
        Objects.requireNonNull(points, "points");
        boolean before = isCurve;
        asCurve(true);
        points.forEach(this::lineTo);
        isCurve = before;
        return this;
    }

    /** Draws the line or arc of a cursor to a point near its end. Its sweep is known: a short arc is no full circle. */
    ContourBuilder edgeTo(EdgeCursor edge, double toX, double toY) {
        double chord = Math.hypot(toX - x[edges], toY - y[edges]);
        if (edge.isArc() && Math.abs(edge.sweep) < Math.PI && chord <= RoundedArc.ROUNDING_M) {
            if (isHere(toX, toY)) {
                throw fault(toX, toY, ContourCheck.noLength());
            }
            return add(toX, toY, edge.sweep, edge.cx, edge.cy);
        }
        return edge.isArc()
                ? arcToSi(toX, toY, edge.cx, edge.cy, edge.sweep > 0 ? Side.LEFT : Side.RIGHT)
                : lineToSi(toX, toY);
    }

    /**
     * Draws the line or arc of a cursor; it starts where the last edge ended.
     *
     * @param edge the cursor
     * @return this builder
     * @throws GeometryException as for lines and arcs, and with code {@code zero-length-edge} for an arc of less than half a turn
     *     without length
     */
    public ContourBuilder edgeTo(EdgeCursor edge) {
        return edgeTo(edge, edge.x1, edge.y1);
    }

    /**
     * Returns the contour as a path with two ends.
     *
     * @return the open contour
     * @throws GeometryException with code {@code empty-path} if nothing was drawn
     */
    public Contour open() {
        requireEdges();
        return build(false);
    }

    /**
     * Returns the contour, closed: by a line back to the start where the last edge does not end there.
     *
     * @return the closed contour
     * @throws GeometryException with code {@code empty-path}, or {@code contour-without-area} if fewer than two lines or one arc
     *     were drawn
     */
    public Contour close() {
        requireEdges();
        if (Math.hypot(x[edges] - x[0], y[edges] - y[0]) > EdgeArrays.TOUCH_M) {
            add(x[0], y[0], 0, 0, 0);
        } else {
            x[edges] = x[0];
            y[edges] = y[0];
        }
        if (!hasArcs && edges < 3) {
            throw fault(x[0], y[0], ContourCheck.noArea());
        }
        return build(true);
    }

    /**
     * Returns the contour, closed, if the last edge ends near the start of the first.
     *
     * @param gap largest distance between end and start that counts as closed; a line fills it
     * @return the closed contour
     * @throws GeometryException with code {@code open-contour} if the gap is wider
     */
    public Contour closeWithin(Quantity<Length> gap) {
        Objects.requireNonNull(gap, "gap");
        double apart = Math.hypot(x[edges] - x[0], y[edges] - y[0]);
        if (apart > Kind.LENGTH.si(gap)) {
            throw new GeometryException(Math.max(0, edges - 1), x[edges], y[edges], ContourCheck.open(apart));
        }
        return close();
    }

    private void requireEdges() {
        if (edges == 0) {
            throw fault(x[0], y[0], Message.of("empty-path", "the path has no edges"));
        }
    }

    private Contour build(boolean isClosed) {
        int nodes = edges + 1;
        EdgeArrays arrays = new EdgeArrays(
                Arrays.copyOf(x, nodes),
                Arrays.copyOf(y, nodes),
                hasArcs ? Arrays.copyOf(sweep, edges) : EdgeArrays.noArcs(),
                hasArcs ? Arrays.copyOf(centreX, edges) : EdgeArrays.noArcs(),
                hasArcs ? Arrays.copyOf(centreY, edges) : EdgeArrays.noArcs(),
                Arrays.copyOf(key, edges),
                hasCurves ? Arrays.copyOf(curve, edges) : EdgeArrays.noCurves(),
                isClosed);
        return new Contour(arrays, requirements, "");
    }

    private ContourBuilder add(double endX, double endY, double sweepRad, double atX, double atY) {
        if (edges == key.length) {
            grow(Math.max(edges + 1, (int) Math.min(Integer.MAX_VALUE - 16L, edges * 2L)));
        }
        sweep[edges] = sweepRad;
        centreX[edges] = atX + 0.0;
        centreY[edges] = atY + 0.0;
        key[edges] = current;
        curve[edges] = isCurve;
        hasArcs |= sweepRad != 0;
        edges++;
        x[edges] = endX + 0.0;
        y[edges] = endY + 0.0;
        return this;
    }

    private void grow(int capacity) {
        x = Arrays.copyOf(x, capacity + 1);
        y = Arrays.copyOf(y, capacity + 1);
        sweep = Arrays.copyOf(sweep, capacity);
        centreX = Arrays.copyOf(centreX, capacity);
        centreY = Arrays.copyOf(centreY, capacity);
        key = Arrays.copyOf(key, capacity);
        curve = Arrays.copyOf(curve, capacity);
    }

    private boolean isHere(double endX, double endY) {
        return Math.hypot(endX - x[edges], endY - y[edges]) <= EdgeArrays.TOUCH_M;
    }

    private void requireFinite(double pointX, double pointY) {
        if (!Double.isFinite(pointX) || !Double.isFinite(pointY)) {
            throw fault(pointX, pointY, ContourCheck.notFinite());
        }
    }

    private GeometryException fault(double atX, double atY, Message message) {
        return new GeometryException(edges, atX, atY, message);
    }
}
