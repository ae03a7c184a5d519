package dev.waterjet.measure;

import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Force;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import static javax.measure.MetricPrefix.GIGA;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;
import tech.units.indriya.function.AddConverter;
import tech.units.indriya.function.MultiplyConverter;

/**
 * Units of the trade, metric and US, each with its exact factor. They are JSR-385 units like any other; what is special
 * about them is that the library knows their symbols and factors without asking.
 *
 * <p>Sources of the factors: the SI brochure (BIPM, 9th edition, 2019) for metric units; NIST Special Publication 811
 * (2008), appendix B, for inch, foot, pound, pound-force, US gallon and horsepower.
 */
public final class Units {

    private static final Rational PSI_FACTOR =
            Rational.of("4.4482216152605").over(Rational.of("0.0254").times(Rational.of("0.0254")));

    /** Metre. */
    public static final Unit<Length> METRE = Kind.LENGTH.siUnit();

    /** Millimetre, 1/1000 m. */
    public static final Unit<Length> MILLIMETRE = MILLI(Kind.LENGTH.siUnit());

    /** Micrometre, 1e-6 m. */
    public static final Unit<Length> MICROMETRE = MICRO(Kind.LENGTH.siUnit());

    /** International inch, exactly 0.0254 m. */
    public static final Unit<Length> INCH = unit(Kind.LENGTH, Rational.of("0.0254"));

    /** International foot, exactly 0.3048 m. */
    public static final Unit<Length> FOOT = unit(Kind.LENGTH, Rational.of("0.3048"));

    /** Square metre. */
    public static final Unit<Area> SQUARE_METRE = Kind.AREA.siUnit();

    /** Square millimetre, 1e-6 m2. */
    public static final Unit<Area> SQUARE_MILLIMETRE = unit(Kind.AREA, Rational.of("1", "1000000"));

    /** Cubic metre. */
    public static final Unit<Volume> CUBIC_METRE = Kind.VOLUME.siUnit();

    /** Litre, 1e-3 m3. */
    public static final Unit<Volume> LITRE = unit(Kind.VOLUME, Rational.of("1", "1000"));

    /** Cubic millimetre, 1e-9 m3. */
    public static final Unit<Volume> CUBIC_MILLIMETRE = unit(Kind.VOLUME, Rational.of("1", "1000000000"));

    /** US gallon, exactly 231 cubic inches. */
    public static final Unit<Volume> US_GALLON = unit(Kind.VOLUME, Rational.of("0.003785411784"));

    /** Second. */
    public static final Unit<Time> SECOND = Kind.TIME.siUnit();

    /** Minute, 60 s. */
    public static final Unit<Time> MINUTE = tech.units.indriya.unit.Units.MINUTE;

    /** Hour, 3600 s. */
    public static final Unit<Time> HOUR = tech.units.indriya.unit.Units.HOUR;

    /** Hertz, one event a second. */
    public static final Unit<Frequency> HERTZ = Kind.FREQUENCY.siUnit();

    /** Events a minute: strokes of a pump, turns of a crank. */
    public static final Unit<Frequency> PER_MINUTE = unit(Kind.FREQUENCY, Rational.of("1", "60"));

    /** Metre per second. */
    public static final Unit<Speed> METRE_PER_SECOND = Kind.SPEED.siUnit();

    /** Millimetre per second, 1e-3 m/s. */
    public static final Unit<Speed> MILLIMETRE_PER_SECOND = unit(Kind.SPEED, Rational.of("1", "1000"));

    /** Millimetre per minute, 1/60000 m/s: the usual unit of traverse speed. */
    public static final Unit<Speed> MILLIMETRE_PER_MINUTE = unit(Kind.SPEED, Rational.of("1", "60000"));

    /** Metre per minute. */
    public static final Unit<Speed> METRE_PER_MINUTE = unit(Kind.SPEED, Rational.of("1", "60"));

    /** Inch per minute, exactly 0.0254/60 m/s. */
    public static final Unit<Speed> INCH_PER_MINUTE = unit(Kind.SPEED, Rational.of("0.0254", "60"));

    /** Foot per second, exactly 0.3048 m/s. */
    public static final Unit<Speed> FOOT_PER_SECOND = unit(Kind.SPEED, Rational.of("0.3048"));

    /** Micrometre per hour: growth of a bore by wear. */
    public static final Unit<Speed> MICROMETRE_PER_HOUR = unit(Kind.SPEED, Rational.of("1", "3600000000"));

    /** Metre per square second. */
    public static final Unit<Acceleration> METRE_PER_SQUARE_SECOND = Kind.ACCELERATION.siUnit();

    /** Millimetre per square second. */
    public static final Unit<Acceleration> MILLIMETRE_PER_SQUARE_SECOND =
            unit(Kind.ACCELERATION, Rational.of("1", "1000"));

    /** Metre per cubic second. */
    public static final Unit<Jerk> METRE_PER_CUBIC_SECOND = Kind.JERK.siUnit();

    /** Millimetre per cubic second. */
    public static final Unit<Jerk> MILLIMETRE_PER_CUBIC_SECOND = unit(Kind.JERK, Rational.of("1", "1000"));

