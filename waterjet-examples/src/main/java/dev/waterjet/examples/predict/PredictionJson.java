package dev.waterjet.examples.predict;

import dev.waterjet.simulate.DeviationMap;
import dev.waterjet.simulate.PredictedCut;
import java.util.List;
import java.util.stream.Collectors;

/** Predicted cuts as JSON (RFC 8259), in SI units; what is not separated is null. */
public final class PredictionJson {

    private PredictionJson() {}

    /**
     * Returns predictions as a JSON array.
     *
     * @param names name of each contour
     * @param cuts prediction of each contour; with uncertainties where they were propagated
     * @param isRough whether the roughness is among the numbers of a point
     * @return the array
     */
    public static String of(List<String> names, List<PredictedCut> cuts, boolean isRough) {
        StringBuilder json = new StringBuilder("[");
        for (int i = 0; i < cuts.size(); i++) {
            json.append(i == 0 ? "\n" : ",\n");
            contour(names.get(i), cuts.get(i), isRough, json);
        }
        return json.append("\n]\n").toString();
    }

    private static void contour(String name, PredictedCut cut, boolean isRough, StringBuilder json) {
        DeviationMap map = cut.map();
        json.append("{\"contour\": ")
                .append(quoted(name))
                .append(", \"separated\": ")
                .append(cut.isSeparated());
        json.append(", \"findings\": [")
                .append(cut.findings().stream()
                        .map(finding -> "{\"code\": " + quoted(finding.code()) + ", \"satisfied\": "
                                + finding.isSatisfied() + ", \"text\": " + quoted(finding.text()) + "}")
                        .collect(Collectors.joining(", ")))
                .append("], \"depths_m\": [")
                .append(map.depths().stream().mapToObj(Double::toString).collect(Collectors.joining(", ")))
                .append("], \"points\": [");
        for (int i = 0; i < map.size(); i++) {
            json.append(i == 0 ? "\n" : ",\n");
            json.append(" {\"edge\": ")
                    .append(map.edge(i) + 1)
                    .append(", \"distance_m\": ")
                    .append(map.distanceSi(i));
            row("deviation_m", map, i, map::deviationSi, json);
            row("feed_m_per_s", map, i, map::feedSi, json);
            row("lag_m", map, i, map::lagSi, json);
            row("half_width_m", map, i, map::halfWidthSi, json);
            if (map.hasUncertainty()) {
                row("deviation_uncertainty_m", map, i, map::uncertaintySi, json);
            }
            if (isRough) {
                row("roughness_m", map, i, map::roughnessSi, json);
            }
            json.append('}');
        }
        json.append("]}");
    }

    /** Value of a point at a depth. */
    private interface Value {
        double at(int point, int depth);
    }

    private static void row(String name, DeviationMap map, int point, Value value, StringBuilder json) {
        json.append(", \"").append(name).append("\": [");
        for (int depth = 0; depth < map.depths().size(); depth++) {
            json.append(depth == 0 ? "" : ", ");
            double number = map.isSeparated(point, depth) ? value.at(point, depth) : Double.POSITIVE_INFINITY;
            json.append(number < Double.POSITIVE_INFINITY ? Double.toString(number) : "null");
        }
        json.append(']');
    }

    private static String quoted(String words) {
        StringBuilder text = new StringBuilder("\"");
        for (int i = 0; i < words.length(); i++) {
            char c = words.charAt(i);
            if (c == '"' || c == '\\') {
                text.append('\\').append(c);
            } else if (c < ' ') {
                text.append(String.format(java.util.Locale.ROOT, "\\u%04x", (int) c));
            } else {
                text.append(c);
            }
        }
        return text.append('"').toString();
    }
}
