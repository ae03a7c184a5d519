package dev.waterjet.examples.fuzz;

import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.FileKind;
import dev.waterjet.examples.dxf.DxfReader;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.WaterjetException;

/**
 * Whatever bytes come as a DXF drawing, they are read or refused in words of the library; and what was read has finite lengths,
 * and parts whose areas are above zero. Started by {@code .ci/fuzz}.
 */
public final class DxfFuzz {

    private static final DrawingSettings SETTINGS = DrawingSettings.defaults().withUnit(Measures.millimetres(1));

    private DxfFuzz() {}

    /**
     * One run.
     *
     * @param data the drawing
     */
    public static void fuzzerTestOneInput(byte[] data) {
        FileKind.of(data);
        try {
            DrawingCheck.check(DxfReader.read(FileKind.text(data), SETTINGS));
        } catch (WaterjetException refused) {
            DrawingCheck.refused(refused);
        }
    }
}
