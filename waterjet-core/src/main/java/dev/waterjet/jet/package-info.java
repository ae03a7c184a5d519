/**
 * Abrasive waterjet: water and abrasive at the exit of the focusing tube.
 *
 * <p>A {@link dev.waterjet.jet.CuttingHead} has an orifice and a {@link dev.waterjet.jet.FocusingTube}. With a pressure, an
 * {@link dev.waterjet.jet.Abrasive} and its flow rate it produces an {@link dev.waterjet.jet.AbrasiveJet}:
 *
 * <pre>{@code
 * CuttingHead head = CuttingHead.of(
 *         Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)));
 * AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
 * Estimate<Speed> speed = jet.particleSpeed();
 * }</pre>
 *
 * <p>Water and abrasive share the momentum of the water. With the loading ratio <i>R</i> of abrasive to water and the jet speed
 * <i>v</i> both would leave at <i>v</i>/(1 + <i>R</i>); the {@linkplain dev.waterjet.jet.MixingEfficiency mixing efficiency} of
 * a real tube is 0.65 to 0.85. {@link dev.waterjet.jet.JetSettings} is the view of a jet that cutting models read.
 *
 * <p>Geometry outside common practice draws a caution; geometry that is not possible is rejected.
 */
@NullMarked
package dev.waterjet.jet;

import org.jspecify.annotations.NullMarked;
