package dev.waterjet.examples.drawing;

import dev.waterjet.evidence.Caution;
import java.util.List;

/**
 * A drawing as its reader leaves it: strokes in metres, nothing joined.
 *
 * @param format format for people, such as {@code SVG}
 * @param strokes strokes in the order of the file; the requirement on their edges is that of the entity
 * @param unitM length of one unit of the drawing in m
 * @param isUnitStated whether the drawing or the user stated the unit; false if it was assumed
 * @param cautions entities skipped, units assumed
 */
public record DrawingSource(
        String format, List<Stroke> strokes, double unitM, boolean isUnitStated, List<Caution> cautions) {

    /**
     * Keeps unmodifiable copies.
     *
     * @param format format for people, such as {@code SVG}
     * @param strokes strokes in the order of the file
     * @param unitM length of one unit of the drawing in m
     * @param isUnitStated whether the drawing or the user stated the unit; false if it was assumed
     * @param cautions entities skipped, units assumed
     */
    public DrawingSource {
        strokes = List.copyOf(strokes);
        cautions = List.copyOf(cautions);
    }
}
