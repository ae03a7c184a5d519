/**
 * Plan of a part: tool path, feed rates, pierces, moves, findings, time, consumption and cost in one result.
 *
 * <pre>{@code
 * Setup setup = Setup.of(head, PumpSetting.of(megapascals(380), litresPerMinute(3.5)), machine);
 * PartPlan plan = PartPlanner.of(setup).plan(part, workpiece);
 * List<Move> moves = plan.moves();
 * List<Finding> violations = plan.violations();
 * List<Caution> cautions = plan.cautions();
 * }</pre>
 *
 * <p>The package adds no formula: each step of the planner is a public class of its own package.
 */
@NullMarked
package dev.waterjet.plan;

import org.jspecify.annotations.NullMarked;
