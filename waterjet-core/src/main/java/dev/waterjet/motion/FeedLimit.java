package dev.waterjet.motion;

/** What holds the feed down at a place of the path. */
public enum FeedLimit {
    /** The grade asked of the face. */
    QUALITY(0, true, "grade of the face"),
    /** The feed that the edge carries itself. */
    REQUESTED(1, true, "feed asked of the edge"),
    /** The edge is a lead. */
    LEAD(2, true, "lead"),
    /** The trailing jet would swing wide at the bottom of an arc. */
    LAG_ON_ARC(3, true, "lag on an arc"),
    /** The trailing jet would notch the part at the bottom of an inside corner. */
    LAG_AT_INSIDE_CORNER(4, true, "lag at an inside corner"),
    /** The trailing jet would miss the corner of the part at its bottom. */
    LAG_AT_OUTSIDE_CORNER(5, true, "lag at an outside corner"),
    /** The cut front recovers before or after a slower place. */
    FRONT_RECOVERY(6, true, "recovery of the cut front"),
    /** Greatest speed of the machine. */
    MACHINE_SPEED(7, false, "speed of the machine"),
    /** Acceleration across the path, on an arc or in rounding a corner. */
    CENTRIPETAL(8, false, "acceleration across the path"),
    /** Acceleration, and where given jerk, along the path. */
    ACCELERATION(9, false, "acceleration along the path"),
    /** The path starts and ends at rest. */
    PATH_END(10, false, "rest at an end of the path");

    private static final FeedLimit[] BY_CODE = values();

    private final byte code;
    private final boolean isOfFront;
    private final String words;

    FeedLimit(int code, boolean isOfFront, String words) {
        this.code = (byte) code;
        this.isOfFront = isOfFront;
        this.words = words;
    }

    /**
     * The limit in words.
     *
     * @return lower-case words
     */
    public String label() {
        return words;
    }

    /**
     * Whether the cut front asks for it, and not the machine.
     *
     * @return true for grade, lag and recovery
     */
    public boolean isOfFront() {
        return isOfFront;
    }

    byte code() {
        return code;
    }

    static FeedLimit of(byte code) {
        return BY_CODE[code];
    }
}
