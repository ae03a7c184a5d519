package dev.waterjet.measure;

import static dev.waterjet.Refusals.codeOf;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tech.units.indriya.function.AddConverter;
import tech.units.indriya.function.ExpConverter;
import tech.units.indriya.function.LogConverter;
import tech.units.indriya.function.MultiplyConverter;

class ScaleTest {

    private static Unit<Length> metresTimes(double factor) {
        return Units.METRE.transform(MultiplyConverter.of(factor));
    }

    @Test
    void isAValue() {
        ValueContract.of(() -> Scale.of(Kind.LENGTH, Units.MILLIMETRE))
                .has("SI value", scale -> scale.toSi(250), 0.25)
                .has("value of the unit", scale -> scale.fromSi(0.25), 250.0)
                .differs("multiplier", Scale.of(Kind.LENGTH, Units.INCH))
                .differs("divisor", Scale.of(Kind.LENGTH, Units.MICROMETRE))
                .differs("offset", Scale.ofLine(1, 1))
                .prints("si = value * 1.0 / 1000.0 + 0.0")
                .check();
    }

    @Test
    void anOffsetMovesValuesButNotDifferences() {
        Scale<Temperature> fahrenheit = Scale.of(Kind.TEMPERATURE, Units.FAHRENHEIT);

        assertThat(fahrenheit.toSi(212)).isCloseTo(373.15, within(1e-12));
        assertThat(fahrenheit.fromSi(373.15)).isCloseTo(212, within(1e-12));
        assertThat(fahrenheit.differenceToSi(9)).isCloseTo(5, within(1e-15));
        assertThat(fahrenheit.differenceFromSi(5)).isCloseTo(9, within(1e-15));
        assertThat(Scale.of(Kind.LENGTH, Units.MILLIMETRE).differenceToSi(250)).isEqualTo(0.25);
        assertThat(Scale.of(Kind.LENGTH, Units.MILLIMETRE).differenceFromSi(0.25))
                .isEqualTo(250);
    }

    /** 0.3 / 100 differs from 0.3 * 0.01 in the last bit, as 7 / 25.4 does from 7 * (1 / 25.4). */
    @Test
    void foreignUnitsKeepTheExactSideOfTheirFactor() {
        assertThat(Scale.of(Kind.LENGTH, MetricPrefix.CENTI(Units.METRE)))
                .hasToString("si = value * 1.0 / 100.0 + 0.0");
        assertThat(Scale.of(Kind.LENGTH, MetricPrefix.KILO(Units.METRE)))
                .hasToString("si = value * 1000.0 / 1.0 + 0.0");
        assertThat(Scale.of(Kind.LENGTH, metresTimes(0.9144))).hasToString("si = value * 0.9144 / 1.0 + 0.0");
    }

    /** A unit of half a kelvin that counts from 100 K, as nobody but this test has it. */
    @Test
    void foreignUnitsMayHaveAnOffset() {
        Unit<Temperature> unit =
                Units.KELVIN.transform(new AddConverter(100)).transform(MultiplyConverter.ofRational(1, 2));

        assertThat(Scale.of(Kind.TEMPERATURE, unit).toSi(40)).isCloseTo(120, within(1e-12));
        assertThat(Scale.of(Kind.TEMPERATURE, unit).fromSi(120)).isCloseTo(40, within(1e-12));
    }

    /** Units that no table has: their factor, its exact inverse where it has one, and the offset of another zero. */
    @Test
    void unknownUnitsAreResolvedByTheirConverter() {
        assertThat(Scale.of(Kind.LENGTH, MetricPrefix.DECI(Units.METRE))).hasToString("si = value * 1.0 / 10.0 + 0.0");
        assertThat(Scale.of(Kind.LENGTH, MetricPrefix.HECTO(Units.METRE)))
                .hasToString("si = value * 100.0 / 1.0 + 0.0");
        assertThat(Scale.of(Kind.LENGTH, metresTimes(0.3))).hasToString("si = value * 0.3 / 1.0 + 0.0");
        for (double factor : new double[] {1 / 3.0, 0.7, 5 / 9.0, 0.125}) {
            for (double zero : new double[] {273.15, 10, 255.37}) {
                Unit<Temperature> unit =
                        Units.KELVIN.transform(new AddConverter(zero)).transform(MultiplyConverter.of(factor));
                Scale<Temperature> scale = Scale.of(Kind.TEMPERATURE, unit);
                assertThat(scale.toSi(12)).isCloseTo(12 * factor + zero, within(1e-12 * zero));
                assertThat(scale.differenceToSi(12)).isCloseTo(12 * factor, within(1e-11));
            }
        }
        // millimetres of height for each metre of length, times a mass
        Unit<Mass> sloping =
                Units.KILOGRAM.multiply(Units.MILLIMETRE).divide(Units.METRE).asType(Mass.class);
        assertThat(Scale.of(Kind.MASS, sloping).toSi(250)).isCloseTo(0.25, within(1e-15));
    }

    @Test
    void unitsThatAreNotOnALineAreRefused() {
        Unit<Length> logarithmic = Units.METRE.transform(new LogConverter(10));
        Unit<Length> exponential = Units.METRE.transform(new ExpConverter(10));

        assertThat(codeOf(() -> Scale.of(Kind.LENGTH, logarithmic))).isEqualTo("wrong-kind");
        assertThat(codeOf(() -> Scale.of(Kind.LENGTH, exponential))).isEqualTo("wrong-kind");
    }

    @Test
    void aUnitOfNoSizeIsRefused() {
        assertThat(codeOf(() -> Scale.of(Kind.LENGTH, metresTimes(1e300).transform(MultiplyConverter.of(1e300)))))
                .isEqualTo("wrong-kind");
    }

    /** Nearest doubles by exact fractions in Python 3; rounding both parts first would miss the last two by an ulp. */
    @ParameterizedTest
    @CsvSource({
        "1, 3, 0.3333333333333333",
        "254, 10000, 0.0254",
        "9007199254740991, 1, 9007199254740991",
        "215, 580474829141388940, 3.703864305675715e-16",
        "53282253240996243, 924, 57664776234844.42",
    })
    void theNearestDoubleIsFound(long numerator, long denominator, double nearest) {
        assertThat(Scale.quotient(numerator, denominator)).isEqualTo(nearest);
    }
}
