/**
 * Figures that a geometry kernel knows better than this library: clearances, the narrowest passage, the distance at which
 * two parts nest. Here JTS finds them; any other kernel can pass the same numbers.
 *
 * <p>The library asks for lengths and nothing else: {@link dev.waterjet.job.PartDemand} takes the narrowest passage and the
 * smallest radius, {@link dev.waterjet.sheet.SheetFill} the size of a part and the gap.
 */
@NullMarked
package dev.waterjet.examples.geometry;

import org.jspecify.annotations.NullMarked;
