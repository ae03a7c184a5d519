package dev.waterjet;

import java.util.Set;

/**
 * Packages whose types do not yet keep a rule that all others keep. A package leaves a list when its types do; a list that is
 * empty goes, with its use.
 */
public final class Unconverted {

    /** Packages whose values can still be forged by bytes. */
    public static final Set<String> SERIAL = Set.of();

    /** Packages that still refuse by exceptions of other families. */
    public static final Set<String> REFUSALS = Set.of("motion", "plan");

    /** Packages that do not yet name a null argument. */
    public static final Set<String> NULLS = Set.of(
            "calibrate",
            "fit",
            "head",
            "hydraulics",
            "jet",
            "kerf",
            "material",
            "motion",
            "part",
            "pierce",
            "plan",
            "program",
            "quality",
            "sheet",
            "surface",
            "toolpath",
            "water");

    private Unconverted() {}

    /** Whether a type belongs to a package of a list. */
    public static boolean has(Set<String> packages, Class<?> type) {
        String name = type.getPackageName();
        return packages.contains(name.substring(name.lastIndexOf('.') + 1));
    }
}
