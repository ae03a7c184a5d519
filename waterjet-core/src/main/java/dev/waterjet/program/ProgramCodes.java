package dev.waterjet.program;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.TextException;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Dialect of a machine's part programs: the M codes that switch the jet, words to copy through, and how dwells, places, arcs
 * and ends of lines are written.
 *
 * <p>No standard assigns codes to a jet. The defaults are M3 and M5, which ISO 6983-1 assigns to the start and stop of a
 * spindle: see the machine's manual.
 *
 * <p>{@link #text()} is a small file that {@link #parse} reads back:
 *
 * <pre>
 * jet_on = M3
 * jet_off = M5
 * pass_through = G49 M8
 * dwell = G4 P ms
 * offset_feed = axis
 * decimals = 3
 * arcs = I J
 * line_ending = LF
 * sub_programs = unrolled
 * open_contours = no
 * start = G17 G40
 * </pre>
 */
public final class ProgramCodes implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final ProgramCodes DEFAULTS = new ProgramCodes(ProgramCodesValues.DEFAULTS);

    private final transient ProgramCodesValues values;

    ProgramCodes(ProgramCodesValues values) {
        this.values = values;
    }

    private ProgramCodes with(Consumer<ProgramCodesValues.Draft> change) {
        ProgramCodesValues.Draft draft = new ProgramCodesValues.Draft(values);
        change.accept(draft);
        return new ProgramCodes(draft.values());
    }

    /**
     * {@return M3 for jet on, M5 for jet off, no other codes, every cut a closed contour, dwells as {@code G4 P} in ms, feed words
     * of the jet axis, three decimals, centres of arcs by I and J, line feeds, sub-programs unrolled}
     */
    public static ProgramCodes defaults() {
        return DEFAULTS;
    }

    /**
     * Reads a file of machine codes, as {@link #text()} writes it. Lines can be left out, in any order; {@code #} begins a
     * remark; {@code start} can be repeated.
     *
     * @param text lines of {@code key = value}
     * @return the codes
     * @throws TextException if a line is not understood, with its number
     */
    public static ProgramCodes parse(String text) {
        return ProgramCodesText.parse(Objects.requireNonNull(text, "text"));
    }

    /**
     * Returns these codes with another one for jet on.
     *
     * @param code number after M, 0 to 9999
     * @return the codes
     */
    public ProgramCodes withJetOn(int code) {
        return with(draft -> draft.jetOn = code);
    }

    /**
     * Returns these codes with another one for jet off.
     *
     * @param code number after M, 0 to 9999
     * @return the codes
     */
    public ProgramCodes withJetOff(int code) {
        return with(draft -> draft.jetOff = code);
    }

    /**
     * Returns these codes with others for jet on and off.
     *
     * @param on number after M that switches the jet on, 0 to 9999
     * @param off number after M that switches it off, 0 to 9999, another one
     * @return the codes
     */
    public ProgramCodes withJet(int on, int off) {
        return with(draft -> {
            draft.jetOn = on;
            draft.jetOff = off;
        });
    }

    /**
     * Returns these codes, and words that pass through unchanged because they neither move the head nor switch the jet.
     *
     * @param words G or M words such as {@code G49} or {@code M8}; a number alone is that of an M word
     * @return the codes
     * @throws TextException if a word is not one
     */
    public ProgramCodes withPassThrough(Collection<String> words) {
        Objects.requireNonNull(words, "words");
        List<PassedWord> all = Stream.concat(
                        values.passThrough().stream(), words.stream().map(PassedWord::parse))
                .toList();
        return with(draft -> draft.passThrough = all);
    }

    /**
     * Returns these codes for programs whose cuts need not close, such as trimming.
     *
     * @return the codes
     */
    public ProgramCodes withOpenContours() {
        return with(draft -> draft.allowsOpenContours = true);
    }

    /**
     * Returns these codes, with or without the reading of sub-programs: {@code M98 P1000 L3} calls three times what stands
     * between {@code O1000} and {@code M99} (common practice, no source).
     *
     * @param unrolled true if calls are replaced by what they call; false if they are refused
     * @return the codes
     */
    public ProgramCodes withSubPrograms(boolean unrolled) {
        return with(draft -> draft.unrollsSubPrograms = unrolled);
    }

    /**
     * Returns these codes with another form of dwells. In what is read, P is in the unit of this form, X, U and F in seconds.
     *
     * @param form the form
     * @return the codes
     */
    public ProgramCodes withDwell(DwellForm form) {
        Objects.requireNonNull(form, "form");
        return with(draft -> draft.dwell = form);
    }

    /**
     * Returns these codes for a control that keeps feed words along another path while it applies a kerf offset.
     *
     * @param path the path along which a feed word is the speed
     * @return the codes
     */
    public ProgramCodes withOffsetFeed(OffsetFeed path) {
        Objects.requireNonNull(path, "path");
        return with(draft -> draft.offsetFeed = path);
    }

    /**
     * Returns these codes with another number of decimals.
     *
     * @param decimals decimals of places in mm, 0 to 9; places in inches have one more
     * @return the codes
     */
    public ProgramCodes withDecimals(int decimals) {
        return with(draft -> draft.decimals = decimals);
    }

    /**
     * Returns these codes with arcs written by their radius, or by their centre.
     *
     * @param byRadius true for R, negative for more than half a circle; false for I and J. Full circles have I and J always
     * @return the codes
     */
    public ProgramCodes withRadiusArcs(boolean byRadius) {
        return with(draft -> draft.hasRadiusArcs = byRadius);
    }

    /**
     * Returns these codes with another end of lines.
     *
     * @param carriageReturns true for carriage return and line feed, false for line feed
     * @return the codes
     */
    public ProgramCodes withCarriageReturns(boolean carriageReturns) {
        return with(draft -> draft.hasCarriageReturns = carriageReturns);
    }

    /**
     * Returns these codes with lines that a new program has after unit and G90, such as words of a safe start.
     *
     * @param lines the lines, without their ends, at most 100; they replace those before
     * @return the codes
     * @throws TextException if one is empty or has control characters
     */
    public ProgramCodes withStartLines(List<String> lines) {
        Objects.requireNonNull(lines, "lines");
        return with(draft -> draft.startLines = lines);
    }

    /** {@return the number after M that switches the jet on} */
    public int jetOn() {
        return values.jetOn();
    }

    /** {@return the number after M that switches the jet off} */
    public int jetOff() {
        return values.jetOff();
    }

    /** {@return the words that pass through, G before M, in rising order, unmodifiable} */
    public List<String> passThrough() {
        return values.passThrough().stream().map(PassedWord::text).toList();
    }

    /** {@return whether every cut may be open} */
    public boolean allowsOpenContours() {
        return values.allowsOpenContours();
    }

    /** {@return the form of dwells} */
    public DwellForm dwell() {
        return values.dwell();
    }

    /** {@return the path along which a feed word is the speed while the machine applies a kerf offset} */
    public OffsetFeed offsetFeed() {
        return values.offsetFeed();
    }

    /** {@return decimals of places in mm; places in inches have one more} */
    public int decimals() {
        return values.decimals();
    }

    /** {@return whether arcs are written by their radius} */
    public boolean hasRadiusArcs() {
        return values.hasRadiusArcs();
    }

    /** {@return whether lines end by carriage return and line feed} */
    public boolean hasCarriageReturns() {
        return values.hasCarriageReturns();
    }

    /** {@return whether calls of sub-programs are replaced by what they call} */
    public boolean unrollsSubPrograms() {
        return values.unrollsSubPrograms();
    }

    /** {@return lines that a new program has after unit and G90, unmodifiable} */
    public List<String> startLines() {
        return values.startLines();
    }

    /** Whether a word passes through. */
    boolean passesThrough(char letter, double number) {
        for (PassedWord word : values.passThrough()) {
            if (word.is(letter, number)) {
                return true;
            }
        }
        return false;
    }

    /** End of a line. */
    String lineEnding() {
        return values.hasCarriageReturns() ? "\r\n" : "\n";
    }

    /** {@return a file that {@link #parse} reads back} */
    public String text() {
        return ProgramCodesText.of(this);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("program codes")
                .put("jet_on", jetOn())
                .put("jet_off", jetOff())
                .put("pass_through", passThrough())
                .put("open_contours", allowsOpenContours())
                .put("dwell", dwell())
                .put("offset_feed", offsetFeed())
                .put("decimals", decimals())
                .put("radius_arcs", hasRadiusArcs())
                .put("carriage_returns", hasCarriageReturns())
                .put("sub_programs", unrollsSubPrograms())
                .put("start_lines", startLines())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ProgramCodes that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "jet on M" + jetOn() + ", off M" + jetOff();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
