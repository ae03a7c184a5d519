package dev.waterjet.measure;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Unit;

/** Unit in which people of the trade state a quantity, by its kind and size. Kinds without an entry keep their SI unit. */
final class TradeUnits {

    /** A unit and the size, in SI, from which it is used. */
    private record Step(double from, Unit<?> unit) {}

    private record Steps(Unit<?> ofZero, List<Step> rising) {}

    private static final Map<Kind<?>, Steps> BY_KIND = new HashMap<>();

    static {
        put(
                Kind.LENGTH,
                Units.MILLIMETRE,
                from(0, Units.MICROMETRE),
                from(1e-4, Units.MILLIMETRE),
                from(10, Units.METRE));
        put(Kind.AREA, Units.SQUARE_MILLIMETRE, from(0, Units.SQUARE_MILLIMETRE), from(0.01, Units.SQUARE_METRE));
        put(
                Kind.VOLUME,
                Units.LITRE,
                from(0, Units.CUBIC_MILLIMETRE),
                from(1e-5, Units.LITRE),
                from(10, Units.CUBIC_METRE));
        put(Kind.TIME, Units.SECOND, from(0, Units.SECOND), from(300, Units.MINUTE), from(18_000, Units.HOUR));
        put(Kind.FREQUENCY, Units.PER_MINUTE, from(0, Units.PER_MINUTE), from(5, Units.HERTZ));
        put(
                Kind.SPEED,
                Units.MILLIMETRE_PER_MINUTE,
                from(0, Units.MICROMETRE_PER_HOUR),
                from(1e-8, Units.MILLIMETRE_PER_MINUTE),
                from(1, Units.METRE_PER_SECOND));
        put(Kind.ANGLE, Units.DEGREE, from(0, Units.DEGREE));
        put(Kind.ANGULAR_SPEED, Units.DEGREE_PER_SECOND, from(0, Units.DEGREE_PER_SECOND));
        put(Kind.ANGULAR_ACCELERATION, Units.DEGREE_PER_SQUARE_SECOND, from(0, Units.DEGREE_PER_SQUARE_SECOND));
        put(Kind.MASS, Units.KILOGRAM, from(0, Units.GRAM), from(1, Units.KILOGRAM), from(1000, Units.TONNE));
        put(
                Kind.PRESSURE,
                Units.MEGAPASCAL,
                from(0, Units.PASCAL),
                from(100, Units.KILOPASCAL),
                from(1e5, Units.MEGAPASCAL),
                from(1e10, Units.GIGAPASCAL));
        put(Kind.TEMPERATURE, Units.CELSIUS, from(0, Units.CELSIUS));
        put(Kind.POWER, Units.KILOWATT, from(0, Units.WATT), from(100, Units.KILOWATT));
        put(
                Kind.ENERGY,
                Units.KILOWATT_HOUR,
                from(0, Units.JOULE),
                from(1000, Units.KILOJOULE),
                from(360_000, Units.KILOWATT_HOUR));
        put(
                Kind.MASS_FLOW,
                Units.GRAM_PER_MINUTE,
                from(0, Units.GRAM_PER_MINUTE),
                from(0.16, Units.KILOGRAM_PER_MINUTE));
        put(Kind.VOLUME_FLOW, Units.LITRE_PER_MINUTE, from(0, Units.LITRE_PER_MINUTE));
        put(Kind.DYNAMIC_VISCOSITY, Units.MILLIPASCAL_SECOND, from(0, Units.MILLIPASCAL_SECOND));
        put(Kind.SPECIFIC_ENERGY, Units.KILOJOULE_PER_KILOGRAM, from(0, Units.KILOJOULE_PER_KILOGRAM));
        put(
                Kind.ENERGY_DENSITY,
                Units.JOULE_PER_CUBIC_MILLIMETRE,
                from(0, Units.JOULE_PER_CUBIC_METRE),
                from(1e6, Units.JOULE_PER_CUBIC_MILLIMETRE));
        put(Kind.COMPRESSIBILITY, Units.PER_GIGAPASCAL, from(0, Units.PER_GIGAPASCAL));
    }

    private TradeUnits() {}

    private static Step from(double size, Unit<?> unit) {
        return new Step(size, unit);
    }

    private static void put(Kind<?> kind, Unit<?> ofZero, Step... rising) {
        BY_KIND.put(kind, new Steps(ofZero, List.of(rising)));
    }

    /** The unit for a value in SI. */
    static Unit<?> of(Kind<?> kind, double si) {
        Steps steps = BY_KIND.get(kind);
        if (steps == null) {
            return kind.siUnit();
        }
        Unit<?> unit = steps.ofZero();
        for (Step step : steps.rising()) {
            if (Math.abs(si) >= step.from() && si != 0) {
                unit = step.unit();
            }
        }
        return unit;
    }
}
