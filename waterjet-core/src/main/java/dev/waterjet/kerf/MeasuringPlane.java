package dev.waterjet.kerf;

/** Height on the cut face at which a part is measured, and so the height that the path is offset for. */
public enum MeasuringPlane {
    /** The face that the jet enters. */
    ENTRY("entry face"),
    /** Half of the thickness. */
    MIDDLE("half thickness"),
    /** The face that the jet leaves. */
    EXIT("exit face"),
    /** Wherever the kerf is widest: the part is nowhere larger than its contour wants. */
    WIDEST("widest place");

    private final String words;

    MeasuringPlane(String words) {
        this.words = words;
    }

    /**
     * The datum in words.
     *
     * @return lower-case words
     */
    public String label() {
        return words;
    }

    double halfWidth(KerfShape shape) {
        return switch (this) {
            case ENTRY -> shape.entryWidth() / 2;
            case MIDDLE -> shape.halfWidth(shape.thicknessM() / 2);
            case EXIT -> shape.exitWidth() / 2;
            case WIDEST -> shape.largestWidth() / 2;
        };
    }
}
