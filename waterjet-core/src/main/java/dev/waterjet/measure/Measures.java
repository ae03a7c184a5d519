package dev.waterjet.measure;

import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;

/**
 * Short factories of quantities, for static import: {@code millimetres(0.25)}, {@code megapascals(380)}.
 * A unit that has no method here is reached by {@link Kind#parse(String)} or by Indriya's {@code Quantities}. A number
 * that is not finite is refused with a {@link DomainException}.
 */
public final class Measures {

    private Measures() {}

    /**
     * A length in metre.
     *
     * @param value number of the unit metre
     * @return the quantity
     */
    public static Quantity<Length> metres(double value) {
        return Kind.LENGTH.number(value, Units.METRE);
    }

    /**
     * A length in millimetre.
     *
     * @param value number of the unit millimetre
     * @return the quantity
     */
    public static Quantity<Length> millimetres(double value) {
        return Kind.LENGTH.number(value, Units.MILLIMETRE);
    }

    /**
     * A length in micrometre.
     *
     * @param value number of the unit micrometre
     * @return the quantity
     */
    public static Quantity<Length> micrometres(double value) {
        return Kind.LENGTH.number(value, Units.MICROMETRE);
    }

    /**
     * A length in inch.
     *
     * @param value number of the unit inch
     * @return the quantity
     */
    public static Quantity<Length> inches(double value) {
        return Kind.LENGTH.number(value, Units.INCH);
    }

    /**
     * A time in second.
     *
     * @param value number of the unit second
     * @return the quantity
     */
    public static Quantity<Time> seconds(double value) {
        return Kind.TIME.number(value, Units.SECOND);
    }

    /**
     * A time in minute.
     *
     * @param value number of the unit minute
     * @return the quantity
     */
    public static Quantity<Time> minutes(double value) {
        return Kind.TIME.number(value, Units.MINUTE);
    }

    /**
     * A time in hour.
     *
     * @param value number of the unit hour
     * @return the quantity
     */
    public static Quantity<Time> hours(double value) {
        return Kind.TIME.number(value, Units.HOUR);
    }

    /**
     * A speed in metre per second.
     *
     * @param value number of the unit metre per second
     * @return the quantity
     */
    public static Quantity<Speed> metresPerSecond(double value) {
        return Kind.SPEED.number(value, Units.METRE_PER_SECOND);
    }

    /**
     * A speed in millimetre per minute.
     *
     * @param value number of the unit millimetre per minute
     * @return the quantity
     */
    public static Quantity<Speed> millimetresPerMinute(double value) {
        return Kind.SPEED.number(value, Units.MILLIMETRE_PER_MINUTE);
    }

    /**
     * A speed in inch per minute.
     *
     * @param value number of the unit inch per minute
     * @return the quantity
     */
    public static Quantity<Speed> inchesPerMinute(double value) {
        return Kind.SPEED.number(value, Units.INCH_PER_MINUTE);
    }

    /**
     * An acceleration in metre per square second.
     *
     * @param value number of the unit metre per square second
     * @return the quantity
     */
    public static Quantity<Acceleration> metresPerSquareSecond(double value) {
        return Kind.ACCELERATION.number(value, Units.METRE_PER_SQUARE_SECOND);
    }

    /**
     * An angle in degree.
     *
     * @param value number of the unit degree
     * @return the quantity
     */
    public static Quantity<Angle> degrees(double value) {
        return Kind.ANGLE.number(value, Units.DEGREE);
    }

    /**
     * A mass in kilogram.
     *
     * @param value number of the unit kilogram
     * @return the quantity
     */
    public static Quantity<Mass> kilograms(double value) {
        return Kind.MASS.number(value, Units.KILOGRAM);
    }

    /**
     * A force in newton.
     *
     * @param value number of the unit newton
     * @return the quantity
     */
    public static Quantity<Force> newtons(double value) {
        return Kind.FORCE.number(value, Units.NEWTON);
    }

    /**
     * A pressure in pascal.
     *
     * @param value number of the unit pascal
     * @return the quantity
     */
    public static Quantity<Pressure> pascals(double value) {
        return Kind.PRESSURE.number(value, Units.PASCAL);
    }

    /**
     * A pressure in megapascal.
     *
     * @param value number of the unit megapascal
     * @return the quantity
     */
    public static Quantity<Pressure> megapascals(double value) {
        return Kind.PRESSURE.number(value, Units.MEGAPASCAL);
    }

