package dev.waterjet.measure;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Map;

/**
 * Value with a description in plain numbers and texts: for JSON, for a table, for another language.
 *
 * <p>The annotation is for callers who use Jackson, and costs the others nothing: their {@code ObjectMapper} writes the
 * description without a line of theirs. The library itself neither needs Jackson nor brings it along.
 */
public interface Described {

    /**
     * Returns the content.
     *
     * <p>Keys come in a fixed order. A key that holds a quantity ends in its SI unit, as {@link Kind#column} makes it:
     * {@code "pressure_Pa"}. Values are finite numbers, texts, truth values, and lists and maps of these. What is not
     * known has no key.
     *
     * @return an unmodifiable map, the key {@code "type"} first
     */
    @JsonValue
    Map<String, Object> describe();
}
