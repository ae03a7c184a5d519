/** Feed rate along a tool path: limits of process and machine, time, slowdown zones. */
@NullMarked
package dev.waterjet.motion;

import org.jspecify.annotations.NullMarked;
