package dev.waterjet.program;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Message;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;

/**
 * Finding in a part program.
 *
 * @param line line of the program, from 1
 * @param finding what was found, with its place on the sheet
 */
public record ProgramFinding(int line, Finding finding) implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @param line line of the program, from 1
     * @param finding what was found
     */
    public ProgramFinding {
        Objects.requireNonNull(finding, "finding");
    }

    static ProgramFinding violated(int line, double xM, double yM, Message message, Message... remedies) {
        return new ProgramFinding(line, Finding.violated(message, Point.ofSi(xM, yM), remedies));
    }

    /** {@return the stable name of the rule, in lower case with hyphens} */
    public String code() {
        return finding.code();
    }

    /** {@return line and sentence for people, with the remedies} */
    public String text() {
        return "line " + line + ": " + finding.text();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("program finding")
                .put("line", line)
                .put("finding", finding)
                .map();
    }

    @Override
    public String toString() {
        return "line " + line + ": " + finding;
    }
}
