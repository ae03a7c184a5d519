package dev.waterjet.examples.plan;

import dev.waterjet.path.Box;
import dev.waterjet.path.Contour;
import dev.waterjet.path.Finish;
import dev.waterjet.path.Side;
import dev.waterjet.program.Cut;
import java.util.ArrayList;
import java.util.List;

/**
 * On which side of each cut the part lies. A program with an offset says it. Else a loop that lies within an odd number of
 * others is the edge of a hole, and the part lies outside of it; for the others, and for open cuts, inside.
 */
final class PartSides {

    private PartSides() {}

    static List<Side> of(List<Cut> cuts) {
        List<Contour> loops = cuts.stream()
                .map(cut -> cut.loop(Finish.usual()).orElseGet(() -> cut.path(Finish.usual())))
                .toList();
        List<Box> boxes = loops.stream().map(Contour::box).toList();
        List<Side> sides = new ArrayList<>();
        for (int i = 0; i < cuts.size(); i++) {
            Side inside = loops.get(i).enclosedSide();
            boolean isHole = holders(i, loops, boxes) % 2 == 1;
            sides.add(cuts.get(i).jetSide().map(Side::opposite).orElse(isHole ? inside.opposite() : inside));
        }
        return sides;
    }

    private static int holders(int inner, List<Contour> loops, List<Box> boxes) {
        int count = 0;
        for (int i = 0; i < loops.size(); i++) {
            boolean holds = i != inner
                    && loops.get(i).isClosed()
                    && boxes.get(i).isAround(boxes.get(inner))
                    && loops.get(i).isAround(loops.get(inner).start());
            count += holds ? 1 : 0;
        }
        return count;
    }
}
