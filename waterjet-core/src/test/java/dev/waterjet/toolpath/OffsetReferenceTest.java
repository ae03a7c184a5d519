package dev.waterjet.toolpath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Side;
import dev.waterjet.reference.GeometryRow;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Lengths and refusals of offset paths against closed forms. */
@SuppressWarnings("StringSplitter")
class OffsetReferenceTest {

    private static final Pattern PLACE = Pattern.compile("refused at \\((\\d+),(\\d+)\\)");

    static List<GeometryRow> rows() {
        return GeometryRow.read("offset");
    }

    /** The offset paths of a row. */
    static OffsetResult offset(GeometryRow row) {
        double[] offsets = Arrays.stream(
                        java.util.Objects.requireNonNull(row.settings().get("d"))
                                .split(","))
                .mapToDouble(text -> Double.parseDouble(text) * 1e-3)
                .toArray();
        KerfOffset offset = KerfOffset.perEdge(QuantityArray.ofSi(Kind.LENGTH, offsets));
        if ("extended".equals(row.settings().get("join"))) {
            offset = offset.withCorners(KerfOffset.CornerStyle.EXTENDED);
        }
        String narrow = row.settings().getOrDefault("narrow", "refuse").toUpperCase(Locale.ROOT);
        Contour contour = row.contour();
        return offset.withNarrowPlaces(KerfOffset.NarrowPlaces.valueOf(narrow)).apply(contour, side(row, contour));
    }

    private static Side side(GeometryRow row, Contour contour) {
        return switch (java.util.Objects.requireNonNull(row.settings().get("side"))) {
            case "in" -> contour.enclosedSide();
            case "out" -> contour.enclosedSide().opposite();
            default -> Side.RIGHT;
        };
    }

    @ParameterizedTest
    @MethodSource("rows")
    void lengthsAndRefusalsAreThoseOfTheClosedForm(GeometryRow row) {
        if (row.expected().startsWith("refused")) {
            isRefused(row);
            return;
        }
        String[] words = row.expected().split(" ");
        double expected = Double.parseDouble(words[words.length > 1 ? 2 : 0]) * 1e-3;
        int count = words.length > 1 ? Integer.parseInt(words[0]) : 1;
        double tolerance = Double.isNaN(row.tolerance()) ? 1e-9 : row.tolerance();

        OffsetResult result = offset(row);

        assertThat(result.paths())
                .hasSize(count)
                .allSatisfy(path ->
                        assertThat(path.contour().lengthSi()).isCloseTo(expected, within(tolerance * expected)));
    }

    private static void isRefused(GeometryRow row) {
        assertThatExceptionOfType(GeometryException.class)
                .isThrownBy(() -> offset(row))
                .satisfies(e -> {
                    assertThat(e.code()).isEqualTo("jet-does-not-fit");
                    Matcher place = PLACE.matcher(row.expected());
                    if (place.matches()) {
                        // of a long neck any place counts; the first one is at its mouth
                        double anywhere = row.note().contains("any place") ? 5e-3 : 1e-4;
                        assertThat(Math.hypot(
                                        e.xSi() - Double.parseDouble(place.group(1)) * 1e-3,
                                        e.ySi() - Double.parseDouble(place.group(2)) * 1e-3))
                                .isLessThanOrEqualTo(anywhere);
                    }
                });
    }

    @Test
    void theSlitLeavesTheLengthOfItsSidesUncut() {
        GeometryRow row = rows().stream()
                .filter(one -> one.id().equals("offset-slit-0.8-bridged"))
                .findFirst()
                .orElseThrow();

        assertThat(Kind.LENGTH.si(offset(row).unreachedLength())).isCloseTo(0.0208, within(1e-9));
    }
}
