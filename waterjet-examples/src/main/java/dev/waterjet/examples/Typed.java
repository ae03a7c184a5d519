package dev.waterjet.examples;

import dev.waterjet.examples.drawing.LayerRule;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.quality.CutQuality;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Converters from typed text to types of the library. The singular reads one quantity, the plural one quantity or a range
 * such as {@code "50 MPa..600 MPa step 50 MPa"}.
 */
final class Typed {

    private Typed() {}

    /** Converter whose error becomes picocli's, which adds the name of the option. */
    abstract static class Checked<T> implements ITypeConverter<T> {

        @Override
        public final T convert(String text) {
            try {
                return read(text);
            } catch (WaterjetException e) {
                throw new TypeConversionException(e.getMessage());
            }
        }

        abstract T read(String text);
    }

    private abstract static class One<Q extends Quantity<Q>> extends Checked<Quantity<Q>> {

        private final Kind<Q> kind;

        One(Kind<Q> kind) {
            this.kind = kind;
        }

        @Override
        Quantity<Q> read(String text) {
            return kind.parse(text);
        }
    }

    private abstract static class Many<Q extends Quantity<Q>> extends Checked<QuantityArray<Q>> {

        private final Kind<Q> kind;

        Many(Kind<Q> kind) {
            this.kind = kind;
        }

        @Override
        QuantityArray<Q> read(String text) {
            return QuantityArray.parse(kind, text);
        }
    }

    /** A length. */
    static final class Length extends One<javax.measure.quantity.Length> {
        Length() {
            super(Kind.LENGTH);
        }
    }

    /** A range, or one length. */
    static final class Lengths extends Many<javax.measure.quantity.Length> {
        Lengths() {
            super(Kind.LENGTH);
        }
    }

    /** A pressure. */
    static final class Pressure extends One<javax.measure.quantity.Pressure> {
        Pressure() {
            super(Kind.PRESSURE);
        }
    }

    /** A range, or one pressure. */
    static final class Pressures extends Many<javax.measure.quantity.Pressure> {
        Pressures() {
            super(Kind.PRESSURE);
        }
    }

    /** A speed. */
    static final class Speed extends One<javax.measure.quantity.Speed> {
        Speed() {
            super(Kind.SPEED);
        }
    }

    /** A range, or one speed. */
    static final class Speeds extends Many<javax.measure.quantity.Speed> {
        Speeds() {
            super(Kind.SPEED);
        }
    }

    /** A temperature. */
    static final class Temperature extends One<javax.measure.quantity.Temperature> {
        Temperature() {
            super(Kind.TEMPERATURE);
        }
    }

    /** A range, or one temperature. */
    static final class Temperatures extends Many<javax.measure.quantity.Temperature> {
        Temperatures() {
            super(Kind.TEMPERATURE);
        }
    }

    /** A power. */
    static final class Power extends One<javax.measure.quantity.Power> {
        Power() {
            super(Kind.POWER);
        }
    }

    /** A range, or one power. */
    static final class Powers extends Many<javax.measure.quantity.Power> {
        Powers() {
            super(Kind.POWER);
        }
    }

    /** A time. */
    static final class Time extends One<javax.measure.quantity.Time> {
        Time() {
            super(Kind.TIME);
        }
    }

    /** A range, or one time. */
    static final class Times extends Many<javax.measure.quantity.Time> {
        Times() {
            super(Kind.TIME);
        }
    }

    /** An angle. */
    static final class Angle extends One<javax.measure.quantity.Angle> {
        Angle() {
            super(Kind.ANGLE);
        }
    }

    /** A range, or one angle. */
    static final class Angles extends Many<javax.measure.quantity.Angle> {
        Angles() {
            super(Kind.ANGLE);
        }
    }

    /** A frequency. */
    static final class Frequency extends One<javax.measure.quantity.Frequency> {
        Frequency() {
            super(Kind.FREQUENCY);
        }
    }

    /** A volume. */
    static final class Volume extends One<javax.measure.quantity.Volume> {
        Volume() {
            super(Kind.VOLUME);
        }
    }

    /** A range, or one volume. */
    static final class Volumes extends Many<javax.measure.quantity.Volume> {
        Volumes() {
            super(Kind.VOLUME);
        }
    }

    /** An acceleration. */
    static final class Acceleration extends One<javax.measure.quantity.Acceleration> {
        Acceleration() {
            super(Kind.ACCELERATION);
        }
    }

