package dev.waterjet.motion;

/** Limit that governs the feed rate at a place of the path. */
public enum FeedLimit {
    /** Cut quality required of the edge. */
    QUALITY(true, "cut quality"),
    /** Maximum feed rate stated for the edge. */
    REQUESTED(true, "feed rate stated for the edge"),
    /** Separation feed rate of a lead. */
    LEAD(true, "lead"),
    /** Error of the bottom edge on an arc. */
    LAG_ON_ARC(true, "lag on an arc"),
    /** Error of the bottom edge at an inside corner. */
    LAG_AT_INSIDE_CORNER(true, "lag at an inside corner"),
    /** Error of the bottom edge at an outside corner. */
    LAG_AT_OUTSIDE_CORNER(true, "lag at an outside corner"),
    /** The bottom has to be cut through before the path turns or ends. */
    SEPARATION(true, "separation at a corner or end"),
    /** Run-in of the cut front beside an edge of a lower feed rate. */
    FRONT_RECOVERY(true, "recovery of the cut front"),
    /** Minimum feed rate of the machine; the process requires less. */
    MINIMUM_FEED(false, "minimum feed rate of the machine"),
    /** Maximum speed of an axis. */
    MACHINE_SPEED(false, "speed of an axis"),
    /** Acceleration or jerk across the path on an arc. */
    CENTRIPETAL(false, "acceleration across the path"),
    /** Rule by which the control passes corners and joints. */
    MACHINE_CORNER(false, "corner rule of the machine"),
    /** Acceleration along the path. */
    ACCELERATION(false, "acceleration along the path"),
    /** Jerk along the path. */
    JERK(false, "jerk along the path"),
    /** Rest at an end of the path. */
    PATH_END(false, "rest at an end of the path");

    private static final FeedLimit[] PROCESS = {
        QUALITY,
        REQUESTED,
        LEAD,
        LAG_ON_ARC,
        LAG_AT_INSIDE_CORNER,
        LAG_AT_OUTSIDE_CORNER,
        SEPARATION,
        FRONT_RECOVERY,
        MINIMUM_FEED
    };

    private final boolean isOfFront;
    private final String label;

    FeedLimit(boolean isOfFront, String label) {
        this.isOfFront = isOfFront;
        this.label = label;
    }

    /** {@return the name for people, in lower case} */
    public String label() {
        return label;
    }

    /** {@return whether the jet governs, and not the machine: cut quality, lag, separation and recovery} */
    public boolean isOfFront() {
        return isOfFront;
    }

    /** Code of a cap of the process. */
    @SuppressWarnings("EnumOrdinal") // the process limits are the first ones, in the order of their codes
    int processCode() {
        return ordinal();
    }

    /** Limit of the code that a motion returns. */
    static FeedLimit ofCode(byte code) {
        return switch (GoverningLimit.ofCode(code)) {
            case PROCESS -> PROCESS[code];
            case X_SPEED, Y_SPEED -> MACHINE_SPEED;
            case CENTRIPETAL, ARC_JERK -> CENTRIPETAL;
            case CORNER, CURVATURE_JUMP -> MACHINE_CORNER;
            case REST -> PATH_END;
            case PATH_ACCELERATION, X_ACCELERATION, Y_ACCELERATION -> ACCELERATION;
            case PATH_JERK, X_JERK, Y_JERK -> JERK;
        };
    }
}
