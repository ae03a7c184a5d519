package dev.waterjet.examples;

import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import java.util.List;
import java.util.Locale;
import javax.measure.Quantity;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Options of pumps that several programs take, and parts of steel. */
final class PumpOptions {

    /** Kind of pump, as typed. */
    enum PumpKind {
        INTENSIFIER,
        DIRECT_DRIVE;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** Converts the name of a pump. */
    static final class Kinds implements ITypeConverter<PumpKind> {

        @Override
        public PumpKind convert(String value) {
            for (PumpKind kind : PumpKind.values()) {
                if (kind.toString().equals(value)) {
                    return kind;
                }
            }
            throw new TypeConversionException("'" + value + "' is not one of " + List.of(PumpKind.values()));
        }
    }

    static final Quantity<Pressure> STEEL_MODULUS = Measures.megapascals(200_000);
    static final double STEEL_POISSON_RATIO = 0.29;

    /** Swept volume of one stroke of a usual intensifier. */
    static final Quantity<Volume> STROKE_VOLUME = Kind.VOLUME.of(1e-4);

    /** Ripple and strokes depend on the stroke only, not on the area ratio. */
    private static final double ANY_AREA_RATIO = 20;

    @Option(names = "--plungers", paramLabel = "<number>", description = "Plungers of a direct-drive pump. Default: 3.")
    private int plungers = 3;

    @Option(
            names = "--speed",
            converter = Typed.Frequency.class,
            paramLabel = "<speed>",
            description = "Speed of the crank of a direct-drive pump. Default: 600 1/min.")
    private Quantity<Frequency> speed = Kind.FREQUENCY.of(10);

    @Option(
            names = "--rod-ratio",
            paramLabel = "<ratio>",
            description = "Radius of the crank over length of the rod. Default: 0.2 (common practice, no source).")
    private double rodRatio = 0.2;

    @Option(
            names = "--reversal-time",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Reversal time of an intensifier: neither side delivers. Default: 0.03 s.")
    private Quantity<Time> reversalTime = Measures.seconds(0.03);

    DirectDrivePump directDrive(Quantity<Volume> strokeVolume, double deadVolume) {
        return DirectDrivePump.of(plungers, strokeVolume, speed)
                .withRodRatio(rodRatio)
                .withDeadVolume(deadVolume);
    }

    Intensifier intensifier(Quantity<Volume> strokeVolume) {
        return intensifier(strokeVolume, reversalTime);
    }

    static Intensifier intensifier(Quantity<Volume> strokeVolume, Quantity<Time> reversalTime) {
        return Intensifier.of(ANY_AREA_RATIO, strokeVolume).withReversalTime(reversalTime);
    }

    static Attenuator steelAttenuator(Quantity<Volume> volume, double diameterRatio) {
        return Attenuator.of(volume).withDiameterRatio(diameterRatio, STEEL_MODULUS, STEEL_POISSON_RATIO);
    }
}
