package dev.waterjet.motion;

/** Limit that governs the feed on a stretch of the path. */
enum GoverningLimit {
    /** Feed of the process; its own code says which. */
    PROCESS(100),
    /** Speed of the x axis. */
    X_SPEED(101),
    /** Speed of the y axis. */
    Y_SPEED(102),
    /** Centripetal acceleration on an arc. */
    CENTRIPETAL(103),
    /** Jerk of steady motion on an arc. */
    ARC_JERK(104),
    /** Corner rule of the machine. */
    CORNER(105),
    /** Jump of the curvature between two pieces. */
    CURVATURE_JUMP(106),
    /** Rest at an end of the path or at a stop. */
    REST(107),
    /** Acceleration along the path. */
    PATH_ACCELERATION(108),
    /** Acceleration of the x axis. */
    X_ACCELERATION(109),
    /** Acceleration of the y axis. */
    Y_ACCELERATION(110),
    /** Jerk along the path. */
    PATH_JERK(111),
    /** Jerk of the x axis. */
    X_JERK(112),
    /** Jerk of the y axis. */
    Y_JERK(113);

    /** Codes below this one are codes of process caps. */
    static final int FIRST_CODE = 100;

    private static final GoverningLimit[] ALL = values();

    private final byte code;

    GoverningLimit(int code) {
        this.code = (byte) code;
    }

    /** Code of the limit in arrays; for {@link #PROCESS} the codes of the caps stand instead. */
    byte code() {
        return code;
    }

    static GoverningLimit ofCode(int code) {
        return code < FIRST_CODE ? PROCESS : ALL[code - FIRST_CODE];
    }
}
