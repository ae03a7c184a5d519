package dev.waterjet.program;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * One cut of a part program, from jet on to jet off: a lead-in, a closed loop, a lead-out; or an open path. Its blocks are
 * consecutive {@linkplain PartProgram cutting blocks} of the program, each one edge of its path.
 */
public final class ProgramCut implements Described {

    private final ProgramBlocks blocks;
    private final int first;
    private final int end;
    private final Point start;
    private final int line;
    private final CutNotes notes;
    private final @Nullable Side jetSide;
    private final int[] loop;

    ProgramCut(
            ProgramBlocks blocks, int first, int end, Point start, int line, CutNotes notes, @Nullable Side jetSide) {
        this.blocks = blocks;
        this.first = first;
        this.end = end;
        this.start = start;
        this.line = line;
        this.notes = notes;
        this.jetSide = jetSide;
        this.loop = notes.isOpen() ? new int[0] : LoopFinder.find(blocks, first, end, start.xSi(), start.ySi());
    }

    /** {@return the line of the program, from 1, at which the jet is switched on} */
    public int line() {
        return line;
    }

    /**
     * Returns the line of the program that holds a block of this cut.
     *
     * @param block block from 0, counted within this cut
     * @return line from 1
     * @throws dev.waterjet.measure.DomainException if there is no such block
     */
    public int line(int block) {
        return blocks.line[first + (int) Require.between("block of the cut", block, 0, size() - 1, Units.ONE, "")];
    }

    /** {@return the first block, counted from 0 over the cutting blocks of the program} */
    public int firstBlock() {
        return first;
    }

    /** {@return the number of blocks, each an edge of its path; 1 or more} */
    public int size() {
        return end - first;
    }

    /** {@return the name that a note states, or an empty text} */
    public String name() {
        return notes.name();
    }

    /** {@return the cut quality that a note states; empty if that of the part applies} */
    public Optional<CutQuality> quality() {
        return Optional.ofNullable(notes.quality());
    }

    /** {@return the tolerance that a note states; empty if that of the part applies} */
    public Optional<Quantity<Length>> tolerance() {
        return Optional.ofNullable(notes.toleranceM()).map(Kind.LENGTH::of);
    }

    /** {@return whether it contains a closed loop} */
    public boolean isClosed() {
        return loop.length == 2;
    }

    /** {@return the number of blocks of the lead-in; zero for an open cut} */
    public int leadIn() {
        return isClosed() ? loop[0] : 0;
    }

    /** {@return the number of blocks of the lead-out; zero for an open cut} */
    public int leadOut() {
        return isClosed() ? size() - loop[1] : 0;
    }

    /**
     * Returns the side of the path on which the machine holds the jet, where the program has an offset by G41 or G42. The
     * path is then the edge of the part, else it is the path of the jet axis.
     *
     * @return the side; empty for the path of the jet axis
     */
    public Optional<Side> jetSide() {
        return Optional.ofNullable(jetSide);
    }

    /** {@return the place where the jet is switched on and pierces} */
    public Point start() {
        return start;
    }

    /** {@return the length of all its blocks} */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(lengthSi());
    }

    double lengthSi() {
        double length = 0;
        double x = start.xSi();
        double y = start.ySi();
        for (int i = first; i < end; i++) {
            double toX = blocks.endX[i];
            double toY = blocks.endY[i];
            length += blocks.turn[i] == 0
                    ? Math.hypot(toX - x, toY - y)
                    : ArcGeometry.length(x, y, toX, toY, blocks.centreX[i], blocks.centreY[i], blocks.turn[i]);
            x = toX;
            y = toY;
        }
        return length;
    }

    /**
     * Returns all blocks as a path, one edge each, leads marked as such.
     *
     * @param requirement requirement on the edges
     * @return the open path
     */
    public Contour path(EdgeRequirement requirement) {
        ContourBuilder builder = Contour.fromSi(start.xSi(), start.ySi());
        EdgeRequirement lead = requirement.asLead();
        for (int i = 0; i < size(); i++) {
            boolean isLead = isClosed() && (i < loop[0] || i >= loop[1]);
            draw(builder.requirement(isLead ? lead : requirement), i);
        }
        return builder.open();
    }

    /**
     * Returns the closed loop without leads.
     *
     * @param requirement requirement on the edges
     * @return the closed contour; empty for an open cut
     */
    public Optional<Contour> loop(EdgeRequirement requirement) {
        if (!isClosed()) {
            return Optional.empty();
        }
        double x = loop[0] == 0 ? start.xSi() : blocks.endX[first + loop[0] - 1];
        double y = loop[0] == 0 ? start.ySi() : blocks.endY[first + loop[0] - 1];
        ContourBuilder builder = Contour.fromSi(x, y).requirement(requirement);
        for (int i = loop[0]; i < loop[1] - 1; i++) {
            draw(builder, i);
        }
        // the last edge ends where the first began, to the bit
        int last = first + loop[1] - 1;
        if (blocks.turn[last] == 0) {
            return Optional.of(builder.close());
        }
        Side turn = blocks.turn[last] > 0 ? Side.LEFT : Side.RIGHT;
        builder.arcToSi(x, y, blocks.centreX[last], blocks.centreY[last], turn);
        return Optional.of(builder.close());
    }

    private void draw(ContourBuilder builder, int block) {
        int i = first + block;
        if (blocks.turn[i] == 0) {
            builder.lineToSi(blocks.endX[i], blocks.endY[i]);
        } else {
            builder.arcToSi(
                    blocks.endX[i],
                    blocks.endY[i],
                    blocks.centreX[i],
                    blocks.centreY[i],
                    blocks.turn[i] > 0 ? Side.LEFT : Side.RIGHT);
        }
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("cut").put("line", line).put("name", name());
        quality().ifPresent(quality -> description.put("quality", quality));
        tolerance().ifPresent(tolerance -> description.put("tolerance", Kind.LENGTH, Kind.LENGTH.si(tolerance)));
        jetSide().ifPresent(side -> description.put("jet_side", side));
        return description
                .put("closed", isClosed())
                .put("blocks", size())
                .put("lead_in_blocks", leadIn())
                .put("lead_out_blocks", leadOut())
                .put("length", Kind.LENGTH, lengthSi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ProgramCut that
                && first == that.first
                && line == that.line
                && start.equals(that.start)
                && notes.equals(that.notes)
                && jetSide == that.jetSide
                && blocks.equalWithin(that.blocks, first, end, that.end);
    }

    @Override
    public int hashCode() {
        return Objects.hash(first, end, line, start, notes, jetSide);
    }

    @Override
    public String toString() {
        return (name().isEmpty() ? "cut" : name()) + " at line " + line + ", " + size() + " blocks";
    }
}
