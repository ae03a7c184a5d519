package dev.waterjet.placement;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;

/** Rotation about the origin, then a shift: from the drawing to the machine. */
public final class RigidMove implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form; the rotation lies in -pi to pi. */
    private record Values(double rotationRad, Point shift) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            // a remainder of -0.0 is 0.0
            rotationRad = Math.IEEEremainder(Require.finite("rotation", rotationRad, Units.DEGREE), 2 * Math.PI) + 0.0;
            Objects.requireNonNull(shift, "shift");
        }

        private Object readResolve() {
            return new RigidMove(this);
        }
    }

    private final transient Values values;

    private RigidMove(Values values) {
        this.values = values;
    }

    /**
     * Returns a move.
     *
     * @param rotation rotation about the origin, anticlockwise; full turns are dropped
     * @param shift place to which the origin moves
     * @return the move
     */
    public static RigidMove of(Quantity<Angle> rotation, Point shift) {
        Objects.requireNonNull(rotation, "rotation");
        return new RigidMove(new Values(Kind.ANGLE.si(rotation), shift));
    }

    /** {@return the move that leaves everything in its place} */
    public static RigidMove none() {
        return new RigidMove(new Values(0, Point.ofSi(0, 0)));
    }

    /** {@return the rotation, anticlockwise, from -180 to 180 degrees} */
    public Quantity<Angle> rotation() {
        return Kind.ANGLE.of(values.rotationRad);
    }

    /** {@return the place to which the origin moves} */
    public Point shift() {
        return values.shift;
    }

    double rotationSi() {
        return values.rotationRad;
    }

    /**
     * Returns a moved point.
     *
     * @param point point of the drawing
     * @return the point on the machine
     */
    public Point apply(Point point) {
        Objects.requireNonNull(point, "point");
        double cos = Math.cos(values.rotationRad);
        double sin = Math.sin(values.rotationRad);
        return Point.ofSi(
                cos * point.xSi() - sin * point.ySi() + values.shift.xSi(),
                sin * point.xSi() + cos * point.ySi() + values.shift.ySi());
    }

    /**
     * Returns a moved contour.
     *
     * @param contour contour of the drawing
     * @return the contour on the machine
     */
    public Contour apply(Contour contour) {
        Objects.requireNonNull(contour, "contour");
        return contour.rotatedBy(rotation()).translatedBy(values.shift);
    }

    /**
     * Returns a moved part.
     *
     * @param part part of the drawing
     * @return the part on the machine
     */
    public Part apply(Part part) {
        Objects.requireNonNull(part, "part");
        return Part.of(
                apply(part.outline()), part.holes().stream().map(this::apply).toList());
    }

    /** {@return the move back, from the machine to the drawing} */
    public RigidMove inverse() {
        Point back = new RigidMove(new Values(-values.rotationRad, Point.ofSi(0, 0))).apply(values.shift);
        return new RigidMove(new Values(-values.rotationRad, Point.ofSi(-back.xSi(), -back.ySi())));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("rigid move")
                .put("rotation", Kind.ANGLE, values.rotationRad)
                .put("shift", values.shift)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RigidMove that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "turned by " + QuantityText.forPeople(Kind.ANGLE, values.rotationRad) + ", moved to " + values.shift;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
