/**
 * Tool path of the jet axis: kerf offset, leads, holding tabs, cutting order, clearances.
 *
 * <p>A {@link dev.waterjet.toolpath.KerfOffset} moves a part contour by half the kerf width into the scrap and returns a
 * {@link dev.waterjet.toolpath.ToolPath}. A {@link dev.waterjet.toolpath.LeadPlacer} adds pierce point, lead-in and lead-out, a
 * {@link dev.waterjet.toolpath.HoldingTabs} interrupts the path, and a {@link dev.waterjet.toolpath.CuttingOrder} puts the paths
 * in order, holes before the contour around them.
 *
 * <pre>{@code
 * CuttingRules rules = CuttingRules.of(kerfWidth, millimetres(10));
 * Lead lead = LeadPlacer.of(part, rules).suggest(0);
 * HoldingTabs tabs = HoldingTabs.of(newtons(40), megapascals(150), millimetres(10), rules);
 * QuantityArray<Length> places = tabs.suggest(part.outline(), 3);
 * List<Integer> order = CuttingOrder.suggest(part.contours());
 * }</pre>
 *
 * <p>Every suggestion can be checked with the same rules; conflicts are findings, with place and remedy.
 */
@NullMarked
package dev.waterjet.toolpath;

import org.jspecify.annotations.NullMarked;
