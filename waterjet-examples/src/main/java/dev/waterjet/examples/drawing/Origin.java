package dev.waterjet.examples.drawing;

import java.util.List;

/**
 * Place in a drawing from which a stroke comes.
 *
 * @param name name of the entity in the drawing, such as an id; empty if it has none
 * @param group name of the innermost group or block that has one; empty if there is none
 * @param layers layers of the entity, or the names of the groups around it, the outermost first
 * @param colour colour as the drawing writes it, in lower case; empty if it states none
 * @param kind kind of entity, such as {@code circle}
 * @param line line of the file, from 1
 */
public record Origin(String name, String group, List<String> layers, String colour, String kind, int line) {

    /**
     * Keeps an unmodifiable copy.
     *
     * @param name name of the entity in the drawing, such as an id; empty if it has none
     * @param group name of the innermost group or block that has one; empty if there is none
     * @param layers layers of the entity, or the names of the groups around it, the outermost first
     * @param colour colour as the drawing writes it, in lower case; empty if it states none
     * @param kind kind of entity, such as {@code circle}
     * @param line line of the file, from 1
     */
    public Origin {
        layers = List.copyOf(layers);
    }

    /** Origin that nothing is known of. */
    static final Origin NONE = new Origin("", "", List.of(), "", "stroke", 0);

    /**
     * Returns this origin with a name.
     *
     * @param other the name
     * @return the named origin
     */
    public Origin named(String other) {
        return new Origin(other, group, layers, colour, kind, line);
    }

    /** {@return the name, or the line where it has none} */
    public String label() {
        return name.isEmpty() ? "line " + line : name;
    }

    /** {@return name, kind and line for messages} */
    public String place() {
        return (name.isEmpty() ? kind : "\"" + name + "\"") + " on line " + line;
    }
}
