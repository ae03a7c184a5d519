/**
 * Consumption, wear and cost of a part and of a batch.
 *
 * <p>A {@link dev.waterjet.cost.PartWork} states the times of one part: cutting, piercing, idle. A
 * {@link dev.waterjet.cost.Batch} multiplies it by parts, heads and sheets. With the {@link dev.waterjet.cost.Prices} of the
 * shop it returns a {@link dev.waterjet.cost.BatchCost}: time and cost with standard uncertainties, and the main contributions
 * to the variance. A {@link dev.waterjet.cost.Consumable} gives replacement times from a log-normal service life.
 *
 * <pre>{@code
 * PartWork work = PartWork.of(cuttingTime).withPierces(9, pierce).withIdle(seconds(40));
 * Prices prices = Prices.of("cost units").with(CostItem.MACHINE, 90, 0.1).with(CostItem.ABRASIVE, 0.45);
 * BatchCost cost = Batch.of(jet, work, 36).withSheets(12, minutes(4)).cost(prices);
 * Estimate<Dimensionless> perPart = cost.perPart();
 * Quantity<Time> change = Consumable.focusingTube().replacementTime(0.1);
 * }</pre>
 *
 * <p>Prices are plain numbers. An item without a price costs nothing and is named in a caution.
 */
@NullMarked
package dev.waterjet.cost;

import org.jspecify.annotations.NullMarked;
