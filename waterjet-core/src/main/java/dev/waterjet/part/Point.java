package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Point of the sheet, seen from above: x to the right, y away from the reader. */
public final class Point implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(double xM, double yM) implements Serializable {

        Values {
            xM = Require.finite("x of a point", xM, Units.MILLIMETRE);
            yM = Require.finite("y of a point", yM, Units.MILLIMETRE);
        }

        private Object readResolve() {
            return new Point(this);
        }
    }

    private final transient Values values;

    private Point(Values values) {
        this.values = values;
    }

    /**
     * Returns a point.
     *
     * @param x distance to the right of the origin
     * @param y distance from the origin away from the reader
     * @return the point
     */
    public static Point of(Quantity<Length> x, Quantity<Length> y) {
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        return ofSi(Kind.LENGTH.si(x), Kind.LENGTH.si(y));
    }

    /**
     * Returns a point from numbers in metres.
     *
     * @param xM x in m
     * @param yM y in m
     * @return the point
     */
    public static Point ofSi(double xM, double yM) {
        return new Point(new Values(xM, yM));
    }

    /**
     * Returns a point from numbers in millimetres.
     *
     * @param xMm x in mm
     * @param yMm y in mm
     * @return the point
     */
    public static Point millimetres(double xMm, double yMm) {
        return of(Measures.millimetres(xMm), Measures.millimetres(yMm));
    }

    /** {@return the distance to the right of the origin, in m} */
    public Quantity<Length> x() {
        return Kind.LENGTH.of(values.xM);
    }

    /** {@return the distance from the origin away from the reader, in m} */
    public Quantity<Length> y() {
        return Kind.LENGTH.of(values.yM);
    }

    /** {@return x in m} */
    public double xSi() {
        return values.xM;
    }

    /** {@return y in m} */
    public double ySi() {
        return values.yM;
    }

    /**
     * Returns the straight distance to another point.
     *
     * @param other the other point
     * @return the distance, in m
     */
    public Quantity<Length> distance(Point other) {
        Objects.requireNonNull(other, "other");
        return Kind.LENGTH.of(Math.hypot(other.values.xM - values.xM, other.values.yM - values.yM));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("point")
                .put("x", Kind.LENGTH, values.xM)
                .put("y", Kind.LENGTH, values.yM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Point that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return text(values.xM, values.yM);
    }

    static String text(double xM, double yM) {
        return "(" + QuantityText.round(Units.fromSi(xM, Units.MILLIMETRE), 6) + " mm, "
                + QuantityText.round(Units.fromSi(yM, Units.MILLIMETRE), 6) + " mm)";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
