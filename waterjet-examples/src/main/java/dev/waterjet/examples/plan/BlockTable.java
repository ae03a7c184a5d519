package dev.waterjet.examples.plan;

import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.path.Edge;
import java.util.List;

/** The blocks of a plan as CSV: one row for each cutting block of the program, in SI. */
public final class BlockTable {

    private static final List<String> HEADER = List.of(
            "block",
            "line",
            "cut",
            "name",
            "shape",
            "lead",
            "grade",
            "end_x_m",
            "end_y_m",
            "radius_m",
            "length_m",
            "feed_m_per_s",
            "time_s",
            "limit");

    private BlockTable() {}

    /**
     * The rows as one text.
     *
     * @param plan the plan
     * @return CSV with a header
     */
    public static String csv(PartPlan plan) {
        StringBuilder csv = new StringBuilder(CsvText.row(HEADER)).append('\n');
        int number = 0;
        for (CutPlan cut : plan.cuts()) {
            number++;
            for (int i = 0; i < cut.cut().size(); i++) {
                Edge edge = cut.path().edge(i);
                csv.append(CsvText.row(List.of(
                                Integer.toString(cut.cut().firstBlock() + i + 1),
                                Integer.toString(cut.cut().line(i)),
                                Integer.toString(number),
                                cut.cut().name(),
                                edge.isArc() ? "arc" : "line",
                                edge.finish().isLead() ? "yes" : "no",
                                cut.grade().words(),
                                Double.toString(edge.end().xSi()),
                                Double.toString(edge.end().ySi()),
                                edge.radius()
                                        .map(radius -> Double.toString(Kind.LENGTH.si(radius)))
                                        .orElse(""),
                                Double.toString(Kind.LENGTH.si(edge.length())),
                                Double.toString(cut.feedSi(i)),
                                Double.toString(cut.timeSi(i)),
                                cut.limit(i).words())))
                        .append('\n');
            }
        }
        return csv.toString();
    }
}
