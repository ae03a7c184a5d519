package dev.waterjet.examples.svg;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingAssembler;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.DrawingSource;
import dev.waterjet.measure.TextException;
import dev.waterjet.quality.CutQuality;

/**
 * Reader of drawings in SVG: {@code path}, {@code rect}, {@code circle}, {@code ellipse}, {@code line}, {@code polyline},
 * {@code polygon}, groups, {@code use}, {@code symbol} and transforms. The line itself is the contour; widths of strokes are
 * ignored.
 *
 * <p>Sizes are those of the root element: its {@code width} and {@code height} against its {@code viewBox}. A drawing that
 * states no unit is in CSS pixels, 96 to the inch, with a caution that gives its size. Shapes that {@code display} or
 * {@code visibility} hides, by attribute, style or a simple style rule, are left out and counted in a notice. A style rule that
 * may hide or move shapes and is not read is refused. So is what has no line to cut, such as text; definitions are drawn only
 * where a {@code use} refers to them.
 *
 * <p>The attribute {@code data-quality} of a shape or a group is its cut quality, by the labels of {@link CutQuality#label()}.
 *
 * <p>Limits: 20 million characters; 256 elements within each other, references counted; 64 characters in a number, and 1e9 for
 * its size; a million elements; those of {@link dev.waterjet.examples.drawing.StrokePen}. No document type is read, no entity
 * expanded, nothing loaded from outside.
 */
public final class SvgReader {

    private SvgReader() {}

    /**
     * Reads a drawing.
     *
     * @param svg text of the file
     * @param settings tolerance, unit, layer rules
     * @return the drawing
     * @throws TextException with line and column, if the text is not SVG, has a fault, goes beyond a limit, or holds what
     *     cannot be cut
     */
    public static Drawing read(String svg, DrawingSettings settings) {
        SvgDocument document = SvgDocument.parse(svg);
        return DrawingAssembler.read(factor -> strokes(document, settings, factor), settings);
    }

    private static DrawingSource strokes(SvgDocument document, DrawingSettings settings, double factor) {
        return new SvgWalk(document, settings, factor).run();
    }
}
