package dev.waterjet.examples.fuzz;

import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.svg.SvgReader;
import dev.waterjet.measure.WaterjetException;
import java.nio.charset.StandardCharsets;

/**
 * Whatever text comes as a drawing in SVG, it is read or refused in words of the library; and what was read has finite lengths,
 * and parts whose areas are above zero. Started by {@code .ci/fuzz}.
 */
public final class DrawingFuzz {

    private DrawingFuzz() {}

    /**
     * One run.
     *
     * @param data the drawing in UTF-8
     */
    public static void fuzzerTestOneInput(byte[] data) {
        try {
            DrawingCheck.check(SvgReader.read(new String(data, StandardCharsets.UTF_8), DrawingSettings.defaults()));
        } catch (WaterjetException refused) {
            DrawingCheck.refused(refused);
        }
    }
}
