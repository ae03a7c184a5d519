package dev.waterjet.calibrate;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.Unit;
import tech.units.indriya.quantity.Quantities;

/** Reader of test cuts as comma-separated text; the columns are those of {@link TestCut#parse}. */
final class TestCutReader {

    private static final double DEFAULT_LENGTH_IN_BORES = 80;
    private static final int DEFAULT_MESH = 80;

    private static final Map<String, Kind<?>> KINDS = Map.of(
            "thickness", Kind.LENGTH,
            "feed", Kind.SPEED,
            "pressure", Kind.PRESSURE,
            "orifice", Kind.LENGTH,
            "tube", Kind.LENGTH,
            "tube_length", Kind.LENGTH,
            "abrasive_flow", Kind.MASS_FLOW);

    private static final List<String> WITHOUT_UNIT =
            List.of("test", "index", "mesh", "discharge_coefficient", "relative_deviation", "label");

    private static final List<String> REQUIRED =
            List.of("test", "thickness", "feed", "pressure", "orifice", "tube", "abrasive_flow");

    private TestCutReader() {}

    static List<TestCut> read(String csv) {
        List<CsvText.Row> rows = CsvText.parse(csv);
        if (rows.isEmpty()) {
            throw new TextException(
                    1,
                    1,
                    Message.of(
                            "empty-test-cuts", "the file of test cuts is empty; start it with a row of column names"));
        }
        CsvText.Row header = rows.get(0);
        Map<String, Column> columns = columns(header);
        List<TestCut> cuts = new ArrayList<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            int cells = row.cells().size();
            if (cells != header.cells().size()) {
                throw row.fault(
                        cells,
                        Message.of("unequal-cells", "the row has {cells} cells, the header {columns}")
                                .with("cells", cells)
                                .with("columns", header.cells().size()));
            }
            cuts.add(cut(new Cells(row, columns)));
        }
        return List.copyOf(cuts);
    }

    /** Place of a column, and the conversion of its numbers to SI. */
    private record Column(int place, DoubleUnaryOperator toSi) {}

    private static Map<String, Column> columns(CsvText.Row header) {
        Map<String, Column> columns = new HashMap<>();
        for (int i = 0; i < header.cells().size(); i++) {
            String heading = header.cells().get(i);
            String name = name(header, i, heading);
            Kind<?> kind = KINDS.get(name);
            DoubleUnaryOperator toSi = kind == null
                    ? DoubleUnaryOperator.identity()
                    : toSi(header, i, heading.substring(name.length()), kind);
            if (columns.put(name, new Column(i, toSi)) != null) {
                throw header.fault(
                        i,
                        Message.of("repeated-column", "column {column} is repeated")
                                .with("column", name));
            }
        }
        for (String required : REQUIRED) {
            if (!columns.containsKey(required)) {
                throw header.fault(
                        header.cells().size(),
                        Message.of("missing-column", "missing column {column}").with("column", required));
            }
        }
        return columns;
    }

    private static String name(CsvText.Row header, int place, String heading) {
        if (WITHOUT_UNIT.contains(heading)) {
            return heading;
        }
        // the longest name first: tube_length_mm is not a tube
        return KINDS.keySet().stream()
                .filter(name -> heading.startsWith(name + "_") || heading.startsWith(name + " "))
                .max((one, other) -> Integer.compare(one.length(), other.length()))
                .orElseThrow(() -> header.fault(place, unknownColumn(heading)));
    }

    private static Message unknownColumn(String heading) {
        Kind<?> kind = KINDS.get(heading);
        return kind == null
                ? Message.of("unknown-column", "unknown column {column} in a file of test cuts")
                        .withInput("column", heading)
                : Message.of("column-without-unit", "column {column} has no unit; write it as {example}")
                        .with("column", heading)
                        .with("example", kind.column(heading));
    }

    private static <Q extends Quantity<Q>> DoubleUnaryOperator toSi(
            CsvText.Row header, int place, String suffix, Kind<Q> kind) {
        String symbol = suffix.startsWith("_")
                ? suffix.substring(1).replace("_per_", "/")
                : suffix.strip().replaceAll("^\\[|\\]$", "");
        try {
            Unit<Q> unit = QuantityText.parseUnit(kind, symbol);
            return number -> kind.si(Quantities.getQuantity(number, unit));
        } catch (TextException e) {
            throw header.fault(place, e.message());
        }
    }

    private record Cells(CsvText.Row row, Map<String, Column> columns) {

        String text(String name) {
            Column column = columns.get(name);
            return column == null ? "" : row.cells().get(column.place());
        }

        int place(String name) {
            Column column = columns.get(name);
            return column == null ? 0 : column.place();
        }

        double si(String name, double otherwise) {
            Column column = columns.get(name);
            if (column == null || text(name).isEmpty()) {
                return otherwise;
            }
            return column.toSi().applyAsDouble(row.number(column.place(), name));
        }

        double required(String name) {
            double si = si(name, Double.NaN);
            if (Double.isNaN(si)) {
                throw row.fault(
                        place(name),
                        Message.of("empty-cell", "column {column} is empty").with("column", name));
            }
            return si;
        }
    }

    private static TestCut cut(Cells cells) {
        try {
            TestCut cut = cut(cells, jet(cells));
            return cut.withRelativeDeviation(cells.si("relative_deviation", cut.relativeDeviation()))
                    .withLabel(cells.text("label"));
        } catch (TextException e) {
            throw e;
        } catch (WaterjetException e) {
            throw cells.row().fault(0, e.message());
        }
    }

    private static TestCut cut(Cells cells, AbrasiveJet jet) {
        var thickness = Kind.LENGTH.of(cells.required("thickness"));
        var feed = Kind.SPEED.of(cells.required("feed"));
        double index = cells.si("index", 1);
        String test = cells.text("test");
        if (index != 1 && !test.equals(TestCut.Test.GRADED.text())) {
            throw cells.row()
                    .fault(
                            cells.place("index"),
                            Message.of("index-not-allowed", "test {test} has the quality index 1; leave the cell empty")
                                    .withInput("test", test));
        }
        return switch (test) {
            case "separation" -> TestCut.separated(jet, thickness, feed);
            case "depth" -> TestCut.groove(jet, thickness, feed);
            case "graded" -> TestCut.graded(jet, thickness, index, feed);
            default ->
                throw cells.row()
                        .fault(
                                cells.place("test"),
                                Message.of("unknown-test", "unknown test {test}; use separation, depth or graded")
                                        .withInput("test", test));
        };
    }

    private static AbrasiveJet jet(Cells cells) {
        double tubeM = cells.required("tube");
        Orifice orifice = Orifice.sapphire(Kind.LENGTH.of(cells.required("orifice")));
        double discharge = cells.si("discharge_coefficient", Double.NaN);
        if (!Double.isNaN(discharge)) {
            orifice = orifice.withDischargeCoefficient(discharge);
        }
        double lengthM = cells.si("tube_length", DEFAULT_LENGTH_IN_BORES * tubeM);
        return CuttingHead.of(orifice, FocusingTube.of(Kind.LENGTH.of(tubeM), Kind.LENGTH.of(lengthM)))
                .jet(
                        Kind.PRESSURE.of(cells.required("pressure")),
                        Abrasive.garnet(Mesh.of((int) Math.rint(cells.si("mesh", DEFAULT_MESH)))),
                        Kind.MASS_FLOW.of(cells.required("abrasive_flow")));
    }
}
