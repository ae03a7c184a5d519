package dev.waterjet;

import java.util.Set;

/**
 * Packages whose types do not yet keep a rule that all others keep. A package leaves a list when its types do; a list that is
 * empty goes, with its use.
 */
public final class Unconverted {

    /** Packages that do not yet name a null argument. */
    public static final Set<String> NULLS = Set.of("calibrate", "hydraulics", "jet", "material", "pierce", "water");

    private Unconverted() {}

    /** Whether a type belongs to a package of a list. */
    public static boolean has(Set<String> packages, Class<?> type) {
        String name = type.getPackageName();
        return packages.contains(name.substring(name.lastIndexOf('.') + 1));
    }
}
