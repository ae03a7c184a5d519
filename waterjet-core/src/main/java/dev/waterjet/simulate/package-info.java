/**
 * Predicted cut: which walls a tool path and its feed leave in the workpiece, and how far they deviate from the part.
 *
 * <pre>{@code
 * PartPlan plan = PartPlanner.of(setup).plan(part, workpiece);
 * CutSimulator simulator = CutSimulator.of(plan.conditions(), KerfModel.standard(), LagModel.standard());
 * FeedProfile profile = FeedProfile.of(plan.cuts().get(0).feeds().get(0));
 * PredictedCut predicted = simulator.predict(profile, part.contours().get(0), part.partSide(0));
 * predicted.places();     // the worst deviations, each beside its tolerance
 * predicted.findings();
 * }</pre>
 *
 * <p>At each depth the cut front lags behind the nozzle, so the jet acts along another path, the path of the front. The
 * dose of abrasive particles along that path decides how far the cut reaches; it is limited by the jet itself. For each
 * point of the part contour the first place that is cut, on a line across the contour, gives the deviation there.
 *
 * <p>The prediction reads a path and a feed along it, wherever they come from. It is therefore a check of a plan that does
 * not share the formulas by which the plan was made.
 */
@Experimental
@NullMarked
package dev.waterjet.simulate;

import dev.waterjet.measure.Experimental;
import org.jspecify.annotations.NullMarked;
