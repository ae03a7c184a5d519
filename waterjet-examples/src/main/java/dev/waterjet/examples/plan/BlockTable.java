package dev.waterjet.examples.plan;

import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Edge;
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
            "quality",
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
            String name = CsvText.row(List.of(cut.cut().name()));
            for (int i = 0; i < cut.cut().size(); i++) {
                Edge edge = cut.path().edge(i);
                // row by row without lists: a part may have a million blocks, and the name alone needs quotes
                csv.append(cut.cut().firstBlock() + i + 1).append(',');
                csv.append(cut.cut().line(i)).append(',');
                csv.append(number).append(',').append(name).append(',');
                csv.append(edge.isArc() ? "arc," : "line,");
                csv.append(edge.requirement().isLead() ? "yes," : "no,");
                csv.append(cut.quality().label()).append(',');
                csv.append(edge.end().xSi()).append(',');
                csv.append(edge.end().ySi()).append(',');
                edge.radius().ifPresent(radius -> csv.append(Kind.LENGTH.si(radius)));
                csv.append(',').append(Kind.LENGTH.si(edge.length()));
                csv.append(',').append(cut.feedSi(i));
                csv.append(',').append(cut.timeSi(i));
                csv.append(',').append(cut.limit(i).label()).append('\n');
            }
        }
        return csv.toString();
    }
}
