package dev.waterjet.calibrate;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
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

    /** Stand-off distance of a head without another one. */
    static final double DEFAULT_STAND_OFF_M = CuttingHead.of(
                    Orifice.sapphire(Measures.millimetres(0.3)),
                    FocusingTube.of(Measures.millimetres(0.9), Measures.millimetres(72)))
            .standOffSi();

    private static final Map<String, Kind<?>> KINDS = Map.ofEntries(
            Map.entry("thickness", Kind.LENGTH),
            Map.entry("thickness_upper", Kind.LENGTH),
            Map.entry("feed", Kind.SPEED),
            Map.entry("feed_upper", Kind.SPEED),
            Map.entry("failed_feed", Kind.SPEED),
            Map.entry("pressure", Kind.PRESSURE),
            Map.entry("orifice", Kind.LENGTH),
            Map.entry("tube", Kind.LENGTH),
            Map.entry("tube_length", Kind.LENGTH),
            Map.entry("stand_off", Kind.LENGTH),
            Map.entry("reading_deviation", Kind.LENGTH),
            Map.entry("abrasive_flow", Kind.MASS_FLOW));

    private static final List<String> WITHOUT_UNIT = List.of(
            "test",
            "index",
            "index_upper",
            "separated",
            "mesh",
            "discharge_coefficient",
            "relative_deviation",
            "label");

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

    /** Place of a column, the conversion of its numbers to SI, and whether it has a meaning here. */
    private record Column(int place, DoubleUnaryOperator toSi, boolean isFree) {}

    private static Map<String, Column> columns(CsvText.Row header) {
        if (header.cells().size() == 1 && header.cells().get(0).contains(";")) {
            throw header.fault(
                    0,
                    Message.of(
                            "semicolons-between-cells",
                            "the cells are separated by semicolons; save the file with commas between cells and points"
                                    + " in numbers"));
        }
        Map<String, Column> columns = new LinkedHashMap<>();
        for (int i = 0; i < header.cells().size(); i++) {
            String heading = header.cells().get(i);
            String name = name(header, i, heading);
            Kind<?> kind = KINDS.get(name);
            DoubleUnaryOperator toSi = kind == null
                    ? DoubleUnaryOperator.identity()
                    : toSi(header, i, heading.substring(name.length()), kind);
            if (columns.put(name, new Column(i, toSi, kind == null && !WITHOUT_UNIT.contains(name))) != null) {
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
        if (KINDS.containsKey(heading)) {
            throw header.fault(
                    place,
                    Message.of("column-without-unit", "column {column} has no unit; write it as {example}")
                            .with("column", heading)
                            .with("example", KINDS.get(heading).column(heading)));
        }
        if (heading.isBlank()) {
            throw header.fault(place, Message.of("unnamed-column", "a column has no name"));
        }
        // the longest name first: tube_length_mm is not a tube; a heading of the user's own is its name
        return KINDS.keySet().stream()
                .filter(name -> heading.startsWith(name + "_") || heading.startsWith(name + " "))
                .max((one, other) -> Integer.compare(one.length(), other.length()))
                .orElse(heading);
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
            cut = cut.withRelativeDeviation(cells.si("relative_deviation", cut.relativeDeviation()))
                    .withReadingDeviation(Kind.LENGTH.of(cells.si("reading_deviation", 0)))
                    .withLabel(cells.text("label"));
            for (Map.Entry<String, Column> column : cells.columns().entrySet()) {
                if (column.getValue().isFree()) {
                    cut = cut.withAttribute(column.getKey(), cells.text(column.getKey()));
                }
            }
            return cut;
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
        double upperIndex = cells.si("index_upper", index);
        var upperThickness = Kind.LENGTH.of(cells.si("thickness_upper", Kind.LENGTH.si(thickness)));
        String failed = cells.text("failed_feed").isEmpty() ? "feed_upper" : "failed_feed";
        String test = test(cells, failed);
        return switch (test) {
            case "separation" -> TestCut.separated(jet, thickness, feed);
            case "interval" -> TestCut.between(jet, thickness, feed, Kind.SPEED.of(cells.required(failed)));
            case "trial" -> TestCut.trial(jet, thickness, feed, isYes(cells));
            case "depth" ->
                upperThickness.equals(thickness)
                        ? TestCut.groove(jet, thickness, feed)
                        : TestCut.grooveBetween(jet, thickness, upperThickness, feed);
            case "graded" ->
                upperIndex == index
                        ? TestCut.graded(jet, thickness, index, feed)
                        : TestCut.gradedBetween(jet, thickness, index, upperIndex, feed);
            default ->
                throw cells.row()
                        .fault(
                                cells.place("test"),
                                Message.of(
                                                "unknown-test",
                                                "unknown test {test}; use separation, interval, trial, depth or graded")
                                        .withInput("test", test));
        };
    }

    /** Name of the test; a separation with a failed feed rate is an interval, one with yes or no a trial. */
    private static String test(Cells cells, String failed) {
        String test = cells.text("test");
        boolean hasFailed = !cells.text(failed).isEmpty();
        boolean hasOutcome = !cells.text("separated").isEmpty();
        allow(cells, "index", test.equals("graded") || cells.si("index", 1) == 1, test);
        allow(cells, "index_upper", test.equals("graded"), test);
        allow(cells, "thickness_upper", test.equals("depth"), test);
        allow(cells, failed, test.equals("separation") || test.equals("interval"), test);
        allow(cells, "separated", (test.equals("separation") || test.equals("trial")) && !hasFailed, test);
        if (!test.equals("separation")) {
            return test;
        }
        return hasFailed ? "interval" : hasOutcome ? "trial" : test;
    }

    private static void allow(Cells cells, String column, boolean isAllowed, String test) {
        if (!cells.text(column).isEmpty() && !isAllowed) {
            throw cells.row()
                    .fault(
                            cells.place(column),
                            Message.of(
                                            "column-not-allowed",
                                            "test {test} does not take column {column}; leave the cell empty")
                                    .withInput("test", test)
                                    .with("column", column));
        }
    }

    private static boolean isYes(Cells cells) {
        String outcome = cells.text("separated");
        if (!outcome.equals("yes") && !outcome.equals("no")) {
            throw cells.row()
                    .fault(
                            cells.place("separated"),
                            Message.of("neither-yes-nor-no", "a trial has yes or no in column separated, not {outcome}")
                                    .withInput("outcome", outcome));
        }
        return outcome.equals("yes");
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
                .withStandOff(Kind.LENGTH.of(cells.si("stand_off", DEFAULT_STAND_OFF_M)))
                .jet(
                        Kind.PRESSURE.of(cells.required("pressure")),
                        Abrasive.garnet(Mesh.of((int) Math.rint(cells.si("mesh", DEFAULT_MESH)))),
                        Kind.MASS_FLOW.of(cells.required("abrasive_flow")));
    }
}
