package dev.waterjet.examples;

import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.part.Point;
import dev.waterjet.placement.Location;
import dev.waterjet.placement.PartLocator;
import dev.waterjet.placement.ProbedPoint;
import dev.waterjet.placement.RigidMove;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/** File of probed points. */
final class ProbeFile {

    private ProbeFile() {}

    /** The place of a part; the expected rotation decides where two places fit alike. */
    static Location locate(List<ProbedPoint> points, Quantity<Angle> expected) {
        return PartLocator.locate(points, RigidMove.of(expected, Point.millimetres(0, 0)));
    }

    /** The points of a file. */
    static List<ProbedPoint> read(Path file) {
        List<CsvText.Row> rows = CsvText.parse(TextFiles.read(file));
        if (rows.isEmpty()) {
            throw new TextException(1, 1, "the file has no points");
        }
        List<String> heading = rows.get(0).cells();
        for (String name : List.of("feature", "known_x", "known_y", "probed_x", "probed_y")) {
            if (column(heading, name) < 0) {
                throw new TextException(rows.get(0).line(), 1, "the column " + name + " is missing");
            }
        }
        List<ProbedPoint> points = new ArrayList<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            try {
                points.add(point(heading, row));
            } catch (TextException e) {
                throw e.line() > 0 ? e : row.fault(0, e.message());
            } catch (WaterjetException e) {
                throw row.fault(0, e.message());
            }
        }
        return points;
    }

    private static ProbedPoint point(List<String> heading, CsvText.Row row) {
        if (row.cells().size() != heading.size()) {
            throw row.fault(
                    0,
                    Message.of("wrong-cell-count", "the row has {cells} cells; the heading has {columns}")
                            .with("cells", row.cells().size())
                            .with("columns", heading.size()));
        }
        Point known = Point.of(length(heading, row, "known_x"), length(heading, row, "known_y"));
        Point probed = Point.of(length(heading, row, "probed_x"), length(heading, row, "probed_y"));
        String feature = row.cells().get(column(heading, "feature")).toLowerCase(Locale.ROOT);
        ProbedPoint point = switch (feature) {
            case "hole" -> ProbedPoint.hole(known, probed);
            case "edge" ->
                ProbedPoint.edge(known, Point.of(length(heading, row, "end_x"), length(heading, row, "end_y")), probed);
            case "wall" -> ProbedPoint.wall(known, length(heading, row, "radius"), probed);
            default ->
                throw row.fault(
                        column(heading, "feature"),
                        Message.of("unknown-feature", "unknown feature {feature}; use hole, edge or wall")
                                .withInput("feature", feature));
        };
        return optional(heading, row, "uncertainty").map(point::withUncertainty).orElse(point);
    }

    private static int column(List<String> heading, String name) {
        for (int i = 0; i < heading.size(); i++) {
            if (heading.get(i).equals(name) || heading.get(i).matches(name + "_[a-z]+")) {
                return i;
            }
        }
        return -1;
    }

    private static Optional<Quantity<Length>> optional(List<String> heading, CsvText.Row row, String name) {
        int column = column(heading, name);
        if (column < 0 || row.cells().get(column).isBlank()) {
            return Optional.empty();
        }
        String unit = heading.get(column).substring(name.length()).replace('_', ' ');
        return Optional.of(Kind.LENGTH.parse(row.cells().get(column) + unit));
    }

    private static Quantity<Length> length(List<String> heading, CsvText.Row row, String name) {
        return optional(heading, row, name)
                .orElseThrow(() -> row.fault(
                        0, Message.of("missing-length", "{name} is missing").with("name", name)));
    }
}
