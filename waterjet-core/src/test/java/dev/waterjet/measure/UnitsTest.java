package dev.waterjet.measure;

import static dev.waterjet.Refusals.codeOf;
import static dev.waterjet.Refusals.refusal;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.quantity.Quantities;

@SuppressWarnings("ReferenceEquality")
class UnitsTest {

    /** Factors: SI brochure, 9th edition (2019), and NIST SP 811 (2008), appendix B.8, written to all their figures. */
    @ParameterizedTest
    @CsvSource({
        "length, 1 in, 0.0254",
        "length, 1 ft, 0.3048",
        "length, 0.25 mm, 0.00025",
        "length, 180 um, 0.00018",
        "pressure, 1 psi, 6894.757293168361",
        "pressure, 55 ksi, 379211651.1242599",
        "pressure, 1 bar, 1e5",
        "pressure, 380 MPa, 3.8e8",
        "power, 1 hp, 745.6998715822702",
        "mass flow, 300 g/min, 0.005",
        "mass flow, 1 lb/min, 0.007559872833333333",
        "mass flow, 36 kg/h, 0.01",
        "volume flow, 1 gpm, 6.30901964e-5",
        "volume flow, 3 L/min, 5e-5",
        "volume, 1 gal, 0.003785411784",
        "speed, 1 in/min, 0.00042333333333333334",
        "speed, 600 mm/min, 0.01",
        "force, 1 lbf, 4.4482216152605",
        "temperature, 20 C, 293.15",
        "temperature, 68 F, 293.15",
        "energy density, 13.4 J/mm3, 1.34e10",
        "angle, 180 deg, 3.141592653589793",
        "ratio, 65 %, 0.65",
    })
    void factorsAreThoseOfTheStandards(String kindName, String text, double si) {
        Kind<?> kind = Kind.all().stream()
                .filter(k -> k.name().equals(kindName))
                .findFirst()
                .orElseThrow();

        assertThat(siOf(kind, text)).isCloseTo(si, org.assertj.core.data.Percentage.withPercentage(1e-13));
    }

    private static <Q extends Quantity<Q>> double siOf(Kind<Q> kind, String text) {
        return kind.si(kind.parse(text));
    }

    @Test
    void metricLengthsAreExactToTheLastBit() {
        assertThat(Kind.LENGTH.si(Measures.millimetres(0.76))).isEqualTo(0.76 / 1000);
    }

    @Test
    void everyUnitAgreesWithItsOwnConverter() {
        for (Kind<?> kind : Kind.all()) {
            for (String symbol : UnitSymbols.symbols(kind)) {
                checkAgainstIndriya(kind, symbol);
            }
        }
    }

    private static <Q extends Quantity<Q>> void checkAgainstIndriya(Kind<Q> kind, String symbol) {
        Unit<Q> unit = QuantityText.parseUnit(kind, symbol);
        double byIndriya = unit.getConverterTo(kind.siUnit()).convert(7.25);

        assertThat(Scale.of(kind, unit).toSi(7.25))
                .as(symbol)
                .isCloseTo(byIndriya, org.assertj.core.data.Percentage.withPercentage(1e-12));
    }

    @Test
    void foreignUnitsAreResolvedExactly() {
        Unit<Length> centimetre = MetricPrefix.CENTI(Units.METRE);

        assertThat(Kind.LENGTH.si(Quantities.getQuantity(7.6, centimetre))).isEqualTo(0.076);
    }

    @Test
    void aUnitEqualToOursButMadeElsewhereHasOurSymbol() {
        Unit<Length> inch = Units.METRE.transform(MultiplyConverter.ofRational(254, 10000));

        assertThat(inch).isNotSameAs(Units.INCH);
        assertThat(Units.symbol(inch)).isEqualTo("in");
    }

    @Test
    void messagesMayTellAnyUnit() {
        assertThat(Units.fromSi(0.076, MetricPrefix.CENTI(Units.METRE))).isCloseTo(7.6, within(1e-14));
        assertThat(Units.fromSi(7, Units.METRE.multiply(Units.KILOGRAM))).isEqualTo(7);
    }

