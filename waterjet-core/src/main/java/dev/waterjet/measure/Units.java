package dev.waterjet.measure;

import static javax.measure.MetricPrefix.GIGA;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;

import java.util.Objects;
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
import tech.units.indriya.function.AddConverter;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.unit.TransformedUnit;

/**
 * Units of the trade, metric and US, each with its exact factor. They are JSR-385 units of the unit library and equal to its
 * own where it has them. {@link QuantityText} reads further units, such as {@code cm}, {@code thou} or {@code N/mm2}.
 *
 * <p>Sources of the factors: the SI brochure (BIPM, 9th edition, 2019) for metric units; NIST Special Publication 811
 * (2008), appendix B, for inch, foot, pound, pound-force, US gallon and horsepower.
 */
public final class Units {

    /** Declared first, for the constants below enter it. */
    static final UnitTable TABLE = new UnitTable();

    /** Metre. */
    public static final Unit<Length> METRE = TABLE.si(Kind.LENGTH, "m");

    /** Millimetre, 1/1000 m. */
    public static final Unit<Length> MILLIMETRE = TABLE.unit(Kind.LENGTH, "mm", MILLI);

    /** Micrometre, 1e-6 m. */
    public static final Unit<Length> MICROMETRE = TABLE.unit(Kind.LENGTH, "µm", MICRO);

    /** International inch, exactly 0.0254 m. */
    public static final Unit<Length> INCH = TABLE.unit(Kind.LENGTH, "in", 254, 10_000);

    /** International foot, exactly 0.3048 m. */
    public static final Unit<Length> FOOT = TABLE.unit(Kind.LENGTH, "ft", 3048, 10_000);

    /** Square metre. */
    public static final Unit<Area> SQUARE_METRE = TABLE.si(Kind.AREA, "m2");

    /** Square millimetre, 1e-6 m2. */
    public static final Unit<Area> SQUARE_MILLIMETRE = TABLE.unit(Kind.AREA, "mm2", 1, 1_000_000);

    /** Cubic metre. */
    public static final Unit<Volume> CUBIC_METRE = TABLE.si(Kind.VOLUME, "m3");

    /** Litre, 1e-3 m3. */
    public static final Unit<Volume> LITRE = TABLE.unit(Kind.VOLUME, "L", 1, 1000);

    /** Cubic millimetre, 1e-9 m3. */
    public static final Unit<Volume> CUBIC_MILLIMETRE = TABLE.unit(Kind.VOLUME, "mm3", 1, 1_000_000_000);

    /** US gallon, exactly 231 cubic inches. */
    public static final Unit<Volume> US_GALLON = TABLE.unit(Kind.VOLUME, "gal", 3_785_411_784L, 1_000_000_000_000L);

    /** Second. */
    public static final Unit<Time> SECOND = TABLE.si(Kind.TIME, "s");

    /** Minute, 60 s. */
    public static final Unit<Time> MINUTE = TABLE.unit(Kind.TIME, "min", 60, 1);

    /** Hour, 3600 s. */
    public static final Unit<Time> HOUR = TABLE.unit(Kind.TIME, "h", 3600, 1);

    /** Hertz, one event a second. */
    public static final Unit<Frequency> HERTZ = TABLE.si(Kind.FREQUENCY, "Hz");

    /** Events a minute: strokes of a pump, turns of a crank. */
    public static final Unit<Frequency> PER_MINUTE = TABLE.unit(Kind.FREQUENCY, "1/min", 1, 60);

    /** Metre per second. */
    public static final Unit<Speed> METRE_PER_SECOND = TABLE.si(Kind.SPEED, "m/s");

    /** Millimetre per second, 1e-3 m/s. */
    public static final Unit<Speed> MILLIMETRE_PER_SECOND = TABLE.unit(Kind.SPEED, "mm/s", 1, 1000);

    /** Millimetre per minute, 1/60000 m/s: the trade unit of feed rate. */
    public static final Unit<Speed> MILLIMETRE_PER_MINUTE = TABLE.unit(Kind.SPEED, "mm/min", 1, 60_000);

    /** Metre per minute. */
    public static final Unit<Speed> METRE_PER_MINUTE = TABLE.unit(Kind.SPEED, "m/min", 1, 60);

    /** Inch per minute, exactly 0.0254/60 m/s. */
    public static final Unit<Speed> INCH_PER_MINUTE = TABLE.unit(Kind.SPEED, "in/min", 254, 600_000);

    /** Foot per second, exactly 0.3048 m/s. */
    public static final Unit<Speed> FOOT_PER_SECOND = TABLE.unit(Kind.SPEED, "ft/s", 3048, 10_000);

