/**
 * Evidence: the source of every number, and its uncertainty.
 *
 * <p>Every model, constant and material value of this library has {@link dev.waterjet.evidence.Evidence}: a grade, a source
 * and the ranges in which it is valid. A grade is never promoted: a value recalled from memory stays so until its source has
 * been read. An empirical model returns an {@link dev.waterjet.evidence.Estimate}: a value, a standard uncertainty, an
 * interval and the {@linkplain dev.waterjet.evidence.Caution cautions} that apply.
 *
 * <pre>{@code
 * Estimate<Speed> feed = MachinabilityFeed.published().feed(jet, workpiece, CutQuality.FINE);
 * feed.to(Units.MILLIMETRE_PER_MINUTE);
 * feed.upper(0.95, Units.MILLIMETRE_PER_MINUTE);
 * feed.cautions().forEach(caution -> log(caution.severity(), caution.code(), caution.text()));
 * MachinabilityFeed.published().evidence().grade().label();
 * }</pre>
 */
@NullMarked
package dev.waterjet.evidence;

import org.jspecify.annotations.NullMarked;
