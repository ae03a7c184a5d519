package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;

/** Reader of a program, block by block, that tracks the head and the jet. */
final class ProgramReader {

    static final int MAX_CHARACTERS = 50_000_000;

    private static final int MAX_BLOCKS = 2_000_000;

    /** Maximum distance from the origin, and maximum length in a word. */
    static final double MAX_DISTANCE_M = 1000;

    /** A shorter arc by its radius is a line. */
    private static final double SHORT_ARC_M = 2.55e-6;

    private final String written;
    private final SubPrograms.Unrolled unrolled;
    private final String text;
    private final ProgramCodes codes;
    private final BlockWords words;
    private final ModalState state = new ModalState();
    private final ProgramBlocks blocks = new ProgramBlocks();
    private final List<ProgramFinding> findings = new ArrayList<>();
    private final CutReader cuts;
    private final HeightReader height = new HeightReader();

    private double x;
    private double y;
    private double rapidM;
    private double feedMPerS;
    private boolean isEnded;

    private ProgramReader(String written, ProgramCodes codes) {
        if (written.length() > MAX_CHARACTERS) {
            throw new TextException(Message.of("text-too-long", "the program has more than {limit} characters")
                    .with("limit", MAX_CHARACTERS));
        }
        this.written = written;
        this.codes = codes;
        this.unrolled = SubPrograms.unroll(written, codes);
        this.text = unrolled.text();
        this.words = new BlockWords(text);
        this.cuts = new CutReader(words, state, codes, blocks);
    }

    static PartProgram read(String text, ProgramCodes codes) {
        ProgramReader reader = new ProgramReader(text, codes);
        reader.readLines();
        return reader.result();
    }

    private void readLines() {
        ProgramLines.each(text, (line, from, to) -> {
            words.read(unrolled.lineOf(line), from, to);
            block();
            return !isEnded;
        });
        cuts.requireEnd();
        if (blocks.count == 0) {
            throw new TextException(Message.of(
                            "nothing-cut", "the program cuts nothing: no line or arc between M{jet_on} and M{jet_off}")
                    .with("jet_on", codes.jetOn())
                    .with("jet_off", codes.jetOff()));
        }
    }

    private void block() {
        state.startBlock();
        cuts.takeNotes(this::found);
        MachineWords machine = MachineWords.NONE;
        for (int i = 0; i < words.count; i++) {
            if (words.letter[i] == 'G') {
                state.take(words, i, codes);
            } else if (words.letter[i] == 'M') {
                machine = machine.with(words, i, codes);
            }
        }
        state.hasParameters |= machine.hasParameters();
        for (int i = 0; i < words.count; i++) {
            checkWord(i);
        }
        refuseTwice();
        if (machine.onWord() >= 0) {
            cuts.turnOn(machine.onWord(), x, y);
        }
        if (state.isDwell) {
            cuts.dwell();
        } else {
            int feed = words.find('F');
            feedMPerS = feed < 0 ? feedMPerS : state.metres(words.number[feed]) / 60;
            move();
        }
        if (machine.offWord() >= 0) {
            cuts.turnOff(x, y);
        }
        if (machine.stopWord() >= 0 && cuts.isOn()) {
            found(Message.of("stop-with-jet-on", "{word} stops the head with the jet on")
                    .with("word", words.written(machine.stopWord())));
        }
        isEnded = machine.isEnd();
    }

    private void found(Message message) {
        findings.add(ProgramFinding.violated(words.line, x, y, message));
    }

