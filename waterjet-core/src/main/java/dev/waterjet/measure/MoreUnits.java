package dev.waterjet.measure;

import javax.measure.MetricPrefix;
import tech.units.indriya.function.MultiplyConverter;

/**
 * Units that are read but have no constant in {@link Units}, and the other spellings of all units. Made when the first text
 * is read. Factors from the sources of {@link Units}; standard gravity and the atmosphere from the SI brochure and NIST SP 811.
 */
final class MoreUnits {

    static final UnitTable TABLE = new UnitTable();

    private static final long LBF = 44_482_216_152_605L;
    private static final long TEN_TO_13 = 10_000_000_000_000L;

    static {
        geometry();
        motion();
        matter();
        energy();
        flows();
    }

    private MoreUnits() {}

    private static void geometry() {
        TABLE.unit(Kind.LENGTH, "nm", MetricPrefix.NANO);
        TABLE.unit(Kind.LENGTH, "cm", MetricPrefix.CENTI);
        TABLE.unit(Kind.LENGTH, "dm", MetricPrefix.DECI);
        TABLE.unit(Kind.LENGTH, "km", MetricPrefix.KILO);
        TABLE.unit(Kind.LENGTH, "thou", 254, 10_000_000);
        TABLE.unit(Kind.LENGTH, "yd", 9144, 10_000);
        TABLE.unit(Kind.AREA, "cm2", 1, 10_000);
        TABLE.unit(Kind.AREA, "in2", 64_516, 100_000_000);
        TABLE.unit(Kind.AREA, "ft2", 9_290_304, 100_000_000);
        TABLE.unit(Kind.VOLUME, "cm3", 1, 1_000_000);
        TABLE.unit(Kind.VOLUME, "dm3", 1, 1000);
        TABLE.unit(Kind.VOLUME, "mL", 1, 1_000_000);
        TABLE.unit(Kind.VOLUME, "in3", 16_387_064, 1_000_000_000_000L);
        TABLE.unit(Kind.VOLUME, "ft3", 28_316_846_592L, 1_000_000_000_000L);
        TABLE.unit(Kind.ANGLE, "mrad", 1, 1000);
        TABLE.add(Kind.ANGLE, "arcmin", MultiplyConverter.of(Math.PI / 10_800), Scale.ofLine(Math.PI / 10_800, 0));
        TABLE.add(Kind.ANGLE, "arcsec", MultiplyConverter.of(Math.PI / 648_000), Scale.ofLine(Math.PI / 648_000, 0));
    }

    private static void motion() {
        TABLE.unit(Kind.TIME, "µs", MetricPrefix.MICRO);
        TABLE.unit(Kind.TIME, "ms", MetricPrefix.MILLI);
        TABLE.unit(Kind.TIME, "d", 86_400, 1);
        TABLE.unit(Kind.FREQUENCY, "kHz", MetricPrefix.KILO);
        TABLE.unit(Kind.FREQUENCY, "1/h", 1, 3600);
        TABLE.unit(Kind.SPEED, "mm/h", 1, 3_600_000);
        TABLE.unit(Kind.SPEED, "cm/s", 1, 100);
        TABLE.unit(Kind.SPEED, "cm/min", 1, 6000);
        TABLE.unit(Kind.SPEED, "m/h", 1, 3600);
        TABLE.unit(Kind.SPEED, "km/h", 1000, 3600);
        TABLE.unit(Kind.SPEED, "km/s", 1000, 1);
        TABLE.unit(Kind.SPEED, "in/s", 254, 10_000);
        TABLE.unit(Kind.SPEED, "ft/min", 3048, 600_000);
        TABLE.unit(Kind.ACCELERATION, "in/s2", 254, 10_000);
        TABLE.unit(Kind.ACCELERATION, "ft/s2", 3048, 10_000);
        TABLE.unit(Kind.ACCELERATION, "gn", 980_665, 100_000);
        TABLE.unit(Kind.JERK, "in/s3", 254, 10_000);
        TABLE.unit(Kind.JERK, "ft/s3", 3048, 10_000);
    }

