package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.WaterState;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/**
 * Double-acting intensifier: oil on a large piston drives water with a small plunger on either side in turn.
 *
 * <p>Water pressure is oil pressure times the intensification ratio, which is the ratio of the two areas. At each reversal no
 * water is delivered until the valves have reversed the motion and the filled cylinder is compressed; an attenuator bridges
 * that interruption. Dead volume and leakage are neglected.
 */
public final class Intensifier implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(double areaRatio, double strokeVolumeM3, double reversalTimeS) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            areaRatio = Require.above("area ratio", areaRatio, 1, Units.ONE, "");
            strokeVolumeM3 = Require.positive("stroke volume", strokeVolumeM3, Units.LITRE);
            reversalTimeS = Require.notNegative("reversal time", reversalTimeS, Units.SECOND);
        }

        private Object readResolve() {
            return new Intensifier(this);
        }
    }

    private final transient Values values;

    private Intensifier(Values values) {
        this.values = values;
    }

    /**
     * Returns an intensifier with a reversal time of 0.
     *
     * @param areaRatio area of the oil piston over area of the plunger, above 1
     * @param strokeVolume volume swept by a plunger in one stroke
     * @return the intensifier
     */
    public static Intensifier of(double areaRatio, Quantity<Volume> strokeVolume) {
        Objects.requireNonNull(strokeVolume, "strokeVolume");
        return new Intensifier(new Values(areaRatio, Kind.VOLUME.si(strokeVolume), 0));
    }

    /**
     * Returns this intensifier with a reversal time.
     *
     * @param reversalTime time in which neither side moves at a reversal, 0 or more
     * @return the intensifier with that reversal time
     */
    public Intensifier withReversalTime(Quantity<Time> reversalTime) {
        Objects.requireNonNull(reversalTime, "reversalTime");
        return new Intensifier(new Values(values.areaRatio, values.strokeVolumeM3, Kind.TIME.si(reversalTime)));
    }

    /** {@return the volume swept by a plunger in one stroke} */
    public Quantity<Volume> strokeVolume() {
        return Kind.VOLUME.of(values.strokeVolumeM3);
    }

    /** {@return the time in which neither side moves at a reversal} */
    public Quantity<Time> reversalTime() {
        return Kind.TIME.of(values.reversalTimeS);
    }

    /**
     * Returns the water pressure at an oil pressure, without friction.
     *
     * @param oil gauge pressure of the oil
     * @return gauge pressure of the water
     */
    public Quantity<Pressure> waterPressure(Quantity<Pressure> oil) {
        Objects.requireNonNull(oil, "oil");
        return Kind.PRESSURE.of(values.areaRatio * Kind.PRESSURE.si(oil));
    }

    /**
     * Returns the oil pressure at a water pressure, without friction.
     *
     * @param water gauge pressure of the water
     * @return gauge pressure of the oil
     */
    public Quantity<Pressure> oilPressure(Quantity<Pressure> water) {
        Objects.requireNonNull(water, "water");
        return Kind.PRESSURE.of(Kind.PRESSURE.si(water) / values.areaRatio);
    }

    /**
     * Returns the strokes per time that a flow requires, those of both sides together.
     *
     * @param flow mass flow, 0 or more
     * @param inlet water that fills the cylinders
     * @return strokes per time
     */
    public Quantity<Frequency> strokes(Quantity<MassFlow> flow, WaterState inlet) {
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(inlet, "inlet");
        double kgPerS = Require.notNegative("mass flow", Kind.MASS_FLOW.si(flow), Units.KILOGRAM_PER_MINUTE);
        return Kind.FREQUENCY.of(kgPerS / (inlet.densitySi() * values.strokeVolumeM3));
    }

    /**
     * Returns the fraction of each stroke that only compresses the water, 1 - &rho;<sub>inlet</sub>/&rho;<sub>outlet</sub>:
     * 11 % at 400 MPa.
     *
     * @param compression compression of the water
     * @return the fraction
     */
    public Quantity<Dimensionless> compressionFraction(Compression compression) {
        Objects.requireNonNull(compression, "compression");
        return Kind.RATIO.of(compressionFractionSi(compression));
    }

    private static double compressionFractionSi(Compression compression) {
        return 1 - compression.inlet().densitySi() / compression.outlet().densitySi();
    }

    /**
     * Returns the volume that the head draws from an attenuator at each reversal, at the density of the outlet.
     *
     * @param flow mean mass flow, above 0
     * @param compression compression of the water
     * @return the volume
     * @throws dev.waterjet.measure.DomainException if the reversal time is above nine tenths of the time of a stroke
     */
    public Quantity<Volume> fluctuatingVolume(Quantity<MassFlow> flow, Compression compression) {
        Objects.requireNonNull(compression, "compression");
        Objects.requireNonNull(flow, "flow");
        double kgPerS = Kind.MASS_FLOW.si(flow);
        double interruptionS = interruption(flow, compression);
        return Kind.VOLUME.of(kgPerS * interruptionS / compression.outlet().densitySi());
    }

    /**
     * Returns the flow ripple: between reversals the pump delivers more than the mean, at a reversal nothing.
     *
     * @param flow mean mass flow, above 0
     * @param compression compression of the water
     * @return the flow ripple, peak to peak, over the mean flow
     * @throws dev.waterjet.measure.DomainException as {@link #fluctuatingVolume}
     */
    public Quantity<Dimensionless> flowRipple(Quantity<MassFlow> flow, Compression compression) {
        Objects.requireNonNull(compression, "compression");
        Objects.requireNonNull(flow, "flow");
        double interruptionS = interruption(flow, compression);
        double strokes = Kind.FREQUENCY.si(strokes(flow, compression.inlet()));
        return Kind.RATIO.of(1 / (1 - interruptionS * strokes));
    }

    /** Time of a stroke in which nothing is delivered. */
    private double interruption(Quantity<MassFlow> flow, Compression compression) {
        Require.positive("mass flow", Kind.MASS_FLOW.si(flow), Units.KILOGRAM_PER_MINUTE);
        double strokeS = 1 / Kind.FREQUENCY.si(strokes(flow, compression.inlet()));
        double reversalS = Require.atMost(
                "reversal time",
                values.reversalTimeS,
                0.9 * strokeS,
                Units.SECOND,
                "nine tenths of the time of a stroke");
        return reversalS + compressionFractionSi(compression) * (strokeS - reversalS);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("intensifier")
                .put("area_ratio", values.areaRatio)
                .put("stroke_volume", Kind.VOLUME, values.strokeVolumeM3)
                .put("reversal_time", Kind.TIME, values.reversalTimeS)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Intensifier that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "intensifier " + QuantityText.round(values.areaRatio, 4) + " : 1, stroke volume "
                + QuantityText.forPeople(Kind.VOLUME, values.strokeVolumeM3);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
