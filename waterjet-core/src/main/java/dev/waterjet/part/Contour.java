package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.EdgeRequirement;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;

/**
 * Contour of a part or path of the jet: lines and arcs end to end, closed or open, each with its
 * {@link EdgeRequirement}.
 *
 * <pre>{@code
 * Contour slot = Contour.from(Point.millimetres(0, 0))
 *         .lineTo(Point.millimetres(20, 0))
 *         .arcTo(Point.millimetres(20, 6), Point.millimetres(20, 3), Side.LEFT)
 *         .lineTo(Point.millimetres(0, 6))
 *         .arcTo(Point.millimetres(0, 0), Point.millimetres(0, 3), Side.LEFT)
 *         .close()
 *         .named("slot");
 * }</pre>
 *
 * <p>A contour holds primitive arrays and no object for each edge, so that millions of edges need no more memory than their
 * numbers. It may cross itself; {@link #requireSimple()} refuses that.
 */
public final class Contour implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    final transient EdgeArrays edges;
    final transient List<EdgeRequirement> requirements;
    private final transient String name;

    Contour(EdgeArrays edges, List<EdgeRequirement> requirements, String name) {
        this.edges = edges;
        this.requirements = List.copyOf(requirements);
        this.name = Objects.requireNonNull(name, "name");
    }

    /**
     * Starts a contour.
     *
     * @param start point at which it starts
     * @return a builder that draws on from there
     */
    public static ContourBuilder from(Point start) {
        Objects.requireNonNull(start, "start");
        return new ContourBuilder(start.xSi(), start.ySi());
    }

    /**
     * Starts a contour, in numbers.
     *
     * @param xM x of the start in m
     * @param yM y of the start in m
     * @return a builder that draws on from there
     * @throws GeometryException if a coordinate is not finite
     */
    public static ContourBuilder fromSi(double xM, double yM) {
        return new ContourBuilder(xM, yM);
    }

    /**
     * {@return a full circle, closed, counter-clockwise from its rightmost point}
     *
     * @param centre its centre
     * @param radius its radius, above 0
     * @param requirement requirement on its cut surface
     */
    public static Contour circle(Point centre, Quantity<Length> radius, EdgeRequirement requirement) {
        Objects.requireNonNull(centre, "centre");
        Objects.requireNonNull(radius, "radius");
        Objects.requireNonNull(requirement, "requirement");
        double r = Require.positive("radius of a circle", Kind.LENGTH.si(radius), Units.MILLIMETRE);
        double startX = centre.xSi() + r;
        return fromSi(startX, centre.ySi())
                .requirement(requirement)
                .arcToSi(startX, centre.ySi(), centre.xSi(), centre.ySi(), Side.LEFT)
                .close();
    }

    /**
     * {@return a rectangle along the axes, closed, counter-clockwise from its first corner}
     *
     * @param corner corner of minimum x and y
     * @param opposite corner of maximum x and y
     * @param requirement requirement on its cut surfaces
     */
    public static Contour rectangle(Point corner, Point opposite, EdgeRequirement requirement) {
        Objects.requireNonNull(corner, "corner");
        Objects.requireNonNull(opposite, "opposite");
        Objects.requireNonNull(requirement, "requirement");
        return from(corner)
                .requirement(requirement)
                .lineToSi(opposite.xSi(), corner.ySi())
                .lineTo(opposite)
                .lineToSi(corner.xSi(), opposite.ySi())
                .close();
    }

    /**
     * Returns an open polyline through many points, such as samples of a curve.
     *
     * @param xM x of each point in m; copied
     * @param yM y of each point in m; copied
     * @param requirement requirement on its edges
     * @return the open contour
     * @throws GeometryException if two neighbours coincide or a coordinate is not finite
     */
    public static Contour polylineSi(double[] xM, double[] yM, EdgeRequirement requirement) {
        Objects.requireNonNull(requirement, "requirement");
        Objects.requireNonNull(xM, "xM");
        Objects.requireNonNull(yM, "yM");
        Require.atLeast("number of x in a polyline", xM.length, 2, Units.ONE, "it needs two points");
        Require.between("number of y in a polyline", yM.length, xM.length, xM.length, Units.ONE, "as many as x");
        EdgeArrays edges = EdgeArrays.ofLines(xM.clone(), yM.clone());
        ContourCheck.requireLines(edges);
        return new Contour(edges, List.of(requirement), "");
    }

    /**
     * {@return this contour with a name, by which messages call it}
     *
     * @param label the name, such as {@code cable duct}; empty for none
     */
    public Contour named(String label) {
        Objects.requireNonNull(label, "label");
        return new Contour(edges, requirements, label);
    }

    /** {@return the name; empty if it has none} */
    public String name() {
        return name;
    }

    /** {@return the name in quotes for people, or "contour" if it has none} */
    public String label() {
        return name.isEmpty() ? "contour" : "\"" + name + "\"";
    }

    /** {@return the number of edges, 1 or more} */
    public int size() {
        return edges.size();
    }

    /** {@return whether it ends where it starts} */
    public boolean isClosed() {
        return edges.isClosed();
    }

    /**
     * {@return one edge}
     *
     * @param index index from 0
     */
    public Edge edge(int index) {
        EdgeCursor shape = new EdgeCursor();
        load(Require.index("edge", index, size()), shape);
        return Edge.of(shape, requirement(index));
    }

    /**
     * {@return whether an edge is an arc}
     *
     * @param index index of the edge from 0
     */
    public boolean isArc(int index) {
        return edges.sweepOf(Require.index("edge", index, size())) != 0;
    }

    /**
     * {@return the requirement on an edge}
     *
     * @param index index of the edge from 0
     */
    public EdgeRequirement requirement(int index) {
        return requirements.get(requirementIndex(index));
    }

    /** {@return the different requirements on its edges} */
    public List<EdgeRequirement> requirements() {
        return requirements;
    }

    /**
     * {@return the place of the requirement on an edge in {@link #requirements()}}
     *
     * @param index index of the edge from 0
     */
    public int requirementIndex(int index) {
        return edges.key()[Require.index("edge", index, size())];
    }

    /**
     * {@return whether an edge is marked as a chord of a smooth curve, so that no turn at its ends is a corner}
     *
     * @param index index of the edge from 0
     */
    public boolean isCurve(int index) {
        return edges.isCurve(Require.index("edge", index, size()));
    }

    /** {@return the point at which it starts} */
    public Point start() {
        return Point.ofSi(edges.x()[0], edges.y()[0]);
    }

    /** {@return the point at which it ends; the start if it is closed} */
    public Point end() {
        return Point.ofSi(edges.x()[size()], edges.y()[size()]);
    }

    /**
     * {@return x of a vertex, in m}
     *
     * @param vertex index from 0 to {@link #size()}: an edge goes from the vertex of its index to the next
     */
    public double xSi(int vertex) {
        return edges.x()[Require.index("vertex", vertex, size() + 1)];
    }

    /**
     * {@return y of a vertex, in m}
     *
     * @param vertex index from 0 to {@link #size()}
     */
    public double ySi(int vertex) {
        return edges.y()[Require.index("vertex", vertex, size() + 1)];
    }

    /** {@return the length along all edges, in m} */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(lengthSi());
    }

    /** {@return the length along all edges, in m} */
    public double lengthSi() {
        return ContourGeometry.length(this);
    }

    /**
     * {@return the place at a distance along the contour: edge and share of its length}
     *
     * @param distanceM distance from the start, in m; of a closed contour any number of turns, else from 0 to the length
     */
    public ContourPlace placeAtSi(double distanceM) {
        return ContourGeometry.locate(this, distanceM);
    }

    /** {@return the smallest rectangle along the axes that holds it} */
    public Box box() {
        return ContourGeometry.box(this);
    }

    /**
     * Returns the enclosed area, positive where the contour runs counter-clockwise. An open contour is closed by a line.
     *
     * @return the area, in m2
     */
    public Quantity<Area> signedArea() {
        return Kind.AREA.of(ContourGeometry.signedArea(this));
    }

    /** {@return the side on which the enclosed area lies: left where the contour runs counter-clockwise} */
    public Side enclosedSide() {
        return ContourGeometry.signedArea(this) >= 0 ? Side.LEFT : Side.RIGHT;
    }

    /**
     * {@return whether a point lies within the enclosed area; on the contour itself either is possible}
     *
     * @param point the point
     */
    public boolean isAround(Point point) {
        Objects.requireNonNull(point, "point");
        return ContourGeometry.winding(this, point.xSi(), point.ySi()) != 0;
    }

    /**
     * Returns the smallest radius of the corners and arcs that are hollow seen from the part: the jet must fit in there. The
     * contour is conditioned first ({@link ContourConditioner}), so that chords of a curve give its radius; a corner counts as
     * radius zero.
     *
     * @param part side on which the part lies
     * @return the radius, in m; empty if nothing is hollow
     */
    public Optional<Quantity<Length>> minimumInnerRadius(Side part) {
        Objects.requireNonNull(part, "part");
        double radius = ContourGeometry.minimumInnerRadius(this, part.sign);
        return radius < Double.POSITIVE_INFINITY ? Optional.of(Kind.LENGTH.of(radius)) : Optional.empty();
    }

    /**
     * Returns the shortest distance to another contour. The work grows about as n log n.
     *
     * @param other the other contour
     * @return the distance, in m; zero where they cross or touch
     */
    public Quantity<Length> clearance(Contour other) {
        Objects.requireNonNull(other, "other");
        return Kind.LENGTH.of(EdgeTree.of(this).clearance(EdgeTree.of(other)));
    }

    /**
     * {@return the shortest distance of a point from the contour line, in m}
     *
     * @param point the point
     */
    public Quantity<Length> clearance(Point point) {
        Objects.requireNonNull(point, "point");
        return Kind.LENGTH.of(ContourGeometry.distance(this, point.xSi(), point.ySi()));
    }

    /**
     * Refuses a contour that crosses, touches or retraces itself.
     *
     * @return this contour
     * @throws GeometryException with code {@code crosses-itself}, {@code touches-itself} or {@code retraces-itself}, both edges
     *     and the place
     */
    public Contour requireSimple() {
        SelfCrossing.refuse(this);
        return this;
    }

    /**
     * Refuses an open contour.
     *
     * @return this contour
     * @throws GeometryException with code {@code open-contour} and the place of its end
     */
    public Contour requireClosed() {
        ContourCheck.requireClosed(this);
        return this;
    }

    /** {@return the same line in the other direction} */
    public Contour reversed() {
        return new Contour(edges.reversed(), requirements, name);
    }

    /**
     * {@return the same line elsewhere on the sheet}
     *
     * @param by place to which the origin moves
     */
    public Contour translatedBy(Point by) {
        Objects.requireNonNull(by, "by");
        return new Contour(edges.translated(by.xSi(), by.ySi()), requirements, name);
    }

    /**
     * {@return the contour turned about the origin}
     *
     * @param angle angle, anticlockwise
     */
    public Contour rotatedBy(Quantity<Angle> angle) {
        Objects.requireNonNull(angle, "angle");
        double rad = Kind.ANGLE.si(angle);
        return new Contour(edges.turned(Math.cos(rad), Math.sin(rad)), requirements, name);
    }

    /**
     * {@return the same line with one requirement on all edges}
     *
     * @param requirement requirement on every edge
     */
    public Contour withRequirement(EdgeRequirement requirement) {
        Objects.requireNonNull(requirement, "requirement");
        return new Contour(edges.withKey(new short[size()]), List.of(requirement), name);
    }

    /**
     * Returns a closed contour that starts elsewhere on its line, in the same direction.
     *
     * @param distance distance from the present start along the contour, 0 or more
     * @return the contour; the edge is cut in two where the new start lies within it
     * @throws GeometryException if the contour is open
     */
    public Contour startingAt(Quantity<Length> distance) {
        Objects.requireNonNull(distance, "distance");
        requireClosed();
        return ContourGeometry.startingAt(this, Kind.LENGTH.si(distance));
    }

    /**
     * Loads an edge into a cursor, without a check of the index.
     *
     * @param edge index from 0
     * @param shape the cursor
     */
    public void load(int edge, EdgeCursor shape) {
        edges.load(edge, shape);
    }

    @Override
    public Map<String, Object> describe() {
        List<Edge> all = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            all.add(edge(i));
        }
        return Description.of("contour")
                .put("name", name)
                .put("closed", isClosed())
                .put("edges", all)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Contour that
                && name.equals(that.name)
                && edges.isSame(that.edges)
                && hasSameRequirements(that);
    }

    private boolean hasSameRequirements(Contour that) {
        for (int i = 0; i < size(); i++) {
            if (!requirement(i).equals(that.requirement(i))) {
                return false;
            }
        }
        return true;
    }

    @Override
    public int hashCode() {
        int hash = 31 * edges.hash() + name.hashCode();
        for (int i = 0; i < size(); i++) {
            hash = 31 * hash + requirement(i).hashCode();
        }
        return hash;
    }

    @Override
    public String toString() {
        return (isClosed() ? "closed " : "open ") + label() + " of " + size() + (size() == 1 ? " edge" : " edges")
                + " from " + start();
    }

    private Object writeReplace() {
        return ContourForm.of(this);
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its serial form");
    }
}
