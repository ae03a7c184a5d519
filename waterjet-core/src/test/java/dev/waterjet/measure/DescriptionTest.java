package dev.waterjet.measure;

import static dev.waterjet.Refusals.codeOf;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class DescriptionTest {

    private enum Finish {
        AS_CUT
    }

    private static Description gauge() {
        return Description.of("gauge");
    }

    @Test
    void entriesStandInTheirOrderWithTheirUnit() {
        assertThat(gauge().put("reading", Kind.PRESSURE, 4e8)
                        .put("share", 0.5)
                        .put("marks", 12)
                        .put("turns", 3L)
                        .put("worn", true)
                        .put("name", "north wall")
                        .put("finish", Finish.AS_CUT)
                        .map()
                        .entrySet())
                .containsExactly(
                        Map.entry("type", "gauge"),
                        Map.entry("reading_Pa", 4e8),
                        Map.entry("share", 0.5),
                        Map.entry("marks", 12L),
                        Map.entry("turns", 3L),
                        Map.entry("worn", true),
                        Map.entry("name", "north wall"),
                        Map.entry("finish", "as-cut"));
    }

    @Test
    void whatIsNotThereIsLeftOut() {
        assertThat(gauge().put("reading", Kind.PRESSURE, OptionalDouble.empty())
                        .put("note", "")
                        .put("part", Optional.empty())
                        .map())
                .containsOnlyKeys("type");
        assertThat(gauge().put("reading", Kind.PRESSURE, OptionalDouble.of(1)).map())
                .containsEntry("reading_Pa", 1.0);
    }

    /** Named values without those that are no numbers; none at all where nothing is left. */
    @Test
    void namedValuesAreKeptWhereTheyAreFinite() {
        assertThat(gauge().put("marks", Map.of()).map()).containsOnlyKeys("type");
        assertThat(gauge().put("marks", Map.of("a", Double.NaN, "b", Double.POSITIVE_INFINITY))
                        .map())
                .containsOnlyKeys("type");
        Map<String, Object> marks = Map.of("a", Double.NaN, "b", 1.5, "c", "worn", "d", 3L);
        assertThat(gauge().put("marks", marks).map()).containsEntry("marks", Map.of("b", 1.5, "c", "worn", "d", 3L));
    }

    @Test
    void partsDescribeThemselves() {
        QuantityArray<?> readings = QuantityArray.ofSi(Kind.PRESSURE, 1, 2);

        assertThat(gauge().put("log", Optional.of(readings)).map()).containsEntry("log", readings.describe());
        assertThat(gauge().put("readings", readings).map()).containsEntry("readings_Pa", List.of(1.0, 2.0));
        assertThat(gauge().put("parts", List.of(readings, Finish.AS_CUT, "dial", List.of(1), Map.of("a", 1)))
                        .map())
                .containsEntry("parts", List.of(readings.describe(), "as-cut", "dial", List.of(1), Map.of("a", 1)));
    }

    @Test
    void whatCannotBeWrittenIsRefused() {
        assertThat(codeOf(() -> gauge().put("parts", List.of(7)))).isEqualTo("no-description");
        assertThat(codeOf(() -> gauge().put("reading", Kind.PRESSURE, Double.NaN)))
                .isEqualTo("must-be-at-most");
        assertThat(codeOf(() -> gauge().put("type", "another"))).isEqualTo("duplicate-key");
    }
}
