package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** The smallest rectangle along the axes that holds a contour. */
public final class Box implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Point lowest;
    private final Point highest;

    private Box(Point lowest, Point highest) {
        this.lowest = lowest;
        this.highest = highest;
    }

    public static Box ofSi(double x0M, double y0M, double x1M, double y1M) {
        return new Box(Point.ofSi(x0M, y0M), Point.ofSi(x1M, y1M));
    }

    /**
     * The corner of least x and y.
     *
     * @return the corner
     */
    public Point minimum() {
        return lowest;
    }

    /**
     * The corner of greatest x and y.
     *
     * @return the corner
     */
    public Point maximum() {
        return highest;
    }

    /**
     * Extent along x.
     *
     * @return the width, in m
     */
    public Quantity<Length> width() {
        return Kind.LENGTH.of(highest.xSi() - lowest.xSi());
    }

    /**
     * Extent along y.
     *
     * @return the height, in m
     */
    public Quantity<Length> height() {
        return Kind.LENGTH.of(highest.ySi() - lowest.ySi());
    }

    /**
     * Whether another box lies inside this one; a common border counts as inside.
     *
     * @param other the other box
     * @return true if it does
     */
    public boolean isAround(Box other) {
        return lowest.xSi() <= other.lowest.xSi()
                && lowest.ySi() <= other.lowest.ySi()
                && highest.xSi() >= other.highest.xSi()
                && highest.ySi() >= other.highest.ySi();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("box")
                .put("lowest", lowest)
                .put("highest", highest)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Box that && lowest.equals(that.lowest) && highest.equals(that.highest);
    }

    @Override
    public int hashCode() {
        return Objects.hash(lowest, highest);
    }

    @Override
    public String toString() {
        return lowest + " to " + highest;
    }
}
