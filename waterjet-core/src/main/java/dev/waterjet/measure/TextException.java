package dev.waterjet.measure;

/** Text that the library cannot read: what stood there, where, and what is wanted instead. */
public class TextException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final int line;
    private final int column;

    /**
     * Text without a place, such as a single quantity.
     *
     * @param message what was wrong and what is wanted
     */
    public TextException(String message) {
        super(message);
        this.line = 0;
        this.column = 0;
    }

    /**
     * A place in a text of several lines.
     *
     * @param line line, from 1
     * @param column column, from 1
     * @param message what was wrong and what is wanted
     */
    public TextException(int line, int column, String message) {
        super("line " + line + ", column " + column + ": " + message);
        this.line = line;
        this.column = column;
    }

    /**
     * Line of the fault.
     *
     * @return line from 1, or 0 if the text has no lines
     */
    public int line() {
        return line;
    }

    /**
     * Column of the fault.
     *
     * @return column from 1, or 0 if the text has no lines
     */
    public int column() {
        return column;
    }
}