    /** Radian. */
    public static final Unit<Angle> RADIAN = Kind.ANGLE.siUnit();

    /** Degree of arc, pi/180 rad. */
    public static final Unit<Angle> DEGREE =
            Kind.ANGLE.siUnit().multiply(Math.PI).divide(180);

    /** Kilogram. */
    public static final Unit<Mass> KILOGRAM = Kind.MASS.siUnit();

    /** Gram, 1e-3 kg. */
    public static final Unit<Mass> GRAM = tech.units.indriya.unit.Units.GRAM;

    /** Tonne, 1000 kg. */
    public static final Unit<Mass> TONNE = unit(Kind.MASS, Rational.of("1000"));

    /** Avoirdupois pound, exactly 0.45359237 kg. */
    public static final Unit<Mass> POUND = unit(Kind.MASS, Rational.of("0.45359237"));

    /** Newton. */
    public static final Unit<Force> NEWTON = Kind.FORCE.siUnit();

    /** Pound-force, exactly 4.4482216152605 N. */
    public static final Unit<Force> POUND_FORCE = unit(Kind.FORCE, Rational.of("4.4482216152605"));

    /** Pascal. */
    public static final Unit<Pressure> PASCAL = Kind.PRESSURE.siUnit();

    /** Kilopascal, 1000 Pa. */
    public static final Unit<Pressure> KILOPASCAL = KILO(Kind.PRESSURE.siUnit());

    /** Megapascal, 1e6 Pa. */
    public static final Unit<Pressure> MEGAPASCAL = MEGA(Kind.PRESSURE.siUnit());

    /** Gigapascal, 1e9 Pa. */
    public static final Unit<Pressure> GIGAPASCAL = GIGA(Kind.PRESSURE.siUnit());

    /** Bar, exactly 1e5 Pa. */
    public static final Unit<Pressure> BAR = unit(Kind.PRESSURE, Rational.of("100000"));

    /** Pound-force per square inch, exactly 4.4482216152605 N / (0.0254 m)^2, about 6894.757 Pa. */
    public static final Unit<Pressure> PSI = unit(Kind.PRESSURE, PSI_FACTOR);

    /** Thousand pound-force per square inch. */
    public static final Unit<Pressure> KSI = unit(Kind.PRESSURE, PSI_FACTOR.times(Rational.of("1000")));

    /** Kelvin. */
    public static final Unit<Temperature> KELVIN = Kind.TEMPERATURE.siUnit();

    /** Degree Celsius, 273.15 K at its zero. */
    public static final Unit<Temperature> CELSIUS = tech.units.indriya.unit.Units.CELSIUS;

    /** Degree Fahrenheit, 459.67 degrees above absolute zero at its zero. */
    public static final Unit<Temperature> FAHRENHEIT = Kind.TEMPERATURE
            .siUnit()
            .transform(MultiplyConverter.ofRational(5, 9))
            .transform(new AddConverter(459.67));

    /** Watt. */
    public static final Unit<Power> WATT = Kind.POWER.siUnit();

    /** Kilowatt, 1000 W. */
    public static final Unit<Power> KILOWATT = KILO(Kind.POWER.siUnit());

    /** Mechanical horsepower, exactly 550 foot pound-force per second, about 745.70 W. */
    public static final Unit<Power> HORSEPOWER =
            unit(Kind.POWER, Rational.of("550").times(Rational.of("0.3048")).times(Rational.of("4.4482216152605")));

    /** Joule. */
    public static final Unit<Energy> JOULE = Kind.ENERGY.siUnit();

    /** Kilojoule, 1000 J. */
    public static final Unit<Energy> KILOJOULE = KILO(Kind.ENERGY.siUnit());

    /** Kilowatt hour, 3.6e6 J. */
    public static final Unit<Energy> KILOWATT_HOUR = unit(Kind.ENERGY, Rational.of("3600000"));

    /** Kilogram per second. */
    public static final Unit<MassFlow> KILOGRAM_PER_SECOND = Kind.MASS_FLOW.siUnit();

    /** Gram per minute, 1/60000 kg/s: the usual unit of abrasive flow. */
    public static final Unit<MassFlow> GRAM_PER_MINUTE = unit(Kind.MASS_FLOW, Rational.of("1", "60000"));

    /** Gram per second. */
    public static final Unit<MassFlow> GRAM_PER_SECOND = unit(Kind.MASS_FLOW, Rational.of("1", "1000"));

    /** Kilogram per minute. */
    public static final Unit<MassFlow> KILOGRAM_PER_MINUTE = unit(Kind.MASS_FLOW, Rational.of("1", "60"));

    /** Kilogram per hour. */
    public static final Unit<MassFlow> KILOGRAM_PER_HOUR = unit(Kind.MASS_FLOW, Rational.of("1", "3600"));

    /** Pound per minute. */
    public static final Unit<MassFlow> POUND_PER_MINUTE = unit(Kind.MASS_FLOW, Rational.of("0.45359237", "60"));

    /** Cubic metre per second. */
    public static final Unit<VolumeFlow> CUBIC_METRE_PER_SECOND = Kind.VOLUME_FLOW.siUnit();

