package dev.waterjet.docs;

import dev.waterjet.reference.ReferenceCase;
import dev.waterjet.reference.ReferenceSuite;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Writes the bibliography: each work with the classes, tables and reference files that cite it, read from their text. */
public final class Bibliography {

    private static final Pattern TYPE =
            Pattern.compile("waterjet-core/src/main/java/dev/waterjet/(.*)/([\\w-]+)\\.java");

    /** A citation that an evidence states in Java; it may be put together from several strings. */
    private static final Pattern CITED = Pattern.compile("Source\\.of\\(((?:\\s*\\+?\\s*\"[^\"]*\")+)");

    private Bibliography() {}

    /**
     * A work that the library cites.
     *
     * @param key short name
     * @param match pattern of its citations
     * @param reference authors, title, place, year
     * @param doi digital object identifier, or empty
     * @param read what was read of it: text, abstract, second-hand, or from memory
     */
    record Work(String key, Pattern match, String reference, String doi, String read) {}

    /**
     * Writes the page afresh.
     *
     * @param args the root directory of the project, the working directory if none is given
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String... args) throws IOException {
        Path root = Path.of(args.length > 0 ? args[0] : "").toAbsolutePath();
        Files.writeString(root.resolve("docs/bibliography.md"), page(root), StandardCharsets.UTF_8);
    }

    static List<Work> works() throws IOException {
        try (InputStream in = Bibliography.class.getResourceAsStream("works.csv")) {
            if (in == null) {
                throw new IOException("works.csv is missing");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            List<Work> works = new ArrayList<>();
            for (CSVRecord row : CSVParser.parse(
                    text,
                    CSVFormat.DEFAULT
                            .builder()
                            .setHeader()
                            .setSkipHeaderRecord(true)
                            .get())) {
                works.add(new Work(
                        row.get("key"),
                        Pattern.compile(row.get("match")),
                        row.get("reference"),
                        row.get("doi"),
                        row.get("read")));
            }
            return works;
        }
    }

    /** Text of every file that may cite, by its path below the root; breaks of lines and strings are closed. */
    static Map<String, String> citing(Path root) throws IOException {
        Map<String, String> texts = new TreeMap<>();
        for (String folder : List.of("waterjet-core/src/main", "waterjet-core/src/test/resources/reference")) {
            try (Stream<Path> files = Files.walk(root.resolve(folder))) {
                for (Path file : files.filter(f -> f.toString().matches(".*\\.(java|csv)"))
                        .sorted()
                        .toList()) {
                    texts.put(root.relativize(file).toString().replace('\\', '/'), closed(Files.readString(file)));
                }
            }
        }
        return texts;
    }

    private static String closed(String text) {
        return text.replaceAll("\"\\s*\\+\\s*\"", "").replaceAll("\\s*\\n\\s*\\*?\\s*", " ");
    }

    /** Citations of evidence in the code, and sources of materials and reference rows, that name a year. */
    static List<String> citations(Path root) throws IOException {
        TreeSet<String> citations = new TreeSet<>();
        for (Map.Entry<String, String> file : citing(root).entrySet()) {
            if (file.getKey().endsWith(".java")) {
                Matcher cited = CITED.matcher(file.getValue());
                while (cited.find()) {
                    citations.add(cited.group(1));
                }
            }
        }
        for (ReferenceCase row : ReferenceSuite.cases()) {
            citations.add(row.source());
        }
        return citations.stream()
                .filter(text -> text.matches(".*\\((?:18|19|20)\\d\\d\\).*|.*\\b(?:ISO|ASTM|IAPWS|NFPA|JCGM)\\b.*"))
                .toList();
    }

    static String page(Path root) throws IOException {
        Map<String, String> texts = citing(root);
        StringBuilder page = new StringBuilder("""
            # Bibliography

            Works on which formulas, constants and checks of the library rest, with the classes that cite them. This page is generated from
            the sources of the library; the build refuses it when it is stale, and refuses a citation of evidence that is not listed here.
            Full titles and identifiers (DOI) are from memory: follow the link before you cite. "Read" states what was at hand: the text, its abstract, a
            quotation elsewhere, or memory alone.
            """);
        for (Work work : works()) {
            page.append("\n## ")
                    .append(work.key())
                    .append("\n\n")
                    .append(work.reference())
                    .append('.');
            if (!work.doi().isEmpty()) {
                page.append(" [doi ")
                        .append(work.doi())
                        .append("](https://doi.org/")
                        .append(work.doi())
                        .append(").");
            }
            page.append("\n\nRead: ")
                    .append(work.read())
                    .append(". ")
                    .append(users(work, texts).strip())
                    .append('\n');
        }
        return page.toString();
    }

    private static String users(Work work, Map<String, String> texts) {
        TreeSet<String> types = new TreeSet<>();
        TreeSet<String> rows = new TreeSet<>();
        texts.forEach((file, text) -> {
            if (work.match().matcher(text).find()) {
                Matcher type = TYPE.matcher(file);
                if (type.matches()) {
                    String name = type.group(2);
                    types.add("`" + (name.equals("package-info") ? "dev.waterjet." + type.group(1) : name) + "`");
                } else {
                    rows.add(file.substring(file.lastIndexOf('/') + 1));
                }
            }
        });
        if (types.isEmpty() && rows.isEmpty()) {
            return "Cited in the guides.";
        }
        String cited = types.isEmpty() ? "" : "Cited by " + types.stream().collect(Collectors.joining(", ")) + ". ";
        return cited + (rows.isEmpty() ? "" : "Tables and checks: " + String.join(", ", rows) + ".");
    }
}
