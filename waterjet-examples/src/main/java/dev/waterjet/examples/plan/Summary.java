package dev.waterjet.examples.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.LinkedHashMap;
import java.util.Map;

/** A plan in a dozen lines of plain text. */
public final class Summary {

    private Summary() {}

    /**
     * The lines.
     *
     * @param plan the plan
     * @param job what piercing, wear and prices add
     * @return the text, a line for each fact
     */
    public static String text(PartPlan plan, JobFacts job) {
        PlanRequest asked = plan.request();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put(
                "material",
                asked.piece().material().name() + ", "
                        + Told.of(Kind.LENGTH, asked.piece().thickness(), Units.MILLIMETRE));
        facts.put(
                "cuts",
                plan.cuts().size() + (plan.cuts().size() == 1 ? " cut, " : " cuts, ")
                        + asked.program().size() + " blocks, "
                        + Told.of(Kind.LENGTH, asked.program().cuttingLength(), Units.METRE));
        facts.put(
                "feed",
                Told.of(plan.feed(), Units.MILLIMETRE_PER_MINUTE) + " on a straight "
                        + asked.grade().label() + " face");
        facts.put("cutting time", Told.time(plan.cuttingTime()));
        facts.put("travel", Told.time(plan.travelTimeSi()));
        facts.put("water", Told.of(plan.water(), Units.LITRE));
        facts.put("abrasive", Told.of(plan.abrasive(), Units.KILOGRAM));
        facts.put("energy", Told.of(plan.energy(), Units.KILOWATT_HOUR) + " at the orifice");
        facts.put("offset", Told.of(plan.kerf().offset(), Units.MILLIMETRE));
        facts.put("taper", Told.of(plan.kerf().taperPerSide(), Units.DEGREE) + " per side");
        facts.putAll(job.words());
        StringBuilder text = new StringBuilder(asked.title()).append("\n\n");
        facts.forEach((label, value) -> text.append(label)
                .append(" ".repeat(14 - label.length()))
                .append(value)
                .append('\n'));
        return text.toString();
    }
}
