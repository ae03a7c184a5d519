package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.CsvText;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Values of general statistics programs for synthetic test cuts. Each row names program, version and call: R with survival,
 * lme4, lmerTest, metafor, sandwich, MASS, robustbase and mvtnorm, and dense quadrature by numpy and scipy.
 */
class CutStatisticsReferenceTest {

    private static final String FOLDER = "/reference/cut_statistics/";

    /** A row, with its value and relative tolerance. */
    record Expected(CutStatisticsRow row, double value, double tolerance) {

        @Override
        public String toString() {
            return row.dataset() + ": " + row.quantity();
        }
    }

    static Stream<Expected> rows() {
        List<CsvText.Row> rows = CsvText.parse(file("open_expected.csv"));
        return rows.subList(1, rows.size()).stream()
                .map(row -> new Expected(
                        new CutStatisticsRow(
                                row.cells().get(0),
                                row.cells().get(1),
                                row.cells().get(5),
                                CutStatisticsReferenceTest::file),
                        row.number(2, "value"),
                        row.number(3, "tolerance")));
    }

    private static String file(String name) {
        try (InputStream in = CutStatisticsReferenceTest.class.getResourceAsStream(FOLDER + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void agreesWithTheReferenceProgram(Expected expected) {
        OptionalDouble computed = CutStatisticsSubject.compute(expected.row);

        assertThat(computed).isPresent();
        // the values are given with twelve digits
        double tolerance = Math.max(expected.tolerance, 2e-12) * Math.abs(expected.value);
        assertThat(computed.getAsDouble()).isCloseTo(expected.value, within(tolerance));
    }
}
