package dev.waterjet.material;

/** How a material behaves when it is pierced, clamped or chipped. */
public enum MaterialClass {
    /** Deforms before it breaks, as metals do. */
    DUCTILE,
    /** Breaks without deforming, as glass and stone do: a full-pressure pierce may crack it. */
    BRITTLE,
    /** Built of layers that a full-pressure pierce may part, as fibre laminates are. */
    LAMINATED,
    /** Gives way under the jet, as rubber, foam and soft plastics do. */
    SOFT
}
