package dev.waterjet.examples.svg;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.stream.XMLStreamReader;

/** Element: its name, attributes, children, and its place in the file. */
final class Tag {

    private static final double MM_PER_INCH = 25.4;

    /** A CSS pixel is a 96th of an inch, and is the unit of a drawing that states none. */
    static final double MM_PER_PIXEL = MM_PER_INCH / 96;

    private final String file;
    private final Lines lines;
    private final int start;
    private final int end;
    private final String name;
    private final boolean isSvg;
    private final Map<String, String> attributes = new LinkedHashMap<>();
    private final List<Tag> children = new ArrayList<>();
    private final StringBuilder content = new StringBuilder();
    private String label = "";
    private String reference = "";

    Tag(XMLStreamReader xml, String file, Lines lines) {
        this.file = file;
        this.lines = lines;
        this.end = Math.min(
                file.length(),
                Math.max(
                        0,
                        lines.place(
                                xml.getLocation().getLineNumber(),
                                xml.getLocation().getColumnNumber())));
        this.start = Math.max(0, file.lastIndexOf('<', end - 1));
        this.name = xml.getLocalName();
        String space = xml.getNamespaceURI();
        this.isSvg = space == null || space.isEmpty() || space.equals("http://www.w3.org/2000/svg");
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            keep(xml.getAttributeNamespace(i), xml.getAttributeLocalName(i), xml.getAttributeValue(i));
        }
    }

    /** Attributes of the standard have no namespace; of others only the label of a layer and an older reference are read. */
    private void keep(String space, String attribute, String value) {
        if (space == null || space.isEmpty()) {
            attributes.put(attribute, value);
            if (attribute.equals("href")) {
                reference = value;
            }
        } else if (attribute.equals("label")) {
            label = value;
        } else if (attribute.equals("href") && reference.isEmpty()) {
            reference = value;
        }
    }

    void add(Tag child) {
        children.add(child);
    }

    void addContent(String text) {
        content.append(text);
    }

    List<Tag> children() {
        return children;
    }

    String content() {
        return content.toString();
    }

    String name() {
        return name;
    }

    boolean isSvg() {
        return isSvg;
    }

    /** Label that a drawing program gives a layer, in a namespace of its own; empty if there is none. */
    String label() {
        return label;
    }

    /** Reference to another element; empty if there is none. */
    String reference() {
        return reference;
    }

    String id() {
        return attributes.getOrDefault("id", "");
    }

    int line() {
        return lines.fault(start, "").line();
    }

    Optional<String> text(String attribute) {
        return Optional.ofNullable(attributes.get(attribute));
    }

    /** Reader of an attribute's value, empty if the attribute is missing. */
    Scanner scan(String attribute) {
        String value = text(attribute).orElse("");
        int from = value.isEmpty() ? -1 : valueStart(attribute);
        if (from >= 0) {
            int to = file.indexOf(file.charAt(from - 1), from);
            if (to >= 0 && isSame(value, from, to)) {
                return new Scanner(file, from, to, lines, 0);
            }
        }
        return scanText(value);
    }

    /** Reader of a text of this element whose faults are given at its start. */
    Scanner scanText(String value) {
        return new Scanner(value, 0, value.length(), lines, -start - 1);
    }

    /** Place at which the value of an attribute starts, after its quote; -1 if it is not found. */
    private int valueStart(String attribute) {
        int at = nameEnd(start);
        while (at < end) {
            int from = skipSpace(at);
            int nameEnd = nameEnd(from);
            int quote = skipSpace(skipSpace(nameEnd) + 1);
            int close = quote < end ? file.indexOf(file.charAt(quote), quote + 1) : -1;
            if (close < 0) {
                return -1;
            }
            if (nameEnd - from == attribute.length() && file.startsWith(attribute, from)) {
                return quote + 1;
            }
            at = close + 1;
        }
        return -1;
    }

    private int nameEnd(int from) {
        int at = from;
        while (at < end && file.charAt(at) != '=' && !Character.isWhitespace(file.charAt(at))) {
            at++;
        }
        return at;
    }

    /** Whether a stretch of the file is, letter by letter, the value that the XML reader made of it. */
    private boolean isSame(String value, int from, int to) {
        boolean isSame = to - from == value.length();
        for (int i = 0; isSame && i < value.length(); i++) {
            char c = file.charAt(from + i);
            isSame = value.charAt(i) == (Character.isWhitespace(c) ? ' ' : c);
        }
        return isSame;
    }

    private int skipSpace(int from) {
        int at = from;
        while (at < end && Character.isWhitespace(file.charAt(at))) {
            at++;
        }
        return at;
    }

    /** A length in units of the drawing. */
    OptionalDouble length(String attribute) {
        OptionalDouble length = OptionalDouble.empty();
        if (text(attribute).isPresent()) {
            Scanner in = scan(attribute);
            double number = in.number();
            length = OptionalDouble.of(number * pixels(in));
        }
        return length;
    }

    double length(String attribute, double otherwise) {
        return length(attribute).orElse(otherwise);
    }

    /** A length that is required and not below zero. */
    double size(String attribute) {
        double size = length(attribute).orElseThrow(() -> fault("<" + name() + "> has no " + attribute));
        if (size < 0) {
            throw scan(attribute).fault(attribute + " is below zero");
        }
        return size;
    }

    /** Pixels of the unit that comes next. */
    static double pixels(Scanner in) {
        int place = in.place();
        String unit = in.peek() == '%' ? "%" : in.word();
        double mm = switch (unit) {
            case "", "px" -> MM_PER_PIXEL;
            case "mm" -> 1;
            case "cm" -> 10;
            case "Q" -> 0.25;
            case "in" -> MM_PER_INCH;
            case "pt" -> MM_PER_INCH / 72;
            case "pc" -> MM_PER_INCH / 6;
            default ->
                throw in.fault(place, "unknown unit of length \"" + unit + "\"; use mm, cm, Q, in, pt, pc or px");
        };
        return mm / MM_PER_PIXEL;
    }

    TextException fault(String message) {
        return lines.fault(start, message);
    }

    TextException fault(Message message) {
        return lines.fault(start, message);
    }
}
