package dev.waterjet.examples.plan;

import dev.waterjet.feed.FaceGrade;
import dev.waterjet.job.HeadSelection;
import dev.waterjet.job.HeadSelector;
import dev.waterjet.job.PartDemand;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.path.Contour;
import dev.waterjet.path.Edge;
import dev.waterjet.path.Finish;
import dev.waterjet.path.Side;
import dev.waterjet.program.Cut;
import dev.waterjet.program.PartProgram;
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
    public static HeadSelection of(HeadSelector selector, PartProgram program, Workpiece piece, FaceGrade grade) {
        List<Cut> cuts = program.cuts();
        PartDemand demand = PartDemand.of(piece, finest(cuts, grade), program.cuttingLength())
                .withPierces(cuts.size());
        List<Side> parts = PartSides.of(cuts);
        double radius = Double.POSITIVE_INFINITY;
        double passage = Double.POSITIVE_INFINITY;
        for (int i = 0; i < cuts.size(); i++) {
            // where the path is the centre of the jet, the jet enters whatever the path does
            if (cuts.get(i).jetSide().isPresent() && cuts.get(i).isClosed()) {
                Contour loop = cuts.get(i).loop(Finish.usual()).orElseThrow();
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
                passage < Double.POSITIVE_INFINITY ? demand.withNarrowestPassage(Kind.LENGTH.of(passage)) : demand);
    }

    private static FaceGrade finest(List<Cut> cuts, FaceGrade otherwise) {
        FaceGrade finest = cuts.isEmpty() ? otherwise : FaceGrade.PARTING;
        for (Cut cut : cuts) {
            FaceGrade grade = cut.grade().orElse(otherwise);
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
