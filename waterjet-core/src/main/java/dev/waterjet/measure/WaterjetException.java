package dev.waterjet.measure;

/**
 * Whatever the library refuses, it refuses with an exception of this family. All are unchecked, and all say in their
 * message what was wrong and what would be right.
 */
public abstract class WaterjetException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /**
     * Made by the exceptions of the library only.
     *
     * @param message what was wrong and what would be right
     */
    protected WaterjetException(String message) {
        super(message);
    }

    /**
     * Made by the exceptions of the library only.
     *
     * @param message what was wrong and what would be right
     * @param cause what led to it
     */
    protected WaterjetException(String message, Throwable cause) {
        super(message, cause);
    }

    /**
     * What was wrong and what would be right.
     *
     * @return the message, never null
     */
    @Override
    public String getMessage() {
        return String.valueOf(super.getMessage());
    }
}
