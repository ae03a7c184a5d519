/**
 * Drawings in ASCII DXF, releases R12 to 2018: LINE, ARC, CIRCLE, ELLIPSE, SPLINE, LWPOLYLINE, POLYLINE with bulges, INSERT with
 * scale, rotation and rows, layers, colours and units.
 *
 * <p>{@link dev.waterjet.examples.dxf.DxfReader} reads pairs of group codes and values, draws the entities of model space as
 * strokes of a {@linkplain dev.waterjet.examples.drawing.Drawing drawing}, and reports what it left out. Group codes are those
 * of the published DXF reference (read for LWPOLYLINE and SPLINE, the rest from memory).
 *
 * <p>No library is used: those found are unmaintained or have a licence outside the list of this project.
 */
@NullMarked
package dev.waterjet.examples.dxf;

import org.jspecify.annotations.NullMarked;
