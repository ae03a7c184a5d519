package dev.waterjet.plan;

import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Side of each cut of a program on which the part lies. A program with a kerf offset states it. Otherwise a loop within an odd
 * number of others is the edge of a hole, with the part outside; for the others, and for open cuts, the part is inside.
 */
final class ProgramSides {

    private ProgramSides() {}

    static List<Side> of(List<ProgramCut> cuts) {
        Contour[] loops = new Contour[cuts.size()];
        for (int i = 0; i < loops.length; i++) {
            ProgramCut cut = cuts.get(i);
            loops[i] = cut.loop(EdgeRequirement.defaults()).orElseGet(() -> cut.path(EdgeRequirement.defaults()));
        }
        int[] depth = depths(loops);
        List<Side> sides = new ArrayList<>();
        for (int i = 0; i < loops.length; i++) {
            Side inside = loops[i].enclosedSide();
            Side byNesting = depth[i] % 2 == 1 ? inside.opposite() : inside;
            sides.add(cuts.get(i).jetSide().map(Side::opposite).orElse(byNesting));
        }
        return List.copyOf(sides);
    }

    /** Number of loops around each; a sweep over x compares those whose boxes meet only. */
    private static int[] depths(Contour[] loops) {
        Box[] boxes = new Box[loops.length];
        Integer[] order = new Integer[loops.length];
        for (int i = 0; i < loops.length; i++) {
            boxes[i] = loops[i].box();
            order[i] = i;
        }
        Arrays.sort(order, Comparator.comparingDouble(i -> boxes[i].minimum().xSi()));
        int[] depth = new int[loops.length];
        List<Integer> open = new ArrayList<>();
        for (int i : order) {
            open.removeIf(
                    outer -> boxes[outer].maximum().xSi() < boxes[i].minimum().xSi());
            for (int outer : open) {
                if (loops[outer].isClosed()
                        && boxes[outer].isAround(boxes[i])
                        && loops[outer].isAround(loops[i].start())) {
                    depth[i]++;
                }
            }
            open.add(i);
        }
        return depth;
    }
}
