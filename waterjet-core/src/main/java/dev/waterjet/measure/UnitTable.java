package dev.waterjet.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;

/** What the library knows of the units of {@link Units}: symbols, other spellings, scales. Read-only once built. */
final class UnitTable {

    private static final IdentityHashMap<Unit<?>, Entry> BY_IDENTITY = new IdentityHashMap<>();
    private static final List<Entry> ORDER = new ArrayList<>();

    static {
        add(Kind.LENGTH, Units.METRE, "m", exact(Rational.of("1")), "metre", "metres", "meter", "meters");
        add(
                Kind.LENGTH,
                Units.MILLIMETRE,
                "mm",
                exact(Rational.of("1", "1000")),
                "millimetre",
                "millimetres",
                "millimeter",
                "millimeters");
        add(
                Kind.LENGTH,
                Units.MICROMETRE,
                "um",
                exact(Rational.of("1", "1000000")),
                "µm",
                "μm",
                "micron",
                "microns",
                "micrometre",
                "micrometres");
        add(Kind.LENGTH, Units.INCH, "in", exact(Rational.of("0.0254")), "inch", "inches", "\"");
        add(Kind.LENGTH, Units.FOOT, "ft", exact(Rational.of("0.3048")), "foot", "feet");
        add(Kind.AREA, Units.SQUARE_METRE, "m2", exact(Rational.of("1")), "m²");
        add(Kind.AREA, Units.SQUARE_MILLIMETRE, "mm2", exact(Rational.of("1", "1000000")), "mm²");
        add(Kind.VOLUME, Units.CUBIC_METRE, "m3", exact(Rational.of("1")), "m³");
        add(Kind.VOLUME, Units.LITRE, "L", exact(Rational.of("1", "1000")), "l", "litre", "litres", "liter", "liters");
        add(Kind.VOLUME, Units.CUBIC_MILLIMETRE, "mm3", exact(Rational.of("1", "1000000000")), "mm³");
        add(Kind.VOLUME, Units.US_GALLON, "gal", exact(Rational.of("0.003785411784")), "gallon", "gallons");
        add(Kind.TIME, Units.SECOND, "s", exact(Rational.of("1")), "sec", "second", "seconds");
        add(Kind.TIME, Units.MINUTE, "min", exact(Rational.of("60")), "minute", "minutes");
        add(Kind.TIME, Units.HOUR, "h", exact(Rational.of("3600")), "hr", "hour", "hours");
        add(Kind.FREQUENCY, Units.HERTZ, "Hz", exact(Rational.of("1")), "1/s");
        add(Kind.FREQUENCY, Units.PER_MINUTE, "1/min", exact(Rational.of("1", "60")), "spm", "rpm", "strokes/min");
        add(Kind.SPEED, Units.METRE_PER_SECOND, "m/s", exact(Rational.of("1")));
        add(Kind.SPEED, Units.MILLIMETRE_PER_SECOND, "mm/s", exact(Rational.of("1", "1000")));
        add(Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, "mm/min", exact(Rational.of("1", "60000")));
        add(Kind.SPEED, Units.METRE_PER_MINUTE, "m/min", exact(Rational.of("1", "60")));
        add(Kind.SPEED, Units.INCH_PER_MINUTE, "in/min", exact(Rational.of("0.0254", "60")), "ipm");
        add(Kind.SPEED, Units.FOOT_PER_SECOND, "ft/s", exact(Rational.of("0.3048")), "fps");
        add(Kind.SPEED, Units.MICROMETRE_PER_HOUR, "um/h", exact(Rational.of("1", "3600000000")), "µm/h", "μm/h");
        add(Kind.ACCELERATION, Units.METRE_PER_SQUARE_SECOND, "m/s2", exact(Rational.of("1")), "m/s²");
        add(Kind.ACCELERATION, Units.MILLIMETRE_PER_SQUARE_SECOND, "mm/s2", exact(Rational.of("1", "1000")), "mm/s²");
        add(Kind.JERK, Units.METRE_PER_CUBIC_SECOND, "m/s3", exact(Rational.of("1")), "m/s³");
        add(Kind.JERK, Units.MILLIMETRE_PER_CUBIC_SECOND, "mm/s3", exact(Rational.of("1", "1000")), "mm/s³");
        add(Kind.ANGLE, Units.RADIAN, "rad", exact(Rational.of("1")), "radian", "radians");
        add(Kind.ANGLE, Units.DEGREE, "deg", line(Math.PI / 180, 0), "°", "degree", "degrees");
        add(Kind.MASS, Units.KILOGRAM, "kg", exact(Rational.of("1")));
        add(Kind.MASS, Units.GRAM, "g", exact(Rational.of("1", "1000")), "gram", "grams");
        add(Kind.MASS, Units.TONNE, "t", exact(Rational.of("1000")), "tonne", "tonnes");
        add(Kind.MASS, Units.POUND, "lb", exact(Rational.of("0.45359237")), "lbs", "pound", "pounds");
        add(Kind.FORCE, Units.NEWTON, "N", exact(Rational.of("1")));
        add(Kind.FORCE, Units.POUND_FORCE, "lbf", exact(Rational.of("4.4482216152605")));
        add(Kind.PRESSURE, Units.PASCAL, "Pa", exact(Rational.of("1")));
        add(Kind.PRESSURE, Units.KILOPASCAL, "kPa", exact(Rational.of("1000")));
        add(Kind.PRESSURE, Units.MEGAPASCAL, "MPa", exact(Rational.of("1000000")));
        add(Kind.PRESSURE, Units.GIGAPASCAL, "GPa", exact(Rational.of("1000000000")));
        add(Kind.PRESSURE, Units.BAR, "bar", exact(Rational.of("100000")));
        add(Kind.PRESSURE, Units.PSI, "psi", exact(Units.psiFactor()));
        add(Kind.PRESSURE, Units.KSI, "ksi", exact(Units.psiFactor().times(Rational.of("1000"))));
        add(Kind.TEMPERATURE, Units.KELVIN, "K", exact(Rational.of("1")));
        add(Kind.TEMPERATURE, Units.CELSIUS, "C", line(1, 273.15), "°C", "degC", "℃");
        add(Kind.TEMPERATURE, Units.FAHRENHEIT, "F", line(5 / 9.0, 459.67 * 5 / 9), "°F", "degF");
        add(Kind.POWER, Units.WATT, "W", exact(Rational.of("1")));
        add(Kind.POWER, Units.KILOWATT, "kW", exact(Rational.of("1000")));
        add(
                Kind.POWER,
                Units.HORSEPOWER,
                "hp",
                exact(Rational.of("550").times(Rational.of("0.3048")).times(Rational.of("4.4482216152605"))),
                "HP");
        add(Kind.ENERGY, Units.JOULE, "J", exact(Rational.of("1")));
        add(Kind.ENERGY, Units.KILOJOULE, "kJ", exact(Rational.of("1000")));
        add(Kind.ENERGY, Units.KILOWATT_HOUR, "kWh", exact(Rational.of("3600000")));
        add(Kind.MASS_FLOW, Units.KILOGRAM_PER_SECOND, "kg/s", exact(Rational.of("1")));
        add(Kind.MASS_FLOW, Units.GRAM_PER_MINUTE, "g/min", exact(Rational.of("1", "60000")));
        add(Kind.MASS_FLOW, Units.GRAM_PER_SECOND, "g/s", exact(Rational.of("1", "1000")));
        add(Kind.MASS_FLOW, Units.KILOGRAM_PER_MINUTE, "kg/min", exact(Rational.of("1", "60")));
        add(Kind.MASS_FLOW, Units.KILOGRAM_PER_HOUR, "kg/h", exact(Rational.of("1", "3600")));
        add(Kind.MASS_FLOW, Units.POUND_PER_MINUTE, "lb/min", exact(Rational.of("0.45359237", "60")));
        add(Kind.VOLUME_FLOW, Units.CUBIC_METRE_PER_SECOND, "m3/s", exact(Rational.of("1")), "m³/s");
        add(Kind.VOLUME_FLOW, Units.LITRE_PER_MINUTE, "L/min", exact(Rational.of("1", "60000")), "l/min");
        add(Kind.VOLUME_FLOW, Units.GALLON_PER_MINUTE, "gpm", exact(Rational.of("0.003785411784", "60")), "gal/min");
        add(Kind.DENSITY, Units.KILOGRAM_PER_CUBIC_METRE, "kg/m3", exact(Rational.of("1")), "kg/m³");
        add(Kind.DENSITY, Units.GRAM_PER_CUBIC_CENTIMETRE, "g/cm3", exact(Rational.of("1000")), "g/cm³");
        add(Kind.DYNAMIC_VISCOSITY, Units.PASCAL_SECOND, "Pa s", exact(Rational.of("1")), "Pa*s", "Pa.s");
        add(Kind.DYNAMIC_VISCOSITY, Units.MILLIPASCAL_SECOND, "mPa s", exact(Rational.of("1", "1000")), "mPa*s", "cP");
        add(Kind.SPECIFIC_ENERGY, Units.JOULE_PER_KILOGRAM, "J/kg", exact(Rational.of("1")));
        add(Kind.SPECIFIC_ENERGY, Units.KILOJOULE_PER_KILOGRAM, "kJ/kg", exact(Rational.of("1000")));
        add(Kind.SPECIFIC_HEAT, Units.JOULE_PER_KILOGRAM_KELVIN, "J/(kg K)", exact(Rational.of("1")), "J/(kg*K)");
        add(
                Kind.SPECIFIC_HEAT,
                Units.KILOJOULE_PER_KILOGRAM_KELVIN,
                "kJ/(kg K)",
                exact(Rational.of("1000")),
                "kJ/(kg*K)");
        add(Kind.ENERGY_DENSITY, Units.JOULE_PER_CUBIC_METRE, "J/m3", exact(Rational.of("1")), "J/m³");
        add(Kind.ENERGY_DENSITY, Units.JOULE_PER_CUBIC_MILLIMETRE, "J/mm3", exact(Rational.of("1000000000")), "J/mm³");
        add(Kind.COMPRESSIBILITY, Units.PER_PASCAL, "1/Pa", exact(Rational.of("1")));
        add(Kind.COMPRESSIBILITY, Units.PER_GIGAPASCAL, "1/GPa", exact(Rational.of("1", "1000000000")));
        add(Kind.THERMAL_EXPANSION, Units.PER_KELVIN, "1/K", exact(Rational.of("1")));
        add(Kind.RATIO, Units.ONE, "", exact(Rational.of("1")));
        add(Kind.RATIO, Units.PERCENT, "%", exact(Rational.of("1", "100")), "percent");
    }

