/**
 * Fits the parameters of any model to measurements, and says how sure it then is.
 *
 * <p>A {@link dev.waterjet.fit.Response} tells what a model predicts for each observation; a
 * {@link dev.waterjet.fit.LeastSquares} finds the parameters with the least sum of squared residuals, each divided by
 * the standard deviation of its observation. The answer is a {@link dev.waterjet.fit.Fit}: the parameters, their
 * covariance and intervals, the residuals, and how much each observation pulls. Data that cannot tell the parameters
 * apart are refused with a {@link dev.waterjet.measure.NoSolutionException} that names them.
 *
 * <p>Outliers: an ordinary fit squares a mistake. With {@linkplain dev.waterjet.fit.LeastSquares#withRobustWeights()
 * robust weights} an observation far from the others loses its weight, and the fit tells which did.
 *
 * <p>The package knows nothing of jets, only doubles.
 */
@NullMarked
package dev.waterjet.fit;

import org.jspecify.annotations.NullMarked;
