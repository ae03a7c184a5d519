package dev.waterjet.measure;

/** Text that the library cannot read: the fault, its place, and what is accepted instead. */
public class TextException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final int line;
    private final int column;

    /**
     * Creates a refusal of a text without lines, such as a single quantity.
     *
     * @param message code, parameters and sentence
     */
    public TextException(Message message) {
        super(message);
        this.line = 0;
        this.column = 0;
    }

    /**
     * Creates a refusal at a place in a text of several lines.
     *
     * @param line line, from 1
     * @param column column, from 1
     * @param message code, parameters and sentence
     */
    public TextException(int line, int column, Message message) {
        super("line " + line + ", column " + column, message);
        this.line = line;
        this.column = column;
    }

    /**
     * Temporary, until every refusal has a code.
     *
     * @param message what was wrong and what is accepted
     */
    public TextException(String message) {
        this(Message.of("unspecified", message));
    }

    /**
     * Temporary, until every refusal has a code.
     *
     * @param line line, from 1
     * @param column column, from 1
     * @param message what was wrong and what is accepted
     */
    public TextException(int line, int column, String message) {
        this(line, column, Message.of("unspecified", message));
    }

    /** {@return the line of the fault from 1, or 0 if the text has no lines} */
    public int line() {
        return line;
    }

    /** {@return the column of the fault from 1, or 0 if the text has no lines} */
    public int column() {
        return column;
    }
}
