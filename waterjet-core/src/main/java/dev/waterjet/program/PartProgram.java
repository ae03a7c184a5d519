package dev.waterjet.program;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.placement.RigidMove;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Part program as read: its text, and the cuts that it makes. The package comment lists the accepted words.
 *
 * <p>A cutting block is a line or an arc with the jet on. Cutting blocks are counted from 0 over the whole program. The
 * serial form is the text with its codes; reading it back parses it again.
 *
 * <pre>{@code
 * PartProgram program = PartProgram.parse(text);
 * Contour path = program.cuts().get(0).path(EdgeRequirement.defaults());
 * double[] feeds = new double[program.size()];
 * Arrays.fill(feeds, 120);
 * String slower = program.withFeeds(QuantityArray.of(Kind.SPEED, feeds, Units.MILLIMETRE_PER_MINUTE));
 * }</pre>
 */
public final class PartProgram implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Serial form. */
    private record Written(String text, ProgramCodes codes) implements Serializable {

        private static final long serialVersionUID = 1L;

        private Object readResolve() throws InvalidObjectException {
            try {
                return parse(text, codes);
            } catch (WaterjetException e) {
                InvalidObjectException refusal = new InvalidObjectException(e.getMessage());
                refusal.initCause(e);
                throw refusal;
            }
        }
    }

    private final transient String written;
    private final transient String text;
    private final transient ProgramCodes codes;
    private final transient ProgramBlocks blocks;
    private final transient List<ProgramCut> cuts;
    private final transient List<ProgramFinding> findings;
    private final transient double rapidM;
    private final transient int spots;
    private final transient boolean hasUnit;

    PartProgram(
            String written,
            String text,
            ProgramCodes codes,
            ProgramBlocks blocks,
            List<ProgramCut> cuts,
            List<ProgramFinding> findings,
            double rapidM,
            int spots,
            boolean hasUnit) {
        this.written = written;
        this.text = text;
        this.codes = codes;
        this.blocks = blocks;
        this.cuts = List.copyOf(cuts);
        this.findings = List.copyOf(findings);
        this.rapidM = rapidM;
        this.spots = spots;
        this.hasUnit = hasUnit;
    }

    /**
     * Reads a program whose jet is switched on by M3 and off by M5.
     *
     * @param text the program
     * @return the program as read
     * @throws dev.waterjet.measure.TextException if it cannot be read or cuts nothing, with line, column and reason
     */
    public static PartProgram parse(String text) {
        return parse(text, ProgramCodes.defaults());
    }

    /**
     * Reads a program.
     *
     * @param text the program
     * @param codes machine codes
     * @return the program as read
     * @throws dev.waterjet.measure.TextException if it cannot be read or cuts nothing, with line, column and reason
     */
    public static PartProgram parse(String text, ProgramCodes codes) {
        return ProgramReader.read(Objects.requireNonNull(text, "text"), Objects.requireNonNull(codes, "codes"));
    }

    /** {@return the text of the program, unchanged} */
    public String text() {
        return written;
    }

    /** {@return the text of the program with calls of sub-programs replaced by what they call; else the same text} */
    public String unrolledText() {
        return text;
    }

    ProgramBlocks blocks() {
        return blocks;
    }

    /** {@return the machine codes by which it was read} */
    public ProgramCodes codes() {
        return codes;
    }

    /** {@return the cuts in their order, unmodifiable; one or more} */
    public List<ProgramCut> cuts() {
        return cuts;
    }

    /**
     * Returns what the reader found: notes that are unknown, stops and moves of Z with the jet on, a kerf offset that takes
     * effect on an arc. {@link ProgramChecks} adds what follows from the contours.
     *
     * @return the findings by line, unmodifiable
     */
    public List<ProgramFinding> findings() {
        return findings;
    }

    /** {@return the number of cutting blocks, 1 or more} */
    public int size() {
        return blocks.count;
    }

    /**
     * Returns the line of a cutting block.
     *
     * @param block cutting block from 0
     * @return line from 1
     * @throws dev.waterjet.measure.DomainException if there is no such block
     */
    public int line(int block) {
        return blocks.line[(int) Require.between("cutting block", block, 0, size() - 1, Units.ONE, "")];
    }

    /** {@return the length of all that is cut, leads included} */
    public Quantity<Length> cuttingLength() {
        double length = 0;
        for (ProgramCut cut : cuts) {
            length += cut.lengthSi();
        }
        return Kind.LENGTH.of(length);
    }

    /** {@return the length of the moves with the jet off} */
    public Quantity<Length> rapidLength() {
        return Kind.LENGTH.of(rapidM);
    }

    /** {@return the number of holes that are only pierced: the jet is switched on and off without a move} */
    public int spots() {
        return spots;
    }

    /** {@return whether it states its unit of length, by G71, G70, G21 or G20; otherwise it was read in millimetres} */
    public boolean hasUnit() {
        return hasUnit;
    }

    /** {@return whether its first cutting block is in inches (G20, G70)} */
    public boolean isInch() {
        return size() > 0 && blocks.has(0, ProgramBlocks.INCH);
    }

    /**
     * Returns the feed that the program states for a cutting block: that of its own feed word, or of the last one before.
     *
     * @param block cutting block from 0
     * @return the feed; empty if no feed word stands before
     * @throws dev.waterjet.measure.DomainException if there is no such block
     */
    public Optional<Quantity<Speed>> feed(int block) {
        double feed = blocks.feed[(int) Require.between("cutting block", block, 0, size() - 1, Units.ONE, "")];
        return feed > 0 ? Optional.of(Kind.SPEED.of(feed)) : Optional.empty();
    }

    /**
     * Returns the time that the cutting blocks take at the feeds that the program states, without acceleration.
     *
     * @return the sum of length over feed; empty if a block has no feed
     */
    public Optional<Quantity<Time>> programmedTime() {
        double sum = 0;
        for (int i = 0; i < size(); i++) {
            if (!(blocks.feed[i] > 0)) {
                return Optional.empty();
            }
            sum += blocks.length(i) / blocks.feed[i];
        }
        return Optional.of(Kind.TIME.of(sum));
    }

    /**
     * Returns the same program with a feed word on every cutting block. An existing feed word is replaced; calls of
     * sub-programs are replaced by what they call; nothing else changes. Feeds are written per minute (G94) in the unit of the block, to four digits, rounded down.
     *
     * @param feeds one feed for each cutting block, each above zero
     * @return the text
     */
    public String withFeeds(QuantityArray<Speed> feeds) {
        return withFeedsSi(feeds.toSi());
    }

    /**
     * Returns the same program with a feed word on every cutting block, from numbers; see {@link #withFeeds}.
     *
     * @param feedsMPerS one feed for each cutting block in m/s, each above zero
     * @return the text
     */
    public String withFeedsSi(double... feedsMPerS) {
        Require.between("number of feeds", feedsMPerS.length, size(), size(), Units.ONE, "one for each cutting block");
        StringBuilder out = new StringBuilder(text.length() + 8 * size());
        int copied = 0;
        for (int i = 0; i < size(); i++) {
            double feed = Require.positive("feed of a block", feedsMPerS[i], Units.MILLIMETRE_PER_MINUTE);
            out.append(text, copied, blocks.feedFrom[i]);
            boolean isNew = blocks.feedFrom[i] == blocks.feedTo[i];
            if (isNew && isSpaced(blocks.feedFrom[i])) {
                out.append(' ');
            }
            out.append('F').append(ProgramNumbers.feed(feed, blocks.unitM(i)));
            copied = blocks.feedTo[i];
        }
        return out.append(text, copied, text.length()).toString();
    }

    /**
     * Returns this program for a part that lies elsewhere, as it is found by a {@link dev.waterjet.placement.Location}: the places
     * and centres of all moves are moved; kerf offsets, feeds, notes and all other characters stay. Places are rounded to the
     * decimals of the program or those of its codes, whichever are more, without adding up. Calls of sub-programs are replaced by
     * what they call. An arc of more than 120 degrees by its radius is written by its centre, one whose ends are nearer than
     * 10 &micro;m as a line.
     *
     * <p>Both programs count from the same origin, at which the head starts. It is a calculation: run it without the jet first.
     *
     * @param move move from the drawing to the machine
     * @return the moved program
     * @throws dev.waterjet.measure.TextException if the program takes its origin from the place where the head stands, with code
     *     {@code origin-at-head}, or a place would be too far away
     */
    public PartProgram movedBy(RigidMove move) {
        return parse(new ProgramMover(this, Objects.requireNonNull(move, "move")).moved(), codes);
    }

    /** Whether the block that ends at an offset separates its words by blanks. */
    private boolean isSpaced(int end) {
        for (int i = end - 1; i >= 0; i--) {
            char c = text.charAt(i);
            if (c == ' ' || c == '\t') {
                return true;
            }
            if (c == '\n' || c == '\r') {
                return false;
            }
        }
        return false;
    }

    private Object writeReplace() {
        return new Written(written, codes);
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its text");
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("part program")
                .put("text", written)
                .put("codes", codes)
                .put("cuts", cuts)
                .put("blocks", size())
                .put("spots", spots)
                .put("cutting_length", Kind.LENGTH, Kind.LENGTH.si(cuttingLength()))
                .put("rapid_length", Kind.LENGTH, rapidM)
                .put("has_unit", hasUnit)
                .put("findings", findings)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PartProgram that && written.equals(that.written) && codes.equals(that.codes);
    }

    @Override
    public int hashCode() {
        return 31 * written.hashCode() + codes.hashCode();
    }

    @Override
    public String toString() {
        return "part program of " + cuts.size() + " cuts, " + size() + " blocks";
    }
}