    @Test
    void aKindSpeaksByItsName() {
        assertThat(Kind.MASS_FLOW).hasToString("mass flow");
        assertThat(Kind.LENGTH.of(0.0254, Units.INCH)).isEqualTo(Measures.inches(1));
        assertThat(codeOf(() -> Measures.millimetres(Double.POSITIVE_INFINITY))).isEqualTo("must-be-at-most");
    }

    static List<Arguments> factories() {
        return List.of(
                Arguments.of(Measures.metres(3), "3 m"),
                Arguments.of(Measures.millimetres(3), "3 mm"),
                Arguments.of(Measures.micrometres(3), "3 µm"),
                Arguments.of(Measures.inches(3), "3 in"),
                Arguments.of(Measures.seconds(3), "3 s"),
                Arguments.of(Measures.minutes(3), "3 min"),
                Arguments.of(Measures.hours(3), "3 h"),
                Arguments.of(Measures.metresPerSecond(3), "3 m/s"),
                Arguments.of(Measures.millimetresPerMinute(3), "3 mm/min"),
                Arguments.of(Measures.inchesPerMinute(3), "3 in/min"),
                Arguments.of(Measures.metresPerSquareSecond(3), "3 m/s2"),
                Arguments.of(Measures.degrees(3), "3°"),
                Arguments.of(Measures.kilograms(3), "3 kg"),
                Arguments.of(Measures.newtons(3), "3 N"),
                Arguments.of(Measures.pascals(3), "3 Pa"),
                Arguments.of(Measures.megapascals(3), "3 MPa"),
                Arguments.of(Measures.bars(3), "3 bar"),
                Arguments.of(Measures.psi(3), "3 psi"),
                Arguments.of(Measures.ksi(3), "3 ksi"),
                Arguments.of(Measures.kelvins(3), "3 K"),
                Arguments.of(Measures.celsius(3), "3 °C"),
                Arguments.of(Measures.watts(3), "3 W"),
                Arguments.of(Measures.kilowatts(3), "3 kW"),
                Arguments.of(Measures.horsepower(3), "3 hp"),
                Arguments.of(Measures.kilogramsPerSecond(3), "3 kg/s"),
                Arguments.of(Measures.gramsPerMinute(3), "3 g/min"),
                Arguments.of(Measures.poundsPerMinute(3), "3 lb/min"),
                Arguments.of(Measures.litresPerMinute(3), "3 L/min"),
                Arguments.of(Measures.gallonsPerMinute(3), "3 gpm"),
                Arguments.of(Measures.kilogramsPerCubicMetre(3), "3 kg/m3"),
                Arguments.of(Measures.joulesPerCubicMillimetre(3), "3 J/mm3"),
                Arguments.of(Measures.ratio(3), "3"),
                Arguments.of(Measures.percent(3), "3 %"));
    }

    @ParameterizedTest
    @MethodSource("factories")
    void aFactoryMakesTheUnitOfItsName(Quantity<?> quantity, String text) {
        assertThat(QuantityText.print(quantity)).isEqualTo(text);
    }

    @Test
    void aUnitOfAnotherDimensionIsRefusedEvenBehindACast() {
        @SuppressWarnings({"unchecked", "rawtypes"})
        Unit<MassFlow> smuggled = (Unit<MassFlow>) (Unit) Units.METRE;

        DomainException refused =
                refusal(DomainException.class, () -> Kind.MASS_FLOW.si(Quantities.getQuantity(1, smuggled)));

        assertThat(refused.code()).isEqualTo("wrong-kind");
        assertThat(refused.quantity()).isEqualTo("mass flow");
        assertThat(refused.parameters()).containsEntry("unit", "m").containsEntry("si_unit", "kg/s");
        assertThat(refused.value()).isEmpty();
    }

    @Test
    void aRatioHasNoUnit() {
        @SuppressWarnings({"unchecked", "rawtypes"})
        Quantity<Dimensionless> smuggled = (Quantity<Dimensionless>) (Quantity) Measures.metres(1);
        DomainException refused = refusal(DomainException.class, () -> Kind.RATIO.si(smuggled));

        assertThat(refused.code()).isEqualTo("wrong-kind");
        assertThat(refused.message().pattern()).doesNotContain("si_unit");
    }

