package dev.waterjet.calibrate;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Scale;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;

/**
 * Test cuts as comma-separated text (RFC 4180) with units in the header.
 *
 * <p>Columns, in any order: {@code test} (separation, depth or graded), {@code thickness} of the plate or depth of the
 * groove, {@code feed}, {@code pressure} (gauge, at the orifice), {@code orifice}, {@code tube} and {@code abrasive_flow};
 * and where wanted {@code index} (of a graded cut; else 1 or empty), {@code tube_length} (else 80 bores), {@code mesh} of the
 * garnet (else 80), {@code discharge_coefficient}, {@code relative_deviation} (else 0.05) and {@code label}. A column with a
 * unit carries it after its name, {@code thickness_mm} and {@code feed_mm_per_min}, or in brackets,
 * {@code feed [mm/min]}; any unit of its kind will do. Lines that start with {@code #} are passed over.
 */
public final class TestCutText {

    private static final double USUAL_LENGTH_IN_BORES = 80;
    private static final int USUAL_MESH = 80;

    private static final Map<String, Kind<?>> KINDS = Map.of(
            "thickness", Kind.LENGTH,
            "feed", Kind.SPEED,
            "pressure", Kind.PRESSURE,
            "orifice", Kind.LENGTH,
            "tube", Kind.LENGTH,
            "tube_length", Kind.LENGTH,
            "abrasive_flow", Kind.MASS_FLOW);

    private static final List<String> PLAIN =
            List.of("test", "index", "mesh", "discharge_coefficient", "relative_deviation", "label");

    private static final List<String> NEEDED =
            List.of("test", "thickness", "feed", "pressure", "orifice", "tube", "abrasive_flow");

    private TestCutText() {}

