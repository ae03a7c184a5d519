package dev.waterjet.examples.drawing;

import dev.waterjet.part.Part;
import java.util.List;

/**
 * A part of a drawing.
 *
 * @param name name of the part: that of its outline, else of the group or block around it, else {@code part 1}
 * @param part outline and holes, each with the name of its entity
 * @param origins entities of the contours, in the order of {@link Part#contours()}
 */
public record DrawnPart(String name, Part part, List<Origin> origins) {

    /**
     * Keeps an unmodifiable copy.
     *
     * @param name name of the part
     * @param part outline and holes, each with the name of its entity
     * @param origins entities of the contours, in the order of {@link Part#contours()}
     */
    public DrawnPart {
        origins = List.copyOf(origins);
    }
}
