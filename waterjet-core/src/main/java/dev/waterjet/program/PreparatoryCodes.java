package dev.waterjet.program;

import dev.waterjet.measure.Message;
import dev.waterjet.part.Side;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Table of G words: the group of each, of which a block takes one, and its effect on what stays in force. */
final class PreparatoryCodes {

    /** Groups of words that replace each other. */
    enum Group {
        NONE,
        MOTION,
        PLANE,
        OFFSET,
        UNIT,
        DISTANCE,
        CENTRE,
        FEED_MODE,
        TOOL_LENGTH,
        PATH_MODE,
        RETURN_LEVEL,
        WORK_OFFSET,
        /** Words that take X for themselves. */
        AXES_OF_ITS_OWN
    }

    /** Effect of one G code on what stays in force. */
    interface Effect {
        void apply(ModalState state, BlockWords words, int word);
    }

    /** A known code; codes of one group and one value mean the same. */
    record Code(Group group, int value, Effect effect) {}

    /** Codes in tenths, since 90.1 is another code than 90. */
    private static final int MAX_CODE = 9990;

    private static final int EXTENDED_OFFSET = 541;
    private static final int FIRST_OFFSET = 540;
    private static final int LAST_OFFSET = 590;

    private static final Effect NO_EFFECT = (state, words, word) -> {};
    private static final Effect WITH_PARAMETERS = (state, words, word) -> state.hasParameters = true;

    private static final Map<Integer, Code> CODES = codes();

    private PreparatoryCodes() {}

    static @Nullable Code find(double number) {
        double tenths = number * 10;
        boolean isCode = tenths >= 0 && tenths <= MAX_CODE && Math.abs(tenths - Math.round(tenths)) <= 1e-9;
        return isCode ? CODES.get((int) Math.round(tenths)) : null;
    }

    /** Whether a code moves axes to a place that only the machine knows. */
    static boolean movesToMachinePlace(double number) {
        return number == 28 || number == 30 || number == 53;
    }

    private static Map<Integer, Code> codes() {
        Map<Integer, Code> codes = new HashMap<>();
        motion(codes);
        settings(codes);
        withoutEffect(codes);
        refused(codes);
        return Map.copyOf(codes);
    }

    private static void motion(Map<Integer, Code> codes) {
        put(codes, Group.MOTION, 0, (state, words, word) -> state.move(ModalState.Motion.RAPID));
        put(codes, Group.MOTION, 10, (state, words, word) -> state.move(ModalState.Motion.LINE));
        put(codes, Group.MOTION, 20, (state, words, word) -> state.move(ModalState.Motion.ARC_RIGHT));
        put(codes, Group.MOTION, 30, (state, words, word) -> state.move(ModalState.Motion.ARC_LEFT));
        put(codes, Group.AXES_OF_ITS_OWN, 40, (state, words, word) -> state.isDwell = true);
        put(codes, Group.AXES_OF_ITS_OWN, 920, (state, words, word) -> state.isShift = true);
        for (int code : new int[] {280, 300}) {
            put(codes, Group.AXES_OF_ITS_OWN, code, PreparatoryCodes::home);
        }
        put(codes, Group.AXES_OF_ITS_OWN, 530, (state, words, word) -> state.machinePlaceWord = word);
    }

    private static void settings(Map<Integer, Code> codes) {
        Effect inch = (state, words, word) -> state.unit(true);
        Effect metric = (state, words, word) -> state.unit(false);
        codes.put(200, new Code(Group.UNIT, 20, inch));
        codes.put(700, new Code(Group.UNIT, 20, inch));
        codes.put(210, new Code(Group.UNIT, 21, metric));
        codes.put(710, new Code(Group.UNIT, 21, metric));
        put(codes, Group.OFFSET, 400, (state, words, word) -> state.offset(words, word, null));
        put(codes, Group.OFFSET, 410, (state, words, word) -> state.offset(words, word, Side.LEFT));
        put(codes, Group.OFFSET, 420, (state, words, word) -> state.offset(words, word, Side.RIGHT));
        put(codes, Group.DISTANCE, 900, (state, words, word) -> state.isIncremental = false);
        put(codes, Group.DISTANCE, 910, (state, words, word) -> state.isIncremental = true);
        put(codes, Group.CENTRE, 901, (state, words, word) -> state.isCentreAbsolute = true);
        put(codes, Group.CENTRE, 911, (state, words, word) -> state.isCentreAbsolute = false);
        for (int code = FIRST_OFFSET; code <= LAST_OFFSET; code += 10) {
            int offset = code;
            put(codes, Group.WORK_OFFSET, code, (state, words, word) -> state.workOffset(words, word, offset));
        }
        put(codes, Group.WORK_OFFSET, EXTENDED_OFFSET, (state, words, word) -> {
            int number = words.find('P');
            state.hasParameters = true;
            state.workOffset(words, word, 1000 + (number < 0 ? 0 : (int) words.number[number]));
        });
    }

    /** Words of a safe start, and others that move neither X nor Y. */
    private static void withoutEffect(Map<Integer, Code> codes) {
        put(codes, Group.PLANE, 170, NO_EFFECT);
        put(codes, Group.FEED_MODE, 940, NO_EFFECT);
        put(codes, Group.TOOL_LENGTH, 430, NO_EFFECT);
        put(codes, Group.TOOL_LENGTH, 440, NO_EFFECT);
        put(codes, Group.TOOL_LENGTH, 490, NO_EFFECT);
        put(codes, Group.PATH_MODE, 610, NO_EFFECT);
        put(codes, Group.PATH_MODE, 611, NO_EFFECT);
        put(codes, Group.PATH_MODE, 640, WITH_PARAMETERS);
        put(codes, Group.RETURN_LEVEL, 980, NO_EFFECT);
        put(codes, Group.RETURN_LEVEL, 990, NO_EFFECT);
        for (int code : new int[] {90, 690, 800, 970}) {
            put(codes, Group.NONE, code, NO_EFFECT);
        }
        // on some machines X after G50 is a place, so it has none here
        put(codes, Group.NONE, 500, (state, words, word) -> state.machinePlaceWord = word);
    }

    private static void refused(Map<Integer, Code> codes) {
        for (int code : new int[] {180, 190}) {
            put(codes, Group.PLANE, code, (state, words, word) -> {
                throw words.refusal(
                        word, Message.of("not-in-xy-plane", "{word} selects another plane; the jet cuts in XY"));
            });
        }
        for (int code : new int[] {930, 950}) {
            put(codes, Group.FEED_MODE, code, (state, words, word) -> {
                throw words.refusal(
                        word,
                        Message.of(
                                "feed-mode-not-supported",
                                "{word} changes the meaning of F; use G94, feed per minute"));
            });
        }
    }

    /** A return to the machine's own place is read where it moves Z alone. */
    private static void home(ModalState state, BlockWords words, int word) {
        if (words.find('Z') < 0 || words.find('X') >= 0 || words.find('Y') >= 0) {
            throw words.refusal(
                    word,
                    Message.of(
                            "machine-place",
                            "{word} moves the head to a place that the program does not state; move Z alone by it"));
        }
        state.machinePlaceWord = word;
    }

    private static void put(Map<Integer, Code> codes, Group group, int tenths, Effect effect) {
        codes.put(tenths, new Code(group, tenths, effect));
    }
}
