package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * A part program as it was read: its text, and the cuts that it makes. See the package for the words that are read.
 *
 * <p>A cutting block is a line or an arc that is driven with the jet on. Cutting blocks are counted from 0 over the whole
 * program.
 */
public final class PartProgram implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Feeds are written to four digits, rounded down: the head never runs faster than planned. */
    private static final MathContext FEED_DIGITS = new MathContext(4, RoundingMode.DOWN);

    private final String text;
    private final ProgramCodes codes;
    private final ProgramBlocks blocks;
    private final List<ProgramCut> cuts;
    private final double rapidM;
    private final int spots;
    private final boolean hasUnit;

    PartProgram(
            String text,
            ProgramCodes codes,
            ProgramBlocks blocks,
            List<ProgramCut> cuts,
            double rapidM,
            int spots,
            boolean hasUnit) {
        this.text = text;
        this.codes = codes;
        this.blocks = blocks;
        this.cuts = List.copyOf(cuts);
        this.rapidM = rapidM;
        this.spots = spots;
        this.hasUnit = hasUnit;
    }

    /**
     * Reads a program whose jet goes on at M3 and off at M5.
     *
     * @param text the program
     * @return what it says
     * @throws dev.waterjet.measure.TextException if it cannot be read or cuts nothing, with line, column and reason
     */
    public static PartProgram parse(String text) {
        return parse(text, ProgramCodes.defaults());
    }

    /**
     * Reads a program.
     *
     * @param text the program
     * @param codes what the machine's builder has chosen
     * @return what it says
     * @throws dev.waterjet.measure.TextException if it cannot be read or cuts nothing, with line, column and reason
     */
    public static PartProgram parse(String text, ProgramCodes codes) {
        return ProgramReader.read(text, codes);
    }

    /**
     * The program as it was given.
     *
     * @return the text, unchanged
     */
    public String text() {
        return text;
    }

    /**
     * The codes by which it was read.
     *
     * @return the codes
     */
    public ProgramCodes codes() {
        return codes;
    }

    /**
     * Its cuts, in their order.
     *
     * @return the cuts, unmodifiable; one or more
     */
    public List<ProgramCut> cuts() {
        return cuts;
    }

    /**
     * How many cutting blocks it has.
     *
     * @return the count, 1 or more
     */
    public int size() {
        return blocks.count;
    }

    /**
     * Line of a cutting block.
     *
     * @param block cutting block from 0
     * @return line from 1
     */
    public int line(int block) {
        return blocks.line[block];
    }

    /**
     * Length of all that is cut, leads among it.
     *
     * @return the length, in m
     */
    public Quantity<Length> cuttingLength() {
        double length = 0;
        for (ProgramCut cut : cuts) {
            length += cut.lengthSi();
        }
        return Kind.LENGTH.of(length);
    }

    /**
     * Length of the moves with the jet off.
     *
     * @return the length, in m
     */
    public Quantity<Length> rapidLength() {
        return Kind.LENGTH.of(rapidM);
    }

    /**
     * How often the jet goes on and off again without a move: holes that are only pierced.
     *
     * @return the count
     */
    public int spots() {
        return spots;
    }

    /**
     * Whether it says its unit of length, by G71, G70, G21 or G20. If not, it was read in millimetres.
     *
     * @return true if it does
     */
    public boolean hasUnit() {
        return hasUnit;
    }

    /**
     * The same program with a feed word on every cutting block. A feed word that stands there gives way; nothing else
     * changes. Feeds are told per minute (G94) in the unit of the block, to four digits, rounded down.
     *
     * @param feeds one feed for each cutting block, each above zero
     * @return the text
     */
    public String withFeeds(QuantityArray<Speed> feeds) {
        return withFeedsSi(feeds.toSi());
    }

    /**
     * The same program with a feed word on every cutting block, in numbers; see {@link #withFeeds}.
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
            out.append('F').append(feedText(feed * 60 / (blocks.isInch[i] ? 0.0254 : 0.001)));
            copied = blocks.feedTo[i];
        }
        return out.append(text, copied, text.length()).toString();
    }

    private static String feedText(double perMinute) {
        // a hair is added first, so that 300 mm/min told in m/s does not come out as 299.9
        BigDecimal told = BigDecimal.valueOf(perMinute * (1 + 1e-12));
        return told.round(FEED_DIGITS).stripTrailingZeros().toPlainString();
    }

    /** Whether the block that ends at an offset keeps its words apart by blanks. */
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

    @Override
    public boolean equals(Object other) {
        return other instanceof PartProgram that && text.equals(that.text) && codes.equals(that.codes);
    }

    @Override
    public int hashCode() {
        return 31 * text.hashCode() + codes.hashCode();
    }

    @Override
    public String toString() {
        return "part program of " + cuts.size() + " cuts, " + size() + " blocks";
    }
}
