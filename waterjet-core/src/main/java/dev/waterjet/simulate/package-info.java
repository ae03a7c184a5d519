/**
 * Predicted cut: which walls a tool path and its feed leave in the workpiece, and how far they deviate from the part.
 *
 * <p>At each depth the cut front lags behind the nozzle, so the jet acts along another path, the path of the front. The
 * dose of abrasive particles along that path decides how far the cut reaches; it is limited by the jet itself. For each
 * point of the part contour the first place that is cut, on a line across the contour, gives the deviation there.
 *
 * <p>The prediction reads a path and a feed along it, wherever they come from. It is therefore a check of a plan that does
 * not share the formulas by which the plan was made.
 */
@NullMarked
package dev.waterjet.simulate;

import org.jspecify.annotations.NullMarked;
