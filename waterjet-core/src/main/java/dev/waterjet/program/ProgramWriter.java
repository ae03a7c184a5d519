package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;

/**
 * Writer of part programs in the words of ISO 6983: a new program from moves, or an existing one whose blocks are split where
 * the feed changes.
 *
 * <pre>{@code
 * String text = ProgramWriter.of(ProgramCodes.defaults()).write("SPACER", List.of(
 *         new ProgramMove.Rapid(Point.millimetres(15, 0)),
 *         new ProgramMove.JetOn(seconds(1.2)),
 *         new ProgramMove.OffsetOn(Side.LEFT),
 *         new ProgramMove.Line(Point.millimetres(20, 0), feed),
 *         new ProgramMove.Arc(Point.millimetres(20, 0), Point.millimetres(0, 0), Side.LEFT, feed),
 *         new ProgramMove.JetOff()));
 * }</pre>
 *
 * <p>Feeds are per minute in the unit of the program, to four digits, rounded down. A stretch takes the time that its feed
 * means: a feed word is its length, as rounded, over that time. A written program is a calculation: see the machine's manual,
 * check it with {@link ProgramChecks}, and run it without the jet first.
 */
public final class ProgramWriter {

    private static final double MIN_PIECE_M = 1e-4;

    private final ProgramCodes codes;
    private final boolean isInch;
    private final double minimumPieceM;
    private final double pierceDwellS;

    private ProgramWriter(ProgramCodes codes, boolean isInch, double minimumPieceM, double pierceDwellS) {
        this.codes = Objects.requireNonNull(codes, "codes");
        this.isInch = isInch;
        this.minimumPieceM = minimumPieceM;
        this.pierceDwellS = pierceDwellS;
    }

    /**
     * Returns a writer of millimetres, whose shortest split block is 0.1 mm long.
     *
     * @param codes dialect of new programs
     * @return the writer
     */
    public static ProgramWriter of(ProgramCodes codes) {
        return new ProgramWriter(codes, false, MIN_PIECE_M, 0);
    }

    /**
     * Returns this writer with another unit of new programs.
     *
     * @param inches true for inches, false for millimetres
     * @return the writer
     */
    public ProgramWriter withInches(boolean inches) {
        return new ProgramWriter(codes, inches, minimumPieceM, pierceDwellS);
    }

    /**
     * Returns this writer with another minimum length of split blocks. A shorter stretch joins its neighbour, at the feed that
     * takes the time of both.
     *
     * @param length the length, above 0
     * @return the writer
     */
    public ProgramWriter withMinimumPiece(Quantity<Length> length) {
        Objects.requireNonNull(length, "length");
        double minimum = Require.positive("minimum length of a block", Kind.LENGTH.si(length), Units.MILLIMETRE);
        return new ProgramWriter(codes, isInch, minimum, pierceDwellS);
    }

    /**
     * Returns this writer with a dwell that a rewritten program gets after each jet on that has none, unless the jet pierces as
     * it moves, the head moves in the same block, or the machine waits by itself.
     *
     * @param dwell the dwell; zero for none
     * @return the writer
     */
    public ProgramWriter withPierceDwell(Quantity<Time> dwell) {
        Objects.requireNonNull(dwell, "dwell");
        double seconds = Require.notNegative("dwell", Kind.TIME.si(dwell), Units.SECOND);
        return new ProgramWriter(codes, isInch, minimumPieceM, seconds);
    }

    /**
     * Writes a new program.
     *
     * @param title comment of its first line; empty for none
     * @param moves the moves in order, from the origin
     * @return the text
     * @throws dev.waterjet.part.GeometryException if a move cannot be written: a rapid traverse with the jet on, a cut with the
     *     jet off, an offset that starts or ends on an arc, an arc whose ends do not fit its centre
     */
    public String write(String title, List<ProgramMove> moves) {
        Objects.requireNonNull(moves, "moves");
        Objects.requireNonNull(title, "title");
        return new MoveWriter(codes, isInch).write(title, moves);
    }

    /**
     * Writes a program anew with other feeds. Blocks are split where the feed changes; the words of a block stay on its first
     * part, those that take effect at its end go to the last. Calls of sub-programs are replaced by what they call. All other
     * characters stay as they are.
     *
     * <p>A block in which a kerf offset starts or ends, or Z moves, is not split: its feed is the mean one.
     *
     * @param program the program
     * @param feeds feeds of each cut, in order
     * @return the text
     * @throws dev.waterjet.measure.TextException if feeds cover another length than their cut
     */
    public String rewrite(PartProgram program, List<CutFeeds> feeds) {
        int count = program.cuts().size();
        Require.between("number of cuts with feeds", feeds.size(), count, count, Units.ONE, "one for each cut");
        return new ProgramRewriter(program, minimumPieceM, pierceDwellS).rewrite(feeds);
    }
}
