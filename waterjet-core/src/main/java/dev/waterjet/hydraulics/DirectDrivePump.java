package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Volume;

/**
 * Direct-drive pump: plungers on one crankshaft, evenly spaced in phase.
 *
 * <p>Each plunger pushes with the speed of a crank drive, {@code r omega (sin a + (r/l)/2 sin 2a)}, and draws in the other
 * half turn. The sum swings: three plungers on long rods by 14 per cent of the mean, five by 5.
 */
public final class DirectDrivePump implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Radius of the crank over length of the rod: common practice, no source. */
    private static final double USUAL_ROD_RATIO = 0.2;

    private static final int MOST_PLUNGERS = 24;

    private final int plungers;
    private final double strokeVolumeM3;
    private final double turnsPerS;
    private final double volumetricEfficiency;
    private final double rodRatio;

    private DirectDrivePump(
            int plungers, double strokeVolumeM3, double turnsPerS, double volumetricEfficiency, double rodRatio) {
        Require.between("number of plungers", plungers, 1, MOST_PLUNGERS, Units.ONE, "");
        this.plungers = plungers;
        this.strokeVolumeM3 = Require.positive("volume of a stroke", strokeVolumeM3, Units.LITRE);
        this.turnsPerS = Require.positive("speed of the crank", turnsPerS, Units.PER_MINUTE);
        this.volumetricEfficiency = Require.positive("volumetric efficiency", volumetricEfficiency, Units.ONE);
        Require.atMost("volumetric efficiency", volumetricEfficiency, 1, Units.ONE, "");
        this.rodRatio = Require.between("crank over rod", rodRatio, 0, 0.5, Units.ONE, "the rod must clear the crank");
    }

    /**
     * A pump that delivers all it sweeps, with rods five times as long as the crank.
     *
     * @param plungers number of plungers, 1 to 24
     * @param strokeVolume volume that one plunger sweeps in one stroke
     * @param speed turns of the crank per time
     * @return the pump
     */
    public static DirectDrivePump of(int plungers, Quantity<Volume> strokeVolume, Quantity<Frequency> speed) {
        return new DirectDrivePump(plungers, Kind.VOLUME.si(strokeVolume), Kind.FREQUENCY.si(speed), 1, USUAL_ROD_RATIO);
    }

    /**
     * This pump with losses of volume, by water that is compressed and comes back, and by leaks.
     *
     * @param efficiency volume told at the intake over volume swept, above 0 to 1
     * @return the pump with that efficiency
     */
    public DirectDrivePump withVolumetricEfficiency(double efficiency) {
        return new DirectDrivePump(plungers, strokeVolumeM3, turnsPerS, efficiency, rodRatio);
    }

    /**
     * This pump with other rods.
     *
     * @param ratio radius of the crank over length of the rod, 0 (endless rods) to 0.5
     * @return the pump with those rods
     */
    public DirectDrivePump withRodRatio(double ratio) {
        return new DirectDrivePump(plungers, strokeVolumeM3, turnsPerS, volumetricEfficiency, ratio);
    }

    /**
     * Mean flow.
     *
     * @return the volume flow at the intake, in m3/s
     */
    public Quantity<VolumeFlow> flow() {
        return Kind.VOLUME_FLOW.of(flowSi());
    }

    private double flowSi() {
        return plungers * strokeVolumeM3 * turnsPerS * volumetricEfficiency;
    }

    /**
     * Swing of the flow from lowest to highest, over the mean.
     *
     * @return the ratio
     */
    public Quantity<Dimensionless> flowRipple() {
        return Kind.RATIO.of(CrankKernel.swing(plungers, rodRatio));
    }

    /**
     * Volume that the head draws from the attenuator while the flow is below its mean, once.
     *
     * @return the volume at the intake, in m3
     */
    public Quantity<Volume> fluctuatingVolume() {
        return Kind.VOLUME.of(flowSi() / turnsPerS * CrankKernel.gap(plungers, rodRatio));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("direct-drive pump")
                .put("plungers", plungers)
                .put("stroke_volume", Kind.VOLUME, strokeVolumeM3)
                .put("speed", Kind.FREQUENCY, turnsPerS)
                .put("volumetric_efficiency", volumetricEfficiency)
                .put("rod_ratio", rodRatio)
                .put("flow", Kind.VOLUME_FLOW, flowSi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DirectDrivePump that
                && plungers == that.plungers
                && strokeVolumeM3 == that.strokeVolumeM3
                && turnsPerS == that.turnsPerS
                && volumetricEfficiency == that.volumetricEfficiency
                && rodRatio == that.rodRatio;
    }

    @Override
    public int hashCode() {
        return Objects.hash(plungers, strokeVolumeM3, turnsPerS, volumetricEfficiency, rodRatio);
    }

    @Override
    public String toString() {
        return "direct-drive pump of " + plungers + " plungers, "
                + QuantityText.print(Kind.VOLUME_FLOW, flow(), Units.LITRE_PER_MINUTE, 4);
    }
}
