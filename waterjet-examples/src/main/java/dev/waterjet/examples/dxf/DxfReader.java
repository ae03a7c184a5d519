package dev.waterjet.examples.dxf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingAssembler;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.DrawingSource;
import dev.waterjet.examples.drawing.StrokePen;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reader of drawings in ASCII DXF. Arcs and bulges stay exact arcs; ellipses and splines become arcs within the chord
 * tolerance. Text, dimensions, hatches and points are left out and counted; so are entities on layers that are off or frozen,
 * invisible ones and those of paper space. A 3D face, solid or mesh is refused: it has no contour to cut.
 *
 * <p>The unit is that of {@code $INSUNITS}, or the user's. A drawing that states none, as in R12, is refused with its size in
 * millimetres and inches: the two differ by 25.4, and nothing in the file decides.
 *
 * <p>Limits: 50 million characters; blocks 16 deep; 10,000 inserts of one array; a million entities, inserts counted; those of
 * {@link StrokePen}.
 */
public final class DxfReader {

    private DxfReader() {}

    /**
     * Reads a drawing.
     *
     * @param dxf text of the file
     * @param settings tolerance, unit, layer rules
     * @return the drawing
     * @throws TextException with the line, if the text is not DXF, has a fault, goes beyond a limit, states no unit where none is
     *     given, or holds what cannot be cut
     */
    public static Drawing read(String dxf, DrawingSettings settings) {
        DxfFile file = DxfFile.parse(dxf);
        Optional<Double> stated = settings.unit()
                .map(Kind.LENGTH::si)
                .or(() -> file.variable("$INSUNITS").flatMap(group -> DxfUnit.metres(group.whole())));
        if (stated.isEmpty() && settings.width().isEmpty()) {
            throw withoutUnit(file, settings);
        }
        double unitM = stated.orElse(1e-3);
        return DrawingAssembler.read(factor -> strokes(file, settings, unitM * factor), settings);
    }

    private static DrawingSource strokes(DxfFile file, DrawingSettings settings, double unitM) {
        StrokePen pen = new StrokePen(settings.chordToleranceM());
        DxfWalk walk = new DxfWalk(file, settings, pen);
        walk.run(AffineMap.scale(unitM, unitM));
        List<Caution> cautions = new ArrayList<>(walk.cautions());
        return new DrawingSource("DXF", walk.strokes(), unitM, true, cautions);
    }

    private static TextException withoutUnit(DxfFile file, DrawingSettings settings) {
        Drawing drawing = DrawingAssembler.read(factor -> strokes(file, settings, 1e-3 * factor), settings);
        double width = Kind.LENGTH.si(drawing.box().width());
        double height = Kind.LENGTH.si(drawing.box().height());
        return new TextException(Message.of(
                        "drawing-unit-missing",
                        "the drawing states no unit: add --drawing-unit mm if it measures {width} by {height}, or"
                                + " --drawing-unit in if it measures {width_in} by {height_in}")
                .with("width", Kind.LENGTH, width, Units.MILLIMETRE)
                .with("height", Kind.LENGTH, height, Units.MILLIMETRE)
                .with("width_in", Kind.LENGTH, width * 25.4, Units.MILLIMETRE)
                .with("height_in", Kind.LENGTH, height * 25.4, Units.MILLIMETRE));
    }
}
