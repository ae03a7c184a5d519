/** Plan of a part: feed rates, pierces, time, consumption and cost in one result. */
@NullMarked
package dev.waterjet.plan;

import org.jspecify.annotations.NullMarked;
