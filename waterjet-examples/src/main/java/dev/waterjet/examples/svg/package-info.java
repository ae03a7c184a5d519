/**
 * Drawings in SVG (W3C, Scalable Vector Graphics 1.1 and 2): paths, basic shapes, references, transforms and the styles that
 * hide or move shapes.
 *
 * <p>{@link dev.waterjet.examples.svg.SvgReader} reads the document with the JDK's XML reader, which is set to load nothing
 * from outside, and draws its shapes as strokes of a {@linkplain dev.waterjet.examples.drawing.Drawing drawing}.
 *
 * <p>In SVG y grows downwards; on a machine it grows upwards. The drawing is turned over on the way.
 */
@NullMarked
package dev.waterjet.examples.svg;

import org.jspecify.annotations.NullMarked;
