package dev.waterjet.program;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;

/**
 * One cut of a part program, from jet on to jet off: a lead-in, with or without a moving pierce, a closed loop, an overcut and
 * a lead-out; or an open path. Its blocks are consecutive {@linkplain PartProgram cutting blocks} of the program, each one
 * edge of its path.
 */
public final class ProgramCut implements Described {

    /** Purpose of a block. */
    public enum Purpose {
        /** Circles by which a moving pierce goes through the plate. */
        PIERCE,
        /** Way to the contour. */
        LEAD_IN,
        /** Edge of the contour, or of an open path. */
        CUT,
        /** Second cut over the start of the contour. */
        OVERCUT,
        /** Way from the contour. */
        LEAD_OUT
    }

    /** Kerf offset of a block by the machine. */
    public enum Offset {
        /** The words of the block are those of the jet axis. */
        NONE,
        /** The jet moves to the side of the path in the course of the block. */
        STARTS,
        /** The jet runs beside the path. */
        ACTIVE,
        /** The jet moves back to the path in the course of the block. */
        ENDS
    }

    /**
     * Jet on.
     *
     * @param line its line
     * @param lineTo offset of the end of its line in the text
     * @param dwellS dwell before the first move, in s; null if there is none
     * @param dwellLine line of that dwell
     */
    record JetOn(int line, int lineTo, @Nullable Double dwellS, int dwellLine) {}

    /**
     * Notes before a cut and within it.
     *
     * @param block block from which they hold, from 0 within the cut
     * @param notes the notes
     */
    record NotesFrom(int block, CutNotes notes) {}

    private final ProgramBlocks blocks;
    private final int first;
    private final int end;
    private final Point start;
    private final JetOn jetOn;
    private final List<NotesFrom> notes;
    private final @Nullable Side jetSide;
    private final @Nullable Loop loop;
    private final int overcutEnd;

    ProgramCut(
            ProgramBlocks blocks,
            int first,
            int end,
            Point start,
            JetOn jetOn,
            List<NotesFrom> notes,
            @Nullable Side jetSide) {
        this.blocks = blocks;
        this.first = first;
        this.end = end;
        this.start = start;
        this.jetOn = jetOn;
        this.notes = List.copyOf(notes);
        this.jetSide = jetSide;
        this.loop = notes.get(0).notes().isOpen() ? null : LoopFinder.find(blocks, first, end);
        this.overcutEnd = loop == null ? end - first : Overcut.end(blocks, first, end, loop);
    }

    /** {@return the line of the program, from 1, at which the jet is switched on} */
    public int line() {
        return jetOn.line();
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
        return notes.get(0).notes().name();
    }

    /** {@return the cut quality that a note before it states; empty if that of the part applies} */
    public Optional<CutQuality> quality() {
        return Optional.ofNullable(notes.get(0).notes().quality());
    }

    /** {@return the tolerance that a note before it states; empty if that of the part applies} */
    public Optional<Quantity<Length>> tolerance() {
        return Optional.ofNullable(notes.get(0).notes().toleranceM()).map(Kind.LENGTH::of);
    }

    /**
     * Returns the requirement on the edge of a block. A note within a cut holds from its block, or from the next one if it stands
     * between blocks, to the next note or the end of the cut.
     *
     * @param block block from 0, counted within this cut
     * @param unstated requirement of the part, for what the notes do not state
     * @return the requirement, with the cut quality and the tolerance of the notes
     * @throws dev.waterjet.measure.DomainException if there is no such block
     */
    public EdgeRequirement requirement(int block, EdgeRequirement unstated) {
        int at = (int) Require.between("block of the cut", block, 0, size() - 1, Units.ONE, "");
        int from = 0;
        int to = notes.size();
        while (to - from > 1) {
            int middle = (from + to) / 2;
            from = notes.get(middle).block() <= at ? middle : from;
            to = notes.get(middle).block() <= at ? to : middle;
        }
        return notes.get(from).notes().on(unstated);
    }

    /** {@return whether it contains a closed loop} */
    public boolean isClosed() {
        return loop != null;
    }

    /** {@return the number of blocks of the lead-in, a moving pierce included; zero for an open cut} */
    public int leadIn() {
        return loop == null ? 0 : loop.first();
    }

    /** {@return the number of blocks of the lead-out; zero for an open cut} */
    public int leadOut() {
        return size() - overcutEnd;
    }

    /**
     * Returns the purpose of a block. A block that is partly a lead or an overcut cuts.
     *
     * @param block block from 0, counted within this cut
     * @return its purpose; {@link Purpose#CUT} for every block of an open cut
     * @throws dev.waterjet.measure.DomainException if there is no such block
     */
    public Purpose purpose(int block) {
        int i = (int) Require.between("block of the cut", block, 0, size() - 1, Units.ONE, "");
        if (loop == null || (i >= loop.first() && i < loop.end())) {
            return Purpose.CUT;
        }
        if (i < loop.first()) {
            return i >= loop.pierceFrom() && i < loop.pierceEnd() ? Purpose.PIERCE : Purpose.LEAD_IN;
        }
        return i < overcutEnd ? Purpose.OVERCUT : Purpose.LEAD_OUT;
    }

