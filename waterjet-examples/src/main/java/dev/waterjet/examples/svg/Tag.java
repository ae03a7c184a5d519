package dev.waterjet.examples.svg;

import dev.waterjet.measure.TextException;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.stream.XMLStreamReader;

/** A start tag: its attributes, and where in the file they stand. */
final class Tag {

    private static final double MM_PER_INCH = 25.4;

    /** A CSS pixel is a 96th of an inch, and is the unit of a drawing that names none. */
    static final double MM_PER_PIXEL = MM_PER_INCH / 96;

    private final XMLStreamReader xml;
    private final String file;
    private final Lines lines;
    private final int start;
    private final int end;

    Tag(XMLStreamReader xml, String file, Lines lines) {
        this.xml = xml;
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
    }

    String name() {
        return xml.getLocalName();
    }

    boolean isSvg() {
        String space = xml.getNamespaceURI();
        return space == null || space.isEmpty() || space.equals("http://www.w3.org/2000/svg");
    }

    Optional<String> text(String attribute) {
        // an empty namespace, not null: null would also find an attribute of the drawing program's own, such as x:width
        return Optional.ofNullable(xml.getAttributeValue("", attribute));
    }

    /** A reader of an attribute's value, empty if the attribute is missing. */
    Scanner scan(String attribute) {
        String value = text(attribute).orElse("");
        int from = value.isEmpty() ? -1 : valueStart(attribute);
        if (from >= 0) {
            int to = file.indexOf(file.charAt(from - 1), from);
            if (to >= 0 && isSame(value, from, to)) {
                return new Scanner(file, from, to, lines, 0);
            }
        }
        return new Scanner(value, 0, value.length(), lines, -start - 1);
    }

    /** Where the value of an attribute starts within the tag, behind its quote; -1 if it is not found. */
    private int valueStart(String attribute) {
        int at = nameEnd(start);
        while (at < end) {
            int name = skipSpace(at);
            int nameEnd = nameEnd(name);
            int quote = skipSpace(skipSpace(nameEnd) + 1);
            int close = quote < end ? file.indexOf(file.charAt(quote), quote + 1) : -1;
            if (close < 0) {
                return -1;
            }
            if (nameEnd - name == attribute.length() && file.startsWith(attribute, name)) {
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
        OptionalDouble mm = OptionalDouble.empty();
        if (text(attribute).isPresent()) {
            Scanner in = scan(attribute);
            double number = in.number();
            mm = OptionalDouble.of(number * pixels(in));
        }
        return mm;
    }

    double length(String attribute, double otherwise) {
        return length(attribute).orElse(otherwise);
    }

    /** A length that must be there and not below zero. */
    double size(String attribute) {
        double size = length(attribute).orElseThrow(() -> fault("<" + name() + "> has no " + attribute));
        if (size < 0) {
            throw scan(attribute).fault(attribute + " is below zero");
        }
        return size;
    }

    private static double pixels(Scanner in) {
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
                throw in.fault(place, "\"" + unit + "\" is no unit of length here: use mm, cm, Q, in, pt, pc or px");
        };
        return mm / MM_PER_PIXEL;
    }

    TextException fault(String message) {
        return lines.fault(start, message);
    }
}
