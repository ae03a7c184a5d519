package dev.waterjet.examples;

import dev.waterjet.calibrate.TestCut;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.TextException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Setting of one more cut in words: names of the columns of test cuts with values, such as {@code thickness=8 mm,
 * pressure=360 MPa} or {@code thickness_mm=8}. What is left out is that of a known cut.
 */
final class CutSetting {

    private static final Pattern PART =
            Pattern.compile("\\s*([a-z_]+?)((?:_[A-Za-z0-9_]+)?)\\s*[= ]\\s*([-+0-9.eE]+)\\s*([^\\s0-9][^\\s]*)?\\s*");

    private static final List<String> NAMES = List.of(
            "tube_length",
            "thickness",
            "pressure",
            "orifice",
            "discharge_coefficient",
            "tube",
            "stand_off",
            "mesh",
            "abrasive_flow",
            "index");

    private CutSetting() {}

    static TestCut parse(String text, TestCut known) {
        return parse(text, known(known));
    }

    /** Setting that leaves nothing out. */
    static TestCut parse(String text) {
        return parse(text, new LinkedHashMap<>());
    }

    private static TestCut parse(String text, Map<String, String> columns) {
        for (String part : text.split("[,;]", -1)) {
            Matcher matcher = PART.matcher(part);
            String name = matcher.matches() ? name(matcher.group(1) + matcher.group(2)) : "";
            if (name.isEmpty()) {
                throw new TextException("\"" + part.strip()
                        + "\" is not a setting; write it as thickness=8 mm, with one of " + String.join(", ", NAMES));
            }
            String rest = (matcher.group(1) + matcher.group(2)).substring(name.length());
            String unit = matcher.group(4) == null ? "" : matcher.group(4);
            columns.keySet()
                    .removeIf(heading -> name(heading.replaceFirst(" .*", "")).equals(name));
            columns.put(unit.isEmpty() ? name + rest : name + " [" + unit + "]", matcher.group(3));
        }
        boolean isGraded = columns.containsKey("index") && Double.parseDouble(columns.get("index")) > 1;
        columns.put("test", isGraded ? "graded" : "separation");
        columns.put("feed_mm_per_min", "1");
        String csv =
                CsvText.row(new ArrayList<>(columns.keySet())) + "\n" + CsvText.row(new ArrayList<>(columns.values()));
        return TestCut.parse(csv + "\n").get(0);
    }

    private static String name(String heading) {
        String lower = heading.toLowerCase(Locale.ROOT);
        return NAMES.stream()
                .filter(name -> lower.equals(name) || lower.startsWith(name + "_"))
                .findFirst()
                .orElse("");
    }

    /** Columns and cells of a known cut, without its outcome. */
    private static Map<String, String> known(TestCut cut) {
        List<CsvText.Row> rows = CsvText.parse(TestCut.print(List.of(cut)));
        Map<String, String> columns = new LinkedHashMap<>();
        for (int i = 0; i < rows.get(0).cells().size(); i++) {
            String heading = rows.get(0).cells().get(i);
            String name = name(heading);
            if (!name.isEmpty()
                    && !heading.contains("upper")
                    && !rows.get(1).cells().get(i).isEmpty()) {
                columns.put(heading, rows.get(1).cells().get(i));
            }
        }
        return columns;
    }
}
