package dev.waterjet.examples.plan;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import dev.waterjet.measure.Described;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A plan as JSON: its own description, in SI units, the unit at the end of each key, with the findings of the program that was read
 * and of leads that were placed, and all cautions that people are shown.
 */
public final class PlanJson {

    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private PlanJson() {}

    /**
     * Returns a plan as JSON.
     *
     * @param report the plan
     * @param job facts of the job
     * @return the text
     */
    public static String text(PlanReport report, JobFacts job) {
        Map<String, Object> whole = new LinkedHashMap<>(report.plan().describe());
        whole.put("program_findings", described(report.checks()));
        whole.put("lead_findings", described(report.leads()));
        whole.put("report_cautions", described(Remarks.cautions(report, job)));
        try {
            return MAPPER.writeValueAsString(whole);
        } catch (JsonProcessingException e) {
            throw new AssertionError("a description holds maps, lists, texts and numbers", e);
        }
    }

    private static List<Map<String, Object>> described(List<? extends Described> all) {
        return all.stream().map(Described::describe).toList();
    }
}
