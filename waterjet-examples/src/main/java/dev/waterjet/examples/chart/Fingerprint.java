package dev.waterjet.examples.chart;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;

/**
 * A short text that stands for the words and numbers behind a picture. Two pictures with one fingerprint show the same,
 * even if the fonts of two machines set their labels a little differently.
 */
public final class Fingerprint {

    private final StringBuilder content = new StringBuilder();

    /** Starts an empty fingerprint. */
    public Fingerprint() {}

    /**
     * Adds words.
     *
     * @param words the words
     * @return this fingerprint
     */
    public Fingerprint add(String words) {
        content.append(words).append('\n');
        return this;
    }

    /**
     * Adds numbers, rounded to six digits.
     *
     * @param numbers the numbers
     * @return this fingerprint
     */
    public Fingerprint add(double... numbers) {
        for (double number : numbers) {
            // adding zero makes minus zero plain
            content.append(String.format(Locale.ROOT, "%.5e ", number + 0.0));
        }
        content.append('\n');
        return this;
    }

    /**
     * The fingerprint.
     *
     * @return 16 hexadecimal digits
     */
    public String text() {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256")
                    .digest(content.toString().getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash, 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java knows SHA-256", e);
        }
    }
}
