package dev.waterjet.measure;

import static dev.waterjet.Refusals.refusal;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.CsvText.Row;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTextTest {

    private static List<List<String>> cells(String text) {
        return CsvText.parse(text).stream().map(Row::cells).toList();
    }

    /** RFC 4180, 2: the examples of its rules, with names of our own. */
    @Test
    void readsAsTheStandardHasIt() {
        assertThat(cells("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"))
                .containsExactly(List.of("aaa", "bbb", "ccc"), List.of("zzz", "yyy", "xxx"));
        assertThat(cells("aaa,bbb,ccc\r\nzzz,yyy,xxx"))
                .containsExactly(List.of("aaa", "bbb", "ccc"), List.of("zzz", "yyy", "xxx"));
        assertThat(cells("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"))
                .containsExactly(List.of("aaa", "bbb", "ccc"), List.of("zzz", "yyy", "xxx"));
        assertThat(cells("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"))
                .containsExactly(List.of("aaa", "b\r\nbb", "ccc"), List.of("zzz", "yyy", "xxx"));
        assertThat(cells("\"aaa\",\"b\"\"bb\",\"ccc\"")).containsExactly(List.of("aaa", "b\"bb", "ccc"));
    }

    @Test
    void cellsMayBeEmptyOrBlankAround() {
        assertThat(cells(",")).containsExactly(List.of("", ""));
        assertThat(cells("a,\nb,")).containsExactly(List.of("a", ""), List.of("b", ""));
        assertThat(cells(" a\t, b c ")).containsExactly(List.of("a", "b c"));
        assertThat(cells("\" a \",\"\"")).containsExactly(List.of(" a ", ""));
        assertThat(cells("")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void everyLineEndCounts(String end) {
        List<Row> rows = CsvText.parse(String.join(end, "# a remark, no row", "a,b", "", "", "c,\"d", "e\"", "# end"));

        assertThat(rows).extracting(Row::cells).containsExactly(List.of("a", "b"), List.of("c", "d" + end + "e"));
        assertThat(rows).extracting(Row::line).containsExactly(2, 5);
        assertThat(rows.get(1).columns()).containsExactly(1, 3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void linesWithinACellCountToo(String end) {
        List<Row> rows = CsvText.parse(String.join(end, "\"a", "b\",c", "d"));

        assertThat(rows).extracting(Row::line).containsExactly(1, 3);
        assertThat(rows.get(0).columns()).containsExactly(1, 4);
    }

    @Test
    void aHashWithinALineIsALetter() {
        assertThat(cells("a,#b\nc#d")).containsExactly(List.of("a", "#b"), List.of("c#d"));
    }

    @Test
    void aByteOrderMarkIsPassedOver() {
        List<Row> rows = CsvText.parse("\uFEFFa,b\n");

        assertThat(rows).extracting(Row::cells).containsExactly(List.of("a", "b"));
        assertThat(rows.get(0).columns()).containsExactly(1, 3);
        assertThat(cells("\uFEFF# a remark")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "~a,\"b~ | 1 | 3 | open-quote",
                "~a,b\nc,\"d\ne~ | 2 | 3 | open-quote",
                "~\"~ | 1 | 1 | open-quote",
                "~\"a\"b~ | 1 | 4 | comma-missing",
                "~x\ny,\"a\nb\" ,c~ | 3 | 3 | comma-missing",
            })
    void faultsHaveTheirPlace(String text, int line, int column, String code) {
        TextException refused = refusal(TextException.class, () -> CsvText.parse(text));

        assertThat(refused.code()).isEqualTo(code);
        assertThat(refused.line()).isEqualTo(line);
        assertThat(refused.column()).isEqualTo(column);
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1, 7", "2, 15", "7, 15"})
    void aRowHasThePlaceOfEachCell(int cell, int column) {
        Row row = CsvText.parse("# remark\nfirst, second,third\n").get(0);
        TextException fault = row.fault(cell, Message.of("some-code", "some text"));

        assertThat(fault.line()).isEqualTo(2);
        assertThat(fault.column()).isEqualTo(column);
    }

    @Test
    void aTextWithoutLinesHasNoPlace() {
        TextException e = new TextException(Message.of("some-code", "some text"));

        assertThat(e.line()).isZero();
        assertThat(e.column()).isZero();
    }

    @Test
    void aCellIsQuotedWhereItMustBe() {
        assertThat(CsvText.row(List.of("a", "", "b c"))).isEqualTo("a,,b c");
        assertThat(CsvText.row(List.of("a,b", "say \"so\"", "c\nd", "e\rf")))
                .isEqualTo("\"a,b\",\"say \"\"so\"\"\",\"c\nd\",\"e\rf\"");
        assertThat(CsvText.row(List.of("#1", "#2"))).isEqualTo("\"#1\",#2");
        assertThat(CsvText.row(List.of(""))).isEqualTo("\"\"");
        assertThat(CsvText.row(List.of(" a", "b\t", "c"))).isEqualTo("\" a\",\"b\t\",c");
    }

    /** A spreadsheet takes what begins with one of four signs for a formula. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@sum"})
    void aNameIsNoFormula(String name) {
        assertThat(CsvText.name(name)).isEqualTo("'" + name);
        assertThat(CsvText.name("x" + name)).isEqualTo("x" + name);
        assertThat(CsvText.name("a\tb\u0007")).isEqualTo("a?b?");
        assertThat(CsvText.name("")).isEmpty();
    }

    @Provide
    Arbitrary<List<List<String>>> tables() {
        Arbitrary<String> cell = Arbitraries.strings()
                .withChars("ab1 ,\"#\n\r\t\uFEFF\u00e9")
                .ofMinLength(0)
                .ofMaxLength(6);
        return cell.list().ofMinSize(1).ofMaxSize(4).list().ofMinSize(1).ofMaxSize(5);
    }

    @Property(tries = 400, seed = "421")
    void whatIsWrittenIsReadBack(@ForAll("tables") List<List<String>> table) {
        StringBuilder text = new StringBuilder();
        table.forEach(row -> text.append(CsvText.row(row)).append('\n'));

        assertThat(cells(text.toString())).isEqualTo(table);
    }
}
