package dev.waterjet.examples.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.LinkedHashMap;
import java.util.Map;

/** Summary of a plan in plain text. */
public final class Summary {

    private Summary() {}

    /**
     * Returns the summary.
     *
     * @param plan the plan
     * @param job piercing, wear and cost
     * @return the text, a line for each fact
     */
    public static String text(PartPlan plan, JobFacts job) {
        PlanRequest request = plan.request();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put(
                "Material",
                request.workpiece().material().name() + ", "
                        + ReportText.of(Kind.LENGTH, request.workpiece().thickness(), Units.MILLIMETRE));
        facts.put(
                "Cuts",
                plan.cuts().size() + (plan.cuts().size() == 1 ? " cut, " : " cuts, ")
                        + request.program().size() + " blocks, "
                        + ReportText.of(Kind.LENGTH, request.program().cuttingLength(), Units.METRE));
        facts.put(
                "Feed rate",
                ReportText.of(plan.feed(), Units.MILLIMETRE_PER_MINUTE) + " on straight edges, cut quality "
                        + request.quality().label() + " (± one standard uncertainty)");
        facts.put("Cutting time", ReportText.time(plan.cuttingTime()));
        facts.put("Rapid traverse", ReportText.time(plan.rapidTimeSi()));
        facts.put("Water", ReportText.of(plan.water(), Units.LITRE));
        facts.put("Abrasive", ReportText.of(plan.abrasive(), Units.KILOGRAM));
        facts.put("Energy", ReportText.of(plan.energy(), Units.KILOWATT_HOUR) + " at the orifice");
        facts.put("Kerf offset", ReportText.of(plan.kerf().offset(), Units.MILLIMETRE));
        facts.put("Taper", ReportText.of(plan.kerf().taperPerSide(), Units.DEGREE) + " per side");
        facts.putAll(job.facts());
        StringBuilder text = new StringBuilder(request.title()).append("\n\n");
        facts.forEach((label, value) -> text.append(label)
                .append(" ".repeat(20 - label.length()))
                .append(value)
                .append('\n'));
        return text.toString();
    }
}
