package dev.waterjet.program;

import dev.waterjet.measure.Message;

/**
 * M words of a block.
 *
 * @param onWord word that switches the jet on, or -1
 * @param offWord word that switches the jet off, or -1
 * @param stopWord word that stops the program, or -1
 * @param endWord word that ends the program, or -1
 * @param hasParameters whether a word passes through, to which others may belong
 */
record MachineWords(int onWord, int offWord, int stopWord, int endWord, boolean hasParameters) {

    static final MachineWords NONE = new MachineWords(-1, -1, -1, -1, false);

    boolean isEnd() {
        return endWord >= 0;
    }

    MachineWords with(BlockWords words, int word, ProgramCodes codes) {
        double number = words.number[word];
        if (number != Math.rint(number) || number < 0) {
            throw words.refusal(word, Message.of("unknown-word", "unknown word {word}"));
        }
        if (number == codes.jetOn()) {
            refuse(words, offWord, word);
            return new MachineWords(word, offWord, stopWord, endWord, hasParameters);
        }
        if (number == codes.jetOff()) {
            refuse(words, onWord, word);
            return new MachineWords(onWord, word, stopWord, endWord, hasParameters);
        }
        if (number == 0 || number == 1) {
            return new MachineWords(onWord, offWord, word, endWord, hasParameters);
        }
        if (number == 2 || number == 30) {
            refuseOther(words, endWord, word);
            return new MachineWords(onWord, offWord, stopWord, word, hasParameters);
        }
        if (codes.passesThrough('M', number)) {
            return new MachineWords(onWord, offWord, stopWord, endWord, true);
        }
        throw words.refusal(
                word,
                Message.of(
                        "unknown-machine-code",
                        "unknown {word}; add --pass-through {word} to copy it unchanged, if it neither moves the head"
                                + " nor switches the jet"));
    }

    private static void refuse(BlockWords words, int other, int word) {
        if (other >= 0) {
            throw words.refusal(
                    word,
                    Message.of("words-contradict", "{other} and {word} contradict each other in one block")
                            .with("other", words.written(other)));
        }
    }

    private static void refuseOther(BlockWords words, int other, int word) {
        if (other >= 0 && words.number[other] != words.number[word]) {
            refuse(words, other, word);
        }
    }
}
