package dev.waterjet.motion;

import dev.waterjet.kerf.CutFront;

/** Largest lag over the depth that the bottom edge has to bear, after what a tilting head compensates; in m, s, rad. */
interface RemainingLag {

    /** Lag at a corner of the path, in a slowdown zone within a straight feed. */
    double atCorner(double feedMPerS, double straightMPerS, double turnRad);

    /** Lag on an arc of the path. */
    double onArc(double feedMPerS, double radiusM);

    /** The lag of an upright head: that of the front at the exit. */
    static RemainingLag upright(CutFront front) {
        return new RemainingLag() {
            @Override
            public double atCorner(double feedMPerS, double straightMPerS, double turnRad) {
                return front.exitLagSi(feedMPerS);
            }

            @Override
            public double onArc(double feedMPerS, double radiusM) {
                return front.exitLagSi(feedMPerS);
            }
        };
    }
}
