package dev.waterjet.feed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Roots and maxima of functions with known ones. */
class LogRootTest {

    @Test
    void theRootOfADecreasingFunctionIsFound() {
        assertThat(LogRoot.ofDecreasing(x -> 1 / x, 5, 0.2)).isCloseTo(0.2, within(1e-15));
        assertThat(LogRoot.ofDecreasing(x -> 1 / x, 5, 1e-9)).isCloseTo(0.2, within(1e-14));
        assertThat(LogRoot.ofDecreasing(x -> 1 / x, 5, 1e9)).isCloseTo(0.2, within(1e-14));
        assertThat(LogRoot.ofDecreasing(x -> Math.exp(-x), 0.5, 3)).isCloseTo(Math.log(2), within(1e-14));
        // zero beyond 1: the root of 1 - x is found all the same
        assertThat(LogRoot.ofDecreasing(x -> Math.max(0, 1 - x), 0.25, 4)).isCloseTo(0.75, within(1e-14));
        assertThat(LogRoot.ofDecreasing(x -> 2 / (1 + x), 3, 1)).isZero();
    }

    @Test
    void theMaximumIsFoundInsideOrAtAnEnd() {
        assertThat(LogRoot.maximum(x -> -Math.pow(Math.log(x / 3), 2), 0.1, 100))
                .isCloseTo(3, within(1e-6));
        assertThat(LogRoot.maximum(x -> x, 0.1, 100)).isEqualTo(100);
        assertThat(LogRoot.maximum(x -> 1 / x, 0.1, 100)).isCloseTo(0.1, within(1e-6));
        assertThat(LogRoot.maximum(x -> -Math.pow(Math.log(x / 99), 2), 0.1, 100))
                .isCloseTo(99, within(1e-4));
        // as good everywhere: the most is not worse than the rest
        assertThat(LogRoot.maximum(x -> 1, 0.1, 100)).isEqualTo(100);
    }

    @Test
    void theSmallestSettingThatSufficesIsFound() {
        assertThat(LogRoot.smallest(x -> x * x, 9, 0.1, 100)).isCloseTo(3, within(1e-12));
        assertThat(LogRoot.smallest(x -> x * x, 0.001, 0.1, 100)).isEqualTo(0.1);
        assertThat(LogRoot.smallest(x -> x * x, 0.01, 0.1, 100)).isCloseTo(0.1, within(1e-12));
        assertThat(LogRoot.smallest(x -> x * x, 1e4, 0.1, 100)).isCloseTo(100, within(1e-12));
        assertThat(LogRoot.smallest(x -> x * x, 2e4, 0.1, 100)).isEqualTo(100);
        assertThat(LogRoot.smallest(x -> Math.max(0, x - 1), 2, 0.1, 100)).isCloseTo(3, within(1e-12));
    }

    @Test
    void aSlopeIsAnExponentAndNeverFlat() {
        assertThat(LogRoot.slope(x -> 5 * x * x * x, 2)).isCloseTo(3, within(1e-8));
        assertThat(LogRoot.slope(x -> 5 / (x * x), 2)).isCloseTo(2, within(1e-8));
        assertThat(LogRoot.slope(x -> 5, 2)).isEqualTo(0.1);
    }
}
