package dev.waterjet.kerf;

/** Height on the cut surface at which a part is measured, and for which the tool path is offset. */
public enum MeasuringPlane {
    /** The top side, where the jet enters. */
    ENTRY("top side"),
    /** Half of the thickness. */
    MIDDLE("half thickness"),
    /** The bottom side, where the jet exits. */
    EXIT("bottom side"),
    /** The depth at which the kerf is widest: the part is nowhere larger than its contour. */
    WIDEST("widest depth");

    private final String label;

    MeasuringPlane(String label) {
        this.label = label;
    }

    /** {@return the name for people, in lower case} */
    public String label() {
        return label;
    }

    double halfWidth(KerfShape shape) {
        return switch (this) {
            case ENTRY -> shape.entryWidth() / 2;
            case MIDDLE -> shape.halfWidth(shape.thicknessM() / 2);
            case EXIT -> shape.exitWidth() / 2;
            case WIDEST -> shape.maximumWidth() / 2;
        };
    }
}
