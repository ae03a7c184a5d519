package dev.waterjet.simulate;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.part.Point;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Place of a predicted cut with the largest deviation of its sign at a level.
 *
 * @param level level of the cut surface
 * @param depth depth below the top side
 * @param edge index of the edge of the contour
 * @param distance distance from the start of the contour, along it
 * @param place the point of the contour
 * @param added deviation less that of a long straight cut: above 0 where material is left, below 0 where the part is gouged.
 *     Its uncertainty is that of the models of kerf, lag and feed
 * @param tolerance the deviation allowed on that edge
 */
public record CutPlace(
        Level level,
        Quantity<Length> depth,
        int edge,
        Quantity<Length> distance,
        Point place,
        Estimate<Length> added,
        Quantity<Length> tolerance)
        implements Described {

    /** Level of a cut surface. */
    public enum Level {
        /** Near the top side. */
        TOP,
        /** Halfway down. */
        MIDDLE,
        /** At the bottom side. */
        BOTTOM
    }

    /**
     * Checks the components.
     *
     * @param level level of the cut surface
     * @param depth depth below the top side
     * @param edge index of the edge of the contour
     * @param distance distance from the start of the contour, along it
     * @param place the point of the contour
     * @param added deviation less that of a long straight cut
     * @param tolerance the deviation allowed on that edge
     */
    public CutPlace {
        Objects.requireNonNull(level, "level");
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(distance, "distance");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(added, "added");
        Objects.requireNonNull(tolerance, "tolerance");
    }

    /** {@return whether the best value of the deviation is within the tolerance} */
    public boolean isWithinTolerance() {
        return Math.abs(added.si()) <= Kind.LENGTH.si(tolerance);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("place of a cut")
                .put("level", level)
                .put("depth", Kind.LENGTH, Kind.LENGTH.si(depth))
                .put("edge", edge)
                .put("distance", Kind.LENGTH, Kind.LENGTH.si(distance))
                .put("place", place)
                .put("added", added)
                .put("tolerance", Kind.LENGTH, Kind.LENGTH.si(tolerance))
                .map();
    }

    @Override
    public String toString() {
        return QuantityText.forPeople(Kind.LENGTH, added.si()) + " at the "
                + level.name().toLowerCase(java.util.Locale.ROOT) + ", edge " + (edge + 1) + ", " + place;
    }
}
