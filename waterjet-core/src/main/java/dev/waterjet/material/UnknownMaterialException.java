package dev.waterjet.material;

import dev.waterjet.measure.WaterjetException;
import java.util.List;

/** A name that fits no material of a catalogue, or more than one. It suggests what may have been meant. */
public final class UnknownMaterialException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final String requested;
    private final List<String> suggestions;

    UnknownMaterialException(String requested, String fault, List<String> suggestions) {
        super(
                suggestions.isEmpty()
                        ? "\"" + requested + "\" " + fault
                        : "\"" + requested + "\" " + fault + "; did you mean " + String.join(", ", suggestions) + "?");
        this.requested = requested;
        this.suggestions = List.copyOf(suggestions);
    }

    /**
     * The name requested for.
     *
     * @return the name
     */
    public String requested() {
        return requested;
    }

    /**
     * Ids that come near.
     *
     * @return ids, the nearest first; empty if none comes near
     */
    public List<String> suggestions() {
        return suggestions;
    }
}
