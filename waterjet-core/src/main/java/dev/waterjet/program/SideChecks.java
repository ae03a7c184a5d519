package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.List;

/** Checks of where the jet runs, pierces, and in which order. */
final class SideChecks {

    private final ContourNesting nesting;

    SideChecks(ContourNesting nesting) {
        this.nesting = nesting;
    }

    void find(List<ProgramFinding> found) {
        for (int i = 0; i < nesting.cuts.size(); i++) {
            if (nesting.isClosed(i)) {
                side(i, found);
                pierce(i, found);
            }
            order(i, found);
        }
    }

    private void side(int index, List<ProgramFinding> found) {
        ProgramCut cut = nesting.cuts.get(index);
        if (cut.jetSide().isEmpty() || cut.jetSide().get() == nesting.scrapSide(index)) {
            return;
        }
        Contour contour = nesting.contours.get(index);
        Message message = Message.of("jet-in-part", "the jet runs inside the part: {word} on a {direction} {contour}")
                .with("word", cut.jetSide().get() == Side.LEFT ? "G41" : "G42")
                .with("direction", contour.enclosedSide() == Side.LEFT ? "counter-clockwise" : "clockwise")
                .with("contour", nesting.isHole(index) ? "hole" : "outline");
        Message remedy = Message.of("swap-offset", "swap G41 and G42 or reverse the contour");
        found.add(ProgramFinding.violated(
                contourLine(cut), contour.start().xSi(), contour.start().ySi(), message, remedy));
    }

    private void pierce(int index, List<ProgramFinding> found) {
        if (!nesting.hasPierceAside(index)) {
            return;
        }
        ProgramCut cut = nesting.cuts.get(index);
        Point pierce = cut.start();
        int around = nesting.innermost(pierce);
        boolean isWrongSide = nesting.isPiercedInside(index) != nesting.isHole(index);
        boolean isInPart =
                around == ContourNesting.NONE ? isWrongSide && nesting.isHole(index) : !nesting.isHole(around);
        if (isInPart) {
            int nearest = isWrongSide || around == ContourNesting.NONE ? index : around;
            double distance = Kind.LENGTH.si(nesting.contours.get(nearest).clearance(pierce));
            found.add(ProgramFinding.violated(
                    cut.line(),
                    pierce.xSi(),
                    pierce.ySi(),
                    at(
                                    Message.of(
                                            "pierce-in-part",
                                            "the pierce at ({x}, {y}) lies in the part, {distance} from its edge"),
                                    pierce)
                            .with("distance", Kind.LENGTH, distance, Units.MILLIMETRE)));
        } else if (isWrongSide) {
            found.add(ProgramFinding.violated(
                    cut.line(),
                    pierce.xSi(),
                    pierce.ySi(),
                    at(
                            Message.of(
                                    "lead-through-part",
                                    "the lead from the pierce at ({x}, {y}) runs through the part"),
                            pierce)));
        }
    }

    private static Message at(Message message, Point place) {
        return message.with("x", Kind.LENGTH, place.xSi(), Units.MILLIMETRE)
                .with("y", Kind.LENGTH, place.ySi(), Units.MILLIMETRE);
    }

    private void order(int index, List<ProgramFinding> found) {
        ProgramCut cut = nesting.cuts.get(index);
        for (int outer = nesting.parent(index); outer != ContourNesting.NONE; outer = nesting.parent(outer)) {
            if (outer < index) {
                found.add(ProgramFinding.violated(
                        cut.line(),
                        cut.start().xSi(),
                        cut.start().ySi(),
                        Message.of(
                                        "cut-in-freed-piece",
                                        "this contour lies in the piece that line {other} has cut free")
                                .with("other", contourLine(nesting.cuts.get(outer))),
                        Message.of("cut-first", "cut it first")));
                return;
            }
        }
    }

    /** Line at which the contour of a cut begins. */
    private static int contourLine(ProgramCut cut) {
        return cut.line(cut.leadIn());
    }
}
