/**
 * From a line on the sheet to a feed along it, and a time.
 *
 * <p>A {@link dev.waterjet.path.Contour} is the line that the jet follows: lines and arcs, each with a
 * {@link dev.waterjet.path.Finish} that says what is asked of its face. A {@link dev.waterjet.path.Part} is an outline with
 * holes. {@link dev.waterjet.path.LeadPlacer}, {@link dev.waterjet.path.CuttingOrder},
 * {@link dev.waterjet.path.HoldingTabs}, {@link dev.waterjet.path.Slats} and {@link dev.waterjet.path.SheetLayout} check
 * what a shop would check, each with a reason, and suggest.
 *
 * <p>A {@link dev.waterjet.path.FeedPlanner} then finds the fastest feed that no limit forbids. The cut front asks for a
 * feed by grade, and for a slower one where the trailing jet would leave the line: on an arc of radius R the bottom swings
 * wide by {@code sqrt(R^2 + L^2) - R}, at a corner that turns by t it lies {@code L sin t} off the old edge, L being the
 * lag of a {@link dev.waterjet.path.LagLaw}. The machine asks for its speed and acceleration, along the path and across
 * it: corners are rounded within a deviation. Slow places are held over one lag on both sides, so that the front recovers.
 * A walk forward and a walk back make the rest reachable, by trapezoids or with jerk. All of it grows in proportion to the
 * number of edges.
 *
 * <pre>{@code
 * FeedPlan plan = FeedPlanner.of(machine, feeds, LagLaw.of(LagModel.standard(), model, jet, plate))
 *         .plan(contour, contour.enclosedSide());
 * plan.time();                // from rest to rest
 * plan.timeByLimit();         // what took it
 * plan.slowSpots(0.9);        // where the kerf widens
 * }</pre>
 */
@NullMarked
package dev.waterjet.path;

import org.jspecify.annotations.NullMarked;
