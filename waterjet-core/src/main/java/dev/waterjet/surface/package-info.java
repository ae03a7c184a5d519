/**
 * Roughness and squareness of a cut surface, and the fastest feed rate that meets a requirement.
 *
 * <p>A {@link dev.waterjet.surface.SurfaceModel} puts a kerf model, a {@link dev.waterjet.surface.RoughnessModel} and the
 * quality indices together. It predicts a {@link dev.waterjet.surface.CutSurface} at a feed rate, with the probability of each
 * cut quality and the ranges of ISO 9013, and inverts the question: the {@link dev.waterjet.surface.FastestFeed} for required
 * limits, with the feed rates that each of them allows. A {@link dev.waterjet.surface.MeasuredSurface} returns the quality index
 * of a surface that was cut.
 *
 * <pre>{@code
 * CutConditions cut = CutConditions.of(jet, plate, MachinabilityFeed.published());
 * CutSurface surface = SurfaceModel.standard().surface(cut, millimetresPerMinute(120));
 * double probability = surface.quality().atLeast(CutQuality.MEDIUM);
 * Estimate<Length> ra = surface.roughness().raAtExit();
 * OptionalInt range = surface.perpendicularityRange();
 * }</pre>
 *
 * <p>The forms follow published trends; the numbers are assumed with wide uncertainty until they are fitted to measured
 * surfaces.
 */
@NullMarked
package dev.waterjet.surface;

import org.jspecify.annotations.NullMarked;
