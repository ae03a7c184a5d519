/**
 * Feed rate along a tool path: limits of process and machine, time, slowdown zones.
 *
 * <p>Below the top side the cut front lags behind the nozzle, and where the path turns the lag becomes an error of the part.
 * A slow nozzle has less lag, but leaves a larger dose and a wider kerf. The slowdown policy weighs both for one corner or
 * arc, and answers with a feed rate and the length over which it has to be held.
 *
 * <pre>{@code
 * FeedPlanner planner = FeedPlanner.of(machine, CutConditions.of(jet, plate, model));
 * FeedPlan plan = planner.plan(contour, Side.LEFT);
 * Quantity<Time> time = plan.time();
 * Map<FeedLimit, Quantity<Time>> causes = plan.timeByLimit();
 * List<Finding> outOfTolerance = plan.findings();
 * }</pre>
 *
 * <p>The way from path to plan: {@code ProcessPlaces} collects the feed rate of each edge and the slowdowns, {@code
 * ProcessCaps} extends them over their reach, {@code MotionSolver} finds the fastest motion under these caps and the limits
 * of the machine, {@code PlanBlocks} cuts it into blocks.
 */
@NullMarked
package dev.waterjet.motion;

import org.jspecify.annotations.NullMarked;
