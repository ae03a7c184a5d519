package dev.waterjet.embedding;

import static dev.waterjet.Refusals.codeOf;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Density;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import org.apache.sis.measure.Quantities;
import org.apache.sis.measure.Units;
import org.junit.jupiter.api.Test;

/** Quantities and units of another implementation of JSR-385, that of Apache SIS. */
class ForeignUnitsTest {

    @Test
    void aForeignQuantityIsTakenAnywhere() {
        assertThat(Orifice.sapphire(Quantities.create(0.25, Units.MILLIMETRE)))
                .isEqualTo(Orifice.sapphire(dev.waterjet.measure.Measures.millimetres(0.25)));
    }

    /** Factors by the SI brochure, 9th edition (2019), and NIST SP 811 (2008). */
    @Test
    void foreignUnitsKeepTheirFactorAndOffset() {
        assertThat(Kind.LENGTH.si(Quantities.create(1, Units.INCH))).isCloseTo(0.0254, within(1e-17));
        assertThat(Kind.PRESSURE.si(Quantities.create(1013.25, Units.HECTOPASCAL)))
                .isCloseTo(101_325, within(1e-9));
        assertThat(Kind.TEMPERATURE.si(Quantities.create(20, Units.CELSIUS))).isCloseTo(293.15, within(1e-12));
        assertThat(Kind.SPEED.si(Quantities.create(36, Units.KILOMETRES_PER_HOUR)))
                .isCloseTo(10, within(1e-14));
        assertThat(Kind.ANGLE.si(Quantities.create(180, Units.DEGREE))).isCloseTo(Math.PI, within(1e-15));
        assertThat(Kind.RATIO.si(Quantities.create(65, Units.PERCENT))).isCloseTo(0.65, within(1e-15));
        assertThat(Kind.MASS.si(Quantities.create(250, Units.GRAM))).isCloseTo(0.25, within(1e-15));
    }

    @Test
    void derivedUnitsAreComparedByTheirBaseUnits() {
        Unit<MassFlow> flow = typed(Units.GRAM.divide(Units.MINUTE));
        Unit<Density> density = typed(Units.KILOGRAM.divide(Units.METRE.pow(3)));

        assertThat(Kind.MASS_FLOW.si(Quantities.create(300, flow))).isCloseTo(0.005, within(1e-17));
        assertThat(Kind.DENSITY.si(Quantities.create(998, density))).isEqualTo(998);
        assertThat(Kind.FORCE.si(Quantities.create(3, Units.NEWTON))).isEqualTo(3);
        assertThat(Kind.ENERGY.si(Quantities.create(3, Units.JOULE))).isEqualTo(3);
    }

    @Test
    void anotherDimensionIsRefused() {
        Unit<MassFlow> metre = typed(Units.METRE);
        Unit<Length> litre = typed(Units.LITRE);
        Unit<Length> watt = typed(Units.WATT);

        assertThat(codeOf(() -> Kind.MASS_FLOW.si(Quantities.create(1, metre)))).isEqualTo("wrong-kind");
        assertThat(codeOf(() -> Kind.LENGTH.si(Quantities.create(1, litre)))).isEqualTo("wrong-kind");
        assertThat(codeOf(() -> Kind.LENGTH.si(Quantities.create(1, watt)))).isEqualTo("wrong-kind");
    }

    @Test
    void aResultIsGivenInAForeignUnit() {
        Quantity<Length> bore = Kind.LENGTH.of(0.00025, Units.MILLIMETRE);

        assertThat(bore.getValue().doubleValue()).isCloseTo(0.25, within(1e-16));
    }

    @SuppressWarnings("unchecked")
    private static <Q extends Quantity<Q>> Unit<Q> typed(Unit<?> unit) {
        return (Unit<Q>) unit;
    }
}
