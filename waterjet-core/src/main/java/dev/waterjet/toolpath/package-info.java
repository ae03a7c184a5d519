/** Tool path of the jet axis: leads, tabs, cutting order, clearances. */
@NullMarked
package dev.waterjet.toolpath;

import org.jspecify.annotations.NullMarked;
