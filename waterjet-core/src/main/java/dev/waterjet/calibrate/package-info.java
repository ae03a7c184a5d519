/**
 * A shop's own numbers from its own test cuts.
 *
 * <p>A {@link dev.waterjet.calibrate.TestCut} is one cut whose outcome was measured: the feed at which a plate just came
 * apart, the depth of a blind groove, or the feed that left a face of a certain index. Any mix of them tells the same
 * thing, how deep the jet can separate at a feed. A {@link dev.waterjet.calibrate.Calibration} fits the machinability of a
 * material to them, exponents of the model where asked, or the constants of a rival model. The answer is a
 * {@link dev.waterjet.calibrate.CalibratedFeed}: a feed model and a material that plug in wherever the published ones do,
 * with the evidence "fitted" and an uncertainty that comes from the cuts.
 *
 * <p>Residuals are relative: the logarithm of what was measured, feed or depth, less that of what the model says. Cuts are
 * read and written as CSV with units in the header by {@link dev.waterjet.calibrate.TestCutText}.
 */
@NullMarked
package dev.waterjet.calibrate;

import org.jspecify.annotations.NullMarked;
