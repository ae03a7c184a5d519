/**
 * What the cut looks like: widths, walls, taper and lag.
 *
 * <p>A {@link dev.waterjet.kerf.KerfModel} starts from the depth H that the jet just separates at the running feed, which
 * a feed model knows. Grains cross the jet with a Gaussian profile, so the depth that it can separate falls off sideways,
 * and the wall at depth z stands where it has fallen to z; outside of the spreading jet there is nothing to cut with. From
 * these two limits, joined smoothly, come the V of a fast cut, parallel walls, the reverse taper of a slow one, and the
 * barrel of thick plate. The {@link dev.waterjet.kerf.Kerf} of one jet, workpiece and feed answers with estimates.
 *
 * <p>The foot of the jet trails: a {@link dev.waterjet.kerf.LagModel} gives the parabolic front, and a
 * {@link dev.waterjet.kerf.Lag} what it does to arcs and corners.
 *
 * <p>Only the forms are derived from published facts; the numbers of walls are assumed, with the wide uncertainty that such
 * numbers deserve, until they are fitted to cuts of one's own.
 */
@NullMarked
package dev.waterjet.kerf;

import org.jspecify.annotations.NullMarked;
