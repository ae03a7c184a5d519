package dev.waterjet.examples;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.placement.Location;
import dev.waterjet.placement.ProbedPoint;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Program that finds a part on the machine from probed points. */
@Command(
        name = "locate",
        description = {
            "Find rotation and shift from the drawing to the machine from probed points, with standard uncertainties"
                    + " and the residual of every point.",
            "POINTS.csv has the columns feature (hole, edge or wall), known_x, known_y, probed_x, probed_y; for an"
                    + " edge also end_x, end_y; for a point on the wall of a hole radius; and uncertainty where it is"
                    + " known. A column of lengths ends in its unit, as known_x_mm, or its cells have units. Points on"
                    + " edges and walls are given without the radius of the probe.",
            "With --feature also how exactly a feature is cut there: a budget by JCGM 100 of all stated causes.",
            "Example: waterjet locate points.csv --feature \"60 mm, 40 mm\" --deviation \"machine=within 50 um\""
                    + " --deviation \"wear=10 um +/- 6 um\" --tolerance \"0.1 mm\""
        })
final class Locate extends Program {

    @Parameters(paramLabel = "POINTS.csv", description = "File of the probed points.")
    private Path file = Path.of("");

    @Option(
            names = "--expect-rotation",
            paramLabel = "<angle>",
            description = "Approximate rotation, which decides where two places fit alike. Default: 0 deg.")
    private String expected = "0 deg";

    @Mixin
    private final FeatureAccuracy accuracy = new FeatureAccuracy();

    private Location location(List<ProbedPoint> points) {
        return ProbeFile.locate(points, Kind.ANGLE.parse(expected));
    }

    @Override
    protected Table table() {
        return place(location(points()));
    }

    private static Table place(Location location) {
        Table table = Table.of("Place of the part: rotation about the drawing's origin, then shift")
                .column("rotation", Kind.ANGLE, Units.DEGREE, 6)
                .column("shift x", Kind.LENGTH, Units.MILLIMETRE, 7)
                .column("shift y", Kind.LENGTH, Units.MILLIMETRE, 7)
                .column("rotation standard uncertainty", Kind.ANGLE, Units.DEGREE, 2)
                .column("shift x standard uncertainty", Kind.LENGTH, Units.MILLIMETRE, 2)
                .column("shift y standard uncertainty", Kind.LENGTH, Units.MILLIMETRE, 2);
        return table.row(
                Kind.ANGLE.si(location.move().rotation()),
                location.move().shift().xSi(),
                location.move().shift().ySi(),
                Kind.ANGLE.si(location.rotationUncertainty()),
                Kind.LENGTH.si(location.shiftXUncertainty()),
                Kind.LENGTH.si(location.shiftYUncertainty()));
    }

    private static Table residuals(List<ProbedPoint> points, Location location) {
        Table table = Table.of("Residuals")
                .words("point")
                .words("feature")
                .column("residual", Kind.LENGTH, Units.MILLIMETRE, 3);
        for (int i = 0; i < points.size(); i++) {
            table.row(
                    i + 1, points.get(i).feature().label(), location.residuals().si(i));
        }
        return table;
    }

    @Override
    protected void print(PrintWriter out) {
        List<ProbedPoint> points = points();
        Location location = location(points);
        Table residuals = residuals(points, location);
        residuals.note(
                location.degreesOfFreedom() == 0
                        ? "No point more than necessary was probed."
                        : "The points scatter " + QuantityText.round(location.scatter(), 2)
                                + " times as much as their uncertainty, 0.02 mm where none is stated.");
        for (Caution caution : location.cautions()) {
            residuals.note(caution.text() + ".");
        }
        residuals.note("Try the first cut without the jet, and within the limits of the machine's manual.");
        out.print(place(location).text());
        out.println();
        out.print(residuals.text());
        if (accuracy.isStated()) {
            out.println();
            out.print(accuracy.table(location).text());
        }
    }

    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        List<ProbedPoint> points = points();
        Location location = location(points);
        place(location).writeCsv(out);
        out.println();
        residuals(points, location).writeCsv(out);
        if (accuracy.isStated()) {
            out.println();
            accuracy.table(location).writeCsv(out);
        }
    }

    private List<ProbedPoint> points() {
        return ProbeFile.read(file);
    }
}
