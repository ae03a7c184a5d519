package dev.waterjet.kerf;

/**
 * How the trailing foot of the jet follows an arc. Both pictures are derived; observation favours the first, which is the
 * default wherever none is named.
 */
public enum LagGeometry {
    /** The jet trails along the tangent, so its foot swings wide: by {@code sqrt(R^2 + L^2) - R} on radius R. */
    TANGENT("along the tangent, swinging wide"),
    /** The foot is drawn behind like a trailer, so it cuts in: by {@code R - sqrt(R^2 - L^2)} on radius R. */
    TRACTRIX("like a trailer, cutting in");

    private final String words;

    LagGeometry(String words) {
        this.words = words;
    }

    /**
     * The picture in words.
     *
     * @return lower-case words
     */
    public String label() {
        return words;
    }
}
