package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.WaterState;
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
 * A double-acting intensifier: oil on a large piston drives water with a small plunger on either side in turn.
 *
 * <p>Water pressure is oil pressure times the ratio of areas. At each reversal no water comes until the valves have shifted
 * and the fresh cylinder is compressed; the attenuator must bridge that gap. Clearance behind the plunger and leakage are
 * left out.
 */
public final class Intensifier implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double areaRatio;
    private final double strokeVolumeM3;
    private final double reversalTimeS;

    private Intensifier(double areaRatio, double strokeVolumeM3, double reversalTimeS) {
        this.areaRatio = Require.above("ratio of areas", areaRatio, 1, Units.ONE, "an intensifier intensifies");
        this.strokeVolumeM3 = Require.positive("volume of a stroke", strokeVolumeM3, Units.LITRE);
        this.reversalTimeS = Require.notNegative("reversal time", reversalTimeS, Units.SECOND);
    }

    /**
     * An intensifier that reverses without losing time.
     *
     * @param areaRatio area of the oil piston over area of the plunger, above 1
     * @param strokeVolume volume that a plunger sweeps in one stroke
     * @return the intensifier
     */
    public static Intensifier of(double areaRatio, Quantity<Volume> strokeVolume) {
        return new Intensifier(areaRatio, Kind.VOLUME.si(strokeVolume), 0);
    }

    /**
     * This intensifier with a reversal time.
     *
     * @param reversalTime time in which neither side moves at a reversal, 0 or more
     * @return the intensifier that takes that time
     */
    public Intensifier withReversalTime(Quantity<Time> reversalTime) {
        return new Intensifier(areaRatio, strokeVolumeM3, Kind.TIME.si(reversalTime));
    }

    /**
     * Pressure of the water.
     *
     * @param oil gauge pressure of the oil
     * @return gauge pressure of the water, without friction
     */
    public Quantity<Pressure> waterPressure(Quantity<Pressure> oil) {
        return Kind.PRESSURE.of(areaRatio * Kind.PRESSURE.si(oil));
    }

    /**
     * Pressure of the oil.
     *
     * @param water gauge pressure of the water
     * @return gauge pressure of the oil, without friction
     */
    public Quantity<Pressure> oilPressure(Quantity<Pressure> water) {
        return Kind.PRESSURE.of(Kind.PRESSURE.si(water) / areaRatio);
    }

    /**
     * Strokes that a flow takes, both sides counted.
     *
     * @param flow mass flow, 0 or more
     * @param inlet water that fills the cylinders
     * @return strokes per time
     */
    public Quantity<Frequency> strokes(Quantity<MassFlow> flow, WaterState inlet) {
        double kgPerS = Require.notNegative("mass flow", Kind.MASS_FLOW.si(flow), Units.KILOGRAM_PER_MINUTE);
        return Kind.FREQUENCY.of(kgPerS / (inlet.densitySi() * strokeVolumeM3));
    }

    /**
     * Share of each stroke that only compresses, {@code 1 - rho_inlet/rho_outlet}: an eighth at 400 MPa.
     *
     * @param compression what happens to the water
     * @return the share
     */
    public Quantity<Dimensionless> compressionFraction(Compression compression) {
        return Kind.RATIO.of(compressionFractionSi(compression));
    }

    private static double compressionFractionSi(Compression compression) {
        return 1 - compression.inlet().densitySi() / compression.outlet().densitySi();
    }

    /**
     * Volume that the head draws from the attenuator at each reversal, at the density behind the pump.
     *
     * @param flow mean mass flow, 0 or more
     * @param compression what happens to the water
     * @return the volume, in m3
     * @throws dev.waterjet.measure.DomainException if the reversal time leaves no time for the strokes
     */
    public Quantity<Volume> fluctuatingVolume(Quantity<MassFlow> flow, Compression compression) {
        double kgPerS = Require.positive("mass flow", Kind.MASS_FLOW.si(flow), Units.KILOGRAM_PER_MINUTE);
        double cycleS = 1 / Kind.FREQUENCY.si(strokes(flow, compression.inlet()));
        Require.atMost(
                "reversal time", reversalTimeS, 0.9 * cycleS, Units.SECOND, "nine tenths of the time of a stroke");
        double gapS = reversalTimeS + compressionFractionSi(compression) * (cycleS - reversalTimeS);
        return Kind.VOLUME.of(kgPerS * gapS / compression.outlet().densitySi());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("intensifier")
                .put("area_ratio", areaRatio)
                .put("stroke_volume", Kind.VOLUME, strokeVolumeM3)
                .put("reversal_time", Kind.TIME, reversalTimeS)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Intensifier that
                && areaRatio == that.areaRatio
                && strokeVolumeM3 == that.strokeVolumeM3
                && reversalTimeS == that.reversalTimeS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(areaRatio, strokeVolumeM3, reversalTimeS);
    }

    @Override
    public String toString() {
        return "intensifier " + QuantityText.round(areaRatio, 4) + " : 1, "
                + QuantityText.print(Kind.VOLUME, Kind.VOLUME.of(strokeVolumeM3), Units.LITRE, 4) + " a stroke";
    }
}
