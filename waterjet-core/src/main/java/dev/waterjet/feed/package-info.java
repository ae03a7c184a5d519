/**
 * Feed rate: how fast a material can be cut.
 *
 * <pre>{@code
 * AbrasiveJet jet = CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
 *         .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
 * Workpiece plate = Workpiece.of(Materials.standard().get("titanium"), millimetres(10));
 * CutConditions cut = CutConditions.of(jet, plate, MachinabilityFeed.published());
 * Estimate<Speed> feed = cut.feed(CutQuality.MEDIUM);
 * }</pre>
 *
 * <p>A {@link dev.waterjet.feed.FeedModel} gives the feed rate at which a jet just separates a depth of a material, and its
 * inverse, the depth that it just separates at a feed rate. A better cut surface is cut as if the plate were thicker: at the
 * quality index {@code q} the feed rate is the one that would just separate {@code q} times the thickness. A drawing requires
 * a {@link dev.waterjet.quality.CutQuality}; a {@link dev.waterjet.quality.QualityIndexTable} maps it to the index.
 *
 * <p>Models: {@link dev.waterjet.feed.MachinabilityFeed} of Zeng, Kim and Wallace; {@link dev.waterjet.feed.ErosionFeed}
 * after Hashish; {@link dev.waterjet.feed.SpecificEnergyFeed}; {@link dev.waterjet.feed.ThresholdFeed}, which exists only as
 * calibrated; {@link dev.waterjet.feed.PlainWaterFeed} for pure water; {@link dev.waterjet.feed.DeclinationFeed}, which depends on the angle of the jet at the exit. Every model
 * returns an {@link dev.waterjet.evidence.Estimate}: published feed rates of abrasive jets have uncertainties of ten to twenty
 * per cent at best. In thin sheet, where every formula grows without bound, the feed rate is limited. A custom model that
 * changes another one in part is a {@link dev.waterjet.feed.ForwardingFeed}.
 *
 * <p>{@link dev.waterjet.feed.CutConditions} combine a jet, a workpiece and a model for all other packages. For any model,
 * {@link dev.waterjet.feed.FeedSolver} finds the setting that a feed rate requires, and {@link dev.waterjet.feed.FeedSweep} covers a
 * grid of inputs. A stack of sheets or a workpiece of layers is cut in one pass.
 */
@NullMarked
package dev.waterjet.feed;

import org.jspecify.annotations.NullMarked;
