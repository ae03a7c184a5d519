package dev.waterjet.examples.svg;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.GeometryException;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.xml.XMLConstants;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads a drawing in SVG: {@code path}, {@code rect}, {@code circle}, {@code ellipse}, {@code line}, {@code polyline},
 * {@code polygon}, groups and transforms. The line itself is the contour; strokes, fills and styles say nothing here.
 *
 * <p>Sizes are those of the root element: its {@code width} and {@code height} against its {@code viewBox}; a drawing that
 * names no unit is in CSS pixels, 96 to the inch. What has no line of its own to cut, such as text, is refused, so that
 * nothing is left out in silence; what is never drawn, such as definitions, is passed over.
 *
 * <p>The attribute {@code data-quality} of a shape or a group names its cut quality, by the labels of
 * {@link CutQuality#label()}.
 *
 * <p>Limits: 20 million characters; 256 elements within each other; 64 characters in a number, and 1e9 for its size; points
 * within 1000 m of the lower left corner of the page; 100,000 chords for a curve and a million edges for the drawing. No
 * document type is read, no entity expanded, nothing loaded from outside.
 */
public final class SvgReader {

    private static final int MOST_CHARACTERS = 20_000_000;
    private static final int DEEPEST = 256;

    private static final Set<String> NEVER_DRAWN = Set.of(
            "defs",
            "symbol",
            "clipPath",
            "mask",
            "pattern",
            "marker",
            "linearGradient",
            "radialGradient",
            "filter",
            "metadata",
            "title",
            "desc",
            "style",
            "script");

    private static final Set<String> GROUPS = Set.of("g", "a");

    /** What holds for an element and those within it. */
    private record Setting(Matrix matrix, EdgeRequirement finish) {}

    private final String file;
    private final Lines lines;
    private final Deque<Setting> settings = new ArrayDeque<>();
    private final List<String> names = new ArrayList<>();
    private final Pen pen;

    private SvgReader(String file, double toleranceM, EdgeRequirement finish) {
        this.file = file;
        this.lines = new Lines(file);
        this.pen = new Pen(toleranceM);
        this.settings.push(new Setting(Matrix.IDENTITY, finish));
    }

    /**
     * Reads a drawing.
     *
     * @param svg the text of the file
     * @param tolerance how far a chord may lie from the curve that it stands for, above zero
     * @param finish requirement where the drawing names no cut quality
     * @return the drawing
     * @throws TextException with line and column, if the text is no SVG, has a fault, goes beyond a limit, or holds what
     *     cannot be cut
     */
    public static SvgDrawing read(String svg, Quantity<Length> tolerance, EdgeRequirement finish) {
        double toleranceM = Require.positive("tolerance of curves", Kind.LENGTH.si(tolerance), Units.MILLIMETRE);
        if (svg.length() > MOST_CHARACTERS) {
            throw new TextException("the drawing has more than " + MOST_CHARACTERS + " characters");
        }
        SvgReader reader = new SvgReader(svg, toleranceM, finish);
        reader.read();
        return new SvgDrawing(reader.pen.contours(), reader.names);
    }

    /** The JDK's reader, told to load nothing from outside and to expand nothing. */
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
            boolean isRoot = true;
            while (xml.hasNext()) {
                int event = xml.next();
                if (event == XMLStreamConstants.START_ELEMENT) {
                    Tag tag = new Tag(xml, file, lines);
                    if (isRoot) {
                        root(tag);
                    } else {
                        element(xml, tag);
                    }
                    isRoot = false;
                } else if (event == XMLStreamConstants.END_ELEMENT) {
                    settings.pop();
                }
            }
        } catch (XMLStreamException e) {
            throw lines.fault(
                    lines.place(
                            e.getLocation().getLineNumber(),
                            Math.max(1, e.getLocation().getColumnNumber())),
                    "the XML is broken: " + firstLine(e));
        }
        if (pen.contours().isEmpty()) {
            throw new TextException("the drawing has nothing to cut");
        }
    }

    private static String firstLine(XMLStreamException e) {
        String message = String.valueOf(e.getMessage());
        return message.substring(message.indexOf("Message: ") + (message.contains("Message: ") ? 9 : 0))
                .lines()
                .findFirst()
                .orElse("");
    }

    private void root(Tag tag) {
        if (!tag.isSvg() || !tag.name().equals("svg")) {
            throw tag.fault("this is no SVG: its root is <" + tag.name() + ">");
        }
        if (tag.text("transform").isPresent()) {
            throw tag.fault("the root has a transform; put the drawing in a group that has it");
        }
        double metresPerPixel = Tag.MM_PER_PIXEL / 1000;
        Matrix toMetres;
        if (tag.text("viewBox").isPresent()) {
            Scanner in = tag.scan("viewBox");
            double left = in.number();
            double top = in.number();
            double width = in.number();
            double height = in.number();
            if (!(width > 0) || !(height > 0)) {
                throw in.fault("the viewBox has no size");
            }
            double scaleX = rootSize(tag, "width", width) / width;
            double scaleY = rootSize(tag, "height", height) / height;
            if (!tag.text("preserveAspectRatio").orElse("").strip().startsWith("none")) {
                // one scale for both: the larger is cut down, so that all of the drawing fits; one that is missing
                // follows
                scaleX = isSized(tag, "width") ? scaleX : scaleY;
                scaleY = isSized(tag, "height") ? scaleY : scaleX;
                scaleX = Math.min(scaleX, scaleY);
                scaleY = scaleX;
            }
            toMetres = Matrix.scale(scaleX * metresPerPixel, -scaleY * metresPerPixel)
                    .with(Matrix.translate(-left, -top - height));
        } else {
            toMetres = Matrix.scale(metresPerPixel, -metresPerPixel)
                    .with(Matrix.translate(0, -rootSize(tag, "height", 0)));
        }
        if (!toMetres.isFinite()) {
            throw tag.fault("the size of the drawing over that of its viewBox is no finite number");
        }
        settings.push(new Setting(toMetres, settings.getFirst().finish()));
    }

    /** Whether the root states a size of its own; a share of the window is none. */
    private static boolean isSized(Tag tag, String attribute) {
        return !tag.text(attribute).orElse("%").endsWith("%");
    }

    private static double rootSize(Tag tag, String attribute, double otherwise) {
        return isSized(tag, attribute) ? tag.length(attribute, otherwise) : otherwise;
    }

    private void element(XMLStreamReader xml, Tag tag) throws XMLStreamException {
        if (settings.size() > DEEPEST) {
            throw tooDeep(tag);
        }
        Setting outer = settings.getFirst();
        if (!tag.isSvg() || NEVER_DRAWN.contains(tag.name()) || isHidden(tag)) {
            skip(xml, tag);
            return;
        }
        Matrix matrix = outer.matrix().with(Transforms.read(tag.scan("transform")));
        if (!matrix.isFinite()) {
            throw tag.fault("the transforms up to here have no finite numbers");
        }
        Setting inner = new Setting(matrix, finish(tag, outer));
        settings.push(inner);
        if (!GROUPS.contains(tag.name())) {
            pen.use(inner.matrix(), inner.finish());
            draw(tag);
        }
    }

    private static boolean isHidden(Tag tag) {
        return tag.text("display").orElse("").strip().equals("none")
                || tag.text("style").orElse("").replaceAll("\\s", "").contains("display:none");
    }

    private static EdgeRequirement finish(Tag tag, Setting outer) {
        if (tag.text("data-quality").isEmpty()) {
            return outer.finish();
        }
        try {
            return outer.finish()
                    .withQuality(CutQuality.parse(tag.text("data-quality").orElse("")));
        } catch (TextException e) {
            throw tag.scan("data-quality").fault(e.getMessage());
        }
    }

    private static TextException tooDeep(Tag tag) {
        return tag.fault("the drawing is nested more than " + DEEPEST + " deep");
    }

    private void skip(XMLStreamReader xml, Tag tag) throws XMLStreamException {
        int depth = 1;
        while (depth > 0) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
                if (settings.size() + depth > DEEPEST + 1) {
                    throw tooDeep(tag);
                }
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            }
        }
    }

    private void draw(Tag tag) {
        int before = pen.contours().size();
        try {
            shape(tag);
        } catch (GeometryException e) {
            throw tag.fault(String.valueOf(e.getMessage()));
        } catch (TextException e) {
            throw e.line() > 0 ? e : tag.fault(String.valueOf(e.getMessage()));
        }
        String name = tag.text("id").orElse("line " + tag.fault("").line());
        for (int i = before; i < pen.contours().size(); i++) {
            names.add(name);
        }
    }

    private void shape(Tag tag) {
        switch (tag.name()) {
            case "path" -> PathData.draw(tag.scan("d"), pen);
            case "rect" -> rectangle(tag);
            case "circle" -> ellipse(tag, tag.size("r"), tag.size("r"));
            case "ellipse" -> ellipse(tag, tag.size("rx"), tag.size("ry"));
            case "line" -> {
                pen.moveTo(tag.length("x1", 0), tag.length("y1", 0));
                pen.lineTo(tag.length("x2", 0), tag.length("y2", 0));
                pen.endOpen();
            }
            case "polyline" -> Shapes.points(pen, tag.scan("points"), false);
            case "polygon" -> Shapes.points(pen, tag.scan("points"), true);
            default -> throw tag.fault("<" + tag.name() + "> cannot be cut: turn it into paths in the drawing program");
        }
    }

    private void rectangle(Tag tag) {
        double width = tag.size("width");
        double height = tag.size("height");
        // a missing radius is as the other
        double rx = tag.length("rx", tag.length("ry", 0));
        double ry = tag.length("ry", rx);
        if (width > 0 && height > 0) {
            Shapes.rectangle(
                    pen, tag.length("x", 0), tag.length("y", 0), width, height, Math.max(0, rx), Math.max(0, ry));
        }
    }

    private void ellipse(Tag tag, double rx, double ry) {
        if (rx > 0 && ry > 0) {
            Shapes.ellipse(pen, tag.length("cx", 0), tag.length("cy", 0), rx, ry);
        }
    }
}
