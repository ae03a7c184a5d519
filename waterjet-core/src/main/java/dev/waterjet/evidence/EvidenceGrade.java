package dev.waterjet.evidence;

/** Grade of evidence for a number, ordered from the strongest to the weakest. A grade is never promoted. */
public enum EvidenceGrade {
    /** Printed in a source that was read or reproduced to its printed figures. */
    PUBLISHED("published"),

    /** Fitted by the user to own measurements. */
    FITTED("fitted"),

    /** Derived here from published or recalled items; the derivation is in the documentation. */
    DERIVED("derived"),

    /** Belongs to a printed source, but the value was recalled, not read from it. */
    FROM_MEMORY("from memory"),

    /** Common practice in the trade, without a source. */
    COMMON_PRACTICE("common practice, no source"),

    /** Assumed by the user, or invented for a demonstration. */
    ASSUMED("assumed");

    private final String label;

    EvidenceGrade(String label) {
        this.label = label;
    }

    /** {@return the name for people, in lower case} */
    public String label() {
        return label;
    }
}
