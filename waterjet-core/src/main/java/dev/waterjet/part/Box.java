package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Smallest rectangle along the axes that holds a contour.
 *
 * @param minimum corner of minimum x and y
 * @param maximum corner of maximum x and y
 */
public record Box(Point minimum, Point maximum) implements Described, Serializable {

    /**
     * Checks that the corners are in order.
     *
     * @param minimum corner of minimum x and y
     * @param maximum corner of maximum x and y
     */
    public Box {
        Objects.requireNonNull(maximum, "maximum");
        Objects.requireNonNull(minimum, "minimum");
        Require.atMost("minimum x of a box", minimum.xSi(), maximum.xSi(), Units.MILLIMETRE, "its maximum x");
        Require.atMost("minimum y of a box", minimum.ySi(), maximum.ySi(), Units.MILLIMETRE, "its maximum y");
    }

    static Box ofSi(double x0M, double y0M, double x1M, double y1M) {
        return new Box(Point.ofSi(x0M, y0M), Point.ofSi(x1M, y1M));
    }

    /** {@return the extent along x, in m} */
    public Quantity<Length> width() {
        return Kind.LENGTH.of(maximum.xSi() - minimum.xSi());
    }

    /** {@return the extent along y, in m} */
    public Quantity<Length> height() {
        return Kind.LENGTH.of(maximum.ySi() - minimum.ySi());
    }

    /** {@return the middle} */
    public Point centre() {
        return Point.ofSi((minimum.xSi() + maximum.xSi()) / 2, (minimum.ySi() + maximum.ySi()) / 2);
    }

    /**
     * Returns whether another box lies inside this one; a common border counts as inside.
     *
     * @param other the other box
     * @return true if it does
     */
    public boolean isAround(Box other) {
        Objects.requireNonNull(other, "other");
        return minimum.xSi() <= other.minimum.xSi()
                && minimum.ySi() <= other.minimum.ySi()
                && maximum.xSi() >= other.maximum.xSi()
                && maximum.ySi() >= other.maximum.ySi();
    }

    /**
     * Returns the distance to another box.
     *
     * @param other the other box
     * @return the distance, in m; zero where the boxes meet
     */
    public Quantity<Length> distance(Box other) {
        Objects.requireNonNull(other, "other");
        double dx = Math.max(0, Math.max(other.minimum.xSi() - maximum.xSi(), minimum.xSi() - other.maximum.xSi()));
        double dy = Math.max(0, Math.max(other.minimum.ySi() - maximum.ySi(), minimum.ySi() - other.maximum.ySi()));
        return Kind.LENGTH.of(Math.hypot(dx, dy));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("box")
                .put("minimum", minimum)
                .put("maximum", maximum)
                .map();
    }

    @Override
    public String toString() {
        return minimum + " to " + maximum;
    }
}
