package dev.waterjet.examples.plan;

import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Side;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Minimum inner radius and slot width of the part, compared with those that the jet can cut. A program without kerf offset
 * gives the path of the jet axis, which the jet can always follow.
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
            double minimum = kerf.minimumInnerRadius().si();
            Contour loop = cut.loop(EdgeRequirement.defaults()).orElseThrow();
            for (int k = 0; k < loop.size(); k++) {
                Edge edge = loop.edge(k);
                if (edge.isArc() && edge.turn().orElseThrow() != parts.get(i)) {
                    double r = Kind.LENGTH.si(edge.radius().orElseThrow());
                    refuseBelow(r, minimum, cut.line(cut.leadIn() + k), "an inner radius");
                    radius = Math.min(radius, r);
                }
            }
            corners += SharpCorners.count(loop, parts.get(i));
            boolean isHole = loop.enclosedSide() != parts.get(i);
            OptionalDouble narrowest =
                    SlotWidth.narrowest(loop, isHole, kerf.minimumSlotWidth().si());
            if (narrowest.isPresent()) {
                refuseBelow(narrowest.getAsDouble(), kerf.minimumSlotWidth().si(), cut.line(cut.leadIn()), "a slot");
                slot = Math.min(slot, narrowest.getAsDouble());
            }
        }
        return new Features(radius, slot, corners, isEdge);
    }

    private static void refuseBelow(double actual, double minimum, int line, String feature) {
        if (actual < minimum) {
            throw new TextException(
                    line,
                    1,
                    Message.of(
                                    "feature-too-small",
                                    "{feature} of {actual}; the jet leaves at least {minimum} at this feed rate; use a"
                                            + " smaller orifice and focusing tube")
                            .with("feature", feature)
                            .with("actual", Kind.LENGTH, actual, Units.MILLIMETRE)
                            .with("minimum", Kind.LENGTH, minimum, Units.MILLIMETRE));
        }
    }

    /** Minimum inner radius, in m; empty if the part has none or the path is that of the jet axis. */
    public OptionalDouble smallestRadiusSi() {
        return finite(smallestRadiusM);
    }

    /** Minimum slot width, in m; empty if no slot is narrow or the path is that of the jet axis. */
    public OptionalDouble smallestSlotSi() {
        return finite(smallestSlotM);
    }

    private static OptionalDouble finite(double lengthM) {
        return Double.isFinite(lengthM) ? OptionalDouble.of(lengthM) : OptionalDouble.empty();
    }

    /** Number of sharp inner corners, where the jet leaves its own radius. */
    public int sharpCorners() {
        return sharpCorners;
    }

    /** Whether the program's path is the edge of the part, so that the machine applies the kerf offset. */
    public boolean isEdge() {
        return isEdge;
    }
}
