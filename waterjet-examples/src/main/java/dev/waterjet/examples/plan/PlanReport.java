package dev.waterjet.examples.plan;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Box;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.plan.PartPlan;
import dev.waterjet.plan.PlannedCut;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramFinding;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Volume;

/**
 * Plan of a program with what its report needs.
 *
 * @param title title of the part
 * @param plan the plan
 * @param program the program that was planned
 * @param part rectangle around its contours without leads
 * @param written the program with the feed rates of the plan
 * @param parts parts of a drawing where they lie; none for a program
 * @param inputName file name of the input
 * @param writtenName file name of the written program
 * @param units units of the report
 * @param remarks cautions of the input
 * @param leads findings of leads that were placed and are not satisfied
 * @param checks findings of the program itself
 */
public record PlanReport(
        String title,
        PartPlan plan,
        PartProgram program,
        Box part,
        PartProgram written,
        List<Part> parts,
        String inputName,
        String writtenName,
        ReportUnits units,
        List<Caution> remarks,
        List<Finding> leads,
        List<ProgramFinding> checks) {

    private static final int MAX_ALIKE = 2;

    /**
     * Findings that are not satisfied, as lines of text: those of the program first. Of one kind the first few are listed,
     * the others are counted.
     */
    public List<String> findingTexts() {
        Map<String, List<String>> byCode = new LinkedHashMap<>();
        checks.forEach(finding -> add(
                byCode,
                finding.code(),
                "line " + finding.line() + ": " + finding.finding().text(units.replaced())));
        leads.forEach(finding -> add(byCode, finding.code(), units.text(finding)));
        plan.violations().forEach(finding -> add(byCode, finding.code(), units.text(finding)));
        List<String> texts = new ArrayList<>();
        for (List<String> alike : byCode.values()) {
            texts.addAll(alike.subList(0, Math.min(MAX_ALIKE, alike.size())));
            if (alike.size() > MAX_ALIKE) {
                texts.add("and " + (alike.size() - MAX_ALIKE) + " more of this kind");
            }
        }
        return texts;
    }

    private static void add(Map<String, List<String>> byCode, String code, String text) {
        List<String> alike = byCode.computeIfAbsent(code, any -> new ArrayList<>());
        if (!alike.contains(text)) {
            alike.add(text);
        }
    }

    /** Cut quality of edges of which the program states none. */
    CutQuality quality() {
        return plan.setup().requirement().quality();
    }

    AbrasiveJet jet() {
        return plan.conditions().jet();
    }

    Workpiece workpiece() {
        return plan.conditions().workpiece();
    }

    /** Feed rate on straight edges of that quality. */
    Estimate<Speed> feed() {
        return plan.conditions().feed(quality());
    }

    /** Kerf at that feed rate. */
    Kerf kerf() {
        return plan.setup().kerfModel().kerf(plan.conditions(), feed().value());
    }

    /**
     * Returns the rectangle around the contours of a program without leads.
     *
     * @param program the program
     * @param requirement requirement on the edges
     * @return the rectangle
     */
    public static Box around(PartProgram program, EdgeRequirement requirement) {
        return around(program.cuts().stream()
                .map(cut -> cut.loop(requirement)
                        .orElseGet(() -> cut.path(requirement))
                        .box())
                .toList());
    }

    /** Rectangle around all paths. */
    Box all() {
        return around(plan.cuts().stream()
                .flatMap(cut -> cut.feeds().stream())
                .map(feed -> feed.source().box())
                .toList());
    }

    private static Box around(List<Box> boxes) {
        return new Box(
                Point.ofSi(
                        least(boxes.stream().map(Box::minimum).map(Point::xSi).toList()),
                        least(boxes.stream().map(Box::minimum).map(Point::ySi).toList())),
                Point.ofSi(
                        most(boxes.stream().map(Box::maximum).map(Point::xSi).toList()),
                        most(boxes.stream().map(Box::maximum).map(Point::ySi).toList())));
    }

    private static double least(List<Double> values) {
        return values.stream().min(Comparator.naturalOrder()).orElse(0.0);
    }

    private static double most(List<Double> values) {
        return values.stream().max(Comparator.naturalOrder()).orElse(0.0);
    }

    /** Size of the part, as {@code 160 mm × 106 mm}. */
    String size() {
        return ReportText.of(Kind.LENGTH, part.width(), units.length()) + " \u00d7 "
                + ReportText.of(Kind.LENGTH, part.height(), units.length());
    }

    /** Whether a machine applies the kerf offset to any cut. */
    boolean hasOffset() {
        return program.cuts().stream().anyMatch(cut -> cut.jetSide().isPresent());
    }

    Estimate<Volume> water() {
        return consumed(Kind.VOLUME, jet().water().volumeFlowSi());
    }

    Estimate<Mass> abrasive() {
        return consumed(Kind.MASS, jet().abrasiveFlowSi());
    }

    /** Energy of the water at the orifice with the jet on; the motor of the pump draws more. */
    Estimate<Energy> energy() {
        return consumed(Kind.ENERGY, Kind.POWER.si(jet().water().ratedHydraulicPower()));
    }

    private <Q extends Quantity<Q>> Estimate<Q> consumed(Kind<Q> kind, double perSecond) {
        double seconds = plan.work().jetTime().si();
        return Estimate.withinFactor(
                kind, seconds * perSecond, plan.work().jetTime().relativeUncertainty(), List.of());
    }

    /** Line of the program at which a cut starts. */
    int line(PlannedCut cut) {
        return program.cuts().get(cut.source()).line();
    }
}
