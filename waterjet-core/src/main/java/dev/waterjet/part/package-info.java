/**
 * Part geometry: points, lines and arcs, contours, parts with holes, and checks on them.
 *
 * <p>A {@link dev.waterjet.part.Contour} is a chain of {@link dev.waterjet.part.Edge}s, straight or circular, closed for a part.
 * A {@link dev.waterjet.part.Part} is an outer contour with its holes, on the correct {@link dev.waterjet.part.Side} each. A
 * {@link dev.waterjet.part.ContourConditioner} replaces dense polylines by lines and arcs within a tolerance. Geometry that
 * cannot be cut is a {@link dev.waterjet.part.GeometryException}, with edge and place.
 *
 * <pre>{@code
 * EdgeRequirement medium = EdgeRequirement.of(CutQuality.MEDIUM);
 * Contour plate = Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(80, 50), medium);
 * Contour bore = Contour.circle(Point.millimetres(40, 25), millimetres(12), medium);
 * Part part = Part.of(plate, bore);
 * Quantity<Length> web = part.minimumWebWidth();
 * ConditionedContour smooth = ContourConditioner.defaults().condition(plate);
 * }</pre>
 *
 * <p>The package contains geometry only; kerf and offsets are in the packages that use it.
 */
@NullMarked
package dev.waterjet.part;

import org.jspecify.annotations.NullMarked;
