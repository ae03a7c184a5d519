package dev.waterjet.head;

import dev.waterjet.measure.WaterjetException;

/** No head of a list serves the part. */
public final class NoHeadException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    /**
     * With the reasons.
     *
     * @param reasons which rules were broken, and by how many heads
     */
    public NoHeadException(String reasons) {
        super("no head of the list serves this part. " + reasons);
    }
}
