/**
 * Contours from a drawing in SVG (W3C, Scalable Vector Graphics 1.1 and 2): paths, basic shapes and transforms, in the
 * drawing's own units.
 *
 * <p>{@link dev.waterjet.examples.svg.SvgReader} walks through the document with the JDK's XML reader, which is told to load
 * nothing from outside. {@link dev.waterjet.examples.svg.PathData} reads the letters of a path,
 * {@link dev.waterjet.examples.svg.Matrix} carries the transforms, and {@link dev.waterjet.examples.svg.Pen} turns all of it
 * into {@linkplain dev.waterjet.path.Contour contours}: circles stay arcs, other curves become chords that keep within a
 * tolerance.
 *
 * <p>In SVG y grows downwards; on a machine it grows upwards. The drawing is turned over on the way.
 */
@NullMarked
package dev.waterjet.examples.svg;

import org.jspecify.annotations.NullMarked;