    /** Litre per minute, 1/60000 m3/s. */
    public static final Unit<VolumeFlow> LITRE_PER_MINUTE = unit(Kind.VOLUME_FLOW, Rational.of("1", "60000"));

    /** US gallon per minute. */
    public static final Unit<VolumeFlow> GALLON_PER_MINUTE =
            unit(Kind.VOLUME_FLOW, Rational.of("0.003785411784", "60"));

    /** Kilogram per cubic metre. */
    public static final Unit<Density> KILOGRAM_PER_CUBIC_METRE = Kind.DENSITY.siUnit();

    /** Gram per cubic centimetre, 1000 kg/m3. */
    public static final Unit<Density> GRAM_PER_CUBIC_CENTIMETRE = unit(Kind.DENSITY, Rational.of("1000"));

    /** Pascal second. */
    public static final Unit<DynamicViscosity> PASCAL_SECOND = Kind.DYNAMIC_VISCOSITY.siUnit();

    /** Millipascal second, one centipoise. */
    public static final Unit<DynamicViscosity> MILLIPASCAL_SECOND =
            unit(Kind.DYNAMIC_VISCOSITY, Rational.of("1", "1000"));

    /** Joule per kilogram. */
    public static final Unit<SpecificEnergy> JOULE_PER_KILOGRAM = Kind.SPECIFIC_ENERGY.siUnit();

    /** Kilojoule per kilogram. */
    public static final Unit<SpecificEnergy> KILOJOULE_PER_KILOGRAM = unit(Kind.SPECIFIC_ENERGY, Rational.of("1000"));

    /** Joule per kilogram and kelvin. */
    public static final Unit<SpecificHeat> JOULE_PER_KILOGRAM_KELVIN = Kind.SPECIFIC_HEAT.siUnit();

    /** Kilojoule per kilogram and kelvin. */
    public static final Unit<SpecificHeat> KILOJOULE_PER_KILOGRAM_KELVIN =
            unit(Kind.SPECIFIC_HEAT, Rational.of("1000"));

    /** Joule per cubic metre. */
    public static final Unit<EnergyDensity> JOULE_PER_CUBIC_METRE = Kind.ENERGY_DENSITY.siUnit();

    /** Joule per cubic millimetre, 1e9 J/m3. */
    public static final Unit<EnergyDensity> JOULE_PER_CUBIC_MILLIMETRE =
            unit(Kind.ENERGY_DENSITY, Rational.of("1000000000"));

    /** One per pascal. */
    public static final Unit<Compressibility> PER_PASCAL = Kind.COMPRESSIBILITY.siUnit();

    /** One per gigapascal. */
    public static final Unit<Compressibility> PER_GIGAPASCAL =
            unit(Kind.COMPRESSIBILITY, Rational.of("1", "1000000000"));

    /** One per kelvin. */
    public static final Unit<ThermalExpansion> PER_KELVIN = Kind.THERMAL_EXPANSION.siUnit();

    /** One, the unit of a ratio. */
    public static final Unit<Dimensionless> ONE = Kind.RATIO.siUnit();

    /** Percent, 1/100. */
    public static final Unit<Dimensionless> PERCENT = tech.units.indriya.unit.Units.PERCENT;

    private Units() {}

    private static <Q extends Quantity<Q>> Unit<Q> unit(Kind<Q> kind, Rational factor) {
        return kind.siUnit().transform(MultiplyConverter.ofRational(factor.numerator(), factor.denominator()));
    }

    /**
     * Symbol that the library prints and reads for a unit.
     *
     * @param unit any unit
     * @return the symbol, such as {@code "mm/min"}; for a unit that is not of this class, whatever the unit says of itself
     */
    public static String symbol(Unit<?> unit) {
        String symbol = UnitTable.symbol(unit);
        return symbol != null ? symbol : unit.toString();
    }

    /**
     * A unit's symbol in the letters of a column heading, such as {@code "mm_per_min"} or {@code "J_per_kg_K"}.
     *
     * @param unit any unit
     * @return letters, digits and underscores
     */
    public static String columnSuffix(Unit<?> unit) {
        return symbol(unit)
                .replace("1/", "per_")
                .replace("/", "_per_")
                .replace("%", "percent")
                .replace("(", "")
                .replace(")", "")
                .replace(' ', '_');
    }

    /**
     * A value in SI, told in a unit of any kind: for messages and reports, where the kind no longer matters.
     *
     * @param si value in SI
     * @param unit unit to tell it in
     * @return value in that unit
     */
    public static double fromSi(double si, Unit<?> unit) {
        Scale<?> scale = UnitTable.scale(unit);
        return scale != null ? scale.fromSi(si) : unit.getSystemUnit().equals(unit) ? si : foreign(si, unit);
    }

    private static double foreign(double si, Unit<?> unit) {
        @SuppressWarnings({"unchecked", "rawtypes"})
        double value = ((Unit) unit.getSystemUnit()).getConverterTo(unit).convert(si);
        return value;
    }

    static Rational psiFactor() {
        return PSI_FACTOR;
    }
}
