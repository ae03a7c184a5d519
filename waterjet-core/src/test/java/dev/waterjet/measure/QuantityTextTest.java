package dev.waterjet.measure;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
        assertThatThrownBy(() -> QuantityText.round(1, 0)).hasMessageContaining("significant digits is 0");
        assertThatThrownBy(() -> QuantityText.round(1, 18)).hasMessageContaining("it must be at most 17");
    }

    @Test
    void aQuantityIsToldInTheUnitAskedFor() {
        assertThat(QuantityText.print(Kind.LENGTH, millimetres(25.4), Units.INCH, 4))
                .isEqualTo("1 in");
        assertThat(QuantityText.print(Kind.RATIO, Measures.percent(65), Units.ONE, 4))
                .isEqualTo("0.65");
    }

    @Test
    void aTextTooLongForAQuantityIsShownInPart() {
        assertThat(Kind.LENGTH.si(Kind.LENGTH.parse("3 m" + " ".repeat(197)))).isEqualTo(3);
        assertThatThrownBy(() -> Kind.LENGTH.parse("3 m" + " ".repeat(198)))
                .isInstanceOf(TextException.class)
                .hasMessageStartingWith("\"3 m" + " ".repeat(37) + "...\" is not a length");
        assertThatThrownBy(() -> Kind.LENGTH.parse("x".repeat(40)))
                .hasMessageStartingWith("\"" + "x".repeat(40) + "\" is not a length");
        assertThatThrownBy(() -> Kind.LENGTH.parse("x".repeat(41)))
                .hasMessageStartingWith("\"" + "x".repeat(40) + "...\" is not a length");
    }

    @Test
    void whatCannotBeShownIsAQuestionMark() {
        assertThatThrownBy(() -> Kind.LENGTH.parse("a\tb\u0007")).hasMessageStartingWith("\"a?b?\" is not a length");
    }

    @Test
    void theHintShowsAnExample() {
        assertThatThrownBy(() -> Kind.LENGTH.parse("wide"))
                .hasMessageEndingWith("write a number and a unit, such as \"0.25 m\"");
        assertThatThrownBy(() -> Kind.RATIO.parse("half")).hasMessageEndingWith("such as \"0.25 %\"");
    }

    @Test
    void aUnitAloneIsReadToo() {
        assertThat(QuantityText.parseUnit(Kind.LENGTH, " mm ")).isSameAs(Units.MILLIMETRE);
        assertThat(QuantityText.parseUnit(Kind.LENGTH, "microns")).isSameAs(Units.MICROMETRE);
        assertThatThrownBy(() -> QuantityText.parseUnit(Kind.LENGTH, "furlong"))
                .hasMessage("\"furlong\" has a unit that is not one of length: use one of m, mm, um, in, ft");
    }
}
