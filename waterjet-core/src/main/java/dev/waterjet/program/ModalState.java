package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Side;
import java.util.EnumMap;
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
    private static final int NO_WORD = -1;

    Motion motion = Motion.NONE;
    boolean isIncremental;
    boolean isInch;
    boolean isCentreAbsolute;

    @Nullable
    Side jetSide;

    /** The word that changed the side of the jet, until the head moves; empty afterwards. */
    String offsetWord = "";

    double shiftX;
    double shiftY;

    /** For the current block only. */
    boolean isDwell;

    boolean isShift;

    /** Word after which X and Y are no place of the program, or -1. */
    int machinePlaceWord;

    /** Whether the block has a word to which P, Q and the like belong. */
    boolean hasParameters;

    private boolean hasMotionWord;
    private boolean hasUnit;
    private int workOffset = NO_OFFSET;

    /** The word of each group in this block. */
    private final Map<PreparatoryCodes.Group, Integer> wordOfGroup = new EnumMap<>(PreparatoryCodes.Group.class);

    void startBlock() {
        isDwell = false;
        isShift = false;
        machinePlaceWord = NO_WORD;
        hasParameters = false;
        hasMotionWord = false;
        wordOfGroup.clear();
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
    void take(BlockWords words, int word, ProgramCodes codes) {
        PreparatoryCodes.Code code = PreparatoryCodes.find(words.number[word]);
        if (code != null) {
            refuseContradiction(words, word, code);
            code.effect().apply(this, words, word);
        } else if (codes.passesThrough('G', words.number[word])) {
            machinePlaceWord = word;
            hasParameters = true;
        } else {
            throw words.refusal(
                    word,
                    Message.of(
                            "unknown-word",
                            "unknown {word}; add --pass-through {word} to copy it unchanged, if it neither moves the"
                                    + " head nor switches the jet"));
        }
    }

    /** A block takes one word of a group; the same word twice contradicts nothing. */
    private void refuseContradiction(BlockWords words, int word, PreparatoryCodes.Code code) {
        if (code.group() == PreparatoryCodes.Group.NONE) {
            return;
        }
        Integer before = wordOfGroup.put(code.group(), word);
        PreparatoryCodes.Code other = before == null ? null : PreparatoryCodes.find(words.number[before]);
        if (before != null && other != null && other.value() != code.value()) {
            throw words.refusal(
                    word,
                    Message.of("words-contradict", "{other} and {word} contradict each other in one block")
                            .with("other", words.written(before)));
        }
    }

    void move(Motion next) {
        motion = next;
        hasMotionWord = true;
    }

    /** Refuses X or Y where a word of the block gives them another meaning. */
    void refuseOtherPlace(BlockWords words, int xWord, int yWord) {
        if (machinePlaceWord == NO_WORD || (xWord < 0 && yWord < 0)) {
            return;
        }
        boolean isPlaceOfMachine = PreparatoryCodes.movesToMachinePlace(words.number[machinePlaceWord]);
        if (isPlaceOfMachine || !hasMotionWord) {
            throw words.refusal(
                    machinePlaceWord,
                    Message.of(
                            "place-not-stated", "after {word} X and Y are no place of the program; write them alone"));
        }
    }

    /** Flags of a cutting block. */
    byte flags() {
        return (byte) ((isInch ? ProgramBlocks.INCH : 0)
                | (isIncremental ? ProgramBlocks.INCREMENTAL : 0)
                | (isCentreAbsolute ? ProgramBlocks.CENTRE_ABSOLUTE : 0)
                | (jetSide != null ? ProgramBlocks.COMPENSATED : 0)
                | (jetSide != null && !offsetWord.isEmpty() ? ProgramBlocks.OFFSET_STARTS : 0));
    }

    void unit(boolean inch) {
        isInch = inch;
        hasUnit = true;
    }

    void offset(BlockWords words, int word, @Nullable Side side) {
        offsetWord = jetSide == side ? offsetWord : words.written(word);
        jetSide = side;
    }

    void workOffset(BlockWords words, int word, int requested) {
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
