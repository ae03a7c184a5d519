package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.EdgeRequirement;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;

/**
 * The line that the jet follows: straight edges and arcs in one go, closed or open, each with its {@link EdgeRequirement}. A
 * curve of another kind arrives as a polyline.
 *
 * <p>A contour holds primitive arrays and no objects for each edge; ten million edges are no trouble. It may cross
 * itself: {@link #requireSimple()} asks.
 */
public final class Contour implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    public final double[] xM;
    public final double[] yM;
    public final double[] sweepRad;
    final double[] centreXM;
    final double[] centreYM;
    public final short[] finishIndex;
    public final List<EdgeRequirement> finishes;
    private final boolean isClosed;

    Contour(
            double[] xM,
            double[] yM,
            double[] sweepRad,
            double[] centreXM,
            double[] centreYM,
            short[] finishIndex,
            List<EdgeRequirement> finishes,
            boolean isClosed) {
        this.xM = xM;
        this.yM = yM;
        this.sweepRad = sweepRad;
        this.centreXM = centreXM;
        this.centreYM = centreYM;
        this.finishIndex = finishIndex;
        this.finishes = List.copyOf(finishes);
        this.isClosed = isClosed;
    }

    /**
     * Starts a contour.
     *
     * @param start where it starts
     * @return a builder that draws on from there
     */
    public static ContourBuilder from(Point start) {
        return new ContourBuilder(start.xSi(), start.ySi());
    }

    /**
     * Starts a contour, in numbers.
     *
     * @param xM x of the start in m
     * @param yM y of the start in m
     * @return a builder that draws on from there
     * @throws GeometryException if a coordinate is no number
     */
    public static ContourBuilder fromSi(double xM, double yM) {
        return new ContourBuilder(xM, yM);
    }

    /**
     * A full circle, counter-clockwise from its rightmost point.
     *
     * @param centre its centre
     * @param radius its radius, above 0
     * @param finish what is asked of its face
     * @return the closed contour
     */
    public static Contour circle(Point centre, Quantity<Length> radius, EdgeRequirement finish) {
        double r = Require.positive("radius of a circle", Kind.LENGTH.si(radius), Units.MILLIMETRE);
        double startX = centre.xSi() + r;
        return fromSi(startX, centre.ySi())
                .requirement(finish)
                .arcToSi(startX, centre.ySi(), centre.xSi(), centre.ySi(), Side.LEFT)
                .close();
    }

    /**
     * A rectangle along the axes, counter-clockwise from its first corner.
     *
     * @param corner the corner of least x and y
     * @param opposite the corner of greatest x and y
     * @param finish what is asked of its faces
     * @return the closed contour
     */
    public static Contour rectangle(Point corner, Point opposite, EdgeRequirement finish) {
        return from(corner)
                .requirement(finish)
                .lineToSi(opposite.xSi(), corner.ySi())
                .lineTo(opposite)
                .lineToSi(corner.xSi(), opposite.ySi())
                .close();
    }

    /**
     * An open polyline through many points, such as samples of a spline.
     *
     * @param xM x of each point in m; copied
     * @param yM y of each point in m; copied
     * @param finish what is asked of its edges
     * @return the open contour
     * @throws GeometryException if there are fewer than two points, two neighbours coincide or a coordinate is no number
     */
    public static Contour polylineSi(double[] xM, double[] yM, EdgeRequirement finish) {
        Require.atLeast("number of x in a polyline", xM.length, 2, Units.ONE, "it needs two points");
        Require.between("number of y in a polyline", yM.length, xM.length, xM.length, Units.ONE, "as many as x");
        double[] x = xM.clone();
        double[] y = yM.clone();
        for (int i = 0; i < x.length; i++) {
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
                throw new GeometryException(Math.max(0, i - 1), x[i], y[i], "a coordinate is not a finite number");
            }
            double touch = EdgeKernel.TOUCH_M;
            if (i > 0 && Math.abs(x[i] - x[i - 1]) <= touch && Math.abs(y[i] - y[i - 1]) <= touch) {
                throw new GeometryException(i - 1, x[i], y[i], "the line has no length; the point is given twice");
            }
        }
        double[] none = new double[0];
        return new Contour(x, y, none, none, none, new short[x.length - 1], List.of(finish), false);
    }

    /**
     * How many edges it has.
     *
     * @return the count, 1 or more
     */
    public int size() {
        return finishIndex.length;
    }

    /**
     * Whether it ends where it starts.
     *
     * @return true if closed
     */
    public boolean isClosed() {
        return isClosed;
    }

    /**
     * One edge.
     *
     * @param index index from 0
     * @return the edge
     */
    public Edge edge(int index) {
        Objects.checkIndex(index, size());
        EdgeCursor shape = new EdgeCursor();
        load(index, shape);
        return Edge.of(shape, requirement(index));
    }

    /**
     * What is asked of an edge.
     *
     * @param index index from 0
     * @return its finish
     */
    public EdgeRequirement requirement(int index) {
        Objects.checkIndex(index, size());
        return finishes.get(finishIndex[index]);
    }

    /**
     * Where it starts.
     *
     * @return the start
     */
    public Point start() {
        return Point.ofSi(xM[0], yM[0]);
    }

    /**
     * Where it ends.
     *
     * @return the end; the start if it is closed
     */
    public Point end() {
        return Point.ofSi(xM[size()], yM[size()]);
    }

    /**
     * Length along all edges.
     *
     * @return the length, in m
     */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(ContourGeometry.length(this));
    }

    /**
     * The smallest rectangle along the axes that holds it.
     *
     * @return the box
     */
    public Box box() {
        return ContourGeometry.box(this);
    }

    /**
     * The area that it encloses, positive where it runs counter-clockwise. An open contour is closed by a line.
     *
     * @return the area, in m2
     */
    public Quantity<Area> signedArea() {
        return Kind.AREA.of(ContourGeometry.signedArea(this));
    }

    /**
     * The side on which the enclosed area lies: left where the contour runs counter-clockwise.
     *
     * @return the side
     */
    public Side enclosedSide() {
        return ContourGeometry.signedArea(this) >= 0 ? Side.LEFT : Side.RIGHT;
    }

    /**
     * Whether a point lies within the enclosed area.
     *
     * @param point the point
     * @return true if it does; on the contour itself either may come out
     */
    public boolean isAround(Point point) {
        return ContourGeometry.winding(this, point.xSi(), point.ySi()) != 0;
    }

    /**
     * Smallest radius of the corners and arcs that are hollow seen from the part: the jet must fit in there. Corners
     * between lines count as radius zero if the path turns by more than 10 degrees; less is taken for the samples of a
     * curve, whose radius follows from the neighbouring edges.
     *
     * @param part the side on which the part lies
     * @return the radius, in m; empty if nothing is hollow
     */
    public Optional<Quantity<Length>> minimumInnerRadius(Side part) {
        double radius = ContourGeometry.minimumInnerRadius(this, part.sign);
        return radius < Double.POSITIVE_INFINITY ? Optional.of(Kind.LENGTH.of(radius)) : Optional.empty();
    }

    /**
     * Shortest distance to another contour; zero where they cross or touch. Boxes are sorted into a tree, so that the
     * work grows about as n log n.
     *
     * @param other the other contour
     * @return the distance, in m
     */
    public Quantity<Length> clearance(Contour other) {
        return Kind.LENGTH.of(EdgeTree.of(this).clearance(EdgeTree.of(other)));
    }

    /**
     * Shortest distance of a point from the line itself.
     *
     * @param point the point
     * @return the distance, in m
     */
    public Quantity<Length> clearance(Point point) {
        return Kind.LENGTH.of(ContourGeometry.distance(this, point.xSi(), point.ySi()));
    }

    /**
     * Asks that the contour neither crosses, touches nor retraces itself.
     *
     * @return this contour
     * @throws GeometryException if it does, with both edges and the place
     */
    public Contour requireSimple() {
        SelfCrossing.refuse(this);
        return this;
    }

    /**
     * Asks that the contour is closed.
     *
     * @return this contour
     * @throws GeometryException if it is open, with the place of its end
     */
    public Contour requireClosed() {
        if (!isClosed) {
            int last = size() - 1;
            throw new GeometryException(
                    last,
                    xM[size()],
                    yM[size()],
                    "the contour is open: it ends "
                            + ContourBuilder.told(Math.hypot(xM[size()] - xM[0], yM[size()] - yM[0]))
                            + " from its start " + Point.told(xM[0], yM[0]));
        }
        return this;
    }

    /**
     * The same line, cut the other way.
     *
     * @return the contour from end to start
     */
    public Contour reversed() {
        return ContourGeometry.reversed(this);
    }

    /**
     * The same line elsewhere on the sheet.
     *
     * @param by where the origin comes to lie
     * @return the contour, moved
     */
    public Contour translatedBy(Point by) {
        return ContourGeometry.moved(this, by.xSi(), by.ySi());
    }

    /**
     * The same line with one finish for all edges.
     *
     * @param finish what is asked of every edge
     * @return the contour with that finish
     */
    public Contour withRequirement(EdgeRequirement finish) {
        return new Contour(xM, yM, sweepRad, centreXM, centreYM, new short[size()], List.of(finish), isClosed);
    }

    /**
     * A closed contour that starts elsewhere on its line, in the same direction.
     *
     * @param distance distance from the present start along the contour, from 0 to its length
     * @return the contour; the edge is cut in two where the new start lies within it
     * @throws GeometryException if the contour is open
     */
    public Contour startingAt(Quantity<Length> distance) {
        requireClosed();
        return ContourGeometry.startingAt(this, Kind.LENGTH.si(distance));
    }

    public void load(int edge, EdgeCursor shape) {
        if (sweepRad.length == 0 || sweepRad[edge] == 0) {
            shape.line(xM[edge], yM[edge], xM[edge + 1], yM[edge + 1]);
        } else {
            shape.arc(xM[edge], yM[edge], xM[edge + 1], yM[edge + 1], centreXM[edge], centreYM[edge], sweepRad[edge]);
        }
    }

    @Override
    public Map<String, Object> describe() {
        List<Edge> edges = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            edges.add(edge(i));
        }
        return Description.of("contour")
                .put("closed", isClosed)
                .put("edges", edges)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Contour that
                && isClosed == that.isClosed
                && Arrays.equals(xM, that.xM)
                && Arrays.equals(yM, that.yM)
                && Arrays.equals(sweepRad, that.sweepRad)
                && Arrays.equals(centreXM, that.centreXM)
                && Arrays.equals(centreYM, that.centreYM)
                && hasSameFinishes(that);
    }

    private boolean hasSameFinishes(Contour that) {
        for (int i = 0; i < size(); i++) {
            if (!requirement(i).equals(that.requirement(i))) {
                return false;
            }
        }
        return true;
    }

    @Override
    public int hashCode() {
        int hash = Boolean.hashCode(isClosed);
        for (double[] numbers : List.of(xM, yM, sweepRad)) {
            hash = 31 * hash + Arrays.hashCode(numbers);
        }
        for (int i = 0; i < size(); i++) {
            hash = 31 * hash + requirement(i).hashCode();
        }
        return hash;
    }

    @Override
    public String toString() {
        return (isClosed ? "closed" : "open") + " contour of " + size() + (size() == 1 ? " edge" : " edges") + " from "
                + start();
    }
}
