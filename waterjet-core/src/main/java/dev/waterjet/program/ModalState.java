package dev.waterjet.program;

import dev.waterjet.measure.TextException;
import dev.waterjet.part.Side;
import org.jspecify.annotations.Nullable;

/** What stays in force from block to block. */
final class ModalState {

    enum Motion {
        NONE,
        RAPID,
        LINE,
        ARC_RIGHT,
        ARC_LEFT
    }

    private static final int NO_OFFSET = -1;
    private static final double GREATEST_CODE = 999;

    Motion motion = Motion.NONE;
    boolean isIncremental;
    boolean isInch;
    boolean isCentreAbsolute;

    @Nullable
    Side jetSide;

    double shiftX;
    double shiftY;

    /** For the block at hand only. */
    boolean isDwell;

    boolean isShift;

    private boolean hasUnit;
    private int workOffset = NO_OFFSET;

    void startBlock() {
        isDwell = false;
        isShift = false;
    }

    /** Whether the program has said its unit of length. */
    boolean hasUnit() {
        return hasUnit;
    }

    /** A length of the program in m. */
    double metres(double number) {
        return isInch ? number * 0.0254 : number / 1000;
    }

    /** The length that a word tells, in m. */
    double metres(BlockWords words, int word) {
        double length = metres(words.number[word]);
        if (Math.abs(length) > ProgramReader.FARTHEST_M) {
            throw words.faultAtWord(
                    word, words.written(word) + " is more than " + (int) ProgramReader.FARTHEST_M + " m");
        }
        return length;
    }

    /** Takes a G word into force. */
    void take(BlockWords words, int word) {
        double number = words.number[word];
        if (!(number >= 0 && number <= GREATEST_CODE)) {
            throw unknown(words, word);
        }
        // codes are told apart by their tenths: 90.1 is another code than 90
        switch ((int) Math.round(number * 10)) {
            case 0 -> motion = Motion.RAPID;
            case 10 -> motion = Motion.LINE;
            case 20 -> motion = Motion.ARC_RIGHT;
            case 30 -> motion = Motion.ARC_LEFT;
            case 40 -> isDwell = true;
            case 170, 610, 640, 940 -> {}
            case 180, 190 ->
                throw words.faultAtWord(word, words.written(word) + " leaves the XY plane; the jet cuts in it");
            case 200, 700 -> unit(true);
            case 210, 710 -> unit(false);
            case 400 -> jetSide = null;
            case 410 -> jetSide = Side.LEFT;
            case 420 -> jetSide = Side.RIGHT;
            case 540, 550, 560, 570, 580, 590 -> workOffset(words, word);
            case 900 -> isIncremental = false;
            case 910 -> isIncremental = true;
            case 901 -> isCentreAbsolute = true;
            case 911 -> isCentreAbsolute = false;
            case 920 -> isShift = true;
            case 930, 950 ->
                throw words.faultAtWord(
                        word, words.written(word) + " asks for another meaning of F; use G94, feed per minute");
            default -> throw unknown(words, word);
        }
        if (Math.abs(number * 10 - Math.round(number * 10)) > 1e-9) {
            throw unknown(words, word);
        }
    }

    private static TextException unknown(BlockWords words, int word) {
        return words.faultAtWord(word, "the word " + words.written(word) + " is not known");
    }

    private void unit(boolean inch) {
        isInch = inch;
        hasUnit = true;
    }

    private void workOffset(BlockWords words, int word) {
        int wanted = (int) words.number[word];
        if (workOffset != NO_OFFSET && workOffset != wanted) {
            throw words.faultAtWord(
                    word, words.written(word) + " moves the origin by an amount that only the machine knows");
        }
        workOffset = wanted;
    }
}