    /** Reads a jerk. */
    static final class Jerk extends One<dev.waterjet.measure.Jerk> {
        Jerk() {
            super(Kind.JERK);
        }
    }

    /** A range, or one acceleration. */
    static final class Accelerations extends Many<javax.measure.quantity.Acceleration> {
        Accelerations() {
            super(Kind.ACCELERATION);
        }
    }

    /** An angular speed. */
    static final class AngularSpeed extends One<dev.waterjet.measure.AngularSpeed> {
        AngularSpeed() {
            super(Kind.ANGULAR_SPEED);
        }
    }

    /** An angular acceleration. */
    static final class AngularAcceleration extends One<dev.waterjet.measure.AngularAcceleration> {
        AngularAcceleration() {
            super(Kind.ANGULAR_ACCELERATION);
        }
    }

    /** A density. */
    static final class Density extends One<dev.waterjet.measure.Density> {
        Density() {
            super(Kind.DENSITY);
        }
    }

    /** A range, or one density. */
    static final class Densities extends Many<dev.waterjet.measure.Density> {
        Densities() {
            super(Kind.DENSITY);
        }
    }

    /** A mass flow. */
    static final class MassFlow extends One<dev.waterjet.measure.MassFlow> {
        MassFlow() {
            super(Kind.MASS_FLOW);
        }
    }

    /** A range, or one mass flow. */
    static final class MassFlows extends Many<dev.waterjet.measure.MassFlow> {
        MassFlows() {
            super(Kind.MASS_FLOW);
        }
    }

    /** A volume flow. */
    static final class VolumeFlow extends One<dev.waterjet.measure.VolumeFlow> {
        VolumeFlow() {
            super(Kind.VOLUME_FLOW);
        }
    }

    /** A range, or one volume flow. */
    static final class VolumeFlows extends Many<dev.waterjet.measure.VolumeFlow> {
        VolumeFlows() {
            super(Kind.VOLUME_FLOW);
        }
    }

    /** A sieve number such as {@code 80}, or a FEPA designation such as {@code F80}. */
    static final class Grain extends Checked<Mesh> {
        @Override
        Mesh read(String text) {
            String digits = text.strip().toUpperCase(Locale.ROOT);
            boolean isFepa = digits.startsWith("F");
            try {
                int number = Integer.parseInt(isFepa ? digits.substring(1) : digits);
                return isFepa ? Mesh.fepa(number) : Mesh.of(number);
            } catch (NumberFormatException e) {
                throw new TextException("\"" + text + "\" is not a mesh size; write a sieve number such as 80, or F80");
            }
        }
    }

    /** A material of a catalogue, by its id or a part of it. */
    static final class Catalogued extends Checked<Material> {

        private final Materials materials;

        /** Material of the standard catalogue. */
        Catalogued() {
            this(Materials.standard());
        }

        Catalogued(Materials materials) {
            this.materials = materials;
        }

        @Override
        Material read(String text) {
            return materials.get(text);
        }
    }

    /** Cut quality. */
    static final class Face extends Checked<CutQuality> {
        @Override
        CutQuality read(String text) {
            return CutQuality.parse(text);
        }
    }

    /** Use of a layer, such as {@code FINE=fine}. */
    static final class Layer extends Checked<LayerRule> {
        @Override
        LayerRule read(String text) {
            return LayerRule.parse(text);
        }
    }

    /** Length of one unit of a drawing: a length, a unit alone, or a fraction such as {@code 1/72 in}. */
    static final class DrawingUnit extends Checked<Quantity<javax.measure.quantity.Length>> {

        private static final Pattern FRACTION = Pattern.compile("\\s*1\\s*/\\s*([0-9.]+)\\s*(\\D.*)");

        @Override
        Quantity<javax.measure.quantity.Length> read(String text) {
            Matcher fraction = FRACTION.matcher(text);
            if (fraction.matches()) {
                double whole = Kind.LENGTH.si(Kind.LENGTH.parse("1 " + fraction.group(2)));
                double parts = Kind.RATIO.si(Kind.RATIO.parse(fraction.group(1)));
                return Kind.LENGTH.of(
                        whole / Require.positive("number of units in " + fraction.group(2), parts, Units.ONE));
            }
            return Kind.LENGTH.parse(Character.isLetter(text.strip().codePointAt(0)) ? "1 " + text : text);
        }
    }
}