    /** Micrometre per hour: growth of a bore by wear. */
    public static final Unit<Speed> MICROMETRE_PER_HOUR = TABLE.unit(Kind.SPEED, "µm/h", 1, 3_600_000_000L);

    /** Metre per square second. */
    public static final Unit<Acceleration> METRE_PER_SQUARE_SECOND = TABLE.si(Kind.ACCELERATION, "m/s2");

    /** Millimetre per square second. */
    public static final Unit<Acceleration> MILLIMETRE_PER_SQUARE_SECOND =
            TABLE.unit(Kind.ACCELERATION, "mm/s2", 1, 1000);

    /** Metre per cubic second. */
    public static final Unit<Jerk> METRE_PER_CUBIC_SECOND = TABLE.si(Kind.JERK, "m/s3");

    /** Millimetre per cubic second. */
    public static final Unit<Jerk> MILLIMETRE_PER_CUBIC_SECOND = TABLE.unit(Kind.JERK, "mm/s3", 1, 1000);

    /** Radian. */
    public static final Unit<Angle> RADIAN = TABLE.si(Kind.ANGLE, "rad");

    /** Degree of arc, pi/180 rad. */
    public static final Unit<Angle> DEGREE =
            TABLE.add(Kind.ANGLE, "°", MultiplyConverter.of(Math.PI / 180), Scale.ofLine(Math.PI / 180, 0));

    /** Radian per second. */
    public static final Unit<AngularSpeed> RADIAN_PER_SECOND = TABLE.si(Kind.ANGULAR_SPEED, "rad/s");

    /** Degree of arc per second, pi/180 rad/s. */
    public static final Unit<AngularSpeed> DEGREE_PER_SECOND =
            TABLE.add(Kind.ANGULAR_SPEED, "°/s", MultiplyConverter.of(Math.PI / 180), Scale.ofLine(Math.PI / 180, 0));

    /** Radian per square second. */
    public static final Unit<AngularAcceleration> RADIAN_PER_SQUARE_SECOND =
            TABLE.si(Kind.ANGULAR_ACCELERATION, "rad/s2");

    /** Degree of arc per square second, pi/180 rad/s2. */
    public static final Unit<AngularAcceleration> DEGREE_PER_SQUARE_SECOND = TABLE.add(
            Kind.ANGULAR_ACCELERATION, "°/s2", MultiplyConverter.of(Math.PI / 180), Scale.ofLine(Math.PI / 180, 0));

    /** Kilogram. */
    public static final Unit<Mass> KILOGRAM = TABLE.si(Kind.MASS, "kg");

    /** Gram, 1e-3 kg. */
    public static final Unit<Mass> GRAM = TABLE.unit(Kind.MASS, "g", 1, 1000);

    /** Tonne, 1000 kg. */
    public static final Unit<Mass> TONNE = TABLE.unit(Kind.MASS, "t", 1000, 1);

    /** Avoirdupois pound, exactly 0.45359237 kg. */
    public static final Unit<Mass> POUND = TABLE.unit(Kind.MASS, "lb", 45_359_237, 100_000_000);

    /** Newton. */
    public static final Unit<Force> NEWTON = TABLE.si(Kind.FORCE, "N");

    /** Pound-force, exactly 4.4482216152605 N. */
    public static final Unit<Force> POUND_FORCE =
            TABLE.unit(Kind.FORCE, "lbf", 44_482_216_152_605L, 10_000_000_000_000L);

    /** Pascal. */
    public static final Unit<Pressure> PASCAL = TABLE.si(Kind.PRESSURE, "Pa");

    /** Kilopascal, 1000 Pa. */
    public static final Unit<Pressure> KILOPASCAL = TABLE.unit(Kind.PRESSURE, "kPa", KILO);

    /** Megapascal, 1e6 Pa. */
    public static final Unit<Pressure> MEGAPASCAL = TABLE.unit(Kind.PRESSURE, "MPa", MEGA);

    /** Gigapascal, 1e9 Pa. */
    public static final Unit<Pressure> GIGAPASCAL = TABLE.unit(Kind.PRESSURE, "GPa", GIGA);

    /** Bar, exactly 1e5 Pa. */
    public static final Unit<Pressure> BAR = TABLE.unit(Kind.PRESSURE, "bar", 100_000, 1);

    /** Pound-force per square inch, exactly 4.4482216152605 N / (0.0254 m)<sup>2</sup>, about 6894.757 Pa. */
    public static final Unit<Pressure> PSI = TABLE.unit(Kind.PRESSURE, "psi", 44_482_216_152_605L, 6_451_600_000L);

    /** Thousand pound-force per square inch. */
    public static final Unit<Pressure> KSI = TABLE.unit(Kind.PRESSURE, "ksi", 44_482_216_152_605L, 6_451_600);

    /** Kelvin. */
    public static final Unit<Temperature> KELVIN = TABLE.si(Kind.TEMPERATURE, "K");

