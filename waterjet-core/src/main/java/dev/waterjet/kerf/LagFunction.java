package dev.waterjet.kerf;

import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import java.io.Serializable;

/**
 * How far the bottom of the cut trails behind the top at a feed, in one plate. It grows with the feed. A lambda will do;
 * {@link #of} follows from a model of the cut front.
 */
@FunctionalInterface
public interface LagFunction extends Serializable {

    /**
     * The lag that a model gives for one workpiece.
     *
     * @param lags model of the cut front
     * @param feeds gives the depth that the jet separates at a feed
     * @param jet the jet
     * @param piece what is cut
     * @return the law
     */
    static LagFunction of(LagModel lags, FeedModel feeds, AbrasiveJet jet, Workpiece piece) {
        return new FrontLag(lags, feeds, jet, piece);
    }

    /**
     * Lag at a feed.
     *
     * @param feedMPerS feed in m/s, 0 or more
     * @return the lag at the bottom of the plate, in m
     */
    double lagSi(double feedMPerS);

    /**
     * Fastest feed at which the lag stays within a length. Found by halving; a law with a closed form should say so.
     *
     * @param lagM lag in m, above 0
     * @return the feed in m/s; infinite if no feed reaches that lag
     */
    default double feedSi(double lagM) {
        double high = 1e-6;
        while (lagSi(high) < lagM) {
            high *= 4;
            if (high > 1e3) {
                return Double.POSITIVE_INFINITY;
            }
        }
        double low = 0;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (lagSi(middle) <= lagM) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /**
     * No lag at all: a cut so thin or slow that the jet does not trail.
     *
     * @return the law
     */
    static LagFunction none() {
        return NoLag.INSTANCE;
    }
}
