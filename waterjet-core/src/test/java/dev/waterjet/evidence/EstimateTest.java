package dev.waterjet.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.Units;
import java.util.List;
import org.junit.jupiter.api.Test;

class EstimateTest {

    /** Quantile 1.959964 of the normal distribution: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1. */
    @Test
    void normalIntervalUsesTheNormalQuantile() {
        Estimate<?> estimate = Estimate.of(Kind.SPEED, 10, 2);

        assertThat(estimate.lower(0.95).getValue().doubleValue()).isCloseTo(10 - 2 * 1.959964, within(1e-6));
        assertThat(estimate.upper(0.95).getValue().doubleValue()).isCloseTo(10 + 2 * 1.959964, within(1e-6));
    }

    @Test
    void relativeIntervalNeverReachesZero() {
        Estimate<?> estimate = Estimate.withinFactor(Kind.SPEED, 10, 0.5, List.of());

        assertThat(estimate.lower(0.999).getValue().doubleValue()).isPositive();
        assertThat(estimate.lower(0.95).getValue().doubleValue()
                        * estimate.upper(0.95).getValue().doubleValue())
                .as("ends lie a factor below and the same factor above the median")
                .isCloseTo(100, within(1e-9));
    }

    @Test
    void coverageOfOneIsRefused() {
        assertThatThrownBy(() -> Estimate.of(Kind.SPEED, 10, 2).lower(1)).hasMessageContaining("coverage is 1");
    }

    @Test
    void cautionsAddUp() {
        Caution first = Caution.notice("first", "One.");
        Caution second = Caution.danger("second", "Two.");

        assertThat(Estimate.withinFactor(Kind.SPEED, 1, 0, List.of(first))
                        .with(List.of(second))
                        .cautions())
                .containsExactly(first, second);
    }

    @Test
    void aValueOutsideItsRangeDrawsACaution() {
        ValidityRange<?> range =
                ValidityRange.of("thickness", Kind.LENGTH, Measures.millimetres(3), Measures.millimetres(100));

        assertThat(range.holds(0.003)).isTrue();
        assertThat(range.holds(0.1)).isTrue();
        assertThat(range.holds(Math.nextUp(0.1))).isFalse();
        assertThat(ValidityRange.of("thickness", Kind.LENGTH, Measures.millimetres(3), Measures.millimetres(100))
                        .check(0.2, Units.MILLIMETRE))
                .hasValueSatisfying(
                        caution -> assertThat(caution.text()).contains("thickness 200 mm lies outside 3 mm to 100 mm"));
    }
}
