package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reader of a program, block by block, that tracks the head and the jet. */
final class ProgramReader {

    private static final int MAX_CHARACTERS = 50_000_000;
    private static final int MAX_BLOCKS = 2_000_000;

    /** Maximum distance from the origin, and maximum length in a word. */
    static final double MAX_DISTANCE_M = 1000;

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

    /** The current cut: where the jet was switched on, and its first block. */
    private int onLine;

    private int onColumn;

    private double onX;
    private double onY;
    private int firstBlock;
    private @Nullable Side cutSide;

    private ProgramReader(String text, ProgramCodes codes) {
        if (text.length() > MAX_CHARACTERS) {
            throw new TextException(Message.of("text-too-long", "the program has more than {limit} characters")
                    .with("limit", MAX_CHARACTERS));
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
            throw new TextException(
                    onLine, onColumn, Message.of("jet-never-off", "the jet is switched on here and never off"));
        }
        if (blocks.count == 0) {
            throw new TextException(Message.of(
                            "nothing-cut", "the program cuts nothing: no line or arc between M{jet_on} and M{jet_off}")
                    .with("jet_on", codes.jetOn())
                    .with("jet_off", codes.jetOff()));
        }
    }

    /** Whether a line marks start or end, or names the program. */
    private boolean isTape(int start, int end) {
        return start < end && (text.charAt(start) == '%' || text.charAt(start) == ':');
    }

    private void block() {
        state.startBlock();
        if (!words.comment().isEmpty()) {
            if (isOn) {
                throw words.refusalAt(
                        words.commentFrom(),
                        Message.of("note-with-jet-on", "the jet is already on; write the note before the cut"));
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
                    int code = machineCode(i);
                    onWord = code == codes.jetOn() ? i : onWord;
                    goesOff |= code == codes.jetOff();
                    ends |= code == 2 || code == 30;
                }
                default -> checkWord(i);
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

    private void checkWord(int word) {
        switch (words.letter[word]) {
            case 'X', 'Y', 'Z', 'I', 'J', 'R', 'F', 'N', 'O', 'S', 'T', 'D', 'H' -> {}
            case 'P', 'U' -> requireDwell(word);
            case 'A', 'B', 'C' ->
                throw words.refusal(
                        word, Message.of("rotary-axis", "{word} turns an axis; programs with an upright jet are read"));
            default -> throw words.refusal(word, Message.of("unknown-word", "unknown word {word}"));
        }
    }

    private int machineCode(int word) {
        double number = words.number[word];
        int code = (int) number;
        if (number != Math.rint(number) || number < 0) {
            throw words.refusal(word, Message.of("unknown-word", "unknown word {word}"));
        }
        if (!isKnown(code)) {
            throw words.refusal(
                    word,
                    Message.of(
                                    "unknown-machine-code",
                                    "unknown {word}; pass M{code} through if it neither moves the head nor switches the"
                                            + " jet")
                            .with("code", code));
        }
        return code;
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
            throw words.refusal(word, Message.of("word-without-dwell", "{word} belongs to a dwell, G4"));
        }
    }

    private void refuseTwice() {
        for (int i = 1; i < words.count; i++) {
            char letter = words.letter[i];
            if (letter != 'G' && letter != 'M' && words.find(letter) < i) {
                throw words.refusal(
                        i,
                        Message.of("word-twice", "the word {letter} occurs twice in one block")
                                .with("letter", String.valueOf(letter)));
            }
        }
    }

    private void turnOn(int word) {
        if (isOn) {
            throw words.refusal(
                    word,
                    Message.of("jet-already-on", "the jet is already on, since line {line}")
                            .with("line", onLine));
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
            ProgramCut cut =
                    new ProgramCut(blocks, firstBlock, blocks.count, Point.ofSi(onX, onY), onLine, notes, cutSide);
            if (mustClose && !cut.isClosed()) {
                throw neverCloses();
            }
            cuts.add(cut);
        }
        notes = CutNotes.NONE;
    }

    private TextException neverCloses() {
        Message message = Message.of(
                        "contour-not-closed",
                        "the contour that starts here never closes: it ends on line {end_line}, {gap} from its start, and"
                                + " passes no point twice; write (waterjet: open) before it if it need not close")
                .with("end_line", blocks.line[blocks.count - 1])
                .with("gap", Kind.LENGTH, Math.hypot(x - onX, y - onY), Units.MILLIMETRE);
        return new TextException(onLine, onColumn, message);
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
        if (!isArc && centreWord >= 0) {
            throw words.refusal(centreWord, Message.of("word-without-arc", "{word} belongs to an arc, G2 or G3"));
        }
        if (xWord < 0 && yWord < 0 && centreWord < 0) {
            return;
        }
        int at = Math.max(0, Math.max(xWord, yWord));
        switch (state.motion) {
            case NONE ->
                throw words.refusal(at, Message.of("no-motion-code", "a move without G0, G1, G2 or G3 before it"));
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
        if (Math.abs(to) > MAX_DISTANCE_M) {
            throw words.refusal(
                    word,
                    Message.of("place-beyond-limit", "{word} is more than {limit} from the origin")
                            .with("limit", Kind.LENGTH, MAX_DISTANCE_M, Units.METRE));
        }
        return to;
    }

    private void rapid(int at, double toX, double toY) {
        if (isOn) {
            throw words.refusal(
                    at,
                    Message.of("rapid-with-jet-on", "rapid traverse with the jet on, switched on at line {line}")
                            .with("line", onLine));
        }
        rapidM += Math.hypot(toX - x, toY - y);
    }

    private void line(int at, double toX, double toY) {
        if (!isOn) {
            rapidM += Math.hypot(toX - x, toY - y);
            return;
        }
        if (Math.hypot(toX - x, toY - y) < ArcGeometry.MIN_LENGTH_M) {
            throw words.refusal(at, Message.of("zero-length-line", "zero-length line: the jet would be stationary"));
        }
        cut(toX, toY, 0, 0, 0);
    }

    private void arc(int at, double toX, double toY) {
        int turn = state.motion == ModalState.Motion.ARC_LEFT ? 1 : -1;
        double[] centre = ArcReader.centre(words, state, at, x, y, toX, toY, turn);
        if (isOn) {
            cut(toX, toY, centre[0], centre[1], turn);
        } else {
            rapidM += ArcGeometry.length(x, y, toX, toY, centre[0], centre[1], turn);
        }
    }

    private void cut(double toX, double toY, double atX, double atY, int turn) {
        if (blocks.count == MAX_BLOCKS) {
            throw words.refusal(
                    words.count - 1,
                    Message.of("too-many-blocks", "a program has at most {limit} cutting blocks")
                            .with("limit", MAX_BLOCKS));
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
