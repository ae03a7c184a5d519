package dev.waterjet.examples.plan;

import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.PartRequirement;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Side;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;

/** Selection of a head for a program, by its cut length, pierces, minimum inner radius and minimum slot width. */
public final class HeadChoice {

    /** Slots are searched from this width up to twelve times it. */
    private static final double FINE_SLOT_M = 0.2e-3;

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
        List<Side> parts = PartSides.of(cuts);
        double radius = Double.POSITIVE_INFINITY;
        double slot = Double.POSITIVE_INFINITY;
        for (int i = 0; i < cuts.size(); i++) {
            // the jet can always follow a path of its own axis
            if (cuts.get(i).jetSide().isPresent() && cuts.get(i).isClosed()) {
                Contour loop = cuts.get(i).loop(EdgeRequirement.defaults()).orElseThrow();
                radius = Math.min(radius, innerRadius(loop, parts.get(i)));
                slot = Math.min(
                        slot,
                        SlotWidth.narrowest(loop, loop.enclosedSide() != parts.get(i), FINE_SLOT_M)
                                .orElse(Double.POSITIVE_INFINITY));
            }
        }
        if (radius < Double.POSITIVE_INFINITY) {
            requirement = requirement.withMinimumInnerRadius(Kind.LENGTH.of(radius));
        }
        return selector.select(
                slot < Double.POSITIVE_INFINITY ? requirement.withMinimumSlotWidth(Kind.LENGTH.of(slot)) : requirement);
    }

    private static CutQuality finest(List<ProgramCut> cuts, CutQuality otherwise) {
        CutQuality finest = cuts.isEmpty() ? otherwise : CutQuality.VERY_COARSE;
        for (ProgramCut cut : cuts) {
            CutQuality quality = cut.quality().orElse(otherwise);
            finest = quality.compareTo(finest) > 0 ? quality : finest;
        }
        return finest;
    }

    private static double innerRadius(Contour loop, Side part) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < loop.size(); k++) {
            Edge edge = loop.edge(k);
            if (edge.isArc() && edge.turn().orElseThrow() != part) {
                least = Math.min(least, Kind.LENGTH.si(edge.radius().orElseThrow()));
            }
        }
        return least;
    }
}
