package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.EdgeRequirement;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/** One edge of a contour: a straight line or an arc of a circle, with what is asked of its face. */
public final class Edge implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Point start;
    private final Point end;
    private final Point centre;
    private final double sweepRad;
    private final double radiusM;
    private final EdgeRequirement finish;

    private Edge(Point start, Point end, Point centre, double sweepRad, double radiusM, EdgeRequirement finish) {
        this.start = start;
        this.end = end;
        this.centre = centre;
        this.sweepRad = sweepRad;
        this.radiusM = radiusM;
        this.finish = finish;
    }

    static Edge of(EdgeCursor shape, EdgeRequirement finish) {
        return new Edge(
                Point.ofSi(shape.x0, shape.y0),
                Point.ofSi(shape.x1, shape.y1),
                Point.ofSi(shape.cx, shape.cy),
                shape.sweep,
                shape.radius,
                finish);
    }

    /**
     * Where it starts.
     *
     * @return the start
     */
    public Point start() {
        return start;
    }

    /**
     * Where it ends.
     *
     * @return the end
     */
    public Point end() {
        return end;
    }

    /**
     * Whether it is an arc.
     *
     * @return true for an arc, false for a line
     */
    public boolean isArc() {
        return sweepRad != 0;
    }

    /**
     * Centre of the arc.
     *
     * @return the centre; empty for a line
     */
    public Optional<Point> centre() {
        return isArc() ? Optional.of(centre) : Optional.empty();
    }

    /**
     * Radius of the arc.
     *
     * @return the radius, in m; empty for a line
     */
    public Optional<Quantity<Length>> radius() {
        return isArc() ? Optional.of(Kind.LENGTH.of(radiusM)) : Optional.empty();
    }

    /**
     * To which side the arc turns.
     *
     * @return left for counter-clockwise; empty for a line
     */
    public Optional<Side> turn() {
        return isArc() ? Optional.of(sweepRad > 0 ? Side.LEFT : Side.RIGHT) : Optional.empty();
    }

    /**
     * By how much the direction turns along the edge.
     *
     * @return the angle, in rad, positive to the left; zero for a line
     */
    public Quantity<Angle> sweep() {
        return Kind.ANGLE.of(sweepRad);
    }

    /**
     * Length along the edge.
     *
     * @return the length, in m
     */
    public Quantity<Length> length() {
        return isArc() ? Kind.LENGTH.of(radiusM * Math.abs(sweepRad)) : start.distance(end);
    }

    /**
     * What is asked of its face.
     *
     * @return the finish
     */
    public EdgeRequirement requirement() {
        return finish;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("edge").put("start", start).put("end", end);
        if (isArc()) {
            description.put("centre", centre).put("sweep", Kind.ANGLE, sweepRad);
        }
        return description.put("finish", finish).map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Edge that
                && start.equals(that.start)
                && end.equals(that.end)
                && centre.equals(that.centre)
                && sweepRad == that.sweepRad
                && finish.equals(that.finish);
    }

    @Override
    public int hashCode() {
        return Objects.hash(start, end, centre, sweepRad, finish);
    }

    @Override
    public String toString() {
        return (isArc() ? "arc " : "line ") + start + " to " + end;
    }
}
