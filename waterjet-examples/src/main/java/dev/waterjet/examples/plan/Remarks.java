package dev.waterjet.examples.plan;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.measure.QuantityText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Cautions of a plan, most severe first, and the evidence on which it rests. */
public final class Remarks {

    private Remarks() {}

    /**
     * Returns all cautions of a plan, each once.
     *
     * @param plan the plan
     * @param job piercing, wear and cost
     * @return the cautions, most severe first
     */
    public static List<Caution> cautions(PartPlan plan, JobFacts job) {
        Set<Caution> all = new LinkedHashSet<>();
        all.add(Caution.danger(
                "cutting-jet",
                "a cutting jet cuts hands and feet, and injects water and garnet under the skin; the machine's manual, local"
                        + " codes and trained people decide what is run; run the program without the jet first"));
        all.addAll(plan.feed().cautions());
        plan.cuts().forEach(cut -> all.addAll(cut.kerf().cautions()));
        if (!plan.request().program().hasUnit()) {
            all.add(Caution.warning(
                    "unit-not-stated", "the program states neither G71 nor G70; it was read in millimetres"));
        }
        all.add(
                plan.features().isEdge()
                        ? Caution.notice(
                                "offset-by-machine",
                                "the path is the edge of the part where G41 or G42 is active; the machine must offset the"
                                        + " jet by "
                                        + QuantityText.round(
                                                1000 * plan.kerf().offset().si(), 3) + " mm")
                        : Caution.warning(
                                "path-of-jet-axis",
                                "the program has no G41 or G42; its path is taken as the path of the jet axis, and the part"
                                        + " is smaller by the kerf offset unless the path includes it"));
        if (plan.features().sharpCorners() > 0) {
            all.add(Caution.notice(
                    "sharp-corners",
                    plan.features().sharpCorners() + " inner corners are sharp; the jet leaves a radius of "
                            + QuantityText.round(
                                    1000 * plan.kerf().minimumInnerRadius().si(), 3)
                            + " mm there"));
        }
        all.add(Caution.notice(
                "one-feed-per-block",
                "a block has one feed rate, the highest that its middle allows; the slowdown before a corner is left to the"
                        + " machine, and the times assume it"));
        all.add(Caution.notice(
                "time-without-piercing",
                "cutting time, water and abrasive exclude the pierces; jet-on time and cost include them"));
        all.addAll(job.cautions());
        List<Caution> sorted = new ArrayList<>(all);
        sorted.sort(Comparator.comparing(Caution::severity).reversed());
        return sorted;
    }

    /**
     * Returns the evidence of a plan.
     *
     * @param plan the plan
     * @return evidence by subject
     */
    public static Map<String, Evidence> evidence(PartPlan plan) {
        PlanRequest request = plan.request();
        Map<String, Evidence> all = new LinkedHashMap<>();
        all.put("Feed rate: " + request.feeds().name(), request.feeds().evidence());
        all.put(
                "Material: " + request.workpiece().material().name(),
                request.workpiece().material().evidence());
        all.put("Kerf and taper", request.kerfs().evidence());
        all.put("Lag on arcs and at corners", request.kerfs().lagModel().evidence());
        return all;
    }
}
