package dev.waterjet.program;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.io.Serializable;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * One run of the jet, from on to off: a lead-in, a closed loop, a lead-out; or an open path. Its blocks are a stretch of
 * the {@linkplain PartProgram cutting blocks} of the program, each one edge of its path.
 */
public final class ProgramCut implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final ProgramBlocks blocks;
    private final int first;
    private final int end;
    private final double startX;
    private final double startY;
    private final int line;
    private final CutNotes notes;
    private final @Nullable Side jetSide;
    private final int[] loop;

    private ProgramCut(
            ProgramBlocks blocks,
            int first,
            int end,
            double startX,
            double startY,
            int line,
            CutNotes notes,
            @Nullable Side jetSide) {
        this.blocks = blocks;
        this.first = first;
        this.end = end;
        this.startX = startX;
        this.startY = startY;
        this.line = line;
        this.notes = notes;
        this.jetSide = jetSide;
        this.loop = notes.isOpen() ? new int[0] : LoopFinder.find(blocks, first, end, startX, startY);
    }

    static ProgramCut of(
            ProgramBlocks blocks,
            int first,
            int end,
            double startX,
            double startY,
            int line,
            CutNotes notes,
            @Nullable Side jetSide) {
        return new ProgramCut(blocks, first, end, startX, startY, line, notes, jetSide);
    }

    /**
     * Line of the program at which the jet goes on.
     *
     * @return line from 1
     */
    public int line() {
        return line;
    }

    /**
     * Line of the program that holds a block of this cut.
     *
     * @param block block from 0, counted within this cut
     * @return line from 1
     */
    public int line(int block) {
        return blocks.line[first + block];
    }

    /**
     * Its first block, counted over the cutting blocks of the program.
     *
     * @return index from 0
     */
    public int firstBlock() {
        return first;
    }

    /**
     * How many blocks it has, each an edge of its path.
     *
     * @return the count, 1 or more
     */
    public int size() {
        return end - first;
    }

    /**
     * Name that a comment gives it.
     *
     * @return the name, or an empty text
     */
    public String name() {
        return notes.name();
    }

    /**
     * Grade that a comment asks for.
     *
     * @return the grade; empty if that of the part holds
     */
    public Optional<CutQuality> quality() {
        return notes.grade();
    }

    /**
     * Tolerance that a comment asks for.
     *
     * @return the tolerance, in m; empty if that of the part holds
     */
    public Optional<Quantity<Length>> tolerance() {
        return notes.toleranceSi().isPresent()
                ? Optional.of(Kind.LENGTH.of(notes.toleranceSi().getAsDouble()))
                : Optional.empty();
    }

    /**
     * Whether it holds a closed loop.
     *
     * @return true if it does
     */
    public boolean isClosed() {
        return loop.length == 2;
    }

    /**
     * How many blocks lead in.
     *
     * @return the count; zero for an open cut
     */
    public int leadIn() {
        return isClosed() ? loop[0] : 0;
    }

    /**
     * How many blocks lead out.
     *
     * @return the count; zero for an open cut
     */
    public int leadOut() {
        return isClosed() ? size() - loop[1] : 0;
    }

    /**
     * The side of the path on which the machine holds the jet, where the program asks for an offset by G41 or G42. The path
     * is then the edge of the part, else it is the centre of the jet.
     *
     * @return the side; empty for the centre of the jet
     */
    public Optional<Side> jetSide() {
        return Optional.ofNullable(jetSide);
    }

    /**
     * Where the jet goes on and pierces.
     *
     * @return the place
     */
    public Point start() {
        return Point.ofSi(startX, startY);
    }

    double lengthSi() {
        double length = 0;
        double x = startX;
        double y = startY;
        for (int i = first; i < end; i++) {
            double toX = blocks.endX[i];
            double toY = blocks.endY[i];
            length += blocks.turn[i] == 0
                    ? Math.hypot(toX - x, toY - y)
                    : ArcKernel.length(x, y, toX, toY, blocks.centreX[i], blocks.centreY[i], blocks.turn[i]);
            x = toX;
            y = toY;
        }
        return length;
    }

    /**
     * All its blocks as a path, one edge each, leads marked as such.
     *
     * @param finish what is asked of the faces
     * @return the open path
     */
    public Contour path(EdgeRequirement finish) {
        ContourBuilder builder = Contour.fromSi(startX, startY);
        EdgeRequirement lead = finish.asLead();
        for (int i = 0; i < size(); i++) {
            boolean isLead = isClosed() && (i < loop[0] || i >= loop[1]);
            draw(builder.requirement(isLead ? lead : finish), i);
        }
        return builder.open();
    }

    /**
     * The closed loop alone, without leads.
     *
     * @param finish what is asked of its faces
     * @return the closed contour; empty for an open cut
     */
    public Optional<Contour> loop(EdgeRequirement finish) {
        if (!isClosed()) {
            return Optional.empty();
        }
        double x = loop[0] == 0 ? startX : blocks.endX[first + loop[0] - 1];
        double y = loop[0] == 0 ? startY : blocks.endY[first + loop[0] - 1];
        ContourBuilder builder = Contour.fromSi(x, y).requirement(finish);
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
        quality().ifPresent(grade -> description.put("grade", grade));
        tolerance().ifPresent(asked -> description.put("tolerance", Kind.LENGTH, Kind.LENGTH.si(asked)));
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
    public String toString() {
        return (name().isEmpty() ? "cut" : name()) + " at line " + line + ", " + size() + " blocks";
    }
}
