package dev.waterjet.docs;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Last comparison of each public model with something from outside, for the page of the validation. */
final class Comparisons {

    /** Kinds of comparison, the strongest first. */
    static final List<String> KINDS = List.of(
            "measurement",
            "published figures",
            "independent program",
            "published formula",
            "closed form",
            "common practice",
            "nothing from outside");

    private Comparisons() {}

    /**
     * A comparison.
     *
     * @param types public types of the library
     * @param kind one of {@link #KINDS}
     * @param compared what they were compared with, and what is missing
     * @param where file of reference rows or class of tests; empty where nothing is compared
     */
    record Comparison(List<String> types, String kind, String compared, String where) {

        private String row() {
            return "| `" + String.join("`, `", types) + "` | " + kind + " | " + compared + " | "
                    + (where.isEmpty() ? "" : "`" + where + "`") + " |\n";
        }
    }

    static List<Comparison> all() {
        List<Comparison> found = new ArrayList<>();
        try (InputStream in = Comparisons.class.getResourceAsStream("compared.csv")) {
            if (in == null) {
                throw new IOException("compared.csv is missing");
            }
            CSVFormat format = CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get();
            try (CSVParser rows = CSVParser.parse(new InputStreamReader(in, StandardCharsets.UTF_8), format)) {
                for (CSVRecord row : rows) {
                    found.add(new Comparison(
                            List.of(row.get("types").split(", ")),
                            row.get("kind"),
                            row.get("compared"),
                            row.get("where")));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found;
    }

    /** The section of the page. */
    static String section() {
        StringBuilder text = new StringBuilder("""
            ## What each model was last compared with

            Nothing here is a measurement made for this library. "Independent program" means the same equations solved by other
            software: it finds errors of computation, not of the model. Files are those of the [reference suite](reference-suite.md), classes
            those of the tests of the core.

            | types | kind | compared with | where |
            |---|---|---|---|
            """);
        all().forEach(one -> text.append(one.row()));
        return text.append('\n').toString();
    }
}
