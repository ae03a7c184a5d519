package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** A point of the sheet, seen from above: x to the right, y away from the reader. */
public final class Point implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double xM;
    private final double yM;

    private Point(double xM, double yM) {
        this.xM = Require.finite("x of a point", xM, Units.MILLIMETRE);
        this.yM = Require.finite("y of a point", yM, Units.MILLIMETRE);
    }

    /**
     * A point.
     *
     * @param x distance to the right of the origin
     * @param y distance from the origin away from the reader
     * @return the point
     */
    public static Point of(Quantity<Length> x, Quantity<Length> y) {
        return new Point(Kind.LENGTH.si(x), Kind.LENGTH.si(y));
    }

    /**
     * A point from numbers in metres.
     *
     * @param xM x in m
     * @param yM y in m
     * @return the point
     */
    public static Point ofSi(double xM, double yM) {
        return new Point(xM, yM);
    }

    /**
     * A point from numbers in millimetres.
     *
     * @param xMm x in mm
     * @param yMm y in mm
     * @return the point
     */
    public static Point millimetres(double xMm, double yMm) {
        return of(Measures.millimetres(xMm), Measures.millimetres(yMm));
    }

    /**
     * Distance to the right of the origin.
     *
     * @return x, in m
     */
    public Quantity<Length> x() {
        return Kind.LENGTH.of(xM);
    }

    /**
     * Distance from the origin away from the reader.
     *
     * @return y, in m
     */
    public Quantity<Length> y() {
        return Kind.LENGTH.of(yM);
    }

    /**
     * Distance to the right of the origin, as a number.
     *
     * @return x in m
     */
    public double xSi() {
        return xM;
    }

    /**
     * Distance from the origin away from the reader, as a number.
     *
     * @return y in m
     */
    public double ySi() {
        return yM;
    }

    /**
     * Straight distance to another point.
     *
     * @param other the other point
     * @return the distance, in m
     */
    public Quantity<Length> distance(Point other) {
        return Kind.LENGTH.of(Math.hypot(other.xM - xM, other.yM - yM));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("point")
                .put("x", Kind.LENGTH, xM)
                .put("y", Kind.LENGTH, yM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Point that && xM == that.xM && yM == that.yM;
    }

    @Override
    public int hashCode() {
        return Objects.hash(xM, yM);
    }

    @Override
    public String toString() {
        return told(xM, yM);
    }

    static String told(double xM, double yM) {
        return "(" + QuantityText.round(Units.fromSi(xM, Units.MILLIMETRE), 6) + " mm, "
                + QuantityText.round(Units.fromSi(yM, Units.MILLIMETRE), 6) + " mm)";
    }
}
