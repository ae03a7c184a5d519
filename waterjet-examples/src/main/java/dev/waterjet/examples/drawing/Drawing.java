package dev.waterjet.examples.drawing;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Drawing with its loose ends joined: contours to cut, lines to mark, places of tabs, and what its reader left out or changed.
 *
 * <pre>{@code
 * Drawing drawing = DrawingReader.read(Path.of("shutter.dxf"), DrawingSettings.defaults());
 * drawing.cautions().forEach(caution -> System.out.println(caution.text()));
 * for (DrawnPart part : drawing.parts()) {
 *     plan(part.name(), part.part());
 * }
 * }</pre>
 *
 * @param format format for people, such as {@code SVG}
 * @param strokes contours to cut in the order of the file, in metres, y upwards, each with the name of its entity; a contour
 *     that is still open has no part
 * @param marks lines that the jet marks without cutting through
 * @param tabs places of holding tabs
 * @param unitM length of one unit of the drawing in m
 * @param isUnitStated whether the drawing or the user stated the unit; false if it was assumed
 * @param joinM largest gap between ends that was closed, in m
 * @param cautions entities left out, gaps closed, units assumed
 */
public record Drawing(
        String format,
        List<Stroke> strokes,
        List<Stroke> marks,
        List<TabMark> tabs,
        double unitM,
        boolean isUnitStated,
        double joinM,
        List<Caution> cautions) {

    private static final double INCH_M = 0.0254;

    /** Units of drawings in inches, in inches: down to a micro-inch, up to a yard. */
    private static final List<Double> INCH_UNITS = List.of(1e-6, 1e-3, 1e-2, 0.1, 1.0, 12.0, 36.0);

    /**
     * Keeps unmodifiable copies.
     *
     * @param format format for people
     * @param strokes contours to cut
     * @param marks lines that the jet marks without cutting through
     * @param tabs places of holding tabs
     * @param unitM length of one unit of the drawing in m
     * @param isUnitStated whether the unit was stated
     * @param joinM largest gap between ends that was closed, in m
     * @param cautions entities left out, gaps closed, units assumed
     */
    public Drawing {
        strokes = List.copyOf(strokes);
        marks = List.copyOf(marks);
        tabs = List.copyOf(tabs);
        cautions = List.copyOf(cautions);
    }

    /** {@return the contours to cut, in the order of the file} */
    public List<Contour> contours() {
        return strokes.stream().map(Stroke::path).toList();
    }

    /** {@return the smallest rectangle along the axes that holds all contours to cut} */
    public Box box() {
        return boxOf(strokes);
    }

    static Box boxOf(List<Stroke> strokes) {
        double minimumX = Double.POSITIVE_INFINITY;
        double minimumY = Double.POSITIVE_INFINITY;
        double maximumX = Double.NEGATIVE_INFINITY;
        double maximumY = Double.NEGATIVE_INFINITY;
        for (Stroke stroke : strokes) {
            Box box = stroke.path().box();
            minimumX = Math.min(minimumX, box.minimum().xSi());
            minimumY = Math.min(minimumY, box.minimum().ySi());
            maximumX = Math.max(maximumX, box.maximum().xSi());
            maximumY = Math.max(maximumY, box.maximum().ySi());
        }
        return new Box(Point.ofSi(minimumX, minimumY), Point.ofSi(maximumX, maximumY));
    }

    /**
     * Returns the parts of the drawing, by the nesting of its contours.
     *
     * @return the parts, in the order of their outlines in the file
     * @throws TextException with code {@code open-contour} or {@code contour-ends-on-line} if a contour is open, with
     *     {@code contours-meet} if two touch or cross, or with the code of the fault if one crosses itself; with entity and place
     */
    public List<DrawnPart> parts() {
        for (int i = 0; i < strokes.size(); i++) {
            if (!strokes.get(i).path().isClosed()) {
                throw open(i);
            }
        }
        return Nesting.parts(strokes);
    }

    /**
     * Returns the part of a drawing of one part.
     *
     * @return the part
     * @throws TextException as for {@link #parts()}, or with code {@code several-parts} and their names
     */
    public DrawnPart onlyPart() {
        List<DrawnPart> parts = parts();
        if (parts.size() != 1) {
            throw new TextException(Message.of(
                            "several-parts",
                            "the drawing holds {count} parts ({names}); one part a drawing is read here")
                    .with("count", parts.size())
                    .with(
                            "names",
                            String.join(
                                    ", ",
                                    parts.stream()
                                            .map(part -> "\"" + part.name() + "\"")
                                            .toList())));
        }
        return parts.get(0);
    }

    private TextException open(int index) {
        Stroke stroke = strokes.get(index);
        Contour path = stroke.path();
        Optional<TextException> junction = junction(index, path.start()).or(() -> junction(index, path.end()));
        return junction.orElseGet(() -> new TextException(Message.of(
                        "open-contour",
                        "the contour {entity} is open: its ends are {start} and {end}; join them, raise --join above"
                                + " the gap, or mark or skip it with --layer")
                .with("entity", stroke.origin().place())
                .with("start", path.start().toString())
                .with("end", path.end().toString())));
    }

    /** The refusal of an end that lies on another line, away from its ends. */
    private Optional<TextException> junction(int index, Point end) {
        for (int j = 0; j < strokes.size(); j++) {
            Contour other = strokes.get(j).path();
            if (j != index && Kind.LENGTH.si(other.clearance(end)) <= Math.max(joinM, 1e-9)) {
                return Optional.of(new TextException(Message.of(
                                "contour-ends-on-line",
                                "{entity} ends at {end} on {other}, away from its ends; a contour has no branches")
                        .with("entity", strokes.get(index).origin().place())
                        .with("end", end.toString())
                        .with("other", strokes.get(j).origin().place())));
            }
        }
        return Optional.empty();
    }

    /** {@return whether its unit is an inch, a decimal fraction of one, a foot or a yard} */
    public boolean isInch() {
        double inches = unitM / INCH_M;
        return INCH_UNITS.stream().anyMatch(unit -> Math.abs(inches - unit) < 1e-9 * unit);
    }

    /** {@return one line about format, unit, size and number of contours} */
    public String summary() {
        Box box = box();
        StringBuilder text = new StringBuilder(format)
                .append(", 1 unit = ")
                .append(length(unitM))
                .append(isUnitStated ? "" : " (assumed)")
                .append(", ")
                .append(length(Kind.LENGTH.si(box.width())))
                .append(" by ")
                .append(length(Kind.LENGTH.si(box.height())))
                .append(", ")
                .append(count(strokes.size(), "contour"));
        if (!marks.isEmpty()) {
            text.append(", ").append(count(marks.size(), "marking line"));
        }
        if (!tabs.isEmpty()) {
            text.append(", ").append(count(tabs.size(), "tab"));
        }
        return text.toString();
    }

    private static String length(double metres) {
        return QuantityText.round(Units.fromSi(metres, Units.MILLIMETRE), 4) + " mm";
    }

    private static String count(int count, String noun) {
        return String.format(Locale.ROOT, "%d %s%s", count, noun, count == 1 ? "" : "s");
    }
}
