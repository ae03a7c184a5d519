package dev.waterjet.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;

/** Units by their symbols and other spellings. Filled when the first text is read. */
final class UnitSymbols {

    private static final Map<String, List<UnitTable.Entry>> BY_TEXT = new HashMap<>();

    static {
        Units.TABLE.entries().forEach(entry -> put(entry.symbol(), entry));
        MoreUnits.TABLE.entries().forEach(entry -> put(entry.symbol(), entry));
        geometry();
        matter();
    }

    private UnitSymbols() {}

    private static void geometry() {
        also(Kind.LENGTH, "m", "metre", "metres", "meter", "meters");
        also(Kind.LENGTH, "mm", "MM", "millimetre", "millimetres", "millimeter", "millimeters");
        also(Kind.LENGTH, "cm", "centimetre", "centimetres", "centimeter", "centimeters");
        also(Kind.LENGTH, "km", "kilometre", "kilometres", "kilometer", "kilometers");
        also(Kind.LENGTH, "µm", "um", "micron", "microns", "micrometre", "micrometres", "micrometer", "micrometers");
        also(Kind.LENGTH, "in", "inch", "inches", "IN", "\"", "\u2033");
        also(Kind.LENGTH, "thou", "mil", "mils", "thous");
        also(Kind.LENGTH, "ft", "foot", "feet", "FT", "'", "\u2032");
        also(Kind.LENGTH, "yd", "yard", "yards");
        also(Kind.AREA, "in2", "sq in");
        also(Kind.AREA, "ft2", "sq ft");
        also(Kind.VOLUME, "L", "l", "litre", "litres", "liter", "liters");
        also(Kind.VOLUME, "mL", "ml", "cc");
        also(Kind.VOLUME, "gal", "gallon", "gallons");
        also(Kind.ANGLE, "rad", "radian", "radians");
        also(Kind.ANGLE, "°", "deg", "degree", "degrees");
        also(Kind.ANGULAR_SPEED, "°/s", "deg/s");
        also(Kind.ANGULAR_ACCELERATION, "°/s2", "deg/s2");
        also(Kind.TIME, "s", "sec", "second", "seconds");
        also(Kind.TIME, "µs", "us");
        also(Kind.TIME, "min", "minute", "minutes");
        also(Kind.TIME, "h", "hr", "hour", "hours");
        also(Kind.TIME, "d", "day", "days");
        also(Kind.FREQUENCY, "Hz", "1/s");
        also(Kind.FREQUENCY, "1/min", "spm", "rpm", "strokes/min");
        also(Kind.SPEED, "in/min", "ipm", "IPM");
        also(Kind.SPEED, "in/s", "ips");
        also(Kind.SPEED, "ft/s", "fps");
        also(Kind.SPEED, "ft/min", "fpm");
        also(Kind.SPEED, "µm/h", "um/h");
        also(Kind.ACCELERATION, "gn", "g");
    }

    private static void matter() {
        also(Kind.MASS, "g", "gram", "grams");
        also(Kind.MASS, "t", "tonne", "tonnes");
        also(Kind.MASS, "lb", "LB", "lbs", "lbm", "pound", "pounds");
        also(Kind.MASS, "oz", "ounce", "ounces");
        also(Kind.PRESSURE, "ksi", "KSI", "kpsi");
        also(Kind.PRESSURE, "psi", "PSI");
        also(Kind.PRESSURE, "bar", "bars", "BAR");
        also(Kind.TEMPERATURE, "°C", "C", "degC", "℃");
        also(Kind.TEMPERATURE, "°F", "F", "degF", "℉");
        also(Kind.POWER, "hp", "HP");
        also(Kind.MASS_FLOW, "lb/min", "lbs/min");
        also(Kind.MASS_FLOW, "lb/h", "lbs/h");
        also(Kind.VOLUME_FLOW, "L/min", "l/min", "lpm");
        also(Kind.VOLUME_FLOW, "L/s", "l/s");
        also(Kind.VOLUME_FLOW, "L/h", "l/h");
        also(Kind.VOLUME_FLOW, "mL/min", "ml/min");
        also(Kind.VOLUME_FLOW, "gpm", "GPM", "gal/min");
        also(Kind.VOLUME_FLOW, "ft3/min", "cfm");
        also(Kind.DYNAMIC_VISCOSITY, "Pa s", "Pa.s");
        also(Kind.DYNAMIC_VISCOSITY, "mPa s", "mPa.s", "cP");
        also(Kind.ENERGY, "N m", "Nm");
        also(Kind.RATIO, "", "one");
        also(Kind.RATIO, "%", "percent");
    }

    private static void put(String text, UnitTable.Entry entry) {
        BY_TEXT.computeIfAbsent(text, key -> new ArrayList<>(1)).add(entry);
    }

    private static void also(Kind<?> kind, String symbol, String... spellings) {
        UnitTable.Entry entry = find(kind, symbol);
        if (entry == null) {
            throw new AssertionError(kind + " has no unit " + symbol);
        }
        for (String spelling : spellings) {
            put(spelling, entry);
        }
    }

    private static UnitTable.@Nullable Entry find(Kind<?> kind, String text) {
        List<UnitTable.Entry> entries = BY_TEXT.get(text);
        if (entries != null) {
            for (UnitTable.Entry entry : entries) {
                if (entry.kind().equals(kind)) {
                    return entry;
                }
            }
        }
        return null;
    }

    /** The unit of a kind that a text names, or null. Powers may be raised: {@code mm²}, {@code mm^2}. */
    @SuppressWarnings("unchecked")
    static <Q extends Quantity<Q>> @Nullable Unit<Q> unit(Kind<Q> kind, String text) {
        UnitTable.Entry entry = find(kind, text);
        if (entry == null) {
            entry = find(kind, plain(text));
        }
        return entry == null ? null : (Unit<Q>) entry.unit();
    }

    /** A text with signs that mean the same in one form: powers as digits, one micro sign, products by a blank. */
    private static String plain(String text) {
        return text.replace("^", "")
                .replace('²', '2')
                .replace('³', '3')
                .replace('μ', 'µ')
                .replace('·', ' ')
                .replace('*', ' ');
    }

    /** Symbols of the constants of a kind, SI first as declared. */
    static List<String> symbols(Kind<?> kind) {
        List<String> symbols = new ArrayList<>();
        for (UnitTable.Entry entry : Units.TABLE.entries()) {
            if (entry.kind().equals(kind) && !entry.symbol().isEmpty()) {
                symbols.add(entry.symbol());
            }
        }
        return symbols;
    }
}
