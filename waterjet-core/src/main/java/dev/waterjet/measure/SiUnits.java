package dev.waterjet.measure;

import java.util.ServiceConfigurationError;
import javax.measure.Unit;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Force;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.function.Calculus;
import tech.units.indriya.function.DefaultNumberSystem;
import tech.units.indriya.unit.AlternateUnit;
import tech.units.indriya.unit.BaseUnit;
import tech.units.indriya.unit.ProductUnit;
import tech.units.indriya.unit.UnitDimension;

/**
 * Base units and named derived units of the SI, equal to those in the table of the unit library. That table is not used: it
 * builds all units of the SI first, which would be a large part of the time until the first quantity.
 */
final class SiUnits {

    static {
        findNumberSystem();
    }

    static final Unit<Length> METRE = new BaseUnit<>("m", "Metre", UnitDimension.LENGTH);
    static final Unit<Mass> KILOGRAM = new BaseUnit<>("kg", "Kilogram", UnitDimension.MASS);
    static final Unit<Time> SECOND = new BaseUnit<>("s", "Second", UnitDimension.TIME);
    static final Unit<Temperature> KELVIN = new BaseUnit<>("K", "Kelvin", UnitDimension.TEMPERATURE);

    static final Unit<?> METRE_PER_SECOND = per(METRE, SECOND);
    static final Unit<?> METRE_PER_SQUARE_SECOND = per(METRE_PER_SECOND, SECOND);
    static final Unit<?> SQUARE_METRE = METRE.multiply(METRE);
    static final Unit<?> CUBIC_METRE = SQUARE_METRE.multiply(METRE);

    static final Unit<Angle> RADIAN = AlternateUnit.of(AbstractUnit.ONE, "rad", "Radian");
    static final Unit<Frequency> HERTZ = AlternateUnit.of(SECOND.inverse(), "Hz", "Hertz");
    static final Unit<Force> NEWTON = AlternateUnit.of(KILOGRAM.multiply(METRE_PER_SQUARE_SECOND), "N", "Newton");
    static final Unit<Pressure> PASCAL = AlternateUnit.of(per(NEWTON, SQUARE_METRE), "Pa", "Pascal");
    static final Unit<Energy> JOULE = AlternateUnit.of(NEWTON.multiply(METRE), "J", "Joule");
    static final Unit<Power> WATT = AlternateUnit.of(per(JOULE, SECOND), "W", "Watt");

    private SiUnits() {}

    static Unit<?> per(Unit<?> numerator, Unit<?> denominator) {
        return ProductUnit.ofQuotient(numerator, denominator);
    }

    /**
     * The unit library looks for its own arithmetic by the context class loader of the thread. In a container, a plug-in or a
     * test runner that loader may be none, one that does not see the library, or one that sees another copy of it.
     */
    private static void findNumberSystem() {
        try {
            Calculus.currentNumberSystem();
        } catch (IllegalArgumentException | ServiceConfigurationError e) {
            Calculus.setCurrentNumberSystem(new DefaultNumberSystem());
        }
    }
}
