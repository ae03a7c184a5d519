/**
 * Uncertainty of a result from the uncertainties of its inputs, by JCGM 100 and JCGM 101.
 *
 * <pre>{@code
 * UncertainInputs inputs = UncertainInputs.none()
 *         .with("pressure", Distribution.normal(380, 4))
 *         .with("bore", Distribution.uniform(0.32, 0.34));
 * Measurand speed = values -> Math.sqrt(values[0]) * values[1];
 * UncertaintyBudget.of(speed, inputs);
 * }</pre>
 *
 * <p>{@link dev.waterjet.uncertainty.UncertainInputs} names the inputs, each with its
 * {@link dev.waterjet.uncertainty.Distribution}, and the correlations between them. A
 * {@link dev.waterjet.uncertainty.Measurand} is any function of them. Three analyses are available:
 *
 * <ul>
 *   <li>{@link dev.waterjet.uncertainty.UncertaintyBudget}: the law of propagation, first order with its second-order
 *       terms, effective degrees of freedom, and the contribution of each input;
 *   <li>{@link dev.waterjet.uncertainty.MonteCarlo}: the distribution of the result from draws of the inputs;
 *   <li>{@link dev.waterjet.uncertainty.SobolStudy}: the share of the variance of the result that each input causes, for any
 *       function.
 * </ul>
 *
 * <p>Draws are divided into batches, each with a separate generator seeded by the seed of the study and the number of the
 * batch. The bits of a result therefore depend on the seed and not on the number of threads. A draw is the quantile of a
 * uniform number; a Sobol study takes the points of Sobol's sequence, randomly shifted.
 *
 * <p>The package contains no model of a jet; it computes with doubles.
 */
@NullMarked
package dev.waterjet.uncertainty;

import org.jspecify.annotations.NullMarked;