    /**
     * Reads cuts.
     *
     * @param csv the text
     * @return the cuts, in the order of the rows
     * @throws TextException if a column is missing or unknown, or a cell cannot be read; it names line and column
     */
    public static List<TestCut> parse(String csv) {
        List<CsvText.Row> rows = CsvText.parse(csv);
        if (rows.isEmpty()) {
            throw new TextException(1, 1, "the file of test cuts is empty; it starts with a row of column names");
        }
        Map<String, Column> columns = columns(rows.get(0));
        List<TestCut> cuts = new ArrayList<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            if (row.cells().size() != rows.get(0).cells().size()) {
                throw row.fault(
                        row.cells().size(),
                        "the row has " + row.cells().size() + " cells, the header "
                                + rows.get(0).cells().size());
            }
            cuts.add(cut(new Cells(row, columns)));
        }
        return List.copyOf(cuts);
    }

    /** Where a column stands, and what turns its numbers into SI. */
    private record Column(int place, Scale<?> scale) {}

    private static Map<String, Column> columns(CsvText.Row header) {
        Map<String, Column> columns = new HashMap<>();
        for (int i = 0; i < header.cells().size(); i++) {
            String heading = header.cells().get(i);
            String name = name(header, i, heading);
            Kind<?> kind = KINDS.getOrDefault(name, Kind.RATIO);
            if (columns.put(name, new Column(i, scale(header, i, heading, name, kind))) != null) {
                throw header.fault(i, "the column " + name + " stands twice");
            }
        }
        for (String needed : NEEDED) {
            if (!columns.containsKey(needed)) {
                throw header.fault(header.cells().size(), "there is no column " + needed);
            }
        }
        return columns;
    }

    private static String name(CsvText.Row header, int place, String heading) {
        if (PLAIN.contains(heading)) {
            return heading;
        }
        // the longest name first: tube_length_mm is not a tube
        return KINDS.keySet().stream()
                .filter(name -> heading.startsWith(name + "_") || heading.startsWith(name + " "))
                .max((one, other) -> Integer.compare(one.length(), other.length()))
                .orElseThrow(() -> header.fault(
                        place,
                        KINDS.containsKey(heading)
                                ? "the column " + heading + " has no unit: write it as " + heading + "_"
                                        + KINDS.get(heading).column("x").substring(2)
                                : "there is no column \"" + heading + "\" in a file of test cuts"));
    }

    private static <Q extends Quantity<Q>> Scale<Q> scale(
            CsvText.Row header, int place, String heading, String name, Kind<Q> kind) {
        if (PLAIN.contains(name)) {
            return Scale.of(kind, kind.siUnit());
        }
        String unit = heading.substring(name.length());
        String symbol = unit.startsWith("_")
                ? unit.substring(1).replace("_per_", "/")
                : unit.strip().replaceAll("^\\[|\\]$", "");
        try {
            return Scale.of(kind, QuantityText.parseUnit(kind, symbol));
        } catch (TextException e) {
            throw header.fault(place, e.getMessage());
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
            String text = text(name);
            Column column = columns.get(name);
            if (text.isEmpty() || column == null) {
                return otherwise;
            }
            return column.scale().toSi(row.number(column.place(), name));
        }

        double needed(String name) {
            double si = si(name, Double.NaN);
            if (Double.isNaN(si)) {
                throw row.fault(place(name), "there is no " + name);
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
            throw cells.row().fault(0, e.getMessage());
        }
    }

    private static TestCut cut(Cells cells, AbrasiveJet jet) {
        var thickness = Kind.LENGTH.of(cells.needed("thickness"));
        var feed = Kind.SPEED.of(cells.needed("feed"));
        double index = cells.si("index", 1);
        String test = cells.text("test");
        if (index != 1 && !test.equals(TestCut.Test.GRADED.words())) {
            throw cells.row().fault(cells.place("index"), "a " + test + " test has no index other than 1");
        }
        return switch (test) {
            case "separation" -> TestCut.separated(jet, thickness, feed);
            case "depth" -> TestCut.groove(jet, thickness, feed);
            case "graded" -> TestCut.graded(jet, thickness, index, feed);
            default ->
                throw cells.row()
                        .fault(cells.place("test"), "test \"" + test + "\" is none of separation, depth, graded");
        };
    }

    private static AbrasiveJet jet(Cells cells) {
        double tubeM = cells.needed("tube");
        Orifice orifice = Orifice.sapphire(Kind.LENGTH.of(cells.needed("orifice")));
        double discharge = cells.si("discharge_coefficient", Double.NaN);
        if (!Double.isNaN(discharge)) {
            orifice = orifice.withDischargeCoefficient(discharge);
        }
        double lengthM = cells.si("tube_length", USUAL_LENGTH_IN_BORES * tubeM);
        return CuttingHead.of(orifice, FocusingTube.of(Kind.LENGTH.of(tubeM), Kind.LENGTH.of(lengthM)))
                .jet(
                        Kind.PRESSURE.of(cells.needed("pressure")),
                        Abrasive.garnet(Mesh.of((int) Math.rint(cells.si("mesh", USUAL_MESH)))),
                        Kind.MASS_FLOW.of(cells.needed("abrasive_flow")));
    }

    /**
     * Writes cuts in SI and full precision, so that they can be read back. The mesh is not written, as no model
     * counts with it: the cuts are read back with 80 mesh garnet.
     *
     * @param cuts the cuts
     * @return the text, with a header and a line end after each row
     */
    public static String print(List<TestCut> cuts) {
        StringBuilder text = new StringBuilder(String.join(
                        ",",
                        "test",
                        Kind.LENGTH.column("thickness"),
                        "index",
                        Kind.SPEED.column("feed"),
                        Kind.PRESSURE.column("pressure"),
                        Kind.LENGTH.column("orifice"),
                        "discharge_coefficient",
                        Kind.LENGTH.column("tube"),
                        Kind.LENGTH.column("tube_length"),
                        Kind.MASS_FLOW.column("abrasive_flow"),
                        "relative_deviation",
                        "label"))
                .append('\n');
        for (TestCut cut : cuts) {
            AbrasiveJet jet = cut.jet();
            text.append(CsvText.row(List.of(
                            cut.test().words(),
                            number(cut.thicknessSi()),
                            number(cut.index()),
                            number(cut.feedSi()),
                            number(jet.water().pressureSi()),
                            number(jet.head().orifice().boreSi()),
                            discharge(jet.head().orifice()),
                            number(jet.head().tube().boreSi()),
                            number(jet.head().tube().lengthSi()),
                            number(jet.abrasiveFlowSi()),
                            number(cut.relativeDeviation()),
                            cut.label())))
                    .append('\n');
        }
        return text.toString();
    }

    /** The coefficient where it is known; the usual one, which is uncertain, goes without saying. */
    private static String discharge(Orifice orifice) {
        boolean isUsual = orifice.dischargeCoefficient().standardUncertaintySi() > 0;
        return isUsual ? "" : number(orifice.dischargeCoefficient().si());
    }

    private static String number(double value) {
        return Double.toString(value);
    }
}
