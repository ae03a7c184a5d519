package dev.waterjet.examples.svg;

import dev.waterjet.part.Contour;
import java.util.List;

/**
 * What a drawing holds.
 *
 * @param contours its contours in the order of the file, in metres, y upwards
 * @param names for each contour the id of its element, or {@code "line 12"} where it has none
 */
public record SvgDrawing(List<Contour> contours, List<String> names) {

    /**
     * Keeps unmodifiable copies.
     *
     * @param contours its contours in the order of the file, in metres, y upwards
     * @param names for each contour the id of its element, or {@code "line 12"} where it has none
     */
    public SvgDrawing {
        contours = List.copyOf(contours);
        names = List.copyOf(names);
    }
}
