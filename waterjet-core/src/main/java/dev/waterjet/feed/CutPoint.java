package dev.waterjet.feed;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import javax.measure.quantity.Speed;

/**
 * A way to make a cut, and what it costs.
 *
 * @param jet the jet
 * @param feed the feed with its uncertainty
 * @param costPerMetre cost of a metre of cut, in the currency of the rates
 */
public record CutPoint(AbrasiveJet jet, Estimate<Speed> feed, double costPerMetre) {}
