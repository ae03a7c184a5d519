package dev.waterjet.plan;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.part.Finding;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Part program along the edges of parts, whose kerf offset the machine applies.
 *
 * @param text text of the program
 * @param findings findings of leads, tabs and slats, satisfied or not
 */
public record EdgeProgram(String text, List<Finding> findings) implements Described {

    /**
     * Copies the list.
     *
     * @param text text of the program
     * @param findings findings of leads, tabs and slats
     */
    public EdgeProgram {
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(findings, "findings");
        findings = List.copyOf(findings);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("edge program")
                .put("text", text)
                .put("findings", findings)
                .map();
    }
}
