/**
 * How fast: the question that everything else hangs on.
 *
 * <p>A {@link dev.waterjet.feed.FeedModel} knows one thing about a jet in a material: the feed at which it just separates
 * a depth, and its inverse, the depth that it just separates at a feed. Faces of better quality are cut as if the plate
 * were thicker: at index {@code q} the feed is the one that would just separate {@code q} times the thickness. A
 * {@link dev.waterjet.quality.CutQuality} is what a drawing asks of a face; an {@link dev.waterjet.quality.QualityIndexTable} ties it
 * to the index.
 *
 * <p>Models: {@link dev.waterjet.feed.MachinabilityFeed} of Zeng, Kim and Wallace; {@link dev.waterjet.feed.ErosionFeed}
 * after Hashish; {@link dev.waterjet.feed.SpecificEnergyFeed}; {@link dev.waterjet.feed.ThresholdFeed}, which exists only as
 * calibrated; {@link dev.waterjet.feed.DeclinationFeed}, which grades by the angle of the jet. Every model answers with an
 * {@link dev.waterjet.evidence.Estimate}: published feeds of abrasive jets are good to some ten or twenty per cent, not
 * better. In thin sheet, where every formula grows without bound, the feed is held at a stated limit. A model of a shop's
 * own that only changes some answers of another is a {@link dev.waterjet.feed.ForwardingFeed}.
 *
 * <p>Questions to any model: {@link dev.waterjet.feed.FeedSolver} asks what a feed needs,
 * {@link dev.waterjet.cost.CuttingCost} where a cut is cheapest, {@link dev.waterjet.feed.MaterialStack} how layers are cut in one
 * pass, {@link dev.waterjet.feed.FeedSweep} runs a grid of inputs.
 */
@NullMarked
package dev.waterjet.feed;

import org.jspecify.annotations.NullMarked;
