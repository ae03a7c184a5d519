/**
 * The abrasive jet: water and garnet through a focusing tube.
 *
 * <p>A {@link dev.waterjet.jet.CuttingHead} is an orifice and a {@link dev.waterjet.jet.FocusingTube}; given a pressure,
 * an {@link dev.waterjet.jet.Abrasive} and its flow it makes an {@link dev.waterjet.jet.AbrasiveJet}. Water and abrasive
 * share the momentum of the water: with the loading ratio {@code R} of abrasive to water and the speed {@code v} of the
 * water jet, both would leave at {@code v / (1 + R)}; a {@linkplain dev.waterjet.jet.MixingEfficiency mixing efficiency}
 * of 0.65 to 0.85 tells how close a real tube comes.
 *
 * <p>Geometry that the trade avoids draws a caution; geometry that cannot work is refused.
 */
@NullMarked
package dev.waterjet.jet;

import org.jspecify.annotations.NullMarked;
