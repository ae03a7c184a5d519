package dev.waterjet.examples.plan;

import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Side of each cut on which the part lies. A program with a kerf offset states it. Otherwise a loop within an odd number of
 * others is the edge of a hole, with the part outside; for the others, and for open cuts, the part is inside.
 */
final class PartSides {

    private PartSides() {}

    static List<Side> of(List<ProgramCut> cuts) {
        List<Contour> loops = cuts.stream()
                .map(cut -> cut.loop(EdgeRequirement.defaults()).orElseGet(() -> cut.path(EdgeRequirement.defaults())))
                .toList();
        STRtree boxes = new STRtree();
        loops.stream().filter(Contour::isClosed).forEach(loop -> boxes.insert(envelope(loop), loop));
        boxes.build();
        List<Side> sides = new ArrayList<>();
        for (int i = 0; i < cuts.size(); i++) {
            Side inside = loops.get(i).enclosedSide();
            boolean isHole = loopsAround(loops.get(i), boxes) % 2 == 1;
            sides.add(cuts.get(i).jetSide().map(Side::opposite).orElse(isHole ? inside.opposite() : inside));
        }
        return sides;
    }

    /** Number of loops around another; only those whose boxes contain its start are checked. */
    private static int loopsAround(Contour inner, STRtree boxes) {
        Envelope whole = envelope(inner);
        Envelope start =
                new Envelope(new Coordinate(inner.start().xSi(), inner.start().ySi()));
        int count = 0;
        for (Object found : boxes.query(start)) {
            Contour loop = (Contour) found;
            boolean isAround = !loop.equals(inner) && envelope(loop).covers(whole) && loop.isAround(inner.start());
            count += isAround ? 1 : 0;
        }
        return count;
    }

    private static Envelope envelope(Contour contour) {
        Box box = contour.box();
        return new Envelope(
                box.minimum().xSi(),
                box.maximum().xSi(),
                box.minimum().ySi(),
                box.maximum().ySi());
    }
}
