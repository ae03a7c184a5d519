package dev.waterjet.examples;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.FileKind;
import dev.waterjet.examples.dxf.DxfReader;
import dev.waterjet.examples.svg.SvgReader;
import dev.waterjet.measure.TextException;

/**
 * Reader of drawings of every format that is read, chosen by content.
 *
 * <pre>{@code
 * Drawing drawing = DrawingReader.read(Files.readAllBytes(file), DrawingSettings.defaults());
 * }</pre>
 */
public final class DrawingReader {

    private DrawingReader() {}

    /**
     * Reads a drawing.
     *
     * @param content bytes of the file
     * @param settings tolerances, unit, layer rules
     * @return the drawing
     * @throws TextException with code {@code wrong-file-kind} if the file is no drawing, with what it is; or as the reader of
     *     its format says, with its place
     */
    public static Drawing read(byte[] content, DrawingSettings settings) {
        FileKind kind = FileKind.require(content, FileKind.SVG, FileKind.DXF);
        String text = FileKind.text(content);
        return kind == FileKind.SVG ? SvgReader.read(text, settings) : DxfReader.read(text, settings);
    }
}
