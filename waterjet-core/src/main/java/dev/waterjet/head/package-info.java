/**
 * Selection of orifice, focusing tube, abrasive and flow rate for a part.
 *
 * <p>A {@link dev.waterjet.head.HeadInventory} lists the sizes in stock. A {@link dev.waterjet.head.HeadSelector} tries every
 * combination against the {@link dev.waterjet.head.PartRequirement}: bore ratio, tube length, grain size, loading ratio, power
 * of the pump, feed rate, inner radius, slot width, walls. The result has the feasible heads, ranked by time or cost, and each
 * rejected head with its findings.
 *
 * <pre>{@code
 * PartRequirement requirement = PartRequirement.of(plate, CutQuality.MEDIUM, metres(1.5)).withPierces(4);
 * HeadSelection selection =
 *         HeadSelector.of(HeadInventory.standard(), megapascals(380), kilowatts(22)).select(requirement);
 * HeadCandidate fastest = selection.best(HeadSelector.Ranking.TIME);
 * }</pre>
 */
@NullMarked
package dev.waterjet.head;

import org.jspecify.annotations.NullMarked;
