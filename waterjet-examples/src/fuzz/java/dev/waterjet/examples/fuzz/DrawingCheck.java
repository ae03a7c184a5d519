package dev.waterjet.examples.fuzz;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.part.Contour;

/** Conditions on every drawing that was read, and on every refusal. */
final class DrawingCheck {

    /** Contours are sorted into parts for small drawings only: crossings take longer to find than a drawing to read. */
    private static final int MAX_EDGES_OF_PARTS = 500;

    private DrawingCheck() {}

    static void check(Drawing drawing) {
        require(!drawing.contours().isEmpty(), "nothing to cut");
        for (Contour contour : drawing.contours()) {
            double length = contour.lengthSi();
            require(length > 0 && length < Double.POSITIVE_INFINITY, "the length of a contour is " + length);
        }
        require(!drawing.summary().isBlank(), "no summary");
        int edges = drawing.contours().stream().mapToInt(Contour::size).sum();
        if (edges <= MAX_EDGES_OF_PARTS) {
            for (DrawnPart part : drawing.parts()) {
                require(Kind.AREA.si(part.part().area()) > 0, "a part without area");
            }
        }
    }

    static void refused(WaterjetException refused) {
        require(!refused.getMessage().isBlank(), "refused without a word");
        require(!refused.code().equals("unspecified"), "refused without a code: " + refused.getMessage());
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalStateException(otherwise);
        }
    }
}
