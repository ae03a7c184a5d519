package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LadderTest {

    private static boolean isLadder(double... values) {
        return Ladder.isLadder(values, 3);
    }

    private static double[] powers(double ratio, int... rungs) {
        return Arrays.stream(rungs).mapToDouble(k -> 120 * Math.pow(ratio, k)).toArray();
    }

    @Test
    void stepsMayBeEqualOrOfEqualRatios() {
        assertThat(isLadder(100, 110, 120)).isTrue();
        assertThat(isLadder(130, 100, 110, 160))
                .as("in any order, with rungs left out")
                .isTrue();
        assertThat(isLadder(powers(1.1, 0, 1, 2))).isTrue();
        assertThat(isLadder(powers(1.1, 4, 0, 1, 7))).isTrue();
        assertThat(isLadder(100, 113, 121)).isFalse();
        assertThat(isLadder(100, 110, 130)).isTrue();
        assertThat(isLadder(100, 110, 127)).isFalse();
    }

    @Test
    void differentValuesAreCounted() {
        assertThat(isLadder(100, 110, 100, 110)).isFalse();
        assertThat(isLadder(100, 110, 120, 100)).isTrue();
        assertThat(Ladder.isLadder(new double[] {100, 110}, 2)).isTrue();
        assertThat(Ladder.isLadder(new double[0], 3)).isFalse();
    }

    /** Whole numbers lie on a ladder of ones, which is no step that a shop makes. */
    @Test
    void stepsBelowFivePercentShowNothing() {
        assertThat(isLadder(100, 104, 108)).isFalse();
        assertThat(isLadder(100, 105, 110)).isTrue();
        assertThat(isLadder(powers(1.04, 0, 1, 2))).isFalse();
        assertThat(isLadder(powers(1.06, 0, 1, 2))).isTrue();
    }

    @Test
    void aLadderHasNoMoreThanFortyRungs() {
        assertThat(isLadder(100, 110, 100 + 10 * 40)).isTrue();
        assertThat(isLadder(100, 110, 100 + 10 * 41)).isFalse();
        assertThat(Ladder.isLadder(
                        IntStream.range(0, 41).mapToDouble(k -> 10 + k).toArray(), 3))
                .isTrue();
    }

    @Test
    void roundingIsForgiven() {
        assertThat(isLadder(100, 110.005, 120)).isTrue();
        assertThat(isLadder(100, 110.05, 120)).isFalse();
        assertThat(isLadder(100, 110, 200.09)).as("a thousandth of ten rungs").isTrue();
        assertThat(isLadder(100, 110, 200.2)).isFalse();
    }
}
