package dev.waterjet.examples;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.examples.drawing.Stroke;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Program that reads a drawing and lists its parts, as a check before a part is planned. */
@Command(
        name = "drawing",
        description = {
            "Read a drawing (SVG or ASCII DXF) and list its parts and contours: size, unit, what was left out or"
                    + " closed.",
            "Compare the size with the print before cutting: a wrong unit is a wrong part.",
            ""
        })
final class DrawingTable extends Program {

    @Parameters(paramLabel = "<drawing>", description = "File with the drawing. It is only read.")
    private Path file = Path.of("");

    @Option(
            names = "--quality",
            converter = Typed.Face.class,
            paramLabel = "<level>",
            description = "Cut quality where the drawing and its layers specify none. Default: medium.")
    private CutQuality quality = CutQuality.MEDIUM;

    @Mixin
    private final DrawingOptions options = new DrawingOptions();

    private Drawing drawing() throws IOException {
        return DrawingReader.read(Files.readAllBytes(file), options.settings(EdgeRequirement.of(quality)));
    }

    @Override
    protected Table table() {
        throw new UnsupportedOperationException("the table is made of a drawing");
    }

    private static Table table(Drawing drawing) {
        Table table = Table.of("Contours")
                .words("part")
                .words("contour")
                .words("use")
                .column("length", Kind.LENGTH, Units.MILLIMETRE, 6)
                .column("area", Kind.AREA, Units.SQUARE_MILLIMETRE, 6)
                .number("edges", 6)
                .number("arcs", 6);
        for (DrawnPart part : drawing.parts()) {
            List<Contour> contours = part.part().contours();
            for (Contour contour : contours) {
                List<String> qualities = contour.requirements().stream()
                        .map(requirement -> requirement.quality().label())
                        .distinct()
                        .toList();
                row(table, part.name(), contour, String.join(", ", qualities));
            }
        }
        for (Stroke mark : drawing.marks()) {
            row(table, "", mark.path(), "mark");
        }
        return table;
    }

    private static void row(Table table, String part, Contour contour, String use) {
        int arcs = 0;
        for (int i = 0; i < contour.size(); i++) {
            arcs += contour.isArc(i) ? 1 : 0;
        }
        double area = contour.isClosed() ? Math.abs(Kind.AREA.si(contour.signedArea())) : 0;
        table.row(part, contour.name(), use, contour.lengthSi(), area, contour.size(), arcs);
    }

    @Override
    protected void print(PrintWriter out) throws IOException {
        Drawing drawing = drawing();
        Table table = table(drawing);
        out.println(drawing.summary());
        for (Caution caution : drawing.cautions()) {
            out.println(caution.severity().name().toLowerCase(Locale.ROOT) + ": " + caution.text());
        }
        out.println();
        out.print(table.text());
    }

    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        table(drawing()).writeCsv(out);
    }
}
