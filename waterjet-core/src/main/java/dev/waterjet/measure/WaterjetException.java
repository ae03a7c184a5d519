package dev.waterjet.measure;

import java.util.Map;

/**
 * Family of all exceptions by which the library refuses an input. All are unchecked. Each has a stable code and named
 * parameters for programs, and a sentence for people that states what was wrong and what would be right.
 *
 * <p>The only other exception that leaves the library is a {@link NullPointerException} that names a null argument.
 */
public abstract class WaterjetException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final Message message;

    /**
     * For the exceptions of the library.
     *
     * @param message code, parameters and sentence
     */
    protected WaterjetException(Message message) {
        super(message.text());
        this.message = message;
    }

    /**
     * For the exceptions of the library.
     *
     * @param message code, parameters and sentence
     * @param cause cause of the refusal
     */
    protected WaterjetException(Message message, Throwable cause) {
        super(message.text(), cause);
        this.message = message;
    }

    /**
     * For the exceptions of the library that add a place to the sentence.
     *
     * @param place place of the fault, for people
     * @param message code, parameters and sentence
     */
    protected WaterjetException(String place, Message message) {
        super(place + ": " + message.text());
        this.message = message;
    }

    /** {@return the stable name of the refusal, in lower case with hyphens} */
    public String code() {
        return message.code();
    }

    /** {@return the parameters of the refusal: numbers in SI with the unit in the key, counts and texts} */
    public Map<String, Object> parameters() {
        return message.parameters();
    }

    /** {@return the message without a place} */
    public Message message() {
        return message;
    }

    /** {@return the sentence for people, never null} */
    @Override
    public String getMessage() {
        return String.valueOf(super.getMessage());
    }
}
