package dev.waterjet.kerf;

/** What a cross-section of the kerf looks like, entry face above. */
public enum KerfRegime {
    /** Narrower at the exit: the feed is fast for the depth, or the jet is weak. */
    NARROWING("narrowing downwards (V)"),
    /** As wide at the exit as at the entry, within two per cent. */
    PARALLEL("parallel"),
    /** Wider at the exit: the feed is slow for the depth, or the material soft. */
    WIDENING("widening downwards (reverse taper)"),
    /** Wider inside than at either face by more than two per cent, as in thick plate. */
    BARREL("barrel");

    /** Widths that differ by less than this part of the greater one count as equal. */
    private static final double EQUAL_WITHIN = 0.02;

    private final String words;

    KerfRegime(String words) {
        this.words = words;
    }

    static KerfRegime of(double entryM, double exitM, double largestM) {
        if (Math.max(entryM, exitM) < (1 - EQUAL_WITHIN) * largestM) {
            return BARREL;
        }
        if (exitM < (1 - EQUAL_WITHIN) * entryM) {
            return NARROWING;
        }
        return entryM < (1 - EQUAL_WITHIN) * exitM ? WIDENING : PARALLEL;
    }

    /**
     * The regime in words.
     *
     * @return lower-case words
     */
    public String label() {
        return words;
    }
}
