/**
 * Parts on the sheet: rows of equal parts, distances between contours, support slats.
 *
 * <p>A {@link dev.waterjet.sheet.SheetFill} computes the number of equal parts on a sheet. A
 * {@link dev.waterjet.sheet.SheetLayout} checks parts at given places: edges of the sheet, webs, overlaps.
 * {@link dev.waterjet.sheet.Slats} check whether a part rests on enough slats.
 *
 * <pre>{@code
 * SheetFill fill = SheetFill.sheet(millimetres(1000), millimetres(500)).withGap(millimetres(3)).square(width, height);
 * int parts = fill.parts();
 * List<Finding> conflicts = SheetLayout.of(sheet, placed).check(rules);
 * Finding support = Slats.of(millimetres(50), millimetres(3)).check(part);
 * }</pre>
 */
@NullMarked
package dev.waterjet.sheet;

import org.jspecify.annotations.NullMarked;
