package dev.waterjet.examples.plan;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import dev.waterjet.plan.PartPlan;

/** A plan as JSON: its own description, in SI units, the unit at the end of each key. */
public final class PlanJson {

    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private PlanJson() {}

    /**
     * Returns a plan as JSON.
     *
     * @param plan the plan
     * @return the text
     */
    public static String text(PartPlan plan) {
        try {
            return MAPPER.writeValueAsString(plan.describe());
        } catch (JsonProcessingException e) {
            throw new AssertionError("a description holds maps, lists, texts and numbers", e);
        }
    }
}
