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
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/** Line or arc of a contour, with the requirement on its cut surface. */
public final class Edge implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. The centre of a line is its start. */
    private record Values(Point start, Point end, Point centre, double sweepRad, EdgeRequirement requirement)
            implements Serializable {

        Values {
            Objects.requireNonNull(start, "start");
            Objects.requireNonNull(end, "end");
            Objects.requireNonNull(centre, "centre");
            Objects.requireNonNull(requirement, "requirement");
            sweepRad = Require.between("sweep of an arc", sweepRad, -2 * Math.PI, 2 * Math.PI, Units.RADIAN, "a turn");
            double radius = Kind.LENGTH.si(start.distance(centre));
            double atEnd = Kind.LENGTH.si(end.distance(centre));
            if (sweepRad != 0) {
                Require.positive("radius of an arc", radius, Units.MILLIMETRE);
                double slack = 1e-9 + 1e-9 * radius;
                Require.between("radius at the end", atEnd, radius - slack, radius + slack, Units.MILLIMETRE, "");
            }
        }

        private Object readResolve() {
            return new Edge(this);
        }
    }

    private final transient Values values;

    private Edge(Values values) {
        this.values = values;
    }

    static Edge of(EdgeCursor shape, EdgeRequirement requirement) {
        Point start = Point.ofSi(shape.x0, shape.y0);
        Point centre = shape.isArc() ? Point.ofSi(shape.cx, shape.cy) : start;
        return new Edge(new Values(start, Point.ofSi(shape.x1, shape.y1), centre, shape.sweep, requirement));
    }

    /** {@return the point at which the edge starts} */
    public Point start() {
        return values.start;
    }

    /** {@return the point at which the edge ends} */
    public Point end() {
        return values.end;
    }

    /** {@return whether the edge is an arc} */
    public boolean isArc() {
        return values.sweepRad != 0;
    }

    /** {@return the centre of the arc; empty for a line} */
    public Optional<Point> centre() {
        return isArc() ? Optional.of(values.centre) : Optional.empty();
    }

    /** {@return the radius of the arc, in m; empty for a line} */
    public Optional<Quantity<Length>> radius() {
        return isArc() ? Optional.of(values.start.distance(values.centre)) : Optional.empty();
    }

    /** {@return the side to which the arc turns, left for counter-clockwise; empty for a line} */
    public Optional<Side> turn() {
        return isArc() ? Optional.of(values.sweepRad > 0 ? Side.LEFT : Side.RIGHT) : Optional.empty();
    }

    /**
     * {@return the angle by which the direction turns along the edge, in rad, positive to the left; zero for a line}
     */
    public Quantity<Angle> sweep() {
        return Kind.ANGLE.of(values.sweepRad);
    }

    /** {@return the length along the edge, in m} */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(cursor().length());
    }

    /**
     * Returns a place on the edge.
     *
     * @param distance distance along the edge from its start, from 0 to its length
     * @return the place
     */
    public Point pointAt(Quantity<Length> distance) {
        Objects.requireNonNull(distance, "distance");
        EdgeCursor cursor = cursor();
        double length = cursor.length();
        double along = Require.between(
                "distance along the edge",
                Kind.LENGTH.si(distance),
                0,
                length,
                Units.MILLIMETRE,
                "the length of the edge");
        return Point.ofSi(cursor.xAt(along / length), cursor.yAt(along / length));
    }

    private EdgeCursor cursor() {
        EdgeCursor cursor = new EdgeCursor();
        Point start = values.start;
        Point end = values.end;
        if (isArc()) {
            Point centre = values.centre;
            cursor.arc(start.xSi(), start.ySi(), end.xSi(), end.ySi(), centre.xSi(), centre.ySi(), values.sweepRad);
        } else {
            cursor.line(start.xSi(), start.ySi(), end.xSi(), end.ySi());
        }
        return cursor;
    }

    /** {@return the requirement on the cut surface} */
    public EdgeRequirement requirement() {
        return values.requirement;
    }

    @Override
    public Map<String, Object> describe() {
        Description description =
                Description.of("edge").put("start", values.start).put("end", values.end);
        if (isArc()) {
            description.put("centre", values.centre).put("sweep", Kind.ANGLE, values.sweepRad);
        }
        return description.put("requirement", values.requirement).map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Edge that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return (isArc() ? "arc " : "line ") + values.start + " to " + values.end;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
