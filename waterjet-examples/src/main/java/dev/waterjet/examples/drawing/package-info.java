/**
 * Drawings as contours of parts, whatever the format of their file.
 *
 * <p>A reader of a format draws {@link dev.waterjet.examples.drawing.Stroke strokes} with a
 * {@link dev.waterjet.examples.drawing.StrokePen}: lines and circular arcs stay exact, other curves become arcs within the
 * chord tolerance. {@link dev.waterjet.examples.drawing.Drawing} then applies the layer rules, drops tiny and duplicate
 * entities, joins loose ends and sorts the contours into parts by their nesting. What was left out or changed on the way is
 * a caution.
 */
@NullMarked
package dev.waterjet.examples.drawing;

import org.jspecify.annotations.NullMarked;
