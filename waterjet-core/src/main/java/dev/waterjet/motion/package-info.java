/**
 * Feed rate along a tool path: limits of process and machine, time, slowdown zones.
 *
 * <p>Below the top side the cut front lags behind the nozzle, and where the path turns the lag becomes an error of the part.
 * A slow nozzle has less lag, but leaves a larger dose and a wider kerf. The slowdown policy weighs both for one corner or
 * arc, and answers with a feed and the length over which it has to be held.
 */
@NullMarked
package dev.waterjet.motion;

import org.jspecify.annotations.NullMarked;
