/**
 * Place of a part or fixture on the machine, and accuracy of its features.
 *
 * <p>A second operation on a part that was cut or machined before begins with probing: centres of known holes, points on known
 * edges or on the walls of known holes. {@link dev.waterjet.placement.PartLocator} finds from these {@link
 * dev.waterjet.placement.ProbedPoint}s the {@link dev.waterjet.placement.RigidMove} from the drawing to the machine, with its
 * uncertainty and the residual of every point, in a {@link dev.waterjet.placement.Location}. The move turns contours and parts of
 * the drawing into those of the machine, which are then planned as any other:
 *
 * <pre>{@code
 * Location location = PartLocator.locate(List.of(
 *         ProbedPoint.hole(Point.millimetres(0, 0), Point.millimetres(412.31, 205.02)),
 *         ProbedPoint.hole(Point.millimetres(80, 0), Point.millimetres(492.28, 206.71))));
 * Part placed = location.move().apply(part);
 * }</pre>
 *
 * <p>An {@link dev.waterjet.placement.AccuracyBudget} combines what makes a feature inexact by JCGM 100.
 */
@Experimental
@NullMarked
package dev.waterjet.placement;

import dev.waterjet.measure.Experimental;
import org.jspecify.annotations.NullMarked;
