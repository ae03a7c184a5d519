/**
 * Piercing of a plate: method, pressure, time and their reasons.
 *
 * <p>A {@link dev.waterjet.pierce.PierceSelector} selects the {@link dev.waterjet.pierce.PierceMethod} for the conditions of a
 * cut and the {@link dev.waterjet.pierce.PierceSettings} of the shop, and returns a {@link dev.waterjet.pierce.Pierce}. The
 * time comes from a {@link dev.waterjet.pierce.PierceModel}: derived from the feed model within a factor of 2 to 3, or fitted
 * to timed pierces of the shop.
 *
 * <pre>{@code
 * CutConditions cut = CutConditions.of(jet, plate, MachinabilityFeed.published());
 * PierceSettings settings = PierceSettings.defaults().withPierceClearance(millimetres(6));
 * Pierce pierce = PierceSelector.of(settings).select(cut);
 * Estimate<Time> jetOn = pierce.time();
 * String why = pierce.reason().text();
 * }</pre>
 *
 * <p>A pierce at full pressure can crack glass and stone and delaminate composites. The strength of the plate is the shop's to
 * state; try on scrap first.
 */
@NullMarked
package dev.waterjet.pierce;

import org.jspecify.annotations.NullMarked;
