/** Roughness and squareness of a cut surface, and the fastest feed rate that meets a requirement. */
@NullMarked
package dev.waterjet.surface;

import org.jspecify.annotations.NullMarked;
