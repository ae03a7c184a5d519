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

/** What the reader of a plan must know beside its numbers: cautions, heaviest first, and the evidence that it stands on. */
public final class Remarks {

    private Remarks() {}

    /**
     * All cautions of a plan, each once.
     *
     * @param plan the plan
     * @param job what piercing, wear and prices add
     * @return the cautions, heaviest first
     */
    public static List<Caution> cautions(PartPlan plan, JobFacts job) {
        Set<Caution> all = new LinkedHashSet<>();
        all.add(Caution.danger(
                "cutting-jet",
                "A cutting jet cuts hands and feet, and injects water and garnet under the skin. The machine's manual, local"
                        + " codes and trained people decide what is run; run the program without jet first."));
        all.addAll(plan.feed().cautions());
        plan.cuts().forEach(cut -> all.addAll(cut.kerf().cautions()));
        if (!plan.request().program().hasUnit()) {
            all.add(Caution.warning(
                    "unit-not-said", "The program says neither G71 nor G70; it was read in millimetres."));
        }
        all.add(
                plan.features().isEdge()
                        ? Caution.notice(
                                "offset-by-machine",
                                "The program's path is the edge of the part where G41 or G42 is on: the machine must offset"
                                        + " the jet by "
                                        + QuantityText.round(
                                                1000
                                                        * plan.kerf()
                                                                .offset()
                                                                .si(),
                                                3) + " mm.")
                        : Caution.warning(
                                "path-is-centre",
                                "The program's path is taken for the centre of the jet: the part comes out smaller by half"
                                        + " the kerf all round, and holes larger, unless the path allows for it."));
        if (plan.features().sharpCorners() > 0) {
            all.add(Caution.notice(
                    "sharp-corners",
                    plan.features().sharpCorners() + " inner corners are drawn sharp; the jet leaves a radius of "
                            + QuantityText.round(
                                    1000 * plan.kerf().minimumInnerRadius().si(), 3)
                            + " mm there."));
        }
        all.add(Caution.notice(
                "one-feed-a-block",
                "A block carries one feed, the highest that its middle allows. Where the jet must slow down before a corner,"
                        + " the machine has to do it; the times here count on it."));
        all.add(
                Caution.notice(
                        "no-piercing",
                        "Cutting time, water and abrasive are those of cutting; \"jet on\" and the cost count the pierces as well."));
        all.addAll(job.cautions());
        List<Caution> sorted = new ArrayList<>(all);
        sorted.sort(Comparator.comparing(Caution::weight).reversed());
        return sorted;
    }

    /**
     * The evidence that a plan stands on.
     *
     * @param plan the plan
     * @return what it is about, and the evidence
     */
    public static Map<String, Evidence> evidence(PartPlan plan) {
        PlanRequest asked = plan.request();
        Map<String, Evidence> all = new LinkedHashMap<>();
        all.put("Feed: " + asked.feeds().name(), asked.feeds().evidence());
        all.put(
                "Material: " + asked.piece().material().name(),
                asked.piece().material().evidence());
        all.put("Kerf and taper", asked.kerfs().evidence());
        all.put("Lag on arcs and at corners", asked.kerfs().lagModel().evidence());
        return all;
    }
}
