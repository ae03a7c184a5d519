package dev.waterjet.kerf;

/** Form of the cross-section of a kerf, top side up. */
public enum KerfRegime {
    /** Narrower at the exit: the feed rate is high for the depth, or the jet is weak. */
    NARROWING("narrowing downwards (V)"),
    /** As wide at the exit as at the entry, within 2 %. */
    PARALLEL("parallel"),
    /** Wider at the exit: the feed rate is low for the depth, or the material soft. */
    WIDENING("widening downwards (reverse taper)"),
    /** Wider inside than at either side by more than 2 %, as in thick plate. */
    BARREL("barrel");

    /** Widths that differ by less than this part of the larger one count as equal. */
    private static final double EQUAL_WITHIN = 0.02;

    private final String label;

    KerfRegime(String label) {
        this.label = label;
    }

    static KerfRegime of(double entryM, double exitM, double maximumM) {
        if (Math.max(entryM, exitM) < (1 - EQUAL_WITHIN) * maximumM) {
            return BARREL;
        }
        if (exitM < (1 - EQUAL_WITHIN) * entryM) {
            return NARROWING;
        }
        return entryM < (1 - EQUAL_WITHIN) * exitM ? WIDENING : PARALLEL;
    }

    /** {@return the name for people, in lower case} */
    public String label() {
        return label;
    }
}
