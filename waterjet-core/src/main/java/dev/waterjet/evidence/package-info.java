/**
 * What speaks for a number.
 *
 * <p>Every model, constant and material value of this library carries its {@link dev.waterjet.evidence.Evidence}: a
 * grade, a source and the ranges over which it is known to hold. An empirical model answers with an
 * {@link dev.waterjet.evidence.Estimate}: a value, a standard uncertainty, an interval and the
 * {@linkplain dev.waterjet.evidence.Caution cautions} that apply.
 */
@NullMarked
package dev.waterjet.evidence;

import org.jspecify.annotations.NullMarked;
