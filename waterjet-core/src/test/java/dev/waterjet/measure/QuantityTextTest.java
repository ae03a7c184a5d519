package dev.waterjet.measure;

import static dev.waterjet.Refusals.codeOf;
import static dev.waterjet.Refusals.refusal;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import javax.measure.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tech.units.indriya.quantity.Quantities;

class QuantityTextTest {

    @ParameterizedTest
    @CsvSource({
        "1234.5678, 6, 1234.57",
        "1234.5678, 2, 1200",
        "-0.0125, 2, -0.013",
        "0.1, 17, 0.10000000000000001",
        "0, 3, 0",
        "NaN, 3, NaN",
        "0.0001, 3, 0.0001",
        "0.00009876, 2, 9.9e-05",
        "0.00005, 3, 5e-05",
        "999999999, 9, 999999999",
        "1e9, 3, 1e+09",
        "-1.25e12, 3, -1.25e+12",
    })
    void numbersAreRoundedToSignificantDigits(double value, int digits, String text) {
        assertThat(QuantityText.round(value, digits)).isEqualTo(text);
    }

    @Test
    void digitsAreOneToSeventeen() {
        assertThat(codeOf(() -> QuantityText.round(1, 0))).isEqualTo("must-be-at-least");
        assertThat(codeOf(() -> QuantityText.round(1, 18))).isEqualTo("must-be-at-most");
    }

    @Test
    void aQuantityIsWrittenInTheRequestedUnit() {
        assertThat(QuantityText.print(Kind.LENGTH, millimetres(25.4), Units.INCH, 4))
                .isEqualTo("1 in");
        assertThat(QuantityText.print(Kind.RATIO, Measures.percent(65), Units.ONE, 4))
                .isEqualTo("0.65");
    }

    @ParameterizedTest
    @CsvSource({
        "length, 0.00054, 0.54 mm",
        "length, 0.0000032, 3.2 µm",
        "length, 0.0001, 0.1 mm",
        "length, 9.8764, 9876 mm",
        "length, 12.3456, 12.35 m",
        "length, 0, 0 mm",
        "length, -0.002, -2 mm",
        "area, 0.0012, 1200 mm2",
        "volume, 0.001, 1 L",
        "time, 93.04, 93.04 s",
        "time, 300, 5 min",
        "time, 163440, 45.4 h",
        "frequency, 0.9, 54 1/min",
        "speed, 0.0086666667, 520 mm/min",
        "speed, 845.21, 845.2 m/s",
        "speed, 3e-10, 1.08 µm/h",
        "speed, 0, 0 mm/min",
        "acceleration, 0.5, 0.5 m/s2",
        "angle, 0.0087266463, 0.5°",
        "mass, 0.25, 250 g",
        "mass, 12, 12 kg",
        "force, 36.24, 36.24 N",
        "pressure, 380000000, 380 MPa",
        "pressure, 101325, 0.1013 MPa",
        "pressure, 2339, 2.339 kPa",
        "pressure, 2e11, 200 GPa",
        "temperature, 293.15, 20 °C",
        "power, 30000, 30 kW",
        "power, 12, 12 W",
        "energy, 3600000, 1 kWh",
        "mass flow, 0.0075, 450 g/min",
        "volume flow, 5.8333333e-05, 3.5 L/min",
        "density, 998.2072, 998.2 kg/m3",
        "dynamic viscosity, 0.0010016, 1.002 mPa s",
        "energy density, 1.34e10, 13.4 J/mm3",
        "compressibility, 4.5891e-10, 0.4589 1/GPa",
        "thermal expansion, 0.0002068, 0.0002068 1/K",
        "ratio, 0.6512345, 0.6512",
    })
    void peopleReadUnitsOfTheTrade(String kind, double si, String text) {
        assertThat(QuantityText.forPeople(kind(kind), si)).isEqualTo(text);
    }

