package dev.waterjet.circuit;

import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Pressure;

/**
 * Intensifier in a circuit. Each stroke shifts for the reversal time, compresses the filled cylinder, and delivers until its end;
 * then the other side follows. The oil pump slows down as the pressure comes within 2 % of the pressure that is set (assumed).
 */
public final class IntensifierDrive implements PumpDrive {

    private static final long serialVersionUID = 1L;

    /** Band below the set pressure in which the oil flow falls to zero, relative to it: assumed. */
    private static final double BAND = 0.02;

    private static final double MAX_DEAD_VOLUME = 100;

    /** Checked content, and the serial form. */
    private record Values(
            Intensifier intensifier,
            double setPa,
            double strokesPerS,
            double compressionStrokesPerS,
            double deadVolumeRatio,
            boolean isPrecompressed)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(intensifier, "intensifier");
            setPa = Require.positive("set pressure of the intensifier", setPa, Units.MEGAPASCAL);
            strokesPerS = Require.positive("strokes at full oil flow", strokesPerS, Units.PER_MINUTE);
            compressionStrokesPerS =
                    Require.positive("strokes during compression", compressionStrokesPerS, Units.PER_MINUTE);
            deadVolumeRatio = Require.between(
                    "dead volume over stroke volume", deadVolumeRatio, 0, MAX_DEAD_VOLUME, Units.ONE, "");
        }

        private Object readResolve() {
            return new IntensifierDrive(this);
        }
    }

    private final transient Values values;

    private IntensifierDrive(Values values) {
        this.values = values;
    }

    static IntensifierDrive of(Intensifier intensifier, Quantity<Pressure> pressure, Quantity<Frequency> strokes) {
        Objects.requireNonNull(pressure, "pressure");
        double strokesPerS = Kind.FREQUENCY.si(Objects.requireNonNull(strokes, "strokes"));
        return new IntensifierDrive(
                new Values(intensifier, Kind.PRESSURE.si(pressure), strokesPerS, strokesPerS, 0, false));
    }

    /**
     * Returns this drive with dead volume: water between plunger and valves at the end of a stroke.
     *
     * @param ratio dead volume over stroke volume, 0 or more
     * @return the drive with that dead volume
     */
    public IntensifierDrive withDeadVolume(double ratio) {
        return new IntensifierDrive(new Values(
                values.intensifier,
                values.setPa,
                values.strokesPerS,
                values.compressionStrokesPerS,
                ratio,
                values.isPrecompressed));
    }

    /**
     * Returns this drive with another speed of the plunger while it compresses. Without load it usually runs faster than at full
     * pressure, and that determines the drop of pressure at a reversal.
     *
     * @param strokes strokes per time while it compresses, above 0
     * @return the drive with that speed
     */
    public IntensifierDrive withCompressionSpeed(Quantity<Frequency> strokes) {
        return new IntensifierDrive(new Values(
                values.intensifier,
                values.setPa,
                values.strokesPerS,
                Kind.FREQUENCY.si(Objects.requireNonNull(strokes, "strokes")),
                values.deadVolumeRatio,
                values.isPrecompressed));
    }

    /**
     * Returns this drive with precompression: the filled side is brought to pressure before the other has ended its stroke, so that
     * only the reversal time interrupts the delivery.
     *
     * @return the drive with precompression
     */
    public IntensifierDrive withPrecompression() {
        return new IntensifierDrive(new Values(
                values.intensifier,
                values.setPa,
                values.strokesPerS,
                values.compressionStrokesPerS,
                values.deadVolumeRatio,
                true));
    }

    double strokeVolumeM3() {
        return Kind.VOLUME.si(values.intensifier.strokeVolume());
    }

    double reversalS() {
        return Kind.TIME.si(values.intensifier.reversalTime());
    }

    double compressionStrokesPerS() {
        return values.compressionStrokesPerS;
    }

    boolean isPrecompressed() {
        return values.isPrecompressed;
    }

    /** Strokes per second against a pressure. */
    double strokesPerS(double gaugePa) {
        double missing = (values.setPa - gaugePa) / (BAND * values.setPa);
        return values.strokesPerS * Math.min(1, Math.max(0, missing));
    }

    /** Share of the stroke that compresses, for a ratio of densities of outlet and intake. */
    double deliveryPosition(double densityRatio) {
        return Math.min(1, (1 - 1 / densityRatio) * (1 + values.deadVolumeRatio));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("intensifier drive")
                .put("intensifier", values.intensifier)
                .put("set_pressure", Kind.PRESSURE, values.setPa)
                .put("strokes", Kind.FREQUENCY, values.strokesPerS)
                .put("compression_strokes", Kind.FREQUENCY, values.compressionStrokesPerS)
                .put("dead_volume_ratio", values.deadVolumeRatio)
                .put("precompressed", values.isPrecompressed)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof IntensifierDrive that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.intensifier + ", set to " + QuantityText.forPeople(Kind.PRESSURE, Kind.PRESSURE.of(values.setPa));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
