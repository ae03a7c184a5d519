/** Prediction of the cut of a part program or drawing: which path the jet takes, and drawings of the deviations. */
@NullMarked
package dev.waterjet.examples.predict;

import org.jspecify.annotations.NullMarked;