    private UnitTable() {}

    private record Entry(Kind<?> kind, Unit<?> unit, String symbol, List<String> spellings, Scale<?> scale) {}

    private static Scale<?> exact(Rational factor) {
        return Scale.ofRational(factor.numerator(), factor.denominator());
    }

    private static Scale<?> line(double multiplier, double offset) {
        return Scale.ofLine(multiplier, offset);
    }

    private static void add(Kind<?> kind, Unit<?> unit, String symbol, Scale<?> scale, String... spellings) {
        Entry entry = new Entry(kind, unit, symbol, List.of(spellings), scale);
        ORDER.add(entry);
        BY_IDENTITY.put(unit, entry);
    }

    /** Units equal to ours but made elsewhere are looked up here; filled when the first of them comes. */
    private static final class ByEquality {
        private static final Map<Unit<?>, Entry> TABLE = new HashMap<>();

        static {
            for (Entry entry : ORDER) {
                TABLE.put(entry.unit(), entry);
            }
        }
    }

    /** Symbols and spellings; filled when the first text is read. */
    private static final class ByText {
        private static final Map<String, List<Entry>> TABLE = new HashMap<>();

        static {
            for (Entry entry : ORDER) {
                add(entry.symbol(), entry);
                for (String spelling : entry.spellings()) {
                    add(spelling, entry);
                }
            }
        }

