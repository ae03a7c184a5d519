package dev.waterjet.examples.plan;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.measure.Message;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Cautions of a plan, most severe first, and the evidence on which it rests. */
public final class Remarks {

    private static final int MAX_FINDINGS = 20;

    private Remarks() {}

    /**
     * Returns all cautions of a plan, each once.
     *
     * @param report the plan
     * @param job piercing, wear and cost
     * @return the cautions, most severe first
     */
    public static List<Caution> cautions(PlanReport report, JobFacts job) {
        Set<Caution> all = new LinkedHashSet<>();
        all.add(Caution.danger(Message.of(
                "cutting-jet",
                "a cutting jet cuts hands and feet, and injects water and garnet under the skin; the"
                        + " machine's manual, local codes and trained people decide what is run; run the"
                        + " program without the jet first")));
        all.addAll(report.remarks());
        all.addAll(report.plan().cautions());
        if (!report.program().hasUnit()) {
            all.add(Caution.warning(Message.of(
                    "unit-not-stated", "the program states neither G71 nor G70; it was read in millimetres")));
        }
        all.add(
                report.hasOffset()
                        ? Caution.notice(Message.of(
                                        "offset-by-machine",
                                        "the path is the edge of the part where G41 or G42 is active; the machine must"
                                                + " offset the jet by {offset}")
                                .with("offset", KerfText.offset(report)))
                        : Caution.warning(Message.of(
                                "path-of-jet-axis",
                                "the program has no G41 or G42; its path is taken as the path of the jet axis, and the"
                                        + " part is smaller by the kerf offset unless the path includes it")));
        all.addAll(job.cautions());
        Map<String, Caution> byCode = new LinkedHashMap<>();
        all.forEach(caution -> byCode.putIfAbsent(caution.severity() + caution.code(), caution));
        List<Caution> sorted = new ArrayList<>(byCode.values());
        sorted.sort(Comparator.comparing(Caution::severity).reversed());
        return sorted;
    }

    /**
     * Returns the evidence of a plan.
     *
     * @param report the plan
     * @return evidence by subject
     */
    public static Map<String, Evidence> evidence(PlanReport report) {
        Map<String, Evidence> all = new LinkedHashMap<>();
        all.put(
                "Feed rate: " + report.plan().setup().feedModel().name(),
                report.plan().setup().feedModel().evidence());
        all.put(
                "Material: " + report.workpiece().material().name(),
                report.workpiece().material().evidence());
        all.put("Kerf and taper", report.plan().setup().kerfModel().evidence());
        all.put(
                "Lag on arcs and at corners",
                report.plan().setup().kerfModel().lagModel().evidence());
        return all;
    }

    /**
     * Prints the cautions above a notice, all that the reader of the drawing says, and the first findings, a line each.
     *
     * @param out where they are printed
     * @param report the plan
     * @param job facts of the job
     */
    public static void print(PrintWriter out, PlanReport report, JobFacts job) {
        for (Caution caution : cautions(report, job)) {
            if (caution.severity() != Caution.Severity.NOTICE
                    || report.remarks().contains(caution)) {
                out.println(caution.severity().name().toLowerCase(Locale.ROOT) + ": "
                        + caution.message().text(report.units().replaced()));
            }
        }
        List<String> findings = report.findingTexts();
        findings.stream().limit(MAX_FINDINGS).forEach(text -> out.println("finding: " + text));
        if (findings.size() > MAX_FINDINGS) {
            out.println("and " + (findings.size() - MAX_FINDINGS) + " more findings");
        }
    }
}