    private static Kind<?> kind(String name) {
        return Kind.all().stream()
                .filter(kind -> kind.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aQuantityIsWrittenForPeopleWhateverItsUnit() {
        assertThat(QuantityText.forPeople(Kind.LENGTH, Measures.inches(0.25))).isEqualTo("6.35 mm");
    }

    /** One significant figure of the uncertainty, two if it begins with 1; the value ends at the same digit. */
    @ParameterizedTest
    @CsvSource({
        "speed, 0.00866667, 0.00163, 520 mm/min ± 100 mm/min",
        "length, 0.000543, 0.0000214, 0.54 mm ± 0.02 mm",
        "length, 0.000543, 0.0000149, 0.543 mm ± 0.015 mm",
        "length, 0.000543, 0.0000198, 0.54 mm ± 0.02 mm",
        "time, 123.4, 0.96, 123.4 s ± 1.0 s",
        "length, 0.001, 0, 1 mm",
        "length, 0, 0.002, 0 mm ± 2 mm",
        "length, 1.234567, 0.000003, 1235 mm ± 0.003 mm",
        "temperature, 293.15, 0.5, 20.0 °C ± 0.5 °C",
        "angle, 0.0087266463, 0.0017453293, 0.50° ± 0.10°",
        "ratio, 0.65, 0.02, 0.65 ± 0.02",
    })
    void valueAndUncertaintyEndAtTheSameDigit(String kind, double si, double uncertainty, String text) {
        assertThat(QuantityText.forPeople(kind(kind), si, uncertainty)).isEqualTo(text);
    }

    /** Blanks of the keyboard and of typesetting, from the tabulator to the carriage return. */
    @Test
    void anyBlankSeparatesNumberAndUnit() {
        for (String blank : List.of("", " ", "\t", "\n", "\u000B", "\f", "\r", "\u00A0", "\u2009", "\u202F", " \t ")) {
            assertThat(Kind.LENGTH.si(Kind.LENGTH.parse("2.5" + blank + "mm"))).isEqualTo(0.0025);
            assertThat(Kind.LENGTH.si(Kind.LENGTH.parse(blank + "1 1/4" + blank + "in" + blank)))
                    .isEqualTo(0.03175);
        }
        for (String other : List.of("\u0008", "\u000E", "\u2010", "_")) {
            assertThatThrownBy(() -> Kind.LENGTH.parse("2.5" + other + "mm")).isInstanceOf(WaterjetException.class);
        }
    }

    @Test
    void bothEndsOfAnIntervalHaveOneUnit() {
        assertThat(QuantityText.interval(Kind.TIME, 93, 195)).isEqualTo("93 s to 195 s");
        assertThat(QuantityText.interval(Kind.TIME, 93, 600)).isEqualTo("1.55 min to 10 min");
    }

    @Test
    void everyDigitOfANumberIsPrinted() {
        assertThat(QuantityText.print(Quantities.getQuantity(0.1, Units.MEGAPASCAL)))
                .isEqualTo("0.1 MPa");
        assertThat(QuantityText.print(
                        Quantities.getQuantity(new BigDecimal("380.0000000000000000001"), Units.MEGAPASCAL)))
                .isEqualTo("380.0000000000000000001 MPa");
        assertThat(QuantityText.print(
                        Quantities.getQuantity(new BigInteger("123456789012345678901234567890"), Units.MILLIMETRE)))
                .isEqualTo("123456789012345678901234567890 mm");
        assertThat(QuantityText.print(Quantities.getQuantity(9_007_199_254_740_993L, Units.MILLIMETRE)))
                .isEqualTo("9007199254740993 mm");
    }

    @ParameterizedTest
    @CsvSource({
        "1.001, 1, m, 1.001 m, 1 m",
        "1.00001, 1, m, 1.00001 m, 1 m",
        "1.00000001, 1, m, 1.00000001 m, 1 m",
        "12345.678, 1, m, 12350 m, 1 m",
        "1.23449, 1.2341234, m, 1.2345 m, 1.2341 m",
        "100000, 99999, m, 100000 m, 99999 m",
        "273.16, 273.15, K, 273.2 K, 273.15 K",
        "1.23414, 1.23413, m, 1.23414 m, 1.23413 m",
        "0, 0, mm, 0 mm, 0 mm",
    })
    void aRefusalShowsFourFiguresOrAsManyAsKeepValueAndLimitApart(
            double value, double limit, String symbol, String shownValue, String shownLimit) {
        Kind<?> kind = symbol.equals("K") ? Kind.TEMPERATURE : Kind.LENGTH;
        String text = new DomainException("size", value, "below", limit, QuantityText.parseUnit(kind, symbol), "")
                .getMessage();

        assertThat(text).isEqualTo("size is " + shownValue + "; it must be below " + shownLimit);
    }

    @Test
    void quantitiesOfAMessageThatDifferPrintDifferently() {
        Message message = Message.of("too-wide", "{width} of {space}")
                .with("width", Kind.LENGTH, 1.00004e-3, Units.MILLIMETRE)
                .with("space", Kind.LENGTH, 1.00003e-3, Units.MILLIMETRE);

        assertThat(message.text()).isEqualTo("1.00004 mm of 1.00003 mm");
        assertThat(Message.of("ratios", "{a} and {b}")
                        .with("a", 0.123456)
                        .with("b", 0.123456)
                        .text())
                .isEqualTo("0.1235 and 0.1235");
    }

    @ParameterizedTest
    @CsvSource({
        "1/2 in, 0.5",
        "1-1/4 in, 1.25",
        "1 1/4 in, 1.25",
        "' -1-1/4in ', -1.25",
        "+3/64\", 0.046875",
        "2 in, 2",
        "2. in, 2",
        ".5e1 in, 5",
        "5e-1in, 0.5",
    })
    void fractionsAreReadLikeDecimals(String text, double inches) {
        assertThat(Kind.LENGTH.parse(text).getValue().doubleValue()).isEqualTo(inches);
        assertThat(Kind.LENGTH.parse(text).getUnit()).isSameAs(Units.INCH);
    }

    @Test
    void aSlashOfTheUnitIsNoFraction() {
        assertThat(Kind.FREQUENCY.si(Kind.FREQUENCY.parse("30 1/min"))).isEqualTo(0.5);
        assertThat(Kind.FREQUENCY.si(Kind.FREQUENCY.parse("1/2 1/s"))).isEqualTo(0.5);
        assertThat(Kind.RATIO.si(Kind.RATIO.parse("1/4"))).isEqualTo(0.25);
    }

    @ParameterizedTest
    @CsvSource({
        "1/0 in, zero-denominator",
        "1/ in, unknown-unit",
        "1/2/3 in, unknown-unit",
        "1/2.5 in, unknown-unit",
        "1.5/2 in, unknown-unit",
        "1--1/4 in, unknown-unit",
        "1 2 in, unknown-unit",
    })
    void whatLooksLikeAFractionOnly(String text, String code) {
        assertThat(codeOf(() -> Kind.LENGTH.parse(text))).isEqualTo(code);
    }

    /** Factors by the SI brochure, 9th edition (2019), and NIST SP 811 (2008), appendix B. */
    @ParameterizedTest
    @CsvSource({
        "length, 5 cm, 0.05",
        "length, 1 km, 1000",
        "length, 10 thou, 0.000254",
        "length, 10 mil, 0.000254",
        "length, 1 yd, 0.9144",
        "length, 5', 1.524",
        "length, 5\u2032, 1.524",
        "length, 3\u2033, 0.0762",
        "length, 0.5 IN, 0.0127",
        "length, 12 MM, 0.012",
        "pressure, 1 KSI, 6894757.293168361",
        "pressure, 1 PSI, 6894.757293168361",
        "pressure, 1 BAR, 100000",
        "speed, 60 IPM, 0.0254",
        "area, 1 ft2, 0.09290304",
        "area, 1 in², 0.00064516",
        "volume, 1 ft^3, 0.028316846592",
        "volume, 250 mL, 0.00025",
        "angle, 60 arcmin, 0.017453292519943295",
        "time, 5 ms, 0.005",
        "speed, 3 in/s, 0.0762",
        "speed, 36 km/h, 10",
        "speed, 100 fpm, 0.508",
        "acceleration, 0.5 g, 4.903325",
        "force, 3 kN, 3000",
        "pressure, 3 N/mm2, 3000000",
        "pressure, 3 N/mm², 3000000",
        "pressure, 1013.25 hPa, 101325",
        "pressure, 1 atm, 101325",
        "energy, 1 ft lbf, 1.3558179483314004",
        "mass flow, 3.6 t/h, 1",
        "mass flow, 36 kg/h, 0.01",
        "mass flow, 1 lb/h, 0.00012599788055555556",
        "volume flow, 3.6 m3/h, 0.001",
        "volume flow, 3.6 L/h, 0.000001",
        "volume flow, 3 L/s, 0.003",
        "volume flow, 1 cfm, 0.0004719474432",
        "density, 4.43 kg/L, 4430",
        "density, 1 lb/in3, 27679.904710203125",
        "energy density, 13.4 J/cm3, 13400000",
        "ratio, 500 ppm, 0.0005",
        "dynamic viscosity, 1 cP, 0.001",
        "dynamic viscosity, 1 mPa·s, 0.001",
        "length, 3 μm, 0.000003",
        "temperature, 20 °C, 293.15",
        "temperature, 68 degF, 293.15",
    })
    void unitsInUseAreRead(String kind, String text, double si) {
        assertThat(siOf(kind(kind), text)).isCloseTo(si, org.assertj.core.data.Percentage.withPercentage(1e-7));
    }

    private static <Q extends Quantity<Q>> double siOf(Kind<Q> kind, String text) {
        return kind.si(kind.parse(text));
    }

    @Test
    void blanksOfTypesettingAreRead() {
        assertThat(Kind.LENGTH.parse("\u00A03\u202Fmm\u2009")).isEqualTo(millimetres(3));
    }

    @Test
    void aRefusalHasTheTextAndTheKind() {
        TextException refused = refusal(TextException.class, () -> Kind.LENGTH.parse("wide"));

        assertThat(refused.code()).isEqualTo("not-a-quantity");
        assertThat(refused.parameters())
                .containsEntry("text", "wide")
                .containsEntry("kind", "length")
                .containsEntry("example", "0.25 m");
    }

    @Test
    void aTextIsShownWithoutControlCharactersAndInPart() {
        assertThat(QuantityText.shown("a\tb\u0007")).isEqualTo("a?b?");
        assertThat(QuantityText.shown("x".repeat(40))).isEqualTo("x".repeat(40));
        assertThat(QuantityText.shown("x".repeat(41))).isEqualTo("x".repeat(40) + "...");
    }

    @Test
    void aUnitAloneIsReadToo() {
        assertThat(QuantityText.parseUnit(Kind.LENGTH, " mm ")).isSameAs(Units.MILLIMETRE);
        assertThat(QuantityText.parseUnit(Kind.LENGTH, "microns")).isSameAs(Units.MICROMETRE);
        assertThat(refusal(TextException.class, () -> QuantityText.parseUnit(Kind.LENGTH, "furlong"))
                        .parameters())
                .containsEntry("units", "m, mm, µm, in, ft");
    }
}
