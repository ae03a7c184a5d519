package dev.waterjet.calibrate;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;

/** Writer of test cuts as comma-separated text that {@link TestCutReader} reads. */
final class TestCutWriter {

    private static final String DEFAULT_MESH = "80";

    /** Column, and the cuts of which at least one is required for it to be written. */
    private record Column(String heading, Predicate<TestCut> isUsed, Function<TestCut, String> cell) {

        static Column always(String heading, Function<TestCut, String> cell) {
            return new Column(heading, cut -> true, cell);
        }

        /** Upper end, left empty where it is the lower. */
        static Column upper(String heading, Function<TestCut, Double> lower, Function<TestCut, Double> upper) {
            Predicate<TestCut> isUsed = cut -> !lower.apply(cut).equals(upper.apply(cut));
            return new Column(heading, isUsed, cut -> isUsed.test(cut) ? number(upper.apply(cut)) : "");
        }
    }

    private static final List<Column> COLUMNS = List.of(
            Column.always("test", cut -> cut.test().text()),
            Column.always(Kind.LENGTH.column("thickness"), cut -> number(cut.thicknessSi())),
            Column.upper(Kind.LENGTH.column("thickness_upper"), TestCut::thicknessSi, TestCut::upperThicknessSi),
            Column.always("index", cut -> number(cut.index())),
            Column.upper("index_upper", TestCut::index, TestCut::upperIndex),
            Column.always(Kind.SPEED.column("feed"), cut -> number(cut.feedSi())),
            Column.upper(Kind.SPEED.column("failed_feed"), TestCut::feedSi, TestCut::failedFeedSi),
            new Column(
                    "separated",
                    cut -> cut.test() == TestCut.Test.TRIAL,
                    cut -> cut.test() != TestCut.Test.TRIAL ? "" : cut.isSeparated() ? "yes" : "no"),
            Column.always(Kind.PRESSURE.column("pressure"), cut -> number(jet(cut).pressureSi())),
            Column.always(Kind.LENGTH.column("orifice"), cut -> number(jet(cut).orificeBoreSi())),
            Column.always(
                    "discharge_coefficient", cut -> discharge(jet(cut).head().orifice())),
            Column.always(Kind.LENGTH.column("tube"), cut -> number(jet(cut).tubeBoreSi())),
            Column.always(
                    Kind.LENGTH.column("tube_length"),
                    cut -> number(jet(cut).head().tube().lengthSi())),
            new Column("mesh", cut -> !mesh(cut).equals(DEFAULT_MESH), TestCutWriter::mesh),
            new Column(
                    Kind.LENGTH.column("stand_off"),
                    cut -> jet(cut).standOffSi() != TestCutReader.DEFAULT_STAND_OFF_M,
                    cut -> number(jet(cut).standOffSi())),
            Column.always(Kind.MASS_FLOW.column("abrasive_flow"), cut -> number(jet(cut).abrasiveFlowSi())),
            Column.always("relative_deviation", cut -> number(cut.relativeDeviation())),
            new Column(
                    Kind.LENGTH.column("reading_deviation"),
                    cut -> cut.readingDeviationSi() > 0,
                    cut -> number(cut.readingDeviationSi())),
            Column.always("label", TestCut::label));

    private TestCutWriter() {}

    private static AbrasiveJet jet(TestCut cut) {
        return cut.jet();
    }

    static String write(List<TestCut> cuts) {
        List<Column> columns = new ArrayList<>(COLUMNS);
        columns.removeIf(column -> !cuts.isEmpty() && cuts.stream().noneMatch(column.isUsed));
        Set<String> attributes = new LinkedHashSet<>();
        cuts.forEach(cut -> attributes.addAll(cut.attributes().keySet()));
        for (String name : attributes) {
            columns.add(Column.always(name, cut -> cut.attributes().getOrDefault(name, "")));
        }
        StringBuilder text = new StringBuilder(
                        CsvText.row(columns.stream().map(Column::heading).toList()))
                .append('\n');
        for (TestCut cut : cuts) {
            text.append(CsvText.row(columns.stream()
                            .map(column -> column.cell.apply(cut))
                            .toList()))
                    .append('\n');
        }
        return text.toString();
    }

    /** The sieve number where the reader knows it; the name of another abrasive is an attribute of the user's. */
    private static String mesh(TestCut cut) {
        String name = cut.jet()
                .abrasive()
                .mesh()
                .name()
                .replaceAll("\\D*mesh\\D*", "")
                .strip();
        return name.matches("\\d+") ? name : DEFAULT_MESH;
    }

    /** The coefficient where it was given; the default one, which is uncertain, is left out. */
    private static String discharge(Orifice orifice) {
        boolean isDefault = orifice.dischargeCoefficient().standardUncertaintySi() > 0;
        return isDefault ? "" : number(orifice.dischargeCoefficient().si());
    }

    private static String number(double value) {
        return Double.toString(value);
    }
}
