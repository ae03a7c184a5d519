package dev.waterjet.reference;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * One row of {@code reference/virtual-cut/virtual-cut.csv}: a quantity of the predicted cut for one setting.
 *
 * @param setting name of the setting
 * @param parameters parameters of the setting, in SI
 * @param quantity what is computed
 * @param argument for what
 * @param value expected value
 * @param unit its unit
 * @param relativeTolerance allowed deviation over the value
 */
@SuppressWarnings("StringSplitter")
public record VirtualCutRow(
        String setting,
        Map<String, Double> parameters,
        String quantity,
        String argument,
        double value,
        String unit,
        double relativeTolerance) {

    private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?(?:[eE][-+]?\\d+)?");

    /** Every row whose quantity matches a pattern. */
    public static Stream<VirtualCutRow> matching(String quantity) {
        List<VirtualCutRow> rows = all();
        return rows.stream().filter(row -> row.quantity().matches(quantity));
    }

    /** Every row. */
    public static List<VirtualCutRow> all() {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        List<VirtualCutRow> rows = new ArrayList<>();
        try (InputStream stream = VirtualCutRow.class.getResourceAsStream("/reference/virtual-cut/virtual-cut.csv")) {
            for (CSVRecord row : format.parse(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
                rows.add(of(row.toMap()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows;
    }

    /** The row of a line of such a file, by column. */
    public static VirtualCutRow of(Map<String, String> row) {
        return new VirtualCutRow(
                column(row, "setting"),
                parameters(column(row, "parameters_SI")),
                column(row, "quantity"),
                column(row, "argument"),
                Double.parseDouble(column(row, "value")),
                column(row, "unit"),
                Double.parseDouble(column(row, "relative_tolerance")));
    }

    private static String column(Map<String, String> row, String name) {
        return Objects.requireNonNull(row.get(name), name);
    }

    private static Map<String, Double> parameters(String text) {
        Map<String, Double> parameters = new HashMap<>();
        for (String part : text.trim().split("\\s+")) {
            int at = part.indexOf('=');
            parameters.put(part.substring(0, at), Double.valueOf(part.substring(at + 1)));
        }
        return parameters;
    }

    /** A parameter of the setting, in SI. */
    public double parameter(String name) {
        return Objects.requireNonNull(parameters.get(name), name);
    }

    /** The numbers of a text, in their order. */
    public static double[] numbers(String text) {
        List<Double> found = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(text);
        while (matcher.find()) {
            found.add(Double.valueOf(matcher.group()));
        }
        return found.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** The number behind a name and an equals sign in the argument. */
    public double argument(String name) {
        Matcher matcher = Pattern.compile("(^|[ ,])" + Pattern.quote(name) + "=(" + NUMBER.pattern() + ")")
                .matcher(argument);
        if (!matcher.find()) {
            throw new IllegalStateException(name + " in " + argument);
        }
        return Double.parseDouble(matcher.group(2));
    }

    /**
     * The depth in the argument, written as a number of thicknesses ({@code z=0.6h}, {@code z=h/2}, {@code z=h}) or in m; the
     * thickness where there is none.
     */
    public double depth() {
        Matcher matcher = Pattern.compile("z=([0-9.]*) ?h(/([0-9.]+))?").matcher(argument);
        if (!matcher.find()) {
            return argument.contains("z=") ? argument("z") : parameter("h");
        }
        double factor = matcher.group(1).isEmpty() ? 1 : Double.parseDouble(matcher.group(1));
        double divisor = matcher.group(3) == null ? 1 : Double.parseDouble(matcher.group(3));
        return factor * parameter("h") / divisor;
    }

    /** The feed that a text names first: by a parameter such as u1, or as {@code u=0.0004} in m/s. */
    public double feed(String text) {
        Matcher matcher = Pattern.compile("u\\d+|u=(" + NUMBER.pattern() + ")").matcher(text);
        if (!matcher.find()) {
            throw new IllegalStateException("feed in " + text);
        }
        return matcher.group(1) == null ? parameter(matcher.group()) : Double.parseDouble(matcher.group(1));
    }

    /** The length behind a word of a text, in m: {@code R 4 mm}, {@code x=0.0004}. */
    public static double length(String text, String word) {
        Matcher matcher = Pattern.compile(Pattern.quote(word) + "\\s*(" + NUMBER.pattern() + ")\\s*(mm)?")
                .matcher(text);
        if (!matcher.find()) {
            throw new IllegalStateException(word + " in " + text);
        }
        return Double.parseDouble(matcher.group(1)) * (matcher.group(2) == null ? 1 : 1e-3);
    }

    /** The points of a text, in m: x and y of each, as in {@code (0,0)-(3 mm,0)}. */
    public static double[] points(String text) {
        List<Double> found = new ArrayList<>();
        Matcher matcher = Pattern.compile("\\(([^,()]+),([^,()]+)\\)").matcher(text);
        while (matcher.find()) {
            found.add(length(matcher.group(1), ""));
            found.add(length(matcher.group(2), ""));
        }
        return found.stream().mapToDouble(Double::doubleValue).toArray();
    }

    @Override
    public String toString() {
        return setting + " " + quantity + " " + argument;
    }
}
