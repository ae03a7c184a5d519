package dev.waterjet.examples.plan;

import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Side;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * The smallest radius and slot of the part against what the jet can enter. Where the program's path is the centre of the
 * jet, the jet enters whatever the path does, and leaves at least its own radius and width.
 */
public final class Features {

    private final double smallestRadiusM;
    private final double smallestSlotM;
    private final int sharpCorners;
    private final boolean isEdge;

    private Features(double smallestRadiusM, double smallestSlotM, int sharpCorners, boolean isEdge) {
        this.smallestRadiusM = smallestRadiusM;
        this.smallestSlotM = smallestSlotM;
        this.sharpCorners = sharpCorners;
        this.isEdge = isEdge;
    }

    static Features of(List<ProgramCut> cuts, List<Side> parts, Function<ProgramCut, Kerf> kerfs) {
        double radius = Double.POSITIVE_INFINITY;
        double slot = Double.POSITIVE_INFINITY;
        int corners = 0;
        boolean isEdge = false;
        for (int i = 0; i < cuts.size(); i++) {
            ProgramCut cut = cuts.get(i);
            if (cut.jetSide().isEmpty() || !cut.isClosed()) {
                continue;
            }
            isEdge = true;
            Kerf kerf = kerfs.apply(cut);
            double least = kerf.minimumInnerRadius().si();
            Contour loop = cut.loop(EdgeRequirement.defaults()).orElseThrow();
            for (int k = 0; k < loop.size(); k++) {
                Edge edge = loop.edge(k);
                if (edge.isArc() && edge.turn().orElseThrow() != parts.get(i)) {
                    double r = Kind.LENGTH.si(edge.radius().orElseThrow());
                    refuseBelow(r, least, cut.line(cut.leadIn() + k), "an inner radius");
                    radius = Math.min(radius, r);
                }
            }
            corners += SharpCorners.count(loop, parts.get(i));
            boolean isHole = loop.enclosedSide() != parts.get(i);
            OptionalDouble narrowest =
                    Passage.narrowest(loop, isHole, kerf.smallestSlot().si());
            if (narrowest.isPresent()) {
                refuseBelow(narrowest.getAsDouble(), kerf.smallestSlot().si(), cut.line(cut.leadIn()), "a slot");
                slot = Math.min(slot, narrowest.getAsDouble());
            }
        }
        return new Features(radius, slot, corners, isEdge);
    }

    private static void refuseBelow(double asked, double least, int line, String feature) {
        if (asked < least) {
            throw new TextException(
                    line,
                    1,
                    feature + " of " + told(asked) + ": the jet cannot enter it, it leaves " + told(least)
                            + " at this feed; take a smaller orifice and focusing tube");
        }
    }

    private static String told(double lengthM) {
        return QuantityText.round(lengthM * 1000, 3) + " mm";
    }

    /** Smallest radius of the hollow arcs, in m; empty if the part has none or the path is the centre of the jet. */
    public OptionalDouble smallestRadiusSi() {
        return finite(smallestRadiusM);
    }

    /** Narrowest slot, in m; empty if none is narrow or the path is the centre of the jet. */
    public OptionalDouble smallestSlotSi() {
        return finite(smallestSlotM);
    }

    private static OptionalDouble finite(double lengthM) {
        return Double.isFinite(lengthM) ? OptionalDouble.of(lengthM) : OptionalDouble.empty();
    }

    /** How many hollow corners are drawn sharp: the jet leaves its own radius there. */
    public int sharpCorners() {
        return sharpCorners;
    }

    /** Whether the program's path is the edge of the part, so that the machine offsets the jet. */
    public boolean isEdge() {
        return isEdge;
    }
}
