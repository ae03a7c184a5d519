/**
 * Measures of a part from a geometry library: clearances, minimum slot width, nesting distance. JTS computes them here; any
 * other library can supply the same numbers.
 *
 * <p>The core requires lengths only: {@link dev.waterjet.head.PartRequirement} takes the minimum slot width and the minimum inner
 * radius, {@link dev.waterjet.sheet.SheetFill} the size of a part and the gap.
 */
@NullMarked
package dev.waterjet.examples.geometry;

import org.jspecify.annotations.NullMarked;
