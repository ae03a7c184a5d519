/**
 * Reports of a plan: summary, sheet, table of blocks, JSON, files.
 *
 * <p>{@link dev.waterjet.examples.plan.PlanReport} is a {@linkplain dev.waterjet.plan.PartPlan plan} with the program that was
 * planned and the one that was written; {@link dev.waterjet.examples.plan.JobFacts} adds piercing, support, wear and cost.
 */
@NullMarked
package dev.waterjet.examples.plan;

import org.jspecify.annotations.NullMarked;
