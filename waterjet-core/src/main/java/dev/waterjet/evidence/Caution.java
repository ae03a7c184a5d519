package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Message;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
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

    /** Checked content, and the serial form. */
    private record Values(Weight weight, Message message) implements Serializable {

        Values {
            Objects.requireNonNull(weight, "weight");
            Objects.requireNonNull(message, "message");
        }

        private Object readResolve() {
            return new Caution(this);
        }
    }

    private final transient Values values;

    private Caution(Values values) {
        this.values = values;
    }

    /**
     * Returns a notice: the reader should know it.
     *
     * @param message code, parameters and sentence
     * @return the caution
     */
    public static Caution notice(Message message) {
        return new Caution(new Values(Weight.NOTICE, message));
    }

    /**
     * Returns a warning: the result may be wrong or the cut may fail.
     *
     * @param message code, parameters and sentence
     * @return the caution
     */
    public static Caution warning(Message message) {
        return new Caution(new Values(Weight.WARNING, message));
    }

    /**
     * Returns a danger: people or machine may come to harm.
     *
     * @param message code, parameters and sentence
     * @return the caution
     */
    public static Caution danger(Message message) {
        return new Caution(new Values(Weight.DANGER, message));
    }

    /**
     * {@return the message: code, parameters and sentence}
     */
    public Message message() {
        return values.message;
    }

    /**
     * A caution that is good to know.
     *
     * @param code stable name in lower case with hyphens
     * @param text one sentence for a person
     * @return the caution
     */
    public static Caution notice(String code, String text) {
        return new Caution(new Values(Weight.NOTICE, Message.of(code, text)));
    }

    /**
     * A caution that the result may be wrong or the cut may fail.
     *
     * @param code stable name in lower case with hyphens
     * @param text one sentence for a person
     * @return the caution
     */
    public static Caution warning(String code, String text) {
        return new Caution(new Values(Weight.WARNING, Message.of(code, text)));
    }

    /**
     * A caution that people or machine may come to harm.
     *
     * @param code stable name in lower case with hyphens
     * @param text one sentence for a person
     * @return the caution
     */
    public static Caution danger(String code, String text) {
        return new Caution(new Values(Weight.DANGER, Message.of(code, text)));
    }

    /**
     * Weight of this caution.
     *
     * @return the weight
     */
    public Weight weight() {
        return values.weight;
    }

    /**
     * Stable name of this caution.
     *
     * @return lower case with hyphens
     */
    public String code() {
        return values.message.code();
    }

    /**
     * What a person should read.
     *
     * @return one sentence
     */
    public String text() {
        return values.message.text();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("caution")
                .put("weight", values.weight)
                .put("code", values.message.code())
                .put("text", values.message.text())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Caution that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.message.toString();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