    /** Degree Celsius, 273.15 K at its zero. */
    public static final Unit<Temperature> CELSIUS =
            TABLE.add(Kind.TEMPERATURE, "°C", new AddConverter(273.15), Scale.ofLine(1, 273.15));

    /** Degree Fahrenheit, 459.67 degrees above absolute zero at its zero. */
    public static final Unit<Temperature> FAHRENHEIT = TABLE.add(
            Kind.TEMPERATURE,
            "°F",
            new TransformedUnit<>(KELVIN, MultiplyConverter.ofRational(5, 9)),
            new AddConverter(459.67),
            Scale.ofLine(5 / 9.0, 459.67 * 5 / 9));

    /** Watt. */
    public static final Unit<Power> WATT = TABLE.si(Kind.POWER, "W");

    /** Kilowatt, 1000 W. */
    public static final Unit<Power> KILOWATT = TABLE.unit(Kind.POWER, "kW", KILO);

    /** Mechanical horsepower, exactly 550 foot pound-force per second, about 745.70 W. */
    public static final Unit<Power> HORSEPOWER =
            TABLE.unit(Kind.POWER, "hp", 37_284_993_579_113_511L, 50_000_000_000_000L);

    /** Joule. */
    public static final Unit<Energy> JOULE = TABLE.si(Kind.ENERGY, "J");

    /** Kilojoule, 1000 J. */
    public static final Unit<Energy> KILOJOULE = TABLE.unit(Kind.ENERGY, "kJ", KILO);

    /** Kilowatt hour, 3.6e6 J. */
    public static final Unit<Energy> KILOWATT_HOUR = TABLE.unit(Kind.ENERGY, "kWh", 3_600_000, 1);

    /** Kilogram per second. */
    public static final Unit<MassFlow> KILOGRAM_PER_SECOND = TABLE.si(Kind.MASS_FLOW, "kg/s");

    /** Gram per minute, 1/60000 kg/s: the trade unit of abrasive flow rate. */
    public static final Unit<MassFlow> GRAM_PER_MINUTE = TABLE.unit(Kind.MASS_FLOW, "g/min", 1, 60_000);

    /** Gram per second. */
    public static final Unit<MassFlow> GRAM_PER_SECOND = TABLE.unit(Kind.MASS_FLOW, "g/s", 1, 1000);

    /** Kilogram per minute. */
    public static final Unit<MassFlow> KILOGRAM_PER_MINUTE = TABLE.unit(Kind.MASS_FLOW, "kg/min", 1, 60);

    /** Kilogram per hour. */
    public static final Unit<MassFlow> KILOGRAM_PER_HOUR = TABLE.unit(Kind.MASS_FLOW, "kg/h", 1, 3600);

    /** Pound per minute. */
    public static final Unit<MassFlow> POUND_PER_MINUTE =
            TABLE.unit(Kind.MASS_FLOW, "lb/min", 45_359_237, 6_000_000_000L);

    /** Cubic metre per second. */
    public static final Unit<VolumeFlow> CUBIC_METRE_PER_SECOND = TABLE.si(Kind.VOLUME_FLOW, "m3/s");

    /** Litre per minute, 1/60000 m3/s. */
    public static final Unit<VolumeFlow> LITRE_PER_MINUTE = TABLE.unit(Kind.VOLUME_FLOW, "L/min", 1, 60_000);

    /** US gallon per minute. */
    public static final Unit<VolumeFlow> GALLON_PER_MINUTE =
            TABLE.unit(Kind.VOLUME_FLOW, "gpm", 3_785_411_784L, 60_000_000_000_000L);

    /** Kilogram per cubic metre. */
    public static final Unit<Density> KILOGRAM_PER_CUBIC_METRE = TABLE.si(Kind.DENSITY, "kg/m3");

    /** Gram per cubic centimetre, 1000 kg/m3. */
    public static final Unit<Density> GRAM_PER_CUBIC_CENTIMETRE = TABLE.unit(Kind.DENSITY, "g/cm3", 1000, 1);

    /** Pascal second. */
    public static final Unit<DynamicViscosity> PASCAL_SECOND = TABLE.si(Kind.DYNAMIC_VISCOSITY, "Pa s");

    /** Millipascal second, one centipoise. */
    public static final Unit<DynamicViscosity> MILLIPASCAL_SECOND =
            TABLE.unit(Kind.DYNAMIC_VISCOSITY, "mPa s", 1, 1000);

    /** Joule per kilogram. */
    public static final Unit<SpecificEnergy> JOULE_PER_KILOGRAM = TABLE.si(Kind.SPECIFIC_ENERGY, "J/kg");

