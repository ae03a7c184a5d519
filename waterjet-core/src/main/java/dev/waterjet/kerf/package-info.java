/**
 * Width, taper, wall profile and lag of the kerf.
 *
 * <p>A {@link dev.waterjet.kerf.KerfModel} starts from the depth H that the jet just separates at the feed rate, which the feed
 * model predicts. Abrasive particles are distributed across the jet approximately as a Gaussian. The depth that it can separate
 * therefore decreases with the distance from the tool path, and the wall at depth z is where it has fallen to z; outside the
 * diverging jet nothing is cut. These two limits, joined smoothly, give the V of a fast cut, parallel walls, the reverse taper of
 * a slow cut, and the barrel of thick plate.
 *
 * <pre>{@code
 * CutConditions cut = CutConditions.of(jet, plate, MachinabilityFeed.published());
 * Kerf kerf = KerfModel.standard().kerf(cut, millimetresPerMinute(120));
 * Estimate<Length> offset = kerf.offset();
 * Estimate<Length> exitLag = kerf.lag().atExit();
 * TaperCompensation tilt = TaperCompensation.forSquarePartSide(kerf).within(degrees(9));
 * }</pre>
 *
 * <p>The jet lags behind the head: a {@link dev.waterjet.kerf.LagModel} gives the parabolic front at a steady feed rate, a
 * {@link dev.waterjet.kerf.Lag} the errors that follow on arcs and at corners by a {@link dev.waterjet.kerf.LagGeometry}, and a
 * {@link dev.waterjet.kerf.CutFront} the motion of the front when the feed rate changes.
 *
 * <p>The forms are derived from published facts. The numbers of the walls are assumed, with a wide uncertainty, until they are
 * fitted to measured cuts; a kerf outside the range of the model has a caution.
 */
@NullMarked
package dev.waterjet.kerf;

import org.jspecify.annotations.NullMarked;
