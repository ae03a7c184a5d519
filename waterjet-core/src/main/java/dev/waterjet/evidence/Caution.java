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
 * Caution attached to a result: the result may be wrong, the cut may fail, or people may be harmed. A program uses
 * {@link #code()}, a person reads {@link #text()}.
 *
 * <pre>{@code
 * Caution.warning(Message.of("thin-sheet", "the sheet is {thickness} thick; the model begins at {minimum}")
 *         .with("thickness", Kind.LENGTH, 0.0005, Units.MILLIMETRE)
 *         .with("minimum", Kind.LENGTH, 0.001, Units.MILLIMETRE));
 * }</pre>
 */
public final class Caution implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Severity of a caution, in rising order, by the signal words of safety instructions. */
    public enum Severity {
        /** Information about the result. */
        NOTICE,
        /** The result may be wrong, or the cut may fail. */
        WARNING,
        /** People may be harmed, or the machine damaged. */
        DANGER
    }

    /** Checked content, and the serial form. */
    private record Values(Severity severity, Message message) implements Serializable {

        Values {
            Objects.requireNonNull(severity, "severity");
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
     * Returns a notice: information about the result.
     *
     * @param message code, parameters and sentence
     * @return the caution
     */
    public static Caution notice(Message message) {
        return new Caution(new Values(Severity.NOTICE, message));
    }

    /**
     * Returns a warning: the result may be wrong or the cut may fail.
     *
     * @param message code, parameters and sentence
     * @return the caution
     */
    public static Caution warning(Message message) {
        return new Caution(new Values(Severity.WARNING, message));
    }

    /**
     * Returns a danger: people may be harmed, or the machine damaged.
     *
     * @param message code, parameters and sentence
     * @return the caution
     */
    public static Caution danger(Message message) {
        return new Caution(new Values(Severity.DANGER, message));
    }

    /** {@return the message: code, parameters and sentence} */
    public Message message() {
        return values.message;
    }

    /** {@return the severity of this caution} */
    public Severity severity() {
        return values.severity;
    }

    /** {@return the stable name of this caution, in lower case with hyphens} */
    public String code() {
        return values.message.code();
    }

    /** {@return the sentence for people} */
    public String text() {
        return values.message.text();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("caution")
                .put("severity", values.severity)
                .put("code", values.message.code())
                .put("text", values.message.text())
                .put("parameters", values.message.parameters())
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