    /**
     * A pressure in bar.
     *
     * @param value number of the unit bar
     * @return the quantity
     */
    public static Quantity<Pressure> bars(double value) {
        return Kind.PRESSURE.number(value, Units.BAR);
    }

    /**
     * A pressure in psi.
     *
     * @param value number of the unit psi
     * @return the quantity
     */
    public static Quantity<Pressure> psi(double value) {
        return Kind.PRESSURE.number(value, Units.PSI);
    }

    /**
     * A pressure in ksi.
     *
     * @param value number of the unit ksi
     * @return the quantity
     */
    public static Quantity<Pressure> ksi(double value) {
        return Kind.PRESSURE.number(value, Units.KSI);
    }

    /**
     * A temperature in kelvin.
     *
     * @param value number of the unit kelvin
     * @return the quantity
     */
    public static Quantity<Temperature> kelvins(double value) {
        return Kind.TEMPERATURE.number(value, Units.KELVIN);
    }

    /**
     * A temperature in celsius.
     *
     * @param value number of the unit celsius
     * @return the quantity
     */
    public static Quantity<Temperature> celsius(double value) {
        return Kind.TEMPERATURE.number(value, Units.CELSIUS);
    }

    /**
     * A power in watt.
     *
     * @param value number of the unit watt
     * @return the quantity
     */
    public static Quantity<Power> watts(double value) {
        return Kind.POWER.number(value, Units.WATT);
    }

    /**
     * A power in kilowatt.
     *
     * @param value number of the unit kilowatt
     * @return the quantity
     */
    public static Quantity<Power> kilowatts(double value) {
        return Kind.POWER.number(value, Units.KILOWATT);
    }

    /**
     * A power in horsepower.
     *
     * @param value number of the unit horsepower
     * @return the quantity
     */
    public static Quantity<Power> horsepower(double value) {
        return Kind.POWER.number(value, Units.HORSEPOWER);
    }

    /**
     * A mass flow in kilogram per second.
     *
     * @param value number of the unit kilogram per second
     * @return the quantity
     */
    public static Quantity<MassFlow> kilogramsPerSecond(double value) {
        return Kind.MASS_FLOW.number(value, Units.KILOGRAM_PER_SECOND);
    }

    /**
     * A mass flow in gram per minute.
     *
     * @param value number of the unit gram per minute
     * @return the quantity
     */
    public static Quantity<MassFlow> gramsPerMinute(double value) {
        return Kind.MASS_FLOW.number(value, Units.GRAM_PER_MINUTE);
    }

    /**
     * A mass flow in pound per minute.
     *
     * @param value number of the unit pound per minute
     * @return the quantity
     */
    public static Quantity<MassFlow> poundsPerMinute(double value) {
        return Kind.MASS_FLOW.number(value, Units.POUND_PER_MINUTE);
    }

    /**
     * A volume flow in litre per minute.
     *
     * @param value number of the unit litre per minute
     * @return the quantity
     */
    public static Quantity<VolumeFlow> litresPerMinute(double value) {
        return Kind.VOLUME_FLOW.number(value, Units.LITRE_PER_MINUTE);
    }

    /**
     * A volume flow in gallon per minute.
     *
     * @param value number of the unit gallon per minute
     * @return the quantity
     */
    public static Quantity<VolumeFlow> gallonsPerMinute(double value) {
        return Kind.VOLUME_FLOW.number(value, Units.GALLON_PER_MINUTE);
    }

    /**
     * A density in kilogram per cubic metre.
     *
     * @param value number of the unit kilogram per cubic metre
     * @return the quantity
     */
    public static Quantity<Density> kilogramsPerCubicMetre(double value) {
        return Kind.DENSITY.number(value, Units.KILOGRAM_PER_CUBIC_METRE);
    }

    /**
     * An energy density in joule per cubic millimetre.
     *
     * @param value number of the unit joule per cubic millimetre
     * @return the quantity
     */
    public static Quantity<EnergyDensity> joulesPerCubicMillimetre(double value) {
        return Kind.ENERGY_DENSITY.number(value, Units.JOULE_PER_CUBIC_MILLIMETRE);
    }

    /**
     * A ratio in parts of one.
     *
     * @param value number of the unit one
     * @return the quantity
     */
    public static Quantity<Dimensionless> ratio(double value) {
        return Kind.RATIO.number(value, Units.ONE);
    }

    /**
     * A ratio in percent.
     *
     * @param value number of the unit percent
     * @return the quantity
     */
    public static Quantity<Dimensionless> percent(double value) {
        return Kind.RATIO.number(value, Units.PERCENT);
    }
}
