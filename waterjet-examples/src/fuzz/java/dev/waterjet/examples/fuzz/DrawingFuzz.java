package dev.waterjet.examples.fuzz;

import dev.waterjet.examples.svg.DrawnProgram;
import dev.waterjet.examples.svg.SvgDrawing;
import dev.waterjet.examples.svg.SvgReader;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.part.Contour;
import dev.waterjet.program.PartProgram;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.CuttingRules;
import java.nio.charset.StandardCharsets;

/**
 * Whatever text comes as a drawing, it is read or refused in words of the library; and what was read has finite lengths and can
 * be written as a program, which is read back. Started by {@code .ci/fuzz}.
 */
public final class DrawingFuzz {

    /** Programs are written for small drawings only: to find places to pierce takes longer than to read. */
    private static final int MOST_EDGES_OF_A_PROGRAM = 200;

    private static final CuttingRules RULES = CuttingRules.of(Measures.millimetres(1), Measures.millimetres(6));

    private DrawingFuzz() {}

    /**
     * One run.
     *
     * @param data the drawing in UTF-8
     */
    public static void fuzzerTestOneInput(byte[] data) {
        try {
            String text = new String(data, StandardCharsets.UTF_8);
            program(read(text));
        } catch (WaterjetException refused) {
            require(refused.getMessage() != null && !refused.getMessage().isBlank(), "refused without a word");
        }
    }

    private static SvgDrawing read(String text) {
        SvgDrawing drawing = SvgReader.read(text, Measures.micrometres(20), EdgeRequirement.defaults());
        require(!drawing.contours().isEmpty(), "nothing to cut");
        require(drawing.contours().size() == drawing.names().size(), "names are missing");
        for (Contour contour : drawing.contours()) {
            double length = Kind.LENGTH.si(contour.length());
            require(length > 0 && length < Double.POSITIVE_INFINITY, "the length of a contour is " + length);
        }
        return drawing;
    }

    private static void program(SvgDrawing drawing) {
        int edges = drawing.contours().stream().mapToInt(Contour::size).sum();
        if (edges > MOST_EDGES_OF_A_PROGRAM) {
            return;
        }
        String program = DrawnProgram.text("Hollow Ridge", drawing, RULES, 3, 5);
        PartProgram read;
        try {
            read = PartProgram.parse(program);
        } catch (WaterjetException refused) {
            throw new IllegalStateException("what was written is not read back:\n" + program, refused);
        }
        require(read.cuts().size() == drawing.contours().size(), "cuts are missing");
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalStateException(otherwise);
        }
    }
}
