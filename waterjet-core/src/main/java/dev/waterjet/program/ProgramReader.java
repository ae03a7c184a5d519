package dev.waterjet.program;

import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads a program block by block and follows the head and the jet. */
final class ProgramReader {

    private static final int MOST_CHARACTERS = 50_000_000;
    private static final int MOST_BLOCKS = 2_000_000;

    /** Farthest place from the origin, and greatest length in a word. */
    static final double FARTHEST_M = 1000;

    private final String text;
    private final ProgramCodes codes;
    private final BlockWords words;
    private final ModalState state = new ModalState();
    private final ProgramBlocks blocks = new ProgramBlocks();
    private final List<ProgramCut> cuts = new ArrayList<>();

    private CutNotes notes = CutNotes.NONE;
    private double x;
    private double y;
    private double rapidM;
    private int spots;
    private boolean isOn;
    private boolean isEnded;

    /** The cut at hand: where the jet went on, and the first of its blocks. */
    private int onLine;

    private int onColumn;

    private double onX;
    private double onY;
    private int firstBlock;
    private @Nullable Side cutSide;

    private ProgramReader(String text, ProgramCodes codes) {
        if (text.length() > MOST_CHARACTERS) {
            throw new TextException("the program has more than " + MOST_CHARACTERS + " characters");
        }
        this.text = text;
        this.codes = codes;
        this.words = new BlockWords(text);
    }

    static PartProgram read(String text, ProgramCodes codes) {
        ProgramReader reader = new ProgramReader(text, codes);
        reader.readLines();
        return reader.result();
    }

