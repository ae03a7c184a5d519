package dev.waterjet.reference;

import dev.waterjet.part.Contour;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;

/**
 * Row of {@code reference/motion/conditioning.csv} or {@code offset.csv}: a path, settings, and what must follow from them by
 * a closed form that the note names.
 *
 * @param id unique name
 * @param path the path, as {@link ReferencePaths} reads it
 * @param settings settings by name
 * @param expected number, or words
 * @param tolerance relative tolerance; not a number where the expected value is words
 * @param note derivation
 */
@SuppressWarnings("StringSplitter")
public record GeometryRow(
        String id, String path, Map<String, String> settings, String expected, double tolerance, String note) {

    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

    /** Rows of a file. */
    public static List<GeometryRow> read(String file) {
        try (InputStream stream = GeometryRow.class.getResourceAsStream("/reference/motion/" + file + ".csv")) {
            return FORMAT
                    .parse(new InputStreamReader(Objects.requireNonNull(stream, file), StandardCharsets.UTF_8))
                    .stream()
                    .map(row -> of(row.toMap()))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The row of a line of such a file, by column. */
    public static GeometryRow of(Map<String, String> row) {
        Map<String, String> settings = new HashMap<>();
        for (String setting : column(row, "limits").split(";")) {
            String[] parts = setting.split("=", 2);
            settings.put(parts[0], parts[1]);
        }
        String tolerance = column(row, "tolerance_rel");
        return new GeometryRow(
                column(row, "id"),
                column(row, "path"),
                settings,
                column(row, "expected"),
                tolerance.equals("-") ? Double.NaN : Double.parseDouble(tolerance),
                row.getOrDefault("note", ""));
    }

    private static String column(Map<String, String> row, String name) {
        return Objects.requireNonNull(row.get(name), name);
    }

    /** The path as a contour. */
    public Contour contour() {
        return ReferencePaths.parse(path);
    }

    /** A setting as a number, without its unit. */
    public double number(String name) {
        return Double.parseDouble(
                java.util.Objects.requireNonNull(settings.get(name)).split(" ")[0]);
    }

    /** A setting in millimetres, in m. */
    public double millimetres(String name) {
        return number(name) * 1e-3;
    }

    @Override
    public String toString() {
        return id;
    }
}
