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

/** Which head a program asks for: by its length of cut, its pierces, its smallest hollow radius and narrowest passage. */
public final class HeadChoice {

    /** Passages are looked for from this width up to a dozen times it. */
    private static final double FINE_SLOT_M = 0.2e-3;

    private HeadChoice() {}

    /**
     * Tries all heads of a selector on a program.
     *
     * @param selector the heads, pump and prices
     * @param program the program
     * @param piece what is cut
     * @param grade grade of faces of which the program says nothing
     * @return those that serve, and why the others do not
     */
    public static HeadSelection of(HeadSelector selector, PartProgram program, Workpiece piece, CutQuality grade) {
        List<ProgramCut> cuts = program.cuts();
        PartRequirement demand = PartRequirement.of(piece, finest(cuts, grade), program.cuttingLength())
                .withPierces(cuts.size());
        List<Side> parts = PartSides.of(cuts);
        double radius = Double.POSITIVE_INFINITY;
        double passage = Double.POSITIVE_INFINITY;
        for (int i = 0; i < cuts.size(); i++) {
            // where the path is the centre of the jet, the jet enters whatever the path does
            if (cuts.get(i).jetSide().isPresent() && cuts.get(i).isClosed()) {
                Contour loop = cuts.get(i).loop(EdgeRequirement.defaults()).orElseThrow();
                radius = Math.min(radius, hollow(loop, parts.get(i)));
                passage = Math.min(
                        passage,
                        Passage.narrowest(loop, loop.enclosedSide() != parts.get(i), FINE_SLOT_M)
                                .orElse(Double.POSITIVE_INFINITY));
            }
        }
        if (radius < Double.POSITIVE_INFINITY) {
            demand = demand.withSmallestRadius(Kind.LENGTH.of(radius));
        }
        return selector.select(
                passage < Double.POSITIVE_INFINITY ? demand.withMinimumSlotWidth(Kind.LENGTH.of(passage)) : demand);
    }

    private static CutQuality finest(List<ProgramCut> cuts, CutQuality otherwise) {
        CutQuality finest = cuts.isEmpty() ? otherwise : CutQuality.VERY_COARSE;
        for (ProgramCut cut : cuts) {
            CutQuality grade = cut.quality().orElse(otherwise);
            finest = grade.compareTo(finest) > 0 ? grade : finest;
        }
        return finest;
    }

    private static double hollow(Contour loop, Side part) {
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