    private void checkWord(int word) {
        switch (words.letter[word]) {
            case 'G', 'M', 'X', 'Y', 'Z', 'I', 'J', 'R', 'F', 'N', 'O', 'S', 'T', 'D', 'H' -> {}
            case 'P', 'U' -> {
                if (!state.isDwell && !state.hasParameters) {
                    throw words.refusal(word, Message.of("word-without-dwell", "{word} belongs to a dwell, G4"));
                }
            }
            case 'A', 'B', 'C' ->
                throw words.refusal(
                        word, Message.of("rotary-axis", "{word} turns an axis; programs with an upright jet are read"));
            default -> {
                if (!state.hasParameters) {
                    throw words.refusal(word, Message.of("unknown-word", "unknown word {word}"));
                }
            }
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

    private void move() {
        int xWord = words.find('X');
        int yWord = words.find('Y');
        height.move(words, state, cuts.isOn(), this::found);
        if (state.isShift) {
            state.shiftX = xWord < 0 ? state.shiftX : x - state.metres(words, xWord);
            state.shiftY = yWord < 0 ? state.shiftY : y - state.metres(words, yWord);
            return;
        }
        state.refuseOtherPlace(words, xWord, yWord);
        double toX = xWord < 0 ? x : target(xWord, x, state.shiftX);
        double toY = yWord < 0 ? y : target(yWord, y, state.shiftY);
        boolean isArc = state.motion == ModalState.Motion.ARC_LEFT || state.motion == ModalState.Motion.ARC_RIGHT;
        int centreWord = Math.max(words.find('I'), Math.max(words.find('J'), words.find('R')));
        if (!isArc && centreWord >= 0 && !state.hasParameters) {
            throw words.refusal(centreWord, Message.of("word-without-arc", "{word} belongs to an arc, G2 or G3"));
        }
        if (xWord < 0 && yWord < 0 && (centreWord < 0 || !isArc)) {
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
        state.offsetWord = "";
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
        if (cuts.isOn()) {
            throw words.refusal(
                    at,
                    Message.of("rapid-with-jet-on", "rapid traverse with the jet on, switched on at line {line}")
                            .with("line", cuts.onLine()));
        }
        rapidM += Math.hypot(toX - x, toY - y);
    }

    private void line(int at, double toX, double toY) {
        if (!cuts.isOn()) {
            rapidM += Math.hypot(toX - x, toY - y);
            return;
        }
        if (Math.hypot(toX - x, toY - y) < ArcGeometry.MIN_LENGTH_M) {
            throw words.refusal(at, Message.of("zero-length-line", "zero-length line: the jet would be stationary"));
        }
        cut(toX, toY);
    }

    private void arc(int at, double toX, double toY) {
        int turn = state.motion == ModalState.Motion.ARC_LEFT ? 1 : -1;
        double[] centre = ArcReader.centre(words, state, at, x, y, toX, toY, turn);
        boolean isByRadius = words.find('R') >= 0;
        boolean isFull = !isByRadius && ArcGeometry.isFullCircle(x, y, toX, toY, centre[0], centre[1]);
        double endX = isFull ? x : toX;
        double endY = isFull ? y : toY;
        if (!cuts.isOn()) {
            rapidM += ArcGeometry.length(x, y, endX, endY, centre[0], centre[1], turn);
            return;
        }
        if (!state.offsetWord.isEmpty()) {
            found(Message.of(
                            "offset-on-arc",
                            "{word} takes effect on an arc; many controls require a straight move there")
                    .with("word", state.offsetWord));
        }
        int block = cut(endX, endY);
        if (!isByRadius || Math.hypot(toX - x, toY - y) > SHORT_ARC_M) {
            blocks.turn[block] = (byte) turn;
            blocks.centreX[block] = centre[0];
            blocks.centreY[block] = centre[1];
        }
    }

    private int cut(double toX, double toY) {
        if (blocks.count == MAX_BLOCKS) {
            throw words.refusal(
                    words.count - 1,
                    Message.of("too-many-blocks", "a program has at most {limit} cutting blocks")
                            .with("limit", MAX_BLOCKS));
        }
        int block = blocks.add(x, y, toX, toY);
        blocks.line[block] = words.line;
        blocks.lineFrom[block] = words.lineStart;
        blocks.lineTo[block] = words.lineEnd;
        blocks.originX[block] = state.shiftX;
        blocks.originY[block] = state.shiftY;
        blocks.flags[block] = state.flags();
        blocks.feed[block] = feedMPerS;
        int feed = words.find('F');
        int last = words.count - 1;
        blocks.feedFrom[block] = feed < 0 ? words.to[last] : words.from[feed];
        blocks.feedTo[block] = feed < 0 ? words.to[last] : words.to[feed];
        cuts.addBlock();
        return block;
    }

    private PartProgram result() {
        blocks.trim();
        return new PartProgram(
                written, text, codes, blocks, cuts.result(), findings, rapidM, cuts.spots(), state.hasUnit());
    }
}
