/**
 * From a line on the sheet to a feed along it and a time.
 *
 * <p>A {@link dev.waterjet.path.Contour} is the line that the jet follows: lines and arcs, each with a
 * {@link dev.waterjet.path.Finish} that says what is asked of its face.
 */
@NullMarked
package dev.waterjet.path;

import org.jspecify.annotations.NullMarked;