    /** Kilojoule per kilogram. */
    public static final Unit<SpecificEnergy> KILOJOULE_PER_KILOGRAM =
            TABLE.unit(Kind.SPECIFIC_ENERGY, "kJ/kg", 1000, 1);

    /** Joule per kilogram and kelvin. */
    public static final Unit<SpecificHeat> JOULE_PER_KILOGRAM_KELVIN = TABLE.si(Kind.SPECIFIC_HEAT, "J/(kg K)");

    /** Kilojoule per kilogram and kelvin. */
    public static final Unit<SpecificHeat> KILOJOULE_PER_KILOGRAM_KELVIN =
            TABLE.unit(Kind.SPECIFIC_HEAT, "kJ/(kg K)", 1000, 1);

    /** Joule per cubic metre. */
    public static final Unit<EnergyDensity> JOULE_PER_CUBIC_METRE = TABLE.si(Kind.ENERGY_DENSITY, "J/m3");

    /** Joule per cubic millimetre, 1e9 J/m3. */
    public static final Unit<EnergyDensity> JOULE_PER_CUBIC_MILLIMETRE =
            TABLE.unit(Kind.ENERGY_DENSITY, "J/mm3", 1_000_000_000, 1);

    /** One per pascal. */
    public static final Unit<Compressibility> PER_PASCAL = TABLE.si(Kind.COMPRESSIBILITY, "1/Pa");

    /** One per gigapascal. */
    public static final Unit<Compressibility> PER_GIGAPASCAL =
            TABLE.unit(Kind.COMPRESSIBILITY, "1/GPa", 1, 1_000_000_000);

    /** One per kelvin. */
    public static final Unit<ThermalExpansion> PER_KELVIN = TABLE.si(Kind.THERMAL_EXPANSION, "1/K");

    /** Newton per metre. */
    public static final Unit<SurfaceTension> NEWTON_PER_METRE = TABLE.si(Kind.SURFACE_TENSION, "N/m");

    /** Millinewton per metre. */
    public static final Unit<SurfaceTension> MILLINEWTON_PER_METRE = TABLE.unit(Kind.SURFACE_TENSION, "mN/m", 1, 1000);

    /** One, the unit of a ratio. */
    public static final Unit<Dimensionless> ONE = TABLE.si(Kind.RATIO, "");

    /** Percent, 1/100. */
    public static final Unit<Dimensionless> PERCENT = TABLE.unit(Kind.RATIO, "%", 1, 100);

    private Units() {}

    /**
     * Returns the symbol of a unit, as the library prints and reads it.
     *
     * @param unit any unit
     * @return the symbol, such as {@code "mm/min"} or {@code "°C"}; for a unit unknown to the library, its own text
     */
    public static String symbol(Unit<?> unit) {
        Objects.requireNonNull(unit, "unit");
        UnitTable.Entry entry = UnitTable.find(unit);
        return entry != null ? entry.symbol() : unit.toString();
    }

    /**
     * Returns a unit's symbol in the letters of a column heading, such as {@code "mm_per_min"}, {@code "um"} or
     * {@code "J_per_kg_K"}.
     *
     * @param unit any unit
     * @return ASCII letters, digits and underscores
     */
    public static String columnSuffix(Unit<?> unit) {
        return symbol(unit)
                .replace("1/", "per_")
                .replace("/", "_per_")
                .replace("%", "percent")
                .replace("°C", "C")
                .replace("°F", "F")
                .replace("°", "deg")
                .replace("µ", "u")
                .replace("(", "")
                .replace(")", "")
                .replace(' ', '_');
    }

    /**
     * Converts a value from SI to a unit of any kind, for messages and reports.
     *
     * @param si value in SI
     * @param unit the unit
     * @return value in that unit
     */
    public static double fromSi(double si, Unit<?> unit) {
        Objects.requireNonNull(unit, "unit");
        UnitTable.Entry entry = UnitTable.find(unit);
        return entry != null ? entry.scale().fromSi(si) : unit.getSystemUnit().equals(unit) ? si : foreign(si, unit);
    }

    /**
     * Converts a difference of two values from SI to a unit of any kind: a standard uncertainty, a rise of temperature.
     *
     * @param si difference in SI
     * @param unit the unit
     * @return difference in that unit, which no offset of the unit changes
     */
    public static double differenceFromSi(double si, Unit<?> unit) {
        Objects.requireNonNull(unit, "unit");
        UnitTable.Entry entry = UnitTable.find(unit);
        return entry != null ? entry.scale().differenceFromSi(si) : fromSi(si, unit) - fromSi(0, unit);
    }

    private static double foreign(double si, Unit<?> unit) {
        @SuppressWarnings({"unchecked", "rawtypes"})
        double value = ((Unit) unit.getSystemUnit()).getConverterTo(unit).convert(si);
        return value;
    }
}