    @Test
    void aDifferenceOfTemperaturesIsNoTemperature() {
        Quantity<Temperature> rise = Quantities.getQuantity(20, Units.CELSIUS, Quantity.Scale.RELATIVE);
        DomainException refused = refusal(DomainException.class, () -> Kind.TEMPERATURE.si(rise));

        assertThat(refused.code()).isEqualTo("temperature-difference");
        assertThat(refused.parameters()).containsEntry("difference", "20 °C");
        assertThat(Kind.TEMPERATURE.si(Quantities.getQuantity(20, Units.CELSIUS)))
                .isEqualTo(293.15);
        assertThat(Kind.LENGTH.si(Quantities.getQuantity(20, Units.METRE, Quantity.Scale.RELATIVE)))
                .isEqualTo(20);
    }

    /** The unit library prints a number and a unit; what it prints is what was typed, and is read back. */
    @Test
    void quantitiesOfEveryUnitPrintAsTyped() {
        for (Kind<?> kind : Kind.all()) {
            List<String> symbols = new ArrayList<>(UnitSymbols.symbols(kind));
            MoreUnits.TABLE.entries().stream()
                    .filter(entry -> entry.kind() == kind)
                    .forEach(entry -> symbols.add(entry.symbol()));
            for (String symbol : symbols) {
                printsAsTyped(kind, symbol);
            }
        }
        assertThat(Measures.ksi(55)).hasToString("55 ksi");
        assertThat(Measures.inches(1)).hasToString("1 in");
        assertThat(Measures.gramsPerMinute(300)).hasToString("300 g/min");
    }

    private static <Q extends Quantity<Q>> void printsAsTyped(Kind<Q> kind, String symbol) {
        Quantity<Q> typed = kind.parse("55 " + symbol);

        assertThat(kind.parse(typed.toString())).as(symbol).isEqualTo(typed);
        assertThat(QuantityText.print(typed)).isIn("55 " + symbol, "55" + symbol);
    }

    /** Programs compare and look up units of both sources. */
    @Test
    void unitsEqualThoseOfTheUnitLibrary() {
        Map<Unit<?>, Unit<?>> pairs = Map.ofEntries(
                entry(Units.METRE, tech.units.indriya.unit.Units.METRE),
                entry(Units.KILOGRAM, tech.units.indriya.unit.Units.KILOGRAM),
                entry(Units.SECOND, tech.units.indriya.unit.Units.SECOND),
                entry(Units.KELVIN, tech.units.indriya.unit.Units.KELVIN),
                entry(Units.METRE_PER_SECOND, tech.units.indriya.unit.Units.METRE_PER_SECOND),
                entry(Units.METRE_PER_SQUARE_SECOND, tech.units.indriya.unit.Units.METRE_PER_SQUARE_SECOND),
                entry(Units.SQUARE_METRE, tech.units.indriya.unit.Units.SQUARE_METRE),
                entry(Units.CUBIC_METRE, tech.units.indriya.unit.Units.CUBIC_METRE),
                entry(Units.RADIAN, tech.units.indriya.unit.Units.RADIAN),
                entry(Units.HERTZ, tech.units.indriya.unit.Units.HERTZ),
                entry(Units.NEWTON, tech.units.indriya.unit.Units.NEWTON),
                entry(Units.PASCAL, tech.units.indriya.unit.Units.PASCAL),
                entry(Units.JOULE, tech.units.indriya.unit.Units.JOULE),
                entry(Units.WATT, tech.units.indriya.unit.Units.WATT),
                entry(Units.GRAM, tech.units.indriya.unit.Units.GRAM),
                entry(Units.MINUTE, tech.units.indriya.unit.Units.MINUTE),
                entry(Units.HOUR, tech.units.indriya.unit.Units.HOUR),
                entry(Units.LITRE, tech.units.indriya.unit.Units.LITRE),
                entry(Units.CELSIUS, tech.units.indriya.unit.Units.CELSIUS),
                entry(Units.PERCENT, tech.units.indriya.unit.Units.PERCENT),
                entry(Units.MILLIMETRE, MetricPrefix.MILLI(tech.units.indriya.unit.Units.METRE)),
                entry(Units.MEGAPASCAL, MetricPrefix.MEGA(tech.units.indriya.unit.Units.PASCAL)));

        pairs.forEach((ours, theirs) -> {
            assertThat(ours.equals(theirs)).as("%s", ours).isTrue();
            assertThat(theirs.equals(ours)).as("%s", ours).isTrue();
            assertThat(ours).hasSameHashCodeAs(theirs);
        });
    }

