package dev.waterjet.program;

import dev.waterjet.part.Point;
import java.math.BigDecimal;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Writes the blocks of a moved program, and tracks the place of the head as it is written, so that rounding does not add up. */
final class MovedBlock {

    /** A place with a point, and its decimals. */
    private static final Pattern PLACE = Pattern.compile("[XYIJxyij] *[-+]?[0-9]*\\.([0-9]*)");

    /** A hundredth of a micrometre or less; digits beyond it are no places of a machine. */
    private static final int MAX_DECIMALS = 6;

    /** Places that differ by less are one. */
    private static final double SAME_M = 1e-12;

    private final String text;
    private final BlockWords words;
    private final ModalState state;
    private final ProgramCodes codes;
    private final boolean hasPoints;
    private final int givenDecimals;
    private final StringBuilder out;
    private int copied;

    /** Place of the head as written, and the shift of the origin. */
    private double x;

    private double y;
    private double shiftX;
    private double shiftY;

    /** Motion in force as written. */
    private ModalState.Motion motion = ModalState.Motion.NONE;

    private int motionWord;
    private String blank = "";
    private int decimals;
    private double unitM;

    MovedBlock(String text, BlockWords words, ModalState state, ProgramCodes codes) {
        this.text = text;
        this.words = words;
        this.state = state;
        this.codes = codes;
        this.hasPoints = PLACE.matcher(text).find();
        this.givenDecimals = PLACE.matcher(text)
                .results()
                .mapToInt(place -> place.end(1) - place.start(1))
                .max()
                .orElse(0);
        this.out = new StringBuilder(text.length() + text.length() / 4);
    }

    /** The whole text, with what follows the last block as it is. */
    String text() {
        return out.append(text, copied, text.length()).toString();
    }

    /** Begins a block, after its G words are in force. */
    void startBlock() {
        motionWord = -1;
        for (int i = 0; i < words.count; i++) {
            double number = words.number[i];
            if (words.letter[i] == 'G' && (number == 0 || number == 1 || number == 2 || number == 3)) {
                motionWord = i;
                motion = state.motion;
            }
        }
        boolean isSpaced = false;
        for (int i = 1; i < words.count; i++) {
            isSpaced |= words.from[i] > words.to[i - 1];
        }
        blank = isSpaced || words.count < 2 ? " " : "";
        decimals = Math.max(ProgramNumbers.decimals(codes, state.isInch), Math.min(givenDecimals, MAX_DECIMALS));
        unitM = state.metres(1);
    }

    /** The head is given another name for its place; an absent axis keeps it. */
    void shift(@Nullable Double nameX, @Nullable Double nameY) {
        shiftX = nameX == null ? shiftX : x - nameX;
        shiftY = nameY == null ? shiftY : y - nameY;
    }

    /** A line, or a rapid traverse; one that is shorter than the resolution is left out if the head moves in the program. */
    void line(Point end, boolean isMove) {
        String list = place(end);
        boolean isHere = list.isEmpty() && !isMove;
        replace(isHere ? places(words.find('X') >= 0, words.find('Y') >= 0, x, y) : list, "XY", "");
    }

    /** An arc too short for its words, as a line. */
    void shortArc(Point end) {
        String list = place(end);
        replace(list, "XYIJR", list.isEmpty() ? "" : motion(ModalState.Motion.LINE));
    }

    /** An arc by its radius. */
    void radiusArc(Point end) {
        replace(place(end) + " R" + radius(), "XYIJR", motion(state.motion));
    }

    private String radius() {
        return text.substring(words.from[words.find('R')] + 1, words.to[words.find('R')])
                .strip();
    }

    /** An arc by its centre; a full circle ends at the very place where it starts. */
    void centreArc(Point end, Point centre, boolean isFull) {
        double fromX = state.isCentreAbsolute ? shiftX : x;
        double fromY = state.isCentreAbsolute ? shiftY : y;
        String centreWords = "I" + number(rounded(centre.xSi() - fromX)) + " J" + number(rounded(centre.ySi() - fromY));
        String list = isFull ? places(words.find('X') >= 0, words.find('Y') >= 0, x, y) : place(end);
        replace(list.isEmpty() ? centreWords : list + " " + centreWords, "XYIJR", motion(state.motion));
    }

    /** Words of a place to which the head goes; empty if it is the place where the head is. */
    private String place(Point end) {
        double toX = state.isIncremental ? x : shiftX;
        double toY = state.isIncremental ? y : shiftY;
        toX += rounded(end.xSi() - toX).doubleValue() * unitM;
        toY += rounded(end.ySi() - toY).doubleValue() * unitM;
        boolean movesX = Math.abs(toX - x) > SAME_M;
        boolean movesY = Math.abs(toY - y) > SAME_M;
        if (!movesX && !movesY) {
            return "";
        }
        String list = places(movesX || words.find('X') >= 0, movesY || words.find('Y') >= 0, toX, toY);
        x = toX;
        y = toY;
        return list;
    }

    private String places(boolean hasX, boolean hasY, double toX, double toY) {
        String xWord = "X" + number(rounded(toX - (state.isIncremental ? x : shiftX)));
        String yWord = "Y" + number(rounded(toY - (state.isIncremental ? y : shiftY)));
        return hasX && hasY ? xWord + " " + yWord : hasX ? xWord : hasY ? yWord : "";
    }

    private BigDecimal rounded(double lengthM) {
        return ProgramNumbers.rounded(lengthM, unitM, decimals);
    }

    /** A number with a point if the places of the program have one: without it some machines count in their smallest step. */
    private String number(BigDecimal number) {
        String plain = ProgramNumbers.plain(number);
        return hasPoints && plain.indexOf('.') < 0 ? plain + ".0" : plain;
    }

    /** Word of a motion; empty if it is in force as written. */
    private String motion(ModalState.Motion required) {
        if (motion == required) {
            return "";
        }
        motion = required;
        return required == ModalState.Motion.LINE ? "G1" : required == ModalState.Motion.ARC_LEFT ? "G3" : "G2";
    }

    /** Writes a list in place of the first word of some letters and drops the others; a motion word replaces that of the block. */
    private void replace(String list, String letters, String motionText) {
        String places = motionWord >= 0 || motionText.isEmpty() ? list : motionText + " " + list;
        boolean isWritten = places.isEmpty();
        for (int i = 0; i < words.count; i++) {
            if (i == motionWord && !motionText.isEmpty()) {
                copy(words.from[i]);
                out.append(motionText);
                copied = words.to[i];
            } else if (letters.indexOf(words.letter[i]) >= 0) {
                // a dropped word goes with the blanks before it
                String before = text.substring(copied, words.from[i]);
                out.append(isWritten ? before.stripTrailing() : before);
                out.append(isWritten ? "" : blank.isEmpty() ? places.replace(" ", "") : places);
                isWritten = true;
                copied = words.to[i];
            }
        }
    }

    private void copy(int to) {
        out.append(text, copied, Math.max(copied, to));
        copied = Math.max(copied, to);
    }
}
