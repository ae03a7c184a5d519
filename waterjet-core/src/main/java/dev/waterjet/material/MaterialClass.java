package dev.waterjet.material;

import java.util.Locale;

/** Behaviour of a material when it is pierced and clamped. */
public enum MaterialClass {
    /** Deforms before it breaks, like metals. */
    DUCTILE,
    /** Breaks without deforming, like glass and stone: a pierce at full pressure can crack it. */
    BRITTLE,
    /** Built of layers that a pierce at full pressure can separate, like fibre laminates. */
    LAMINATED,
    /** Yields under the jet, like rubber, foam and soft plastics. */
    SOFT;

    /** {@return the name for people} */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }
}