    private static void matter() {
        TABLE.unit(Kind.MASS, "mg", 1, 1_000_000);
        TABLE.unit(Kind.MASS, "oz", 28_349_523_125L, 1_000_000_000_000L);
        TABLE.unit(Kind.FORCE, "mN", MetricPrefix.MILLI);
        TABLE.unit(Kind.FORCE, "kN", MetricPrefix.KILO);
        TABLE.unit(Kind.FORCE, "kgf", 980_665, 100_000);
        TABLE.unit(Kind.PRESSURE, "hPa", MetricPrefix.HECTO);
        TABLE.unit(Kind.PRESSURE, "mbar", 100, 1);
        TABLE.unit(Kind.PRESSURE, "N/mm2", 1_000_000, 1);
        TABLE.unit(Kind.PRESSURE, "kN/mm2", 1_000_000_000, 1);
        TABLE.unit(Kind.PRESSURE, "N/cm2", 10_000, 1);
        TABLE.unit(Kind.PRESSURE, "kN/m2", 1000, 1);
        TABLE.unit(Kind.PRESSURE, "N/m2", 1, 1);
        TABLE.unit(Kind.PRESSURE, "kgf/cm2", 980_665, 10);
        TABLE.unit(Kind.PRESSURE, "atm", 101_325, 1);
        TABLE.unit(Kind.DENSITY, "kg/L", 1000, 1);
        TABLE.unit(Kind.DENSITY, "g/L", 1, 1);
        TABLE.unit(Kind.DENSITY, "kg/dm3", 1000, 1);
        TABLE.unit(Kind.DENSITY, "t/m3", 1000, 1);
        TABLE.unit(Kind.DENSITY, "lb/in3", 45_359_237L * 10_000, 16_387_064L);
        TABLE.unit(Kind.DENSITY, "lb/ft3", 45_359_237L * 10_000, 28_316_846_592L);
        TABLE.unit(Kind.COMPRESSIBILITY, "1/MPa", 1, 1_000_000);
        TABLE.unit(Kind.COMPRESSIBILITY, "1/bar", 1, 100_000);
        TABLE.unit(Kind.THERMAL_EXPANSION, "ppm/K", 1, 1_000_000);
        TABLE.unit(Kind.RATIO, "‰", 1, 1000);
        TABLE.unit(Kind.RATIO, "ppm", 1, 1_000_000);
    }

    private static void energy() {
        TABLE.unit(Kind.POWER, "mW", MetricPrefix.MILLI);
        TABLE.unit(Kind.POWER, "MW", MetricPrefix.MEGA);
        TABLE.unit(Kind.ENERGY, "MJ", MetricPrefix.MEGA);
        TABLE.unit(Kind.ENERGY, "Wh", 3600, 1);
        TABLE.unit(Kind.ENERGY, "MWh", 3_600_000_000L, 1);
        TABLE.unit(Kind.ENERGY, "N m", 1, 1);
        TABLE.unit(Kind.ENERGY, "ft lbf", LBF * 381, TEN_TO_13 * 1250);
        TABLE.unit(Kind.SPECIFIC_ENERGY, "MJ/kg", 1_000_000, 1);
        TABLE.unit(Kind.SPECIFIC_ENERGY, "J/g", 1000, 1);
        TABLE.unit(Kind.SPECIFIC_HEAT, "J/(g K)", 1000, 1);
        TABLE.unit(Kind.ENERGY_DENSITY, "kJ/m3", 1000, 1);
        TABLE.unit(Kind.ENERGY_DENSITY, "MJ/m3", 1_000_000, 1);
        TABLE.unit(Kind.ENERGY_DENSITY, "GJ/m3", 1_000_000_000, 1);
        TABLE.unit(Kind.ENERGY_DENSITY, "J/cm3", 1_000_000, 1);
    }

    private static void flows() {
        TABLE.unit(Kind.MASS_FLOW, "mg/s", 1, 1_000_000);
        TABLE.unit(Kind.MASS_FLOW, "g/h", 1, 3_600_000);
        TABLE.unit(Kind.MASS_FLOW, "t/h", 1000, 3600);
        TABLE.unit(Kind.MASS_FLOW, "lb/s", 45_359_237, 100_000_000);
        TABLE.unit(Kind.MASS_FLOW, "lb/h", 45_359_237, 360_000_000_000L);
        TABLE.unit(Kind.MASS_FLOW, "oz/min", 28_349_523_125L, 60_000_000_000_000L);
        TABLE.unit(Kind.VOLUME_FLOW, "L/s", 1, 1000);
        TABLE.unit(Kind.VOLUME_FLOW, "L/h", 1, 3_600_000);
        TABLE.unit(Kind.VOLUME_FLOW, "mL/s", 1, 1_000_000);
        TABLE.unit(Kind.VOLUME_FLOW, "mL/min", 1, 60_000_000);
        TABLE.unit(Kind.VOLUME_FLOW, "cm3/s", 1, 1_000_000);
        TABLE.unit(Kind.VOLUME_FLOW, "cm3/min", 1, 60_000_000);
        TABLE.unit(Kind.VOLUME_FLOW, "m3/min", 1, 60);
        TABLE.unit(Kind.VOLUME_FLOW, "m3/h", 1, 3600);
        TABLE.unit(Kind.VOLUME_FLOW, "in3/min", 16_387_064, 60_000_000_000_000L);
        TABLE.unit(Kind.VOLUME_FLOW, "ft3/min", 28_316_846_592L, 60_000_000_000_000L);
        TABLE.unit(Kind.VOLUME_FLOW, "gal/h", 3_785_411_784L, 3_600_000_000_000_000L);
    }
}
