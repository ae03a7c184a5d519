package dev.waterjet.motion;

/** Cause of the feed at a corner, arc or end. */
enum SlowdownReason {
    /** The feed of the straight cut keeps the tolerance. */
    STRAIGHT_FEED,
    /** The fastest feed that keeps the tolerance. */
    TOLERANCE,
    /** No feed keeps the tolerance; this is the fastest one whose error is within a tenth of the least. */
    LEAST_ERROR,
    /** The fastest feed at which the bottom is cut through before the nozzle turns or stops. */
    SEPARATION
}
