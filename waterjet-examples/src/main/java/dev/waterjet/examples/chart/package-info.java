/** Charts as SVG, for the sheets of the programs and the figures of the guides. */
@NullMarked
package dev.waterjet.examples.chart;

import org.jspecify.annotations.NullMarked;
