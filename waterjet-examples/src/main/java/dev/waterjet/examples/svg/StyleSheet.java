package dev.waterjet.examples.svg;

import dev.waterjet.measure.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Style rules of a drawing, as far as they decide whether and where a shape is drawn (W3C, CSS 2.1 and SVG 2, from memory):
 * selectors of one element name, classes and an id. A rule with another selector is refused if it could hide or move a shape.
 */
final class StyleSheet {

    /** Properties that hide or move a shape. */
    static final Set<String> DECISIVE = Set.of(
            "display", "visibility", "transform", "translate", "rotate", "scale", "zoom", "offset-path", "offset");

    /** Properties that are the geometry of a shape. */
    static final Set<String> GEOMETRY = Set.of("d", "x", "y", "cx", "cy", "r", "rx", "ry", "width", "height");

    private static final Set<String> READ = Set.of(
            "display",
            "visibility",
            "transform",
            "transform-origin",
            "transform-box",
            "stroke",
            "fill",
            "clip-path",
            "mask");

    private static final Pattern SIMPLE = Pattern.compile("(\\*|[A-Za-z][\\w-]*)?((?:[.#][\\w-]+)*)");
    private static final Pattern PIECE = Pattern.compile("[.#][\\w-]+");

    /** Rule with one selector. */
    private record Rule(String element, List<String> classes, String id, int weight, Map<String, String> declarations) {

        boolean isAbout(Tag tag, List<String> classesOfTag) {
            return (element.isEmpty() || element.equals("*") || element.equals(tag.name()))
                    && (id.isEmpty() || id.equals(tag.id()))
                    && classesOfTag.containsAll(classes);
        }
    }

    private final List<Rule> rules = new ArrayList<>();

    /** Reads the content of a style element. */
    void read(Tag style) {
        String text = style.content().replaceAll("(?s)/\\*.*?\\*/", " ").replaceAll("<!--|-->", " ");
        int at = 0;
        while (at < text.length()) {
            int open = text.indexOf('{', at);
            int semicolon = text.indexOf(';', at);
            String head = text.substring(at, open < 0 ? text.length() : open).strip();
            if (head.startsWith("@") && semicolon >= 0 && (open < 0 || semicolon < open)) {
                atRule(style, text.substring(at, semicolon).strip(), "");
                at = semicolon + 1;
            } else if (open < 0) {
                at = text.length();
            } else {
                int close = close(text, open);
                String body = text.substring(Math.min(open + 1, close), close);
                if (head.startsWith("@")) {
                    atRule(style, head, body);
                } else {
                    rule(style, head, body);
                }
                at = close + 1;
            }
        }
    }

    /** Place of the bracket that closes a block, or the end of the text. */
    private static int close(String text, int open) {
        int depth = 0;
        for (int i = open; i < text.length(); i++) {
            char c = text.charAt(i);
            depth += c == '{' ? 1 : c == '}' ? -1 : 0;
            if (depth == 0) {
                return i;
            }
        }
        return text.length();
    }

    private static void atRule(Tag style, String head, String body) {
        boolean isDecisive = Arrays.stream(body.split("[{;}]"))
                .map(declaration ->
                        declaration.replaceAll("(?s):.*", "").strip().toLowerCase(Locale.ROOT))
                .anyMatch(property -> DECISIVE.contains(property) || GEOMETRY.contains(property));
        if (head.startsWith("@import") || (isDecisive && !head.startsWith("@font-face"))) {
            throw style.fault(unread(head));
        }
    }

    private static Message unread(String selector) {
        return Message.of(
                        "style-sheet",
                        "the style sheet may hide or move shapes by {selector}, which is not read; save the drawing"
                                + " with presentation attributes")
                .withInput("selector", selector);
    }

    private void rule(Tag style, String selectors, String body) {
        Map<String, String> declarations = declarations(body);
        if (declarations.isEmpty()) {
            return;
        }
        for (String selector : selectors.split(",", -1)) {
            Matcher simple = SIMPLE.matcher(selector.strip());
            if (selector.isBlank() || !simple.matches()) {
                if (declarations.keySet().stream().anyMatch(p -> DECISIVE.contains(p) || GEOMETRY.contains(p))) {
                    throw style.fault(unread(selector.strip()));
                }
                continue;
            }
            List<String> classes = new ArrayList<>();
            String id = "";
            Matcher piece = PIECE.matcher(simple.group(2));
            while (piece.find()) {
                if (piece.group().startsWith("#")) {
                    id = piece.group().substring(1);
                } else {
                    classes.add(piece.group().substring(1));
                }
            }
            String element = simple.group(1) == null ? "" : simple.group(1);
            int weight = (id.isEmpty() ? 0 : 10_000)
                    + 100 * classes.size()
                    + (element.isEmpty() || element.equals("*") ? 0 : 1);
            rules.add(new Rule(element, classes, id, weight, declarations));
        }
    }

    /** The declarations of a block that matter here, by property in lower case. */
    static Map<String, String> declarations(String body) {
        Map<String, String> found = new LinkedHashMap<>();
        for (String declaration : body.replaceAll("(?s)/\\*.*?\\*/", " ").split(";", -1)) {
            int colon = declaration.indexOf(':');
            String property =
                    colon < 0 ? "" : declaration.substring(0, colon).strip().toLowerCase(Locale.ROOT);
            if (READ.contains(property) || DECISIVE.contains(property) || GEOMETRY.contains(property)) {
                found.put(property, declaration.substring(colon + 1).strip());
            }
        }
        return found;
    }

    /** Returns the styles of an element: rules by rising weight, then its own style; important ones last. */
    Map<String, String> styleOf(Tag tag) {
        Map<String, String> style = new LinkedHashMap<>();
        Map<String, String> important = new LinkedHashMap<>();
        if (!rules.isEmpty()) {
            List<String> classes =
                    Arrays.asList(tag.text("class").orElse("").strip().split("\\s+"));
            rules.stream()
                    .filter(rule -> rule.isAbout(tag, classes))
                    .sorted((one, other) -> Integer.compare(one.weight(), other.weight()))
                    .forEach(rule -> put(rule.declarations(), style, important));
        }
        tag.text("style").ifPresent(own -> put(declarations(own), style, important));
        style.putAll(important);
        return style;
    }

    private static void put(Map<String, String> from, Map<String, String> style, Map<String, String> important) {
        from.forEach((property, value) -> {
            String lower = value.toLowerCase(Locale.ROOT);
            int mark = lower.lastIndexOf("!important");
            if (mark >= 0) {
                important.put(property, value.substring(0, mark).strip());
            } else {
                style.put(property, value);
            }
        });
    }
}
