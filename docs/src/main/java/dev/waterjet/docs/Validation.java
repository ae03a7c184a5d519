package dev.waterjet.docs;

import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.ReferenceCase;
import dev.waterjet.reference.ReferenceSuite;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Writes the page that shows every row of the reference suite beside what the library computes. */
public final class Validation {

    /** Relative deviations below this differ from one processor to the next. */
    private static final double NOISE = 1e-9;

    private static final List<EvidenceGrade> SHOWN = List.of(
            EvidenceGrade.PUBLISHED, EvidenceGrade.FROM_MEMORY, EvidenceGrade.DERIVED, EvidenceGrade.COMMON_PRACTICE);

    private Validation() {}

    /**
     * A row of the suite with the answer of the library.
     *
     * @param row the row
     * @param computed the answer
     */
    record Checked(ReferenceCase row, Computed computed) {

        double deviationSi() {
            return computed.si() - row.expectedSi(computed.kind());
        }

        /** Deviation over what is expected; the deviation itself where zero is expected. */
        double relativeDeviation() {
            return deviationSi() / scale();
        }

        double relativeTolerance() {
            return row.toleranceSi(computed.kind()) / scale();
        }

        private double scale() {
            double expected = Math.abs(row.expectedSi(computed.kind()));
            return expected == 0 ? 1 : expected;
        }
    }

    static List<Checked> checked() {
        return ReferenceSuite.cases().stream()
                .map(row -> new Checked(row, ReferenceSuite.compute(row)))
                .toList();
    }

    /**
     * Writes the page afresh.
     *
     * @param args the folder of the pages, {@code docs} if none is given
     * @throws IOException if the file cannot be written
     */
    public static void main(String... args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : "docs");
        Files.writeString(folder.resolve("validation.md"), page(), StandardCharsets.UTF_8);
    }

    /** The page as it must be. */
    static String page() {
        List<Checked> all = checked();
        StringBuilder page = new StringBuilder();
        page.append("""
            # Validation

            Every row of the [reference suite](reference-suite.md), with what the library computes today. This page is written by
            `dev.waterjet.docs.Validation`; the build compares it with a fresh one and fails where they differ.

            A value counts as *published* only if it was read in a source or reproduced to its printed figures; *from memory* means
            that a source is cited but the value was recalled; *derived* values follow here from such items; *common practice* has no
            source. No expected value was computed by this library.

            The suite contains no measured feed rate. Its rows of feed rates repeat published formulas, by hand and in two systems
            of units, or compare one published model with another; the scatter of a single cut about a model is assumed, and no row
            tests it.

            ![Deviation of each row against the tolerance it is allowed, both relative and on logarithmic axes: every point lies under the line where the two are equal](figures/validation-deviations.svg)

            """);
        page.append(Comparisons.section());
        summary(all, page);
        Map<String, List<Checked>> byFile = new LinkedHashMap<>();
        all.forEach(one -> byFile.computeIfAbsent(one.row().file(), key -> new ArrayList<>())
                .add(one));
        byFile.forEach((file, rows) -> table(file, rows, page));
        return page.toString();
    }

    private static void summary(List<Checked> all, StringBuilder page) {
        Map<String, Map<EvidenceGrade, Integer>> counts = new TreeMap<>();
        Map<EvidenceGrade, Integer> total = new EnumMap<>(EvidenceGrade.class);
        for (Checked one : all) {
            counts.computeIfAbsent(one.row().subject(), key -> new EnumMap<>(EvidenceGrade.class))
                    .merge(one.row().grade(), 1, Integer::sum);
            total.merge(one.row().grade(), 1, Integer::sum);
        }
        page.append("## What is checked, and how well it is attested\n\n| subject | rows");
        SHOWN.forEach(grade -> page.append(" | ").append(grade.label()));
        page.append(" |\n|---|---:").append("|---:".repeat(SHOWN.size())).append("|\n");
        counts.forEach((subject, grades) -> line(subject, grades, page));
        line("**all**", total, page);
        page.append('\n');
    }

    private static void line(String subject, Map<EvidenceGrade, Integer> grades, StringBuilder page) {
        int rows = grades.values().stream().mapToInt(Integer::intValue).sum();
        page.append("| ").append(subject).append(" | ").append(rows);
        for (EvidenceGrade grade : SHOWN) {
            int count = grades.getOrDefault(grade, 0);
            page.append(" | ").append(count == 0 ? "" : String.valueOf(count));
        }
        page.append(" |\n");
    }

    private static void table(String file, List<Checked> rows, StringBuilder page) {
        page.append("## ").append(file).append("\n\n");
        page.append("| id | inputs | expected | computed | deviation | tolerance | grade | source |\n");
        page.append("|---|---|---:|---:|---:|---:|---|---|\n");
        for (Checked one : rows) {
            ReferenceCase row = one.row();
            page.append("| ")
                    .append(String.join(
                            " | ",
                            cell(row.id()),
                            cell(row.inputs()),
                            cell(row.expected()),
                            cell(row.text(one.computed().kind(), one.computed().si(), 9)),
                            deviation(one),
                            cell(row.tolerance()),
                            row.grade().label(),
                            cell(row.source())))
                    .append(" |\n");
        }
        page.append('\n');
    }

    private static String deviation(Checked one) {
        double relative = one.relativeDeviation();
        if (Math.abs(relative) < NOISE) {
            return "none";
        }
        boolean isRelative = one.row().expectedSi(one.computed().kind()) != 0;
        return isRelative
                ? (relative > 0 ? "+" : "") + QuantityText.round(100 * relative, 2) + " %"
                : QuantityText.round(relative, 2);
    }

    private static String cell(String text) {
        return text.replace("|", "\\|").replace("*", "\\*").replace("_", "\\_").replace("<", "&lt;");
    }
}
