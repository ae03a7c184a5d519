/** Parts on the sheet: nesting in rows, distances, slats. */
@NullMarked
package dev.waterjet.sheet;

import org.jspecify.annotations.NullMarked;
