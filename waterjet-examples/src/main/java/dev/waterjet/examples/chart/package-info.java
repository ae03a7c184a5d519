/** Charts in one plain style, as SVG: for the sheet that a program writes, and for the figures of the guides. */
@NullMarked
package dev.waterjet.examples.chart;

import org.jspecify.annotations.NullMarked;
