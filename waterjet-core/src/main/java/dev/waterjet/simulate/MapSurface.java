package dev.waterjet.simulate;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.surface.RoughnessModel;

/**
 * Roughness of a predicted cut surface, from the feed at which each place was cut.
 *
 * @param cut conditions of the cut
 * @param model roughness model
 */
record MapSurface(CutConditions cut, RoughnessModel model) {

    /** Ra at a depth; a dwell separates without limit, which leaves the texture of the entry. */
    double raSi(double feedMPerS, double depthM) {
        double separated = feedMPerS > 0 ? cut.separationDepthSi(feedMPerS) : Double.POSITIVE_INFINITY;
        return model.raSi(cut.jet(), separated, depthM);
    }
}
