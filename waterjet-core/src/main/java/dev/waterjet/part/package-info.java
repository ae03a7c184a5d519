/** Part geometry: points, lines and arcs, contours, parts with holes, and the checks on them. */
@NullMarked
package dev.waterjet.part;

import org.jspecify.annotations.NullMarked;
