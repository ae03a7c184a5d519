/**
 * The main job, from a part program to feeds, time and a sheet to read.
 *
 * <p>{@link dev.waterjet.examples.plan.PlanRequest} is what was asked, {@link dev.waterjet.examples.plan.PartPlan} what
 * came of it, cut by cut as {@link dev.waterjet.examples.plan.CutPlan}. {@link dev.waterjet.examples.plan.Features} asks
 * whether the jet can enter every radius and slot. {@link dev.waterjet.examples.plan.Sheet} is the page for a person,
 * {@link dev.waterjet.examples.plan.PlanFiles} writes the files, all or none.
 */
@NullMarked
package dev.waterjet.examples.plan;

import org.jspecify.annotations.NullMarked;
