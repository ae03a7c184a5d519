/**
 * Requirements of a drawing on a cut surface.
 *
 * <p>An {@link dev.waterjet.quality.EdgeRequirement} states a level of cut quality, and limits on lag, taper and roughness
 * where the drawing has them. A {@link dev.waterjet.quality.QualityIndexTable} maps the five levels to the quality index of a
 * feed model. {@link dev.waterjet.quality.Iso9013} and {@link dev.waterjet.quality.QualityScale} divide measured or predicted
 * values into the ranges of a standard; {@link dev.waterjet.quality.CutOff} is the cut-off with which a roughness is measured.
 *
 * <pre>{@code
 * EdgeRequirement seat = EdgeRequirement.of(CutQuality.FINE).withTaper(degrees(0.5));
 * double index = QualityIndexTable.standard().index(seat.quality());
 * OptionalInt range = Iso9013.forThickness(millimetres(10)).perpendicularityRange(millimetres(0.09));
 * }</pre>
 *
 * <p>The package contains no model of the jet: it is below the packages that do.
 */
@NullMarked
package dev.waterjet.quality;

import org.jspecify.annotations.NullMarked;
