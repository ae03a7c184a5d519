package dev.waterjet.vessel;

/** Yield criterion: the stress of a simple tensile test that a state of stress is compared with. */
public enum YieldCriterion {
    /** Largest difference of two principal stresses (Tresca). It is the more cautious of the two. */
    TRESCA,
    /** Distortion energy (von Mises). */
    MISES
}
