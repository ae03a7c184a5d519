package dev.waterjet.feed;

/**
 * What is asked of a cut face, from a face that merely parts the material to the finest that the jet leaves. The names
 * are ordinary words for tolerance, bound to no standard and no model; an {@link IndexTable} ties them to a model's index.
 */
public enum FaceGrade {
    /** The material just comes apart; the lower part of the face is deeply grooved. */
    PARTING("parting"),
    /** Apart with a margin; grooves in the lower part. */
    COARSE("coarse"),
    /** The usual face of parts that are used as cut. */
    MEDIUM("medium"),
    /** Grooves faint and low on the face. */
    FINE("fine"),
    /** The finest face: slower still brings little. */
    EXTRA_FINE("extra fine");

    private final String words;

    FaceGrade(String words) {
        this.words = words;
    }

    /**
     * The grade in words.
     *
     * @return lower-case words
     */
    public String words() {
        return words;
    }
}
