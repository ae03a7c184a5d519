/** Piercing of a plate: methods, times, and the choice of a method. */
@NullMarked
package dev.waterjet.pierce;

import org.jspecify.annotations.NullMarked;