        private static void add(String text, Entry entry) {
            TABLE.computeIfAbsent(text, key -> new ArrayList<>()).add(entry);
        }
    }

    private static @Nullable Entry find(Unit<?> unit) {
        Entry entry = BY_IDENTITY.get(unit);
        return entry != null ? entry : ByEquality.TABLE.get(unit);
    }

    /** The scale of a known unit of the kind, or null: then the unit is unknown, or known to be of another kind. */
    @SuppressWarnings("unchecked")
    static <Q extends Quantity<Q>> @Nullable Scale<Q> scale(Kind<Q> kind, Unit<Q> unit) {
        Entry entry = find(unit);
        return entry != null && entry.kind() == kind ? (Scale<Q>) entry.scale() : null;
    }

    static @Nullable Scale<?> scale(Unit<?> unit) {
        Entry entry = find(unit);
        return entry == null ? null : entry.scale();
    }

    static @Nullable String symbol(Unit<?> unit) {
        Entry entry = find(unit);
        return entry == null ? null : entry.symbol();
    }

    /** The unit of a kind that a text names, or null. */
    @SuppressWarnings("unchecked")
    static <Q extends Quantity<Q>> @Nullable Unit<Q> unit(Kind<Q> kind, String text) {
        for (Entry entry : ByText.TABLE.getOrDefault(text, List.of())) {
            if (entry.kind() == kind) {
                return (Unit<Q>) entry.unit();
            }
        }
        return null;
    }

    /** Symbols of a kind, SI first as declared. */
    static List<String> symbols(Kind<?> kind) {
        List<String> symbols = new ArrayList<>();
        ORDER.forEach(entry -> {
            if (entry.kind() == kind && !entry.symbol().isEmpty()) {
                symbols.add(entry.symbol());
            }
        });
        return symbols;
    }
}
