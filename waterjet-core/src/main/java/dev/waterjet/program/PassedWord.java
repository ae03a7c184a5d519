package dev.waterjet.program;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.math.BigDecimal;
import java.util.Locale;

/**
 * Word that passes through unchanged.
 *
 * @param letter G or M
 * @param number its number
 */
record PassedWord(char letter, double number) implements Comparable<PassedWord>, Serializable {

    private static final long serialVersionUID = 1L;

    PassedWord {
        if (letter != 'G' && letter != 'M') {
            throw fault(String.valueOf(letter));
        }
        number = Require.between("code to pass through", number, 0, 9999, Units.ONE, "");
    }

    /** Reads {@code G49}, {@code M8} or {@code 8}, which is M8. */
    static PassedWord parse(String text) {
        String word = text.strip().toUpperCase(Locale.ROOT);
        boolean hasLetter = word.startsWith("G") || word.startsWith("M");
        String number = hasLetter ? word.substring(1).strip() : word;
        if (!number.matches("-?[0-9]{1,9}(\\.[0-9]{1,3})?")) {
            throw fault(text);
        }
        return new PassedWord(hasLetter ? word.charAt(0) : 'M', Double.parseDouble(number));
    }

    private static TextException fault(String text) {
        return new TextException(Message.of("not-a-word-to-pass", "{text} is not a G or M word, such as G49 or M8")
                .withInput("text", text));
    }

    boolean is(char otherLetter, double otherNumber) {
        return letter == otherLetter && number == otherNumber;
    }

    String text() {
        return letter + BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    @Override
    public int compareTo(PassedWord other) {
        int byLetter = Character.compare(letter, other.letter);
        return byLetter != 0 ? byLetter : Double.compare(number, other.number);
    }
}
