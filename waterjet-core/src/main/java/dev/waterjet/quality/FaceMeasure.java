package dev.waterjet.quality;

/** What a scale of face levels may set limits to. */
public enum FaceMeasure {
    /** Perpendicularity tolerance, over the height that the scale's standard says. */
    PERPENDICULARITY("perpendicularity"),
    /** Mean height of the profile. */
    PROFILE_HEIGHT("profile-height"),
    /** Ra, where the scale's standard says. */
    ROUGHNESS_RA("roughness-ra");

    private final String word;

    FaceMeasure(String word) {
        this.word = word;
    }

    /**
     * The measure as it is written in the text of a scale.
     *
     * @return lower-case word with hyphens
     */
    public String word() {
        return word;
    }
}
