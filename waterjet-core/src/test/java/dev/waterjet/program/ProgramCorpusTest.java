package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Programs of a workshop, with cuts, lengths and findings that were worked out by hand. */
class ProgramCorpusTest {

    private static String resource(String name) {
        try (InputStream in = ProgramCorpusTest.class.getResourceAsStream("/programs/" + name)) {
            return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError(name, e);
        }
    }

    private static Stream<CsvText.Row> programs() {
        return CsvText.parse(resource("expected.csv")).stream().skip(1);
    }

    private static PartProgram program(CsvText.Row row) {
        return PartProgram.parse(resource(row.cells().get(0) + ".nc"));
    }

    private static double mm(double si) {
        return 1000 * si;
    }

    @Test
    void thereAreEleven() {
        assertThat(programs()).hasSize(11);
    }

    @ParameterizedTest
    @MethodSource("programs")
    void cutsAndLengthsAreThoseWorkedOutByHand(CsvText.Row row) {
        PartProgram program = program(row);

        assertThat(program.size()).isEqualTo((int) row.number(1, "blocks"));
        assertThat(program.cuts()).hasSize((int) row.number(2, "cuts"));
        assertThat(mm(Kind.LENGTH.si(program.cuttingLength())))
                .isCloseTo(row.number(3, "cutting length"), within(1e-5));
        assertThat(mm(Kind.LENGTH.si(program.rapidLength()))).isCloseTo(row.number(4, "rapid length"), within(1e-5));
        double overcut = program.cuts().stream()
                .mapToDouble(cut -> Kind.LENGTH.si(cut.overcut()))
                .sum();
        assertThat(mm(overcut)).isCloseTo(row.number(5, "overcut"), within(1e-5));
    }

    @ParameterizedTest
    @MethodSource("programs")
    void findingsAreThoseOfAReaderWithAPencil(CsvText.Row row) {
        List<String> found = new ArrayList<>();
        ProgramChecks.defaults().check(program(row)).forEach(finding -> {
            found.add(String.valueOf(finding.line()));
            found.add(finding.code());
        });
        String expected = row.cells().get(6);

        assertThat(pairs(found))
                .containsExactlyInAnyOrderElementsOf(
                        pairs(expected.isEmpty() ? List.of() : Arrays.asList(expected.split(" "))));
    }

    private static List<String> pairs(List<String> words) {
        List<String> pairs = new ArrayList<>();
        for (int i = 0; i < words.size(); i += 2) {
            pairs.add(words.get(i) + " " + words.get(i + 1));
        }
        return pairs;
    }

    @ParameterizedTest
    @MethodSource("programs")
    void feedsAreWrittenWithoutAnotherChange(CsvText.Row row) {
        PartProgram program = program(row);
        double[] feeds = new double[program.size()];
        Arrays.fill(feeds, 0.005);
        String feedWord = " ?F[0-9.]+";

        assertThat(program.withFeedsSi(feeds).replaceAll(feedWord, ""))
                .isEqualTo(program.unrolledText().replaceAll(feedWord, ""));
    }
}
