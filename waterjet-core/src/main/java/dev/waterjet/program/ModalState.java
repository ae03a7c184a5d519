package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Side;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Modal state of a program: the settings that stay in force from block to block. */
final class ModalState {

    enum Motion {
        NONE,
        RAPID,
        LINE,
        ARC_RIGHT,
        ARC_LEFT
    }

    private static final int NO_OFFSET = -1;

    /** Codes in tenths, since 90.1 is another code than 90. */
    private static final int MAX_CODE = 9990;

    private static final int[] WITHOUT_EFFECT = {170, 610, 640, 940};
    private static final int[] OTHER_PLANES = {180, 190};
    private static final int[] FEED_MODES = {930, 950};
    private static final int[] WORK_OFFSETS = {540, 550, 560, 570, 580, 590};

    /** Effect of one G code on what stays in force. */
    private interface Effect {
        void apply(ModalState state, BlockWords words, int word);
    }

    private static final Map<Integer, Effect> EFFECTS = effects();

    Motion motion = Motion.NONE;
    boolean isIncremental;
    boolean isInch;
    boolean isCentreAbsolute;

    @Nullable
    Side jetSide;

    double shiftX;
    double shiftY;

    /** For the current block only. */
    boolean isDwell;

    boolean isShift;

    private boolean hasUnit;
    private int workOffset = NO_OFFSET;

    void startBlock() {
        isDwell = false;
        isShift = false;
    }

    /** Whether the program states its unit of length. */
    boolean hasUnit() {
        return hasUnit;
    }

    /** A length of the program in m. */
    double metres(double number) {
        return isInch ? number * 0.0254 : number / 1000;
    }

    /** The length that a word states, in m. */
    double metres(BlockWords words, int word) {
        double length = metres(words.number[word]);
        if (Math.abs(length) > ProgramReader.MAX_DISTANCE_M) {
            throw words.refusal(
                    word,
                    Message.of("word-beyond-limit", "{word} exceeds {limit}")
                            .with("limit", Kind.LENGTH, ProgramReader.MAX_DISTANCE_M, Units.METRE));
        }
        return length;
    }

    /** Takes a G word into force. */
    void take(BlockWords words, int word) {
        double tenths = words.number[word] * 10;
        Effect effect = tenths >= 0 && tenths <= MAX_CODE ? EFFECTS.get((int) Math.round(tenths)) : null;
        if (effect == null || Math.abs(tenths - Math.round(tenths)) > 1e-9) {
            throw words.refusal(word, Message.of("unknown-word", "unknown word {word}"));
        }
        effect.apply(this, words, word);
    }

    private static Map<Integer, Effect> effects() {
        Map<Integer, Effect> effects = new HashMap<>();
        effects.put(0, (state, words, word) -> state.motion = Motion.RAPID);
        effects.put(10, (state, words, word) -> state.motion = Motion.LINE);
        effects.put(20, (state, words, word) -> state.motion = Motion.ARC_RIGHT);
        effects.put(30, (state, words, word) -> state.motion = Motion.ARC_LEFT);
        effects.put(40, (state, words, word) -> state.isDwell = true);
        for (int code : WITHOUT_EFFECT) {
            effects.put(code, (state, words, word) -> {});
        }
        for (int code : OTHER_PLANES) {
            effects.put(code, (state, words, word) -> {
                throw words.refusal(
                        word, Message.of("not-in-xy-plane", "{word} selects another plane; the jet cuts in XY"));
            });
        }
        for (int code : FEED_MODES) {
            effects.put(code, (state, words, word) -> {
                throw words.refusal(
                        word,
                        Message.of(
                                "feed-mode-not-supported",
                                "{word} changes the meaning of F; use G94, feed per minute"));
            });
        }
        effects.put(200, (state, words, word) -> state.unit(true));
        effects.put(700, (state, words, word) -> state.unit(true));
        effects.put(210, (state, words, word) -> state.unit(false));
        effects.put(710, (state, words, word) -> state.unit(false));
        effects.put(400, (state, words, word) -> state.jetSide = null);
        effects.put(410, (state, words, word) -> state.jetSide = Side.LEFT);
        effects.put(420, (state, words, word) -> state.jetSide = Side.RIGHT);
        for (int code : WORK_OFFSETS) {
            effects.put(code, ModalState::workOffset);
        }
        effects.put(900, (state, words, word) -> state.isIncremental = false);
        effects.put(910, (state, words, word) -> state.isIncremental = true);
        effects.put(901, (state, words, word) -> state.isCentreAbsolute = true);
        effects.put(911, (state, words, word) -> state.isCentreAbsolute = false);
        effects.put(920, (state, words, word) -> state.isShift = true);
        return Map.copyOf(effects);
    }

    private void unit(boolean inch) {
        isInch = inch;
        hasUnit = true;
    }

    private void workOffset(BlockWords words, int word) {
        int requested = (int) words.number[word];
        if (workOffset != NO_OFFSET && workOffset != requested) {
            throw words.refusal(
                    word,
                    Message.of(
                            "second-work-offset",
                            "{word} moves the origin by an unknown amount; use one work offset in a program"));
        }
        workOffset = requested;
    }
}
