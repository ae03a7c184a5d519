package dev.waterjet.evidence;

/** How well a number is attested. Ordered from the strongest to the weakest. */
public enum EvidenceGrade {
    /** Printed in a source that was read or reproduced to its printed figures. */
    PUBLISHED("published"),

    /** Fitted by the user from measurements of their own. */
    FITTED("fitted"),

    /** Derived here from published or recalled items; the derivation is in the documentation. */
    DERIVED("derived"),

    /** Belongs to a printed source, but the value was recalled, not read from it. */
    FROM_MEMORY("from memory"),

    /** Common practice in the trade, without a source. */
    COMMON_PRACTICE("common practice, no source"),

    /** Assumed by the user or invented for a demonstration. */
    ASSUMED("assumed");

    private final String words;

    EvidenceGrade(String words) {
        this.words = words;
    }

    /**
     * The grade in words, as reports print it.
     *
     * @return lower-case words
     */
    public String words() {
        return words;
    }
}
