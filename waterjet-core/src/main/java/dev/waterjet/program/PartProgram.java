package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * A part program: its text, and the moves and contours that it cuts. Immutable.
 *
 * <p>A program out of this class steers nothing by itself. Before it steers a machine, a person who is trained on that
 * machine checks it against the machine's manual and runs it without jet.
 */
public final class PartProgram {

    private final String text;
    private final MoveStore moves;
    private final List<ProgramContour> contours;

    private PartProgram(String text, MoveStore moves, List<ProgramContour> contours) {
        this.text = text;
        this.moves = moves;
        this.contours = List.copyOf(contours);
    }

    /**
     * Reads a program in which M3 starts the jet and M5 stops it.
     *
     * @param text the program
     * @return the program, understood
     * @throws dev.waterjet.measure.TextException if a word is unknown, an arc's ends do not fit, a contour never closes
     *     where it must, or nothing is cut; with line, column and reason
     */
    public static PartProgram parse(String text) {
        return parse(text, JetWords.usual());
    }

    /**
     * Reads a program.
     *
     * @param text the program
     * @param jetWords words that start and stop the jet
     * @return the program, understood
     * @throws dev.waterjet.measure.TextException if a word is unknown, an arc's ends do not fit, a contour never closes
     *     where it must, or nothing is cut; with line, column and reason
     */
    public static PartProgram parse(String text, JetWords jetWords) {
        ProgramReader reader = new ProgramReader(text, Objects.requireNonNull(jetWords, "jetWords"));
        reader.read();
        return new PartProgram(text, reader.moves(), reader.contours());
    }

    /**
     * The program as it was read.
     *
     * @return the text
     */
    public String text() {
        return text;
    }

    /**
     * How many moves cut.
     *
     * @return the number of cutting moves
     */
    public int moves() {
        return moves.size();
    }

    /**
     * One cutting move.
     *
     * @param index index from 0
     * @return the move
     */
    public ProgramMove move(int index) {
        return moves.get(Objects.checkIndex(index, moves.size()));
    }

    /**
     * The contours in the order in which they are cut.
     *
     * @return an unmodifiable list
     */
    public List<ProgramContour> contours() {
        return contours;
    }

    /**
     * Length of all that is cut, lead-ins and lead-outs among it.
     *
     * @return the length, in m
     */
    public Quantity<Length> cuttingLength() {
        double length = 0;
        for (int i = 0; i < moves.size(); i++) {
            length += moves.get(i).length();
        }
        return Kind.LENGTH.of(length);
    }

    /**
     * The program with a feed word on every cutting block, in the unit a minute that holds in that block, rounded down so
     * that no feed is exceeded. A feed word that stands there already is replaced; nothing else is changed.
     *
     * @param feedsMPerS a feed in m/s for each cutting move, above zero
     * @return the text with feeds
     */
    public String withFeeds(double[] feedsMPerS) {
        if (feedsMPerS.length != moves.size()) {
            throw new IllegalArgumentException(
                    feedsMPerS.length + " feeds were given for " + moves.size() + " cutting moves");
        }
        StringBuilder written = new StringBuilder(text.length() + 8 * feedsMPerS.length);
        int copied = 0;
        for (int i = 0; i < feedsMPerS.length; i++) {
            Require.positive("feed of move " + (i + 1), feedsMPerS[i], Units.MILLIMETRE_PER_MINUTE);
            written.append(text, copied, moves.feedFrom(i));
            if (moves.feedFrom(i) == moves.feedTo(i)) {
                written.append(' ');
            }
            FeedWord.append(written, feedsMPerS[i], moves.isInch(i));
            copied = moves.feedTo(i);
        }
        return written.append(text, copied, text.length()).toString();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PartProgram that && text.equals(that.text) && contours.equals(that.contours);
    }

    @Override
    public int hashCode() {
        return text.hashCode();
    }

    @Override
    public String toString() {
        return "part program of " + contours.size() + " contours and " + moves.size() + " cutting moves";
    }
}
