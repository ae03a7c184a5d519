/** Consumption, wear and cost. */
@NullMarked
package dev.waterjet.cost;

import org.jspecify.annotations.NullMarked;
