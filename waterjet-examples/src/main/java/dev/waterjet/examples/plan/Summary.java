package dev.waterjet.examples.plan;

import dev.waterjet.material.Material;
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
     * @param report the plan
     * @param job piercing, wear and cost
     * @return the text, a line for each fact
     */
    public static String text(PlanReport report, JobFacts job) {
        ReportUnits units = report.units();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Part", report.size());
        facts.put(
                "Material",
                report.workpiece().material().name() + ", "
                        + ReportText.of(Kind.LENGTH, report.workpiece().thickness(), units.length())
                        + layers(report.workpiece().layers().size()));
        int count = report.plan().cuts().size();
        facts.put(
                "Cuts",
                count + (count == 1 ? " cut, " : " cuts, ") + report.program().size() + " blocks ("
                        + report.written().size() + " as written), "
                        + ReportText.of(Kind.LENGTH, report.program().cuttingLength(), units.path()));
        facts.put(
                "Feed rate",
                ReportText.of(report.feed(), units.feed()) + " on straight edges, cut quality "
                        + report.quality().label() + " (\u00b1 one standard uncertainty)");
        facts.put("Feed model", model(report));
        facts.put("Cutting time", ReportText.time(report.plan().cuttingTime()));
        facts.put("Rapid traverse", ReportText.time(Kind.TIME.si(report.plan().rapidTime())));
        facts.put("Water", ReportText.of(report.water(), units.volume()));
        facts.put("Abrasive", ReportText.of(report.abrasive(), units.mass()));
        facts.put("Energy", ReportText.of(report.energy(), Units.KILOWATT_HOUR) + " at the orifice");
        facts.put("Kerf offset", KerfText.offsetAndModel(report));
        facts.put("Taper", ReportText.of(report.kerf().taperPerSide(), Units.DEGREE) + " per side");
        facts.putAll(job.facts());
        StringBuilder text = new StringBuilder(report.title()).append("\n\n");
        facts.forEach((label, value) -> text.append(label)
                .append(" ".repeat(Math.max(1, 20 - label.length())))
                .append(value)
                .append('\n'));
        return text.toString();
    }

    /** The model, and the number by which the material is known to it with its evidence. */
    private static String model(PlanReport report) {
        Material material = report.workpiece().material();
        double number = material.machinabilitySi();
        return report.plan().setup().feedModel().name() + "; machinability number "
                + ReportText.of(number, number * material.relativeUncertainty(), "")
                        .strip() + " ("
                + material.evidence().grade().label() + ")";
    }

    private static String layers(int count) {
        return count == 1 ? "" : " in " + count + " sheets or layers";
    }
}
