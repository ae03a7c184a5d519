package dev.waterjet.examples.svg;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.part.Contour;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Contours of a drawing with the names of its elements, as tests compare them. */
record SvgDrawing(List<Contour> contours, List<String> names, List<Caution> cautions) {

    static SvgDrawing read(String svg, Quantity<Length> tolerance, EdgeRequirement requirement) {
        Drawing drawing = SvgReader.read(
                svg, DrawingSettings.defaults().withChordTolerance(tolerance).withRequirement(requirement));
        List<String> names = drawing.strokes().stream()
                .map(stroke -> stroke.origin().label())
                .toList();
        return new SvgDrawing(drawing.contours(), names, drawing.cautions());
    }
}
