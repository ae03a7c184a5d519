package dev.waterjet.measure;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/** Each reader of text takes what lies at its limit, and names the limit to what lies beyond. */
class TextLimitsTest {

    private static void refused(ThrowingCallable reading, String message) {
        assertThatThrownBy(reading).isInstanceOf(TextException.class).hasMessageContaining(message);
    }

    @Test
    void quantitiesHaveTwoHundredCharacters() {
        assertThat(Kind.LENGTH.si(Kind.LENGTH.parse("0".repeat(197) + "7 m"))).isEqualTo(7);
        refused(
                () -> Kind.LENGTH.parse("0".repeat(198) + "7 m"),
                "000...\" is not a length: it has more than 200 characters");
    }

    @Test
    void numbersOfQuantitiesReachTenToTheHundredth() {
        assertThat(Kind.LENGTH.si(Kind.LENGTH.parse("-1e100 m"))).isEqualTo(-1e100);
        refused(() -> Kind.LENGTH.parse("1.0001e100 m"), "the number is too large, beyond 1e100");
        refused(() -> Kind.LENGTH.parse("-1e999 m"), "the number is too large, beyond 1e100");
    }

    @Test
    void rangesHaveSixHundredCharactersAndTenMillionValues() {
        String first = "1 m..2 m";
        assertThat(QuantityArray.parse(Kind.LENGTH, " ".repeat(600 - first.length()) + first)
                        .size())
                .isEqualTo(11);
        refused(
                () -> QuantityArray.parse(Kind.LENGTH, " ".repeat(601 - first.length()) + first),
                "a range of length has at most 600 characters");
        refused(
                () -> QuantityArray.parse(Kind.LENGTH, "0 m..10000001 m step 1 m"),
                "\"0 m..10000001 m step 1 m\" has more than 10000000 values");
    }

    @Test
    void tablesHaveTwentyMillionCharacters() {
        String line = "\n".repeat(20_000_000);

        assertThat(CsvText.parse(line)).isEmpty();
        refused(() -> CsvText.parse(line + "\n"), "the text has more than 20000000 characters");
    }

    @Test
    void tablesHaveTwoHundredThousandRows() {
        String rows = "1\n".repeat(200_000);

        assertThat(CsvText.parse(rows)).hasSize(200_000);
        refused(() -> CsvText.parse(rows + "1"), "line 200001, column 1: the text has more than 200000 rows");
        assertThat(CsvText.parse(rows + "# a remark is no row\n")).hasSize(200_000);
    }

    @Test
    void rowsHave256Cells() {
        assertThat(CsvText.parse("a" + ",a".repeat(255)).get(0).cells()).hasSize(256);
        refused(() -> CsvText.parse("a" + ",a".repeat(256)), "line 1, column 513: the row has more than 256 cells");
    }

    @Test
    void cellsHaveTenThousandCharacters() {
        assertThat(CsvText.parse("a," + "b".repeat(10_000)).get(0).cells().get(1))
                .hasSize(10_000);
        refused(
                () -> CsvText.parse("a," + "b".repeat(10_001)),
                "line 1, column 3: the cell has more than 10000 characters");
        refused(
                () -> CsvText.parse("a\n\"" + "b\n".repeat(5_001) + "\""),
                "line 2, column 1: the cell has more than 10000 characters");
    }

    @ParameterizedTest
    @CsvSource({"12, 12", "-1.5e3, -1500", ".5, 0.5", "7., 7", "+1E-2, 0.01", "1e100, 1e100"})
    void numbersInCellsAreDecimal(String cell, double number) {
        assertThat(CsvText.parse("a," + cell).get(0).number(1, "speed")).isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"NaN", "Infinity", "0x1p3", "1f", "1d", "1e", ".", "-", "1_000", "1 000", "\u0661", "e5", ""})
    void whatOnlyJavaTakesForANumberIsNone(String cell) {
        CsvText.Row row = CsvText.parse("\na," + cell).get(0);

        refused(() -> row.number(1, "speed"), "line 2, column 3: speed \"" + cell + "\" is no number");
    }

    @Test
    void numbersInCellsReachTenToTheHundredth() {
        CsvText.Row row = CsvText.parse("-1.1e100," + "9".repeat(60) + "x").get(0);

        refused(() -> row.number(0, "speed"), "line 1, column 1: speed is larger than 1e100");
        refused(() -> row.number(1, "speed"), "speed \"" + "9".repeat(40) + "...\" is no number");
    }

    @Test
    void aRowIsReadBackAsItWasWritten() {
        List<String> cells = List.of("\uFEFFa", " b", "c\t", "d,e", "f \"g\"", "", "h\r\ni", "#j");

        assertThat(CsvText.parse(CsvText.row(cells)).get(0).cells()).isEqualTo(cells);
        assertThat(CsvText.parse(CsvText.row(List.of("# a", "b"))).get(0).cells())
                .containsExactly("# a", "b");
        assertThat(CsvText.row(List.of("a", "b c"))).isEqualTo("a,b c");
    }
}
