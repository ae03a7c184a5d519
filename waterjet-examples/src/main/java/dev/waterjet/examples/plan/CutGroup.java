package dev.waterjet.examples.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.plan.PlannedCut;
import dev.waterjet.quality.CutQuality;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Cuts of equal quality, length and time, as one row of a sheet. */
final class CutGroup {

    /** Runs of numbers that a row lists: two printed pages have no room for those of a full sheet. */
    private static final int MAX_RUNS = 12;

    private final List<Integer> indices = new ArrayList<>();
    private final PlannedCut first;
    private double timeS;

    private CutGroup(PlannedCut first) {
        this.first = first;
    }

    /** Groups in the order of their first cuts. */
    static List<CutGroup> of(PlanReport report) {
        Map<String, CutGroup> groups = new LinkedHashMap<>();
        List<PlannedCut> cuts = report.plan().cuts();
        for (int i = 0; i < cuts.size(); i++) {
            PlannedCut cut = cuts.get(i);
            String key = cut.qualities() + " " + QuantityText.round(Kind.LENGTH.si(cut.length()), 4) + " "
                    + QuantityText.round(Kind.TIME.si(cut.time()), 3);
            CutGroup group = groups.computeIfAbsent(key, any -> new CutGroup(cut));
            group.indices.add(i + 1);
            group.timeS += Kind.TIME.si(cut.time());
        }
        return List.copyOf(groups.values());
    }

    String label() {
        String name = first.name().isEmpty() ? "unnamed" : first.name();
        return indices.size() == 1 ? name : indices.size() + " \u00d7 " + name;
    }

    /** Numbers on the drawing, as {@code 1-4, 7}; of many runs the first ones, and the last number. */
    String numbers() {
        StringBuilder text = new StringBuilder();
        int runs = 0;
        for (int i = 0; i < indices.size(); ) {
            if (runs++ == MAX_RUNS) {
                return text + ", \u2026 " + indices.get(indices.size() - 1);
            }
            int last = i;
            while (last + 1 < indices.size() && indices.get(last + 1) == indices.get(last) + 1) {
                last++;
            }
            text.append(text.isEmpty() ? "" : ", ").append(indices.get(i));
            text.append(last > i ? "\u2013" + indices.get(last) : "");
            i = last + 1;
        }
        return text.toString();
    }

    /** Cut qualities of the edges, as {@code fine, coarse}. */
    String qualities() {
        return String.join(
                ", ", first.qualities().stream().map(CutQuality::label).toList());
    }

    /** Feed rate on straight edges of each quality. */
    String feeds(PlanReport report) {
        return String.join(
                ", ",
                first.qualities().stream()
                        .map(quality -> report.plan().conditions().feed(quality).si())
                        .map(feed -> QuantityText.round(
                                Units.fromSi(feed, report.units().feed()), 3))
                        .toList());
    }

    String length(ReportUnits units) {
        return QuantityText.round(Units.fromSi(Kind.LENGTH.si(first.length()), units.length()), 4);
    }

    double timeS() {
        return timeS;
    }
}