    private void readLines() {
        int line = 1;
        int start = text.startsWith("\uFEFF") ? 1 : 0;
        while (start < text.length() && !isEnded) {
            int end = start;
            while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
                end++;
            }
            if (!isTape(start, end)) {
                words.read(line, start, end);
                block();
            }
            if (end + 1 < text.length() && text.charAt(end) == '\r' && text.charAt(end + 1) == '\n') {
                end++;
            }
            start = end + 1;
            line++;
        }
        if (isOn) {
            throw new TextException(onLine, onColumn, "the jet goes on here and never off");
        }
        if (blocks.count == 0) {
            throw new TextException("the program cuts nothing: no line or arc lies between M" + codes.jetOn() + " and M"
                    + codes.jetOff());
        }
    }

    /** Whether a line is a mark of start or end, or names the program. */
    private boolean isTape(int start, int end) {
        return start < end && (text.charAt(start) == '%' || text.charAt(start) == ':');
    }

    private void block() {
        state.startBlock();
        if (!words.comment().isEmpty()) {
            if (isOn) {
                throw words.fault(words.commentFrom(), "the jet is on already; speak of a cut before it");
            }
            notes = notes.with(words);
        }
        boolean goesOff = false;
        int onWord = -1;
        boolean ends = false;
        for (int i = 0; i < words.count; i++) {
            switch (words.letter[i]) {
                case 'G' -> state.take(words, i);
                case 'M' -> {
                    int code = code(i);
                    onWord = code == codes.jetOn() ? i : onWord;
                    goesOff |= code == codes.jetOff();
                    ends |= code == 2 || code == 30;
                    if (!isKnown(code)) {
                        throw words.faultAtWord(
                                i, "the word " + words.written(i) + " is not known; say so if it may be passed over");
                    }
                }
                case 'X', 'Y', 'Z', 'I', 'J', 'R', 'F', 'N', 'O', 'S', 'T', 'D', 'H' -> {}
                case 'P', 'U' -> requireDwell(i);
                case 'A', 'B', 'C' ->
                    throw words.faultAtWord(
                            i, "the word " + words.written(i) + " turns an axis; the jet is upright here");
                default -> throw words.faultAtWord(i, "the word " + words.written(i) + " is not known");
            }
        }
        refuseTwice();
        if (onWord >= 0) {
            turnOn(onWord);
        }
        if (!state.isDwell) {
            move();
        }
        if (goesOff) {
            turnOff();
        }
        isEnded = ends;
    }

    private int code(int word) {
        double number = words.number[word];
        if (number != Math.rint(number) || number < 0) {
            throw words.faultAtWord(word, "the word " + words.written(word) + " is not known");
        }
        return (int) number;
    }

    private boolean isKnown(int code) {
        return code == codes.jetOn()
                || code == codes.jetOff()
                || code <= 2
                || code == 30
                || codes.passThrough().contains(code);
    }

    private void requireDwell(int word) {
        if (words.find('G') < 0 || !state.isDwell) {
            throw words.faultAtWord(word, "the word " + words.written(word) + " belongs to a dwell, G4");
        }
    }

    private void refuseTwice() {
        for (int i = 1; i < words.count; i++) {
            char letter = words.letter[i];
            if (letter != 'G' && letter != 'M' && words.find(letter) < i) {
                throw words.faultAtWord(i, "the word " + letter + " stands twice in one block");
            }
        }
    }

    private void turnOn(int word) {
        if (isOn) {
            throw words.faultAtWord(word, "the jet is on already, since line " + onLine);
        }
        isOn = true;
        onColumn = words.column(word);
        onLine = words.line;
        onX = x;
        onY = y;
        firstBlock = blocks.count;
        cutSide = null;
    }

    private void turnOff() {
        if (!isOn) {
            return;
        }
        isOn = false;
        if (blocks.count == firstBlock) {
            spots++;
        } else {
            boolean mustClose = !codes.allowsOpenContours() && !notes.isOpen();
            ProgramCut cut = ProgramCut.of(blocks, firstBlock, blocks.count, onX, onY, onLine, notes, cutSide);
            if (mustClose && !cut.isClosed()) {
                throw new TextException(
                        onLine,
                        onColumn,
                        "the contour that starts here never closes: it ends on line "
                                + blocks.line[blocks.count - 1] + ", "
                                + QuantityText.round(1000 * Math.hypot(x - onX, y - onY), 4)
                                + " mm from its start, and comes by no point twice; write (waterjet: open) before it if it"
                                + " need not close");
            }
            cuts.add(cut);
        }
        notes = CutNotes.NONE;
    }

    private void move() {
        int xWord = words.find('X');
        int yWord = words.find('Y');
        if (state.isShift) {
            state.shiftX = xWord < 0 ? state.shiftX : x - state.metres(words, xWord);
            state.shiftY = yWord < 0 ? state.shiftY : y - state.metres(words, yWord);
            return;
        }
        double toX = xWord < 0 ? x : target(xWord, x, state.shiftX);
        double toY = yWord < 0 ? y : target(yWord, y, state.shiftY);
        boolean isArc = state.motion == ModalState.Motion.ARC_LEFT || state.motion == ModalState.Motion.ARC_RIGHT;
        int centreWord = Math.max(words.find('I'), Math.max(words.find('J'), words.find('R')));
        if (xWord < 0 && yWord < 0 && !(isArc && centreWord >= 0)) {
            if (centreWord >= 0) {
                throw words.faultAtWord(
                        centreWord, "the word " + words.written(centreWord) + " belongs to an arc, G2 or G3");
            }
            return;
        }
        if (!isArc && centreWord >= 0) {
            throw words.faultAtWord(
                    centreWord, "the word " + words.written(centreWord) + " belongs to an arc, G2 or G3");
        }
        int at = Math.max(0, Math.max(xWord, yWord));
        switch (state.motion) {
            case NONE -> throw words.faultAtWord(at, "a move without G0, G1, G2 or G3 before it");
            case RAPID -> rapid(at, toX, toY);
            case LINE -> line(at, toX, toY);
            default -> arc(at, toX, toY);
        }
        x = toX;
        y = toY;
    }

    private double target(int word, double now, double shift) {
        double number = state.metres(words.number[word]);
        double to = state.isIncremental ? now + number : number + shift;
        if (Math.abs(to) > FARTHEST_M) {
            throw words.faultAtWord(
                    word, words.written(word) + " lies more than " + (int) FARTHEST_M + " m from the origin");
        }
        return to;
    }

    private void rapid(int at, double toX, double toY) {
        if (isOn) {
            throw words.faultAtWord(at, "a rapid move with the jet on, which went on at line " + onLine);
        }
        rapidM += Math.hypot(toX - x, toY - y);
    }

    private void line(int at, double toX, double toY) {
        if (!isOn) {
            rapidM += Math.hypot(toX - x, toY - y);
            return;
        }
        if (Math.hypot(toX - x, toY - y) < ArcKernel.SHORTEST_M) {
            throw words.faultAtWord(at, "the line has no length; the jet would stand still");
        }
        cut(toX, toY, 0, 0, 0);
    }

    private void arc(int at, double toX, double toY) {
        int turn = state.motion == ModalState.Motion.ARC_LEFT ? 1 : -1;
        double[] centre = ArcReader.centre(words, state, at, x, y, toX, toY, turn);
        if (isOn) {
            cut(toX, toY, centre[0], centre[1], turn);
        } else {
            rapidM += ArcKernel.length(x, y, toX, toY, centre[0], centre[1], turn);
        }
    }

    private void cut(double toX, double toY, double atX, double atY, int turn) {
        if (blocks.count == MOST_BLOCKS) {
            throw words.faultAtWord(words.count - 1, "a program has at most " + MOST_BLOCKS + " cutting blocks");
        }
        blocks.add(toX, toY, atX, atY, turn, words.line);
        int feed = words.find('F');
        int last = words.count - 1;
        int from = feed < 0 ? words.to[last] : words.from[feed];
        int to = feed < 0 ? from : words.to[feed];
        blocks.feedOfLast(state.isInch, from, to);
        if (state.jetSide != null) {
            cutSide = state.jetSide;
        }
    }

    private PartProgram result() {
        blocks.trim();
        return new PartProgram(text, codes, blocks, cuts, rapidM, spots, state.hasUnit());
    }
}
