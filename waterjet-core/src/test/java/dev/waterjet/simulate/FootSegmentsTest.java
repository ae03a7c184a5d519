package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Segments keep place, length and time of what was added, with or without joining neighbours. */
class FootSegmentsTest {

    private static final double C = Math.cos(0.7);
    private static final double S = Math.sin(0.7);

    private static double time(FootSegments segments) {
        double sum = 0;
        for (int i = 0; i < segments.count; i++) {
            sum += segments.pace[i] * (segments.length[i] > 0 ? segments.length[i] : 1);
        }
        return sum;
    }

    @Test
    void neighboursInOneLineAtOnePaceAreOne() {
        FootSegments segments = new FootSegments(1);
        double[] at = {0, 1e-3, 1.5e-3, 4e-3, 4.2e-3};
        for (int i = 0; i + 1 < at.length; i++) {
            segments.add(
                    1 + at[i] * C,
                    2 + at[i] * S,
                    1 + at[i + 1] * C,
                    2 + at[i + 1] * S,
                    300 * (at[i + 1] - at[i]),
                    7 + i);
        }

        assertThat(segments.count).isEqualTo(1);
        assertThat(segments.node[0]).isEqualTo(7);
        assertThat(segments.length[0]).isCloseTo(4.2e-3, within(1e-15));
        assertThat(segments.pace[0]).isCloseTo(300, within(1e-9));
        assertThat(segments.ux[0]).isCloseTo(C, within(1e-12));
        assertThat(segments.uy[0]).isCloseTo(S, within(1e-12));
        assertThat(segments.endX(0)).isCloseTo(1 + 4.2e-3 * C, within(1e-15));
        assertThat(segments.endY(0)).isCloseTo(2 + 4.2e-3 * S, within(1e-15));
    }

    /** A second segment of 1 mm after one of 1 mm to the right in 1 s: another place, direction or time makes it another one. */
    @ParameterizedTest
    @CsvSource({
        "1, 0, 2, 0, 1, 1",
        "1, 0, 2, 0, 1.00001, 2",
        "1, 0, 2, 0, 0.99999, 2",
        "1, 0, 2, 0.00001, 1, 2",
        "1, 0, 2, -0.00001, 1, 2",
        "1.00001, 0, 2.00001, 0, 1, 2",
        "1, 0.00001, 2, 0.00001, 1, 2",
        "1, 0, 0, 0, 1, 2",
        "1, 0, 1, 0, 1, 2"
    })
    void whatDoesNotContinueIsAnother(
            double fromXMm, double fromYMm, double toXMm, double toYMm, double time, int expected) {
        FootSegments segments = new FootSegments(4);
        segments.add(0, 0, 1e-3, 0, 1, 0);
        segments.add(fromXMm * 1e-3, fromYMm * 1e-3, toXMm * 1e-3, toYMm * 1e-3, time, 1);

        assertThat(segments.count).isEqualTo(expected);
        assertThat(time(segments)).isCloseTo(1 + time, within(1e-9));
    }

    @Test
    void aSegmentWithoutLengthIsADwell() {
        FootSegments segments = new FootSegments(2);
        segments.add(0.5, 0.25, 0.5, 0.25, 3, 5);
        segments.add(0.5, 0.25, 0.501, 0.25, 1, 6);
        segments.add(0.501, 0.25, 0.501, 0.25 + 1e-13, 2, 7);

        assertThat(segments.count).isEqualTo(3);
        assertThat(segments.length[0]).isZero();
        assertThat(segments.pace[0]).isEqualTo(3);
        assertThat(Math.hypot(segments.ux[0], segments.uy[0])).isEqualTo(1);
        assertThat(segments.endX(0)).isEqualTo(0.5);
        assertThat(segments.endY(0)).isEqualTo(0.25);
        assertThat(segments.node[2]).isEqualTo(7);
        assertThat(segments.length[2]).isZero();
        assertThat(segments.pace[2]).isEqualTo(2);
        segments.clear();
        assertThat(segments.count).isZero();
    }

    @Test
    void manySegmentsAreAllKept() {
        FootSegments segments = new FootSegments(1);
        for (int i = 0; i < 200; i++) {
            segments.add(i, i % 2, i + 1, (i + 1) % 2, 1 + i, 3 * i);
        }

        assertThat(segments.count).isEqualTo(200);
        for (int i = 0; i < 200; i++) {
            assertThat(segments.x[i]).isEqualTo(i);
            assertThat(segments.y[i]).isEqualTo(i % 2);
            assertThat(segments.endX(i)).isCloseTo(i + 1, within(1e-12));
            assertThat(segments.endY(i)).isCloseTo((i + 1) % 2, within(1e-12));
            assertThat(segments.node[i]).isEqualTo(3 * i);
            assertThat(segments.length[i] * segments.pace[i]).isCloseTo(1 + i, within(1e-9));
        }
    }
}