    /**
     * Returns the kerf offset of a block by G41 or G42.
     *
     * @param block block from 0, counted within this cut
     * @return the offset
     * @throws dev.waterjet.measure.DomainException if there is no such block
     */
    public Offset offset(int block) {
        int i = first + (int) Require.between("block of the cut", block, 0, size() - 1, Units.ONE, "");
        if (blocks.has(i, ProgramBlocks.COMPENSATED)) {
            return blocks.has(i, ProgramBlocks.OFFSET_STARTS) ? Offset.STARTS : Offset.ACTIVE;
        }
        return block > 0 && blocks.has(i - 1, ProgramBlocks.COMPENSATED) ? Offset.ENDS : Offset.NONE;
    }

    /** {@return the length of the second cut over the start of the contour; zero if there is none} */
    public Quantity<Length> overcut() {
        return Kind.LENGTH.of(loop == null ? 0 : Overcut.length(blocks, first, loop, overcutEnd));
    }

    /** {@return the dwell between jet on and the first move; empty if the program has none} */
    public Optional<Quantity<Time>> dwell() {
        return Optional.ofNullable(jetOn.dwellS()).map(Kind.TIME::of);
    }

    /** Last place of its coordinates in a text of the program without sub-programs, in m. */
    double lastPlaceM(String text) {
        return WordRounding.placeM(blocks, first, end, text);
    }

    JetOn jetOn() {
        return jetOn;
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
        for (int i = first; i < end; i++) {
            length += blocks.length(i);
        }
        return length;
    }

    /**
     * Returns all blocks as a path, one edge each, leads marked as such.
     *
     * @param requirement requirement on the edges, for what the notes do not state
     * @return the open path
     */
    public Contour path(EdgeRequirement requirement) {
        ContourBuilder builder = Contour.fromSi(start.xSi(), start.ySi());
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < size(); i++) {
            Purpose purpose = purpose(i);
            boolean isEdge = purpose == Purpose.CUT || purpose == Purpose.OVERCUT;
            blocks.load(first + i, edge);
            EdgeRequirement required = requirement(i, requirement);
            builder.requirement(isEdge ? required : required.asLead()).edgeTo(edge);
        }
        return builder.open().named(name());
    }

    /**
     * Returns the closed loop without leads and overcut.
     *
     * @param requirement requirement on the edges, for what the notes do not state
     * @return the closed contour; empty for an open cut
     */
    public Optional<Contour> loop(EdgeRequirement requirement) {
        if (loop == null) {
            return Optional.empty();
        }
        ContourBuilder builder = Contour.fromSi(loop.x(), loop.y());
        EdgeCursor edge = new EdgeCursor();
        for (int i = loop.first(); i < loop.end(); i++) {
            blocks.load(first + i, edge);
            builder.requirement(requirement(i, requirement));
            if (i == loop.first() && loop.startsWithin()) {
                PartialBlock.keepFrom(edge, loop.x(), loop.y());
            }
            if (i + 1 < loop.end()) {
                builder.edgeTo(edge);
            } else if (edge.isArc()) {
                // the last edge ends where the first began, to the bit
                Side turn = edge.sweep() > 0 ? Side.LEFT : Side.RIGHT;
                builder.arcToSi(loop.x(), loop.y(), edge.centreX(), edge.centreY(), turn);
            }
        }
        return Optional.of(builder.close().named(name()));
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("cut").put("line", line()).put("name", name());
        quality().ifPresent(quality -> description.put("quality", quality));
        tolerance().ifPresent(tolerance -> description.put("tolerance", Kind.LENGTH, Kind.LENGTH.si(tolerance)));
        if (notes.size() > 1) {
            description.put("notes_within", notes.size() - 1);
        }
        jetSide().ifPresent(side -> description.put("jet_side", side));
        dwell().ifPresent(dwell -> description.put("dwell", Kind.TIME, Kind.TIME.si(dwell)));
        return description
                .put("closed", isClosed())
                .put("blocks", size())
                .put("lead_in_blocks", leadIn())
                .put("lead_out_blocks", leadOut())
                .put("overcut", Kind.LENGTH, Kind.LENGTH.si(overcut()))
                .put("length", Kind.LENGTH, lengthSi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ProgramCut that
                && first == that.first
                && jetOn.equals(that.jetOn)
                && start.equals(that.start)
                && notes.equals(that.notes)
                && jetSide == that.jetSide
                && blocks.equalWithin(that.blocks, first, end, that.end);
    }

    @Override
    public int hashCode() {
        return Objects.hash(first, end, jetOn, start, notes, jetSide);
    }

    @Override
    public String toString() {
        return (name().isEmpty() ? "cut" : name()) + " at line " + line() + ", " + size() + " blocks";
    }
}
