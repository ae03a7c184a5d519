package dev.waterjet.examples.plan;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.Lead;
import dev.waterjet.toolpath.LeadPlacer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Whether the part lies safely on the slats, how wide its tabs must be, and where cuts without a lead could have one. */
final class Support {

    private static final int TABS = 3;
    private static final int MOST_LEADS = 5;

    private final Map<String, String> words = new LinkedHashMap<>();
    private final List<Caution> cautions = new ArrayList<>();

    private Support() {}

    static Support of(PartPlan plan, Shop shop) {
        Support support = new Support();
        List<ProgramCut> closed =
                plan.request().program().cuts().stream().filter(ProgramCut::isClosed).toList();
        part(closed).ifPresent(part -> support.look(part, closed, plan, shop));
        return support;
    }

    /** The part that the loops of a program bound, if they bound one. */
    private static Optional<Part> part(List<ProgramCut> closed) {
        if (closed.isEmpty()) {
            return Optional.empty();
        }
        List<Contour> loops = new ArrayList<>(closed.stream()
                .map(cut -> cut.loop(EdgeRequirement.defaults()).orElseThrow())
                .toList());
        int outline = 0;
        for (int i = 1; i < loops.size(); i++) {
            outline = loops.get(i).box().isAround(loops.get(outline).box()) ? i : outline;
        }
        Contour rim = loops.remove(outline);
        boolean isOnePart = loops.stream().allMatch(loop -> rim.isAround(loop.start()));
        return isOnePart ? Optional.of(Part.of(rim, loops)) : Optional.empty();
    }

    private void look(Part part, List<ProgramCut> closed, PartPlan plan, Shop shop) {
        CuttingRules rules = CuttingRules.of(
                plan.kerf().largestWidth().value(), plan.request().piece().thickness());
        leads(part, closed, rules);
        Finding rests = shop.slats().check(part);
        words.put("slats", rests.reason());
        if (!rests.isSatisfied()) {
            cautions.add(Caution.warning(rests.code(), rests.reason() + "; " + rests.suggestion() + "."));
            shop.shearStrength().ifPresent(strength -> {
                HoldingTabs tabs = HoldingTabs.of(
                        plan.request().jet().water().reactionForce(),
                        strength,
                        plan.request().piece().thickness(),
                        rules);
                words.put(
                        "tabs",
                        TABS + " of " + Told.of(Kind.LENGTH, tabs.width(TABS), Units.MILLIMETRE)
                                + " hold the part against the jet");
            });
        }
    }

    /** Where a cut that starts on its own edge could be led in. */
    private void leads(Part part, List<ProgramCut> closed, CuttingRules rules) {
        LeadPlacer placer = LeadPlacer.of(part, rules);
        List<String> places = new ArrayList<>();
        int bare = 0;
        for (ProgramCut cut : closed) {
            if (cut.leadIn() == 0) {
                bare++;
                if (places.size() < MOST_LEADS) {
                    int index = part.contours().indexOf(cut.loop(EdgeRequirement.defaults()).orElseThrow());
                    Optional<Lead> lead = placer.suggest(index);
                    places.add("line " + cut.line() + ": "
                            + lead.map(found -> "pierce at " + found.pierce() + ", enter at " + found.entry())
                                    .orElse("no place keeps clear"));
                }
            }
        }
        words.put(
                "leads",
                bare == 0
                        ? "every closed cut has one"
                        : bare + (bare == 1 ? " cut has none; " : " cuts have none; ") + String.join("; ", places));
    }

    Map<String, String> words() {
        return words;
    }

    List<Caution> cautions() {
        return cautions;
    }
}
