package dev.waterjet.program;

/**
 * Path along which a control keeps the feed word while it applies a kerf offset by G41 or G42. Most controls keep it along the
 * path of the tool centre, here the jet axis; some keep it along the programmed path on arcs, by a setting of the machine
 * (common practice, no source): see the machine's manual. Without an offset both are the same.
 */
public enum OffsetFeed {
    /** The feed word is the speed of the jet axis. */
    AXIS("axis"),
    /** On arcs the feed word is the speed along the edge that the program states. */
    EDGE("edge");

    private final String text;

    OffsetFeed(String text) {
        this.text = text;
    }

    /** {@return the text in a file of machine codes} */
    public String text() {
        return text;
    }
}
