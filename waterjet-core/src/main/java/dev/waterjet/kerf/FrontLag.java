package dev.waterjet.kerf;

import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;

/** Lag at the bottom of one workpiece by a model of the cut front, and the feed for a lag in closed form. */
record FrontLag(LagModel lags, FeedModel feeds, AbrasiveJet jet, Workpiece piece) implements LagFunction {

    @Override
    public double lagSi(double feedMPerS) {
        return feedMPerS <= 0 ? 0 : lags.exitLagSi(jet, piece, feeds, feedMPerS);
    }

    @Override
    public double feedSi(double lagM) {
        return lags.feedForExitLagSi(jet, piece, feeds, lagM);
    }
}
