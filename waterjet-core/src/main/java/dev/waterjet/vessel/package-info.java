/**
 * Stress and stored energy of parts that hold water at high pressure: cylinders, attenuators, tubing.
 *
 * <p>A {@link dev.waterjet.vessel.ThickTube} is an ideal smooth tube of an elastic, perfectly plastic material:
 *
 * <pre>{@code
 * ThickTube tube = ThickTube.of(millimetres(50), millimetres(125));
 * WallStress bore = tube.stressAtBore(megapascals(380), Ends.CLOSED);
 * TubeLimits limits = tube.limits(YieldCriterion.TRESCA, Ends.CLOSED, megapascals(900));
 * }</pre>
 *
 * <p>The pressure that yields the bore first is half the yield strength at most, however thick the wall: that is why parts for
 * such pressures are {@linkplain dev.waterjet.vessel.Autofrettage autofrettaged}. {@link dev.waterjet.vessel.StoredEnergy} is the
 * work that the water can do if a part bursts.
 *
 * <p>Every result carries the caution {@code no-assessment}. Nothing here judges a part: no method says that a pressure is
 * admissible, and none counts cycles to failure. Vessels and tubing are designed, inspected and retired by their maker under
 * the code in force (values from memory: ASME BPVC Section VIII Division 3, EN 13445, EN 1829-1 and EN 1829-2).
 */
@Experimental
@NullMarked
package dev.waterjet.vessel;

import dev.waterjet.measure.Experimental;
import org.jspecify.annotations.NullMarked;
