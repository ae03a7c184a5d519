package dev.waterjet.material;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.WaterjetException;
import java.util.List;

/** Name that matches no material of a catalogue, or more than one, with suggestions. */
public final class UnknownMaterialException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    /** Names that a message lists at most. */
    private static final int MAX_SHOWN = 8;

    private final String requested;
    private final List<String> suggestions;

    private UnknownMaterialException(Message message, String requested, List<String> suggestions) {
        super(message);
        this.requested = requested;
        this.suggestions = List.copyOf(suggestions);
    }

    static UnknownMaterialException unknown(String requested, List<String> suggestions) {
        Message message = suggestions.isEmpty()
                ? Message.of("unknown-material", "unknown material {material}; run \"materials\" for the list")
                : Message.of("unknown-material", "unknown material {material}; did you mean {suggestions}?")
                        .with("suggestions", String.join(", ", suggestions));
        return new UnknownMaterialException(message.withInput("material", requested), requested, suggestions);
    }

    static UnknownMaterialException ambiguous(String requested, List<String> matches) {
        return new UnknownMaterialException(
                Message.of("ambiguous-material", "material {material} is ambiguous; use one of {suggestions}")
                        .withInput("material", requested)
                        .with("suggestions", shown(matches)),
                requested,
                matches);
    }

    private static String shown(List<String> matches) {
        return matches.size() <= MAX_SHOWN
                ? String.join(", ", matches)
                : String.join(", ", matches.subList(0, MAX_SHOWN)) + " and " + (matches.size() - MAX_SHOWN) + " more";
    }

    /** {@return the name requested} */
    public String requested() {
        return requested;
    }

    /** {@return the ids of similar names, the most similar first, or of all matches; empty if there are none} */
    public List<String> suggestions() {
        return suggestions;
    }
}
