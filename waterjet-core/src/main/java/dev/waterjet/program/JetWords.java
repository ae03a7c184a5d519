package dev.waterjet.program;

import dev.waterjet.measure.TextException;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * The M words that start and stop the jet. ISO 6983 leaves them to the builder of the machine; M3 and M5, which it gives
 * to a spindle, are the choice of this library when nothing else is said. Look them up in the machine's manual.
 */
public final class JetWords implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final Pattern M_WORD = Pattern.compile("[Mm]0*(\\d{1,3})");

    private static final JetWords USUAL = new JetWords(3, 5);

    private final int on;
    private final int off;

    private JetWords(int on, int off) {
        this.on = on;
        this.off = off;
        if (on == off) {
            throw new TextException("M" + on + " cannot both start and stop the jet");
        }
    }

    /**
     * M3 starts the jet, M5 stops it.
     *
     * @return the words
     */
    public static JetWords usual() {
        return USUAL;
    }

    /**
     * Words of one's own machine.
     *
     * @param on word that starts the jet, such as {@code "M62"}
     * @param off word that stops it, such as {@code "M63"}
     * @return the words
     * @throws TextException if one is no M word, or both are the same
     */
    public static JetWords of(String on, String off) {
        return new JetWords(number(on), number(off));
    }

    private static int number(String word) {
        var matcher = M_WORD.matcher(word.strip());
        if (!matcher.matches()) {
            throw new TextException("\"" + word + "\" is no M word: write M and a number of at most three digits");
        }
        return Integer.parseInt(matcher.group(1));
    }

    boolean isOn(int m) {
        return m == on;
    }

    boolean isOff(int m) {
        return m == off;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof JetWords that && on == that.on && off == that.off;
    }

    @Override
    public int hashCode() {
        return Objects.hash(on, off);
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "M%d on, M%d off", on, off);
    }
}
