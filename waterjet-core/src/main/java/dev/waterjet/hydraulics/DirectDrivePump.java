package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Volume;

/**
 * Direct-drive pump: plungers on one crankshaft, evenly spaced in phase.
 *
 * <p>Each plunger delivers with the speed of a crank drive, <i>r</i> &omega; (sin &alpha; + (<i>r</i>/<i>l</i>)/2
 * sin 2&alpha;), during one half turn and draws water during the other. The flow ripple, peak to peak, is 14 % of the mean for
 * three plungers on long rods and 5 % for five. Water is taken as incompressible here; under pressure the ripple is larger.
 */
public final class DirectDrivePump implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Radius of the crank over length of the rod: common practice, no source. */
    private static final double TYPICAL_ROD_RATIO = 0.2;

    private static final int MAX_PLUNGERS = 24;

    /** Checked content, and the serial form. */
    private record Values(
            int plungers, double strokeVolumeM3, double turnsPerS, double volumetricEfficiency, double rodRatio)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Require.between("number of plungers", plungers, 1, MAX_PLUNGERS, Units.ONE, "");
            strokeVolumeM3 = Require.positive("stroke volume", strokeVolumeM3, Units.LITRE);
            turnsPerS = Require.positive("speed of the crank", turnsPerS, Units.PER_MINUTE);
            Require.positive("volumetric efficiency", volumetricEfficiency, Units.ONE);
            volumetricEfficiency = Require.atMost("volumetric efficiency", volumetricEfficiency, 1, Units.ONE, "");
            rodRatio = Require.between("rod ratio", rodRatio, 0, 0.5, Units.ONE, "the rod must clear the crank");
        }

        private Object readResolve() {
            return new DirectDrivePump(this);
        }

        double flowM3PerS() {
            return plungers * strokeVolumeM3 * turnsPerS * volumetricEfficiency;
        }
    }

    private final transient Values values;

    private DirectDrivePump(Values values) {
        this.values = values;
    }

    /**
     * Returns a pump with a volumetric efficiency of 1, and rods five times as long as the radius of the crank.
     *
     * @param plungers number of plungers, 1 to 24
     * @param strokeVolume volume swept by one plunger in one stroke
     * @param speed turns of the crank per time
     * @return the pump
     */
    public static DirectDrivePump of(int plungers, Quantity<Volume> strokeVolume, Quantity<Frequency> speed) {
        return new DirectDrivePump(
                new Values(plungers, Kind.VOLUME.si(strokeVolume), Kind.FREQUENCY.si(speed), 1, TYPICAL_ROD_RATIO));
    }

    /**
     * Returns this pump with a volumetric efficiency below 1: water that is compressed and re-expands, and leakage.
     *
     * @param efficiency volume drawn at the intake over volume swept, above 0 to 1
     * @return the pump with that efficiency
     */
    public DirectDrivePump withVolumetricEfficiency(double efficiency) {
        return new DirectDrivePump(
                new Values(values.plungers, values.strokeVolumeM3, values.turnsPerS, efficiency, values.rodRatio));
    }

    /**
     * Returns this pump with other rods.
     *
     * @param ratio radius of the crank over length of the rod, 0 (infinitely long rods) to 0.5
     * @return the pump with those rods
     */
    public DirectDrivePump withRodRatio(double ratio) {
        return new DirectDrivePump(new Values(
                values.plungers, values.strokeVolumeM3, values.turnsPerS, values.volumetricEfficiency, ratio));
    }

    /**
     * {@return the mean volume flow, at the density of the intake}
     */
    public Quantity<VolumeFlow> flow() {
        return Kind.VOLUME_FLOW.of(values.flowM3PerS());
    }

    /**
     * {@return the flow ripple, peak to peak, over the mean flow}
     */
    public Quantity<Dimensionless> flowRipple() {
        return Kind.RATIO.of(CrankKernel.ripple(values.plungers, values.rodRatio));
    }

    /**
     * {@return the volume that the head draws from an attenuator while the flow is below its mean, at the density of the
     * intake}
     */
    public Quantity<Volume> fluctuatingVolume() {
        return Kind.VOLUME.of(
                values.flowM3PerS() / values.turnsPerS * CrankKernel.fluctuation(values.plungers, values.rodRatio));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("direct-drive pump")
                .put("plungers", values.plungers)
                .put("stroke_volume", Kind.VOLUME, values.strokeVolumeM3)
                .put("speed", Kind.FREQUENCY, values.turnsPerS)
                .put("volumetric_efficiency", values.volumetricEfficiency)
                .put("rod_ratio", values.rodRatio)
                .put("flow", Kind.VOLUME_FLOW, values.flowM3PerS())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DirectDrivePump that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "direct-drive pump of " + values.plungers + " plungers, "
                + QuantityText.forPeople(Kind.VOLUME_FLOW, flow());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
