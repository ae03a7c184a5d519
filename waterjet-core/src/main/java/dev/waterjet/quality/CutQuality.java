package dev.waterjet.quality;

/**
 * What is asked of a cut face, from a face that merely parts the material to the finest that the jet leaves. The names
 * are ordinary words for tolerance, bound to no standard and no model; an {@link QualityIndexTable} ties them to a model's index.
 */
public enum CutQuality {
    /** The material just comes apart; the lower part of the face is grooved. */
    VERY_COARSE("parting"),
    /** Apart with a margin, for faces that nobody sees; grooves, if any, at the foot. */
    COARSE("coarse"),
    /** The usual face of parts that are used as cut. */
    MEDIUM("medium"),
    /** Finer than usual, for faces that are seen or that fit. */
    FINE("fine"),
    /** The finest face: slower still brings little. */
    VERY_FINE("extra fine");

    private final String words;

    CutQuality(String words) {
        this.words = words;
    }

    /**
     * The grade in words.
     *
     * @return lower-case words
     */
    public String label() {
        return words;
    }
}
