package dev.waterjet.examples.svg;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** Elements of a drawing, its ids and its style rules. Nothing is loaded from outside and no entity expanded. */
final class SvgDocument {

    private static final int MAX_CHARACTERS = 20_000_000;
    private static final int DEEPEST = 256;

    private final String file;
    private final Lines lines;
    private final Map<String, Tag> ids = new HashMap<>();
    private final StyleSheet styles = new StyleSheet();
    private @Nullable Tag root;

    private SvgDocument(String file) {
        this.file = file;
        this.lines = new Lines(file);
    }

    static SvgDocument parse(String file) {
        if (file.length() > MAX_CHARACTERS) {
            throw new TextException(Message.of("drawing-too-long", "the drawing has more than {limit} characters")
                    .with("limit", MAX_CHARACTERS));
        }
        SvgDocument document = new SvgDocument(file);
        document.read();
        return document;
    }

    Tag root() {
        Tag found = root;
        if (found == null) {
            throw new TextException(Message.of("not-svg", "the file holds no SVG element"));
        }
        return found;
    }

    Optional<Tag> find(String id) {
        return Optional.ofNullable(ids.get(id));
    }

    StyleSheet styles() {
        return styles;
    }

    static TextException tooDeep(Tag tag) {
        return tag.fault(Message.of("drawing-too-deep", "the drawing is nested more than {limit} deep")
                .with("limit", DEEPEST));
    }

    static int deepest() {
        return DEEPEST;
    }

    /** Reader of the JDK, set to load nothing from outside and to expand nothing. */
    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
        return factory;
    }

    private void read() {
        try {
            XMLStreamReader xml = factory().createXMLStreamReader(new StringReader(file));
            Deque<Tag> open = new ArrayDeque<>();
            while (xml.hasNext()) {
                event(xml, xml.next(), open);
            }
            xml.close();
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 1 : e.getLocation().getLineNumber();
            int column =
                    e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getColumnNumber());
            throw lines.fault(
                    lines.place(line, column),
                    Message.of("xml", "the XML is broken: {fault}").with("fault", firstLine(e)));
        } catch (MissingResourceException unnamed) {
            // the reader of JDK 17 has no text for some faults of a document type
            throw new TextException(Message.of(
                    "xml-document-type", "the XML is broken in its document type, the part in <!DOCTYPE ...>"));
        }
    }

    private static String firstLine(XMLStreamException e) {
        String message = String.valueOf(e.getMessage());
        return message.substring(message.indexOf("Message: ") + (message.contains("Message: ") ? 9 : 0))
                .lines()
                .findFirst()
                .orElse("");
    }

    private void event(XMLStreamReader xml, int event, Deque<Tag> open) {
        switch (event) {
            case XMLStreamConstants.START_ELEMENT -> start(new Tag(xml, file, lines), open);
            case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
                Tag at = open.peek();
                if (at != null && at.name().equals("style")) {
                    at.addContent(xml.getText());
                }
            }
            case XMLStreamConstants.PROCESSING_INSTRUCTION -> {
                if (String.valueOf(xml.getPITarget()).equals("xml-stylesheet")) {
                    throw lines.fault(
                            lines.place(xml.getLocation().getLineNumber(), 1),
                            Message.of(
                                    "style-sheet",
                                    "the drawing has a style sheet in another file; save it with presentation"
                                            + " attributes"));
                }
            }
            case XMLStreamConstants.END_ELEMENT -> {
                Tag closed = open.pop();
                if (closed.isSvg() && closed.name().equals("style")) {
                    styles.read(closed);
                }
            }
            default -> {
                // comments and the like
            }
        }
    }

    private void start(Tag tag, Deque<Tag> open) {
        if (open.size() >= DEEPEST) {
            throw tooDeep(tag);
        }
        Tag parent = open.peek();
        if (parent == null) {
            root = tag;
        } else {
            parent.add(tag);
        }
        if (!tag.id().isEmpty()) {
            ids.putIfAbsent(tag.id(), tag);
        }
        open.push(tag);
    }
}
