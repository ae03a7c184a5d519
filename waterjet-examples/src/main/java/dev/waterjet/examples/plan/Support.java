package dev.waterjet.examples.plan;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
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
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;

/** Support of the part on the slats, width of its tabs, and places for missing leads. */
final class Support {

    private static final int TABS = 3;
    private static final int MAX_LEADS = 5;

    private final Map<String, String> facts = new LinkedHashMap<>();
    private final List<Caution> cautions = new ArrayList<>();

    private Support() {}

    static Support of(PlanReport report, Shop shop) {
        Support support = new Support();
        List<ProgramCut> closed =
                report.program().cuts().stream().filter(ProgramCut::isClosed).toList();
        List<Part> parts = report.parts().isEmpty() ? part(closed).stream().toList() : report.parts();
        if (parts.isEmpty()) {
            support.facts.put("Leads, slats", "not checked: the cuts do not bound one part");
        }
        parts.forEach(found -> support.check(found, closed, report, shop));
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
        try {
            return isOnePart ? Optional.of(Part.of(rim, loops)) : Optional.empty();
        } catch (GeometryException crossing) {
            // a spike or crossing is a finding of the plan; here it means that there is no sound part to support
            return Optional.empty();
        }
    }

    private void check(Part part, List<ProgramCut> closed, PlanReport report, Shop shop) {
        CuttingRules rules = CuttingRules.of(
                report.plan()
                        .kerfWidth()
                        .orElseGet(() -> report.kerf().maximumWidth().value()),
                report.workpiece().thickness());
        leads(part, closed, rules, report.units());
        Finding rests = shop.slats().check(part);
        if (!rests.isSatisfied() || !facts.containsKey("Slats")) {
            facts.put("Slats", rests.message().text(report.units().replaced()));
        }
        // a program of a drawing has the tabs
        boolean isDrawn = !report.parts().isEmpty();
        if (shop.drawnTabs() > 0) {
            facts.put("Tabs", shop.drawnTabs() + " in the program where the drawing marks them");
        } else if (!rests.isSatisfied()) {
            if (!isDrawn || shop.shearStrength().isEmpty()) {
                cautions.add(Caution.warning(rests.message()));
            }
            shop.shearStrength().ifPresent(strength -> facts.put("Tabs", tabs(strength, rules, report, isDrawn)));
        }
    }

    private static String tabs(
            Quantity<Pressure> strength, CuttingRules rules, PlanReport report, boolean isInProgram) {
        HoldingTabs tabs = HoldingTabs.of(
                report.jet().water().reactionForce(),
                strength,
                report.workpiece().thickness(),
                rules);
        return TABS + " of "
                + ReportText.of(Kind.LENGTH, tabs.width(TABS), report.units().length())
                + (isInProgram
                        ? " in the program hold the part against the reaction of the jet"
                        : " hold the part against the reaction of the jet");
    }

    /** Places for the lead of each cut that has none, of the first few only: each takes a look at the whole part. */
    private void leads(Part part, List<ProgramCut> closed, CuttingRules rules, ReportUnits units) {
        List<String> places = new ArrayList<>();
        int bare = 0;
        for (ProgramCut cut : closed) {
            if (cut.leadIn() == 0) {
                bare++;
                if (places.size() < MAX_LEADS) {
                    int index = part.contours()
                            .indexOf(cut.loop(EdgeRequirement.defaults()).orElseThrow());
                    places.add(
                            "line " + cut.line() + ": " + place(LeadPlacer.of(conditioned(part), rules), index, units));
                }
            }
        }
        facts.put(
                "Leads",
                bare == 0
                        ? "every closed cut has a lead"
                        : bare + (bare == 1 ? " cut has none: " : " cuts have none: ") + String.join("; ", places));
    }

    /** The part of lines and arcs in place of chords: a contour of a hundred thousand chords has a few hundred. */
    private static Part conditioned(Part part) {
        ContourConditioner conditioner = ContourConditioner.defaults();
        return Part.of(
                conditioner.condition(part.outline()).contour(),
                part.holes().stream()
                        .map(hole -> conditioner.condition(hole).contour())
                        .toList());
    }

    private static String place(LeadPlacer placer, int contour, ReportUnits units) {
        try {
            Lead lead = placer.suggest(contour);
            return "pierce at " + units.text(lead.pierce()) + ", enter at " + units.text(lead.entry())
                    + (lead.isClear() ? "" : " (not clear of the part)");
        } catch (GeometryException tooNarrow) {
            return tooNarrow.message().text(units.replaced());
        }
    }

    Map<String, String> facts() {
        return facts;
    }

    List<Caution> cautions() {
        return cautions;
    }
}