    @Test
    void columnSuffixesAreWordsOfTheHeading() {
        assertThat(Kind.PRESSURE.column("pressure")).isEqualTo("pressure_Pa");
        assertThat(Kind.SPEED.column("feed")).isEqualTo("feed_m_per_s");
        assertThat(Kind.DENSITY.column("density")).isEqualTo("density_kg_per_m3");
        assertThat(Kind.SPECIFIC_HEAT.column("entropy")).isEqualTo("entropy_J_per_kg_K");
        assertThat(Kind.DYNAMIC_VISCOSITY.column("viscosity")).isEqualTo("viscosity_Pa_s");
        assertThat(Kind.RATIO.column("discharge_coefficient")).isEqualTo("discharge_coefficient");
        assertThat(Units.columnSuffix(Units.MICROMETRE)).isEqualTo("um");
        assertThat(Units.columnSuffix(Units.DEGREE)).isEqualTo("deg");
        assertThat(Units.columnSuffix(Units.CELSIUS)).isEqualTo("C");
        assertThat(Units.columnSuffix(Units.PERCENT)).isEqualTo("percent");
    }

    @Test
    void textIsTheSameInAnyLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(Kind.LENGTH.si(Kind.LENGTH.parse("1234.5 m"))).isEqualTo(1234.5);
            assertThat(QuantityText.print(Measures.millimetres(0.25))).isEqualTo("0.25 mm");
            assertThat(QuantityText.round(1234567.891, 8)).isEqualTo("1234567.9");
        } finally {
            Locale.setDefault(before);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0,25 mm | decimal-mark",
                "1'000 mm | decimal-mark",
                "mm | not-a-quantity",
                "3 | no-unit",
                "3 MPa | unknown-unit",
                "1e400 mm | number-too-large",
                "NaN mm | not-a-quantity",
                "1 2 mm | unknown-unit",
                "1e mm | unknown-unit",
                "- 1 mm | not-a-quantity",
            })
    void textWithoutALengthIsRefused(String text, String code) {
        assertThat(refusal(TextException.class, () -> Kind.LENGTH.parse(text)).code())
                .isEqualTo(code);
    }

    @Test
    void rangesHitTheirValuesExactly() {
        double[] megapascals = QuantityArray.parse(Kind.PRESSURE, "50 MPa..600 MPa step 50 MPa")
                .to(Units.MEGAPASCAL);

        assertThat(megapascals).containsExactly(50, 100, 150, 200, 250, 300, 350, 400, 450, 500, 550, 600);
        assertThat(QuantityArray.parse(Kind.LENGTH, "0.1 mm..0.7 mm step 0.1 mm")
                        .size())
                .isEqualTo(7);
        assertThat(QuantityArray.parse(Kind.LENGTH, "10 mm..2 mm step -2 mm").to(Units.MILLIMETRE))
                .containsExactly(10, 8, 6, 4, 2);
        assertThat(QuantityArray.parse(Kind.TEMPERATURE, "0 C..40 C step 10 C").toSi())
                .containsExactly(273.15, 283.15, 293.15, 303.15, 313.15);
    }

    @ParameterizedTest
    @CsvSource({"1 mm..5 mm step -1 mm", "1 mm..5 mm step 0 mm"})
    void rangesThatNeverEndAreRefused(String text) {
        assertThat(codeOf(() -> QuantityArray.parse(Kind.LENGTH, text))).isEqualTo("endless-range");
    }
}
