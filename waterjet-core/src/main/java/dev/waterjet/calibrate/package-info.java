/**
 * Model parameters of a shop from its own measurements.
 *
 * <p>A {@link dev.waterjet.calibrate.TestCut} is a cut with a measured outcome: the feed rate at which a plate was just
 * separated, the depth of a blind groove, or the feed rate that left a cut surface of a quality index. Any mix of them measures
 * one property, the depth that the jet can separate at a feed rate. A {@link dev.waterjet.calibrate.Calibration} fits the
 * machinability of a material to them, exponents of the model, or the constants of another feed model. The result is a {@link
 * dev.waterjet.calibrate.CalibratedFeed}: a feed model and a material that can replace the published ones, with the evidence
 * "fitted" and an uncertainty from the cuts. A {@link dev.waterjet.calibrate.CalibrationSet} holds the calibrations of a shop by
 * material.
 *
 * <pre>{@code
 * List<TestCut> cuts = TestCut.parse(csv);
 * CalibratedFeed steel = Calibration.ofMachinability(material, MachinabilityFeed.published()).fit(cuts);
 * CalibrationSet shop = CalibrationSet.of(MachinabilityFeed.published()).with(steel);
 * CutConditions cut = CutConditions.of(jet, Workpiece.of(material, millimetres(12)), shop);
 * Estimate<Speed> feed = cut.feed(CutQuality.MEDIUM);
 * }</pre>
 *
 * <p>Residuals are relative: the logarithm of the measured feed rate or depth less that of the predicted one. Widths, drag
 * lines, roughness and pierce times give the other models: each measurement class has a {@code fit} that returns a {@link
 * dev.waterjet.calibrate.FittedModel}.
 */
@NullMarked
package dev.waterjet.calibrate;

import org.jspecify.annotations.NullMarked;
