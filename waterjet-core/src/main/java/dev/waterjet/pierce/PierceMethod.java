package dev.waterjet.pierce;

/** How the jet first goes through a plate. */
public enum PierceMethod {
    /** The jet stands still at full pressure until it is through. */
    STATIONARY("stationary"),
    /** The jet circles or swings a little at full pressure, so that the returning water does not meet it. */
    MOVING("moving"),
    /** The abrasive flows first, then the jet comes at low pressure and stands still until it is through. */
    LOW_PRESSURE("low pressure, abrasive first"),
    /** A drill makes the hole, and the jet starts in it. */
    PRE_DRILLED("pre-drilled");

    private final String words;

    PierceMethod(String words) {
        this.words = words;
    }

    /**
     * The way in words.
     *
     * @return lower-case words
     */
    public String label() {
        return words;
    }
}
