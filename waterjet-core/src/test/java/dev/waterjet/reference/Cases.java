package dev.waterjet.reference;

import dev.waterjet.measure.CsvText;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Program that computes every row of files of cases and prints for each {@code id,expected,computed,tolerance,passed}. The
 * columns of a file decide what its rows are about. A row is {@code not covered} if no package computes it; one that the
 * library refuses has not passed, and the refusal stands in place of a value.
 */
public final class Cases {

    private static final CSVFormat READING =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

    private static final List<String> HEADER = List.of("id", "expected", "computed", "tolerance", "passed");

    private Cases() {}

    /**
     * Runs the program.
     *
     * @param files paths of the files
     */
    public static void main(String[] files) {
        if (files.length == 0) {
            throw new IllegalArgumentException("name one or more files of cases");
        }
        PrintStream out = new PrintStream(System.out, false, StandardCharsets.UTF_8);
        out.append(CsvText.row(HEADER)).append('\n');
        for (String file : files) {
            for (CaseRow row : read(Path.of(file))) {
                out.append(CsvText.row(line(row))).append('\n');
            }
        }
        out.flush();
    }

    /** The rows of a file. */
    static List<CaseRow> read(Path file) {
        List<CaseRow> rows = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, READING)) {
            CaseKind kind = CaseKind.of(parser.getHeaderMap().keySet());
            for (CSVRecord row : parser) {
                Map<String, String> columns = new LinkedHashMap<>(row.toMap());
                // data sets lie beside the file that names them
                columns.put(CaseRow.FOLDER, String.valueOf(file.toAbsolutePath().getParent()));
                rows.add(new CaseRow(kind, columns));
            }
            return kind == CaseKind.SUITE ? BasedOnOthers.resolved(rows) : rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The cells that are printed for a row. */
    static List<String> line(CaseRow row) {
        String computed = "";
        String passed = "not covered";
        try {
            Optional<CaseAnswer> answer = CaseSubjects.answer(row);
            if (answer.isPresent()) {
                computed = answer.get().computed();
                passed = Boolean.toString(answer.get().isPassed());
            }
        } catch (RuntimeException | AssertionError e) {
            computed = String.valueOf(e).replaceAll("\\s+", " ");
            passed = "false";
        }
        CaseKind kind = row.kind();
        return List.of(row.id(), row.get(kind.expectedColumn()), computed, row.get(kind.toleranceColumn()), passed);
    }
}
