package dev.waterjet.examples.svg;

import dev.waterjet.evidence.Caution;
import dev.waterjet.part.Contour;
import java.util.List;

/**
 * Contours of a drawing with their names.
 *
 * @param contours its contours in the order of the file, in metres, y upwards
 * @param names for each contour the id of its element, or {@code "line 12"} where it has none
 * @param cautions what was left out, closed or assumed
 */
public record SvgDrawing(List<Contour> contours, List<String> names, List<Caution> cautions) {

    /**
     * Keeps unmodifiable copies.
     *
     * @param contours its contours in the order of the file, in metres, y upwards
     * @param names for each contour the id of its element, or {@code "line 12"} where it has none
     * @param cautions what was left out, closed or assumed
     */
    public SvgDrawing {
        contours = List.copyOf(contours);
        names = List.copyOf(names);
        cautions = List.copyOf(cautions);
    }
}
