package dev.waterjet.motion;

import dev.waterjet.kerf.CutFront;
import org.jspecify.annotations.Nullable;

/**
 * Settings of slowdowns.
 *
 * @param rules choices behind a slowdown
 * @param tilt tilt of the head; null for one that stays upright
 */
record SlowdownSettings(SlowdownRules rules, @Nullable TiltLaw tilt) {

    /** Settings of an upright head. */
    static SlowdownSettings upright(SlowdownRules rules) {
        return new SlowdownSettings(rules, null);
    }

    /** Lag that the head leaves. */
    RemainingLag remainingLag(CutFront front) {
        return tilt == null ? RemainingLag.upright(front) : tilt;
    }
}
