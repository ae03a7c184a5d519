package dev.waterjet.examples.fuzz;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.examples.drawing.FileKind;
import dev.waterjet.examples.dxf.DxfReader;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.part.Contour;

/**
 * Whatever bytes come as a DXF drawing, they are read or refused in words of the library; and what was read has finite lengths,
 * and parts whose areas are above zero. Started by {@code .ci/fuzz}.
 */
public final class DxfFuzz {

    /** Contours are sorted into parts for small drawings only: crossings take longer to find than a drawing to read. */
    private static final int MAX_EDGES_OF_PARTS = 500;

    private static final DrawingSettings SETTINGS =
            DrawingSettings.defaults().withUnit(Measures.millimetres(1));

    private DxfFuzz() {}

    /**
     * One run.
     *
     * @param data the drawing
     */
    public static void fuzzerTestOneInput(byte[] data) {
        require(FileKind.of(data) != null, "no kind");
        try {
            check(DxfReader.read(FileKind.text(data), SETTINGS));
        } catch (WaterjetException refused) {
            require(!refused.getMessage().isBlank(), "refused without a word");
            require(!refused.code().equals("unspecified"), "refused without a code: " + refused.getMessage());
        }
    }

    private static void check(Drawing drawing) {
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

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalStateException(otherwise);
        }
    }
}
