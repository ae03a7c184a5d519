package dev.waterjet.measure;

import static dev.waterjet.Refusals.codeOf;
import static dev.waterjet.Refusals.refusal;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each reader of text takes a text at its limit and refuses one beyond it. */
class TextLimitsTest {

    private static void refused(ThrowingCallable reading, String code) {
        assertThat(refusal(TextException.class, reading).code()).isEqualTo(code);
    }

    private static void refusedAt(int line, int column, ThrowingCallable reading, String code) {
        TextException refused = refusal(TextException.class, reading);
        assertThat(refused.code()).isEqualTo(code);
        assertThat(refused.line()).isEqualTo(line);
        assertThat(refused.column()).isEqualTo(column);
    }

    @Test
    void quantitiesHaveTwoHundredCharacters() {
        assertThat(Kind.LENGTH.si(Kind.LENGTH.parse("0".repeat(197) + "7 m"))).isEqualTo(7);
        refused(() -> Kind.LENGTH.parse("0".repeat(198) + "7 m"), "text-too-long");
    }

    @Test
    void numbersOfQuantitiesReachTenToTheHundredth() {
        assertThat(Kind.LENGTH.si(Kind.LENGTH.parse("-1e100 m"))).isEqualTo(-1e100);
        refused(() -> Kind.LENGTH.parse("1.0001e100 m"), "number-too-large");
        refused(() -> Kind.LENGTH.parse("-1e999 m"), "number-too-large");
    }

    @Test
    void rangesHaveSixHundredCharactersAndTenMillionValues() {
        String first = "1 m..2 m";
        assertThat(QuantityArray.parse(Kind.LENGTH, " ".repeat(600 - first.length()) + first)
                        .size())
                .isEqualTo(11);
        refused(() -> QuantityArray.parse(Kind.LENGTH, " ".repeat(601 - first.length()) + first), "text-too-long");
        refused(() -> QuantityArray.parse(Kind.LENGTH, "0 m..10000001 m step 1 m"), "range-too-long");
    }

    @Test
    void tablesHaveTwentyMillionCharacters() {
        String line = "\n".repeat(20_000_000);

        assertThat(CsvText.parse(line)).isEmpty();
        refused(() -> CsvText.parse(line + "\n"), "text-too-long");
    }

    @Test
    void tablesHaveTwoHundredThousandRows() {
        String rows = "1\n".repeat(200_000);

        assertThat(CsvText.parse(rows)).hasSize(200_000);
        refusedAt(200_001, 1, () -> CsvText.parse(rows + "1"), "too-many-rows");
        assertThat(CsvText.parse(rows + "# a remark is no row\n")).hasSize(200_000);
    }

    @Test
    void rowsHave256Cells() {
        assertThat(CsvText.parse("a" + ",a".repeat(255)).get(0).cells()).hasSize(256);
        refusedAt(1, 513, () -> CsvText.parse("a" + ",a".repeat(256)), "too-many-cells");
    }

    @Test
    void cellsHaveTenThousandCharacters() {
        assertThat(CsvText.parse("a," + "b".repeat(10_000)).get(0).cells().get(1))
                .hasSize(10_000);
        refusedAt(1, 3, () -> CsvText.parse("a," + "b".repeat(10_001)), "cell-too-long");
        refusedAt(2, 1, () -> CsvText.parse("a\n\"" + "b\n".repeat(5_001) + "\""), "cell-too-long");
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

        refusedAt(2, 3, () -> row.number(1, "speed"), "not-a-number");
    }

    @Test
    void numbersInCellsReachTenToTheHundredth() {
        CsvText.Row row = CsvText.parse("-1.1e100," + "9".repeat(60) + "x").get(0);

        refusedAt(1, 1, () -> row.number(0, "speed"), "number-too-large");
        refused(() -> row.number(1, "speed"), "not-a-number");
        assertThat(codeOf(() -> row.number(2, "speed"))).isEqualTo("no-such-index");
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
