/**
 * From the uncertainty of inputs to that of a result, after JCGM 100 and JCGM 101.
 *
 * <p>{@link dev.waterjet.uncertainty.UncertainInputs} names the inputs, each with its
 * {@link dev.waterjet.uncertainty.Distribution}, and the correlations between them. A
 * {@link dev.waterjet.uncertainty.Measurand} is any function of them. Three questions can then be asked:
 *
 * <ul>
 *   <li>{@link dev.waterjet.uncertainty.UncertaintyBudget}: the law of propagation, first order with its second-order
 *       terms beside it, effective degrees of freedom, and what each input contributes;
 *   <li>{@link dev.waterjet.uncertainty.MonteCarlo}: the distribution of the result by drawing from those of the inputs;
 *   <li>{@link dev.waterjet.uncertainty.SobolStudy}: which share of the result's variance each input causes, however
 *       crooked the function.
 * </ul>
 *
 * <p>Draws are cut into blocks, each with a generator of its own seeded by the study's seed and the number of the block.
 * So the bits of an answer depend on the seed, and never on how many threads worked on it.
 *
 * <p>The package knows nothing of jets, only doubles.
 */
@NullMarked
package dev.waterjet.uncertainty;

import org.jspecify.annotations.NullMarked;
