package dev.waterjet.examples.plan;

import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.PartRequirement;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;

/** Selection of a head by cut length, pierces, minimum inner radius and minimum slot width. */
public final class HeadChoice {

    private HeadChoice() {}

    /**
     * Returns the result of a selector for a program.
     *
     * @param selector the heads, pump and prices
     * @param program the program
     * @param workpiece workpiece
     * @param quality cut quality where the program specifies none
     * @return feasible and rejected heads
     */
    public static HeadSelection of(
            HeadSelector selector, PartProgram program, Workpiece workpiece, CutQuality quality) {
        List<ProgramCut> cuts = program.cuts();
        PartRequirement requirement = PartRequirement.of(workpiece, finest(cuts, quality), program.cuttingLength())
                .withPierces(cuts.size());
        for (ProgramCut cut : cuts) {
            // the jet can always follow a path of its own axis
            if (cut.jetSide().isPresent() && cut.isClosed()) {
                Contour loop = cut.loop(EdgeRequirement.defaults()).orElseThrow();
                requirement =
                        requirement.withFeaturesOf(loop, cut.jetSide().get().opposite());
            }
        }
        return selector.select(requirement);
    }

    /**
     * Returns the result of a selector for the parts of a drawing.
     *
     * @param selector the heads, pump and prices
     * @param parts the parts, 1 or more
     * @param workpiece workpiece
     * @return feasible and rejected heads
     */
    public static HeadSelection of(HeadSelector selector, List<Part> parts, Workpiece workpiece) {
        double length = 0;
        int pierces = 0;
        CutQuality finest = CutQuality.VERY_COARSE;
        double radius = Double.POSITIVE_INFINITY;
        double slot = Double.POSITIVE_INFINITY;
        for (Part part : parts) {
            PartRequirement one = PartRequirement.of(part, workpiece);
            length += Kind.LENGTH.si(one.length());
            pierces += one.pierces();
            finest = one.quality().compareTo(finest) > 0 ? one.quality() : finest;
            radius = Math.min(
                    radius, one.minimumInnerRadius().map(Kind.LENGTH::si).orElse(radius));
            slot = Math.min(slot, one.minimumSlotWidth().map(Kind.LENGTH::si).orElse(slot));
        }
        PartRequirement all =
                PartRequirement.of(workpiece, finest, Kind.LENGTH.of(length)).withPierces(pierces);
        all = radius < Double.POSITIVE_INFINITY ? all.withMinimumInnerRadius(Kind.LENGTH.of(radius)) : all;
        return selector.select(slot < Double.POSITIVE_INFINITY ? all.withMinimumSlotWidth(Kind.LENGTH.of(slot)) : all);
    }

    private static CutQuality finest(List<ProgramCut> cuts, CutQuality otherwise) {
        CutQuality finest = cuts.isEmpty() ? otherwise : CutQuality.VERY_COARSE;
        for (ProgramCut cut : cuts) {
            for (EdgeRequirement edge : cut.path(EdgeRequirement.of(otherwise)).requirements()) {
                finest = edge.quality().compareTo(finest) > 0 ? edge.quality() : finest;
            }
        }
        return finest;
    }
}
