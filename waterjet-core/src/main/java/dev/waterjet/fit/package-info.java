/**
 * Parameters of a model from measurements, with their uncertainty.
 *
 * <p>A {@link dev.waterjet.fit.Response} predicts each observation. {@link dev.waterjet.fit.LeastSquares} finds the
 * parameters with the minimum sum of squared residuals, each divided by the standard deviation of its observation. The
 * result is a {@link dev.waterjet.fit.Fit}: parameters with covariance and intervals, residuals, leverages and weights.
 *
 * <pre>{@code
 * double[] depthsMm = {5, 10, 20, 40};
 * double[] lagsMm = {0.11, 0.42, 1.55, 6.5};
 * Fit fit = LeastSquares.of((i, b) -> b[0] * Math.pow(depthsMm[i], b[1]))
 *         .withPositiveParameter("scale", 0.01).withPositiveParameter("exponent", 1.5).fit(lagsMm);
 * System.out.println(fit + ", exponent at most " + fit.upper("exponent", 0.95));
 * }</pre>
 *
 * <p>Data that do not determine the parameters are refused with a {@link dev.waterjet.measure.NoSolutionException} of code
 * {@code undetermined-parameters}, which names them.
 *
 * <p>An ordinary fit gives an outlier as much weight as a good reading. With
 * {@linkplain dev.waterjet.fit.LeastSquares#withRobustWeights() robust weights} an observation far from the others loses its
 * weight, and {@link dev.waterjet.fit.Fit#weights()} returns what is left.
 *
 * <p>The numbers are plain doubles, in SI if they represent quantities.
 */
@NullMarked
package dev.waterjet.fit;

import org.jspecify.annotations.NullMarked;
