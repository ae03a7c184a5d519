package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;

/**
 * Something the reader of a result must know: the value lies outside a fitted range, a geometry is unusual, a danger to
 * people. A program goes by {@link #code()}, a person by {@link #text()}.
 */
public final class Caution implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** How much weight a caution has. Ordered from light to heavy. */
    public enum Weight {
        /** Good to know. */
        NOTICE,
        /** The result may be wrong or the cut may fail. */
        WARNING,
        /** People or machine may come to harm. */
        DANGER
    }

    private final Weight weight;
    private final String code;
    private final String text;

    private Caution(Weight weight, String code, String text) {
        this.weight = weight;
        this.code = Objects.requireNonNull(code, "code");
        this.text = Objects.requireNonNull(text, "text");
    }

    /**
     * A caution that is good to know.
     *
     * @param code stable name in lower case with hyphens
     * @param text one sentence for a person
     * @return the caution
     */
    public static Caution notice(String code, String text) {
        return new Caution(Weight.NOTICE, code, text);
    }

    /**
     * A caution that the result may be wrong or the cut may fail.
     *
     * @param code stable name in lower case with hyphens
     * @param text one sentence for a person
     * @return the caution
     */
    public static Caution warning(String code, String text) {
        return new Caution(Weight.WARNING, code, text);
    }

    /**
     * A caution that people or machine may come to harm.
     *
     * @param code stable name in lower case with hyphens
     * @param text one sentence for a person
     * @return the caution
     */
    public static Caution danger(String code, String text) {
        return new Caution(Weight.DANGER, code, text);
    }

    /**
     * Weight of this caution.
     *
     * @return the weight
     */
    public Weight weight() {
        return weight;
    }

    /**
     * Stable name of this caution.
     *
     * @return lower case with hyphens
     */
    public String code() {
        return code;
    }

    /**
     * What a person should read.
     *
     * @return one sentence
     */
    public String text() {
        return text;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("caution")
                .put("weight", weight)
                .put("code", code)
                .put("text", text)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Caution that
                && weight == that.weight
                && code.equals(that.code)
                && text.equals(that.text);
    }

    @Override
    public int hashCode() {
        return Objects.hash(weight, code, text);
    }

    @Override
    public String toString() {
        return code + ": " + text;
    }
}
