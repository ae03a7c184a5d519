package dev.waterjet.evidence;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class EstimateTest {

    private static final Caution THIN = Caution.notice("thin", "Thin sheet.");
    private static final Caution STEAM = Caution.danger("steam", "Steam.");

    /** Quantile of the normal distribution that 97.5 percent lie below: NIST/SEMATECH e-Handbook, 1.3.6.7.1. */
    private static final double QUANTILE = 1.959964;

    private static double si(Quantity<Speed> quantity) {
        return Kind.SPEED.si(quantity);
    }

    @Test
    void isAValue() {
        ValueContract.of(() -> Estimate.of(Kind.SPEED, 10, 2))
                .tells("kind", Estimate::kind, Kind.SPEED)
                .tells("value", Estimate::value, metresPerSecond(10))
                .tells("si", Estimate::si, 10.0)
                .tells("standard uncertainty", Estimate::standardUncertaintySi, 2.0)
                .tells("relative uncertainty", Estimate::relativeUncertainty, 0.2)
                .tells("number in a unit", estimate -> estimate.to(Units.METRE_PER_MINUTE), 600.0)
                .change("cautions", estimate -> estimate.with(List.of(THIN)), Estimate::cautions, List.of(THIN))
                .differs("value", Estimate.of(Kind.SPEED, 11, 2))
                .differs("uncertainty", Estimate.of(Kind.SPEED, 10, 3))
                .differs("spread", Estimate.withinFactor(Kind.SPEED, 10, 0.2, List.of()))
                .says("10 m/s +/- 2")
                .check();
        assertThat(Estimate.of(Kind.RATIO, 10, 2)).isNotEqualTo(Estimate.of(Kind.LENGTH, 10, 2));
    }

    @Test
    void itsTextEndsWithItsCautions() {
        assertThat(Estimate.of(Kind.SPEED, 10, 2)).hasToString("10 m/s +/- 2");
        assertThat(Estimate.of(Kind.SPEED, 10, 2).with(List.of(THIN))).hasToString("10 m/s +/- 2 [thin: Thin sheet.]");
    }

    @Test
    void itsDescriptionHoldsTheInterval() {
        assertThat(Estimate.of(Kind.SPEED, 10, 2).describe())
                .containsEntry("kind", "speed")
                .containsEntry("value_m_per_s", 10.0)
                .containsEntry("standard_uncertainty_m_per_s", 2.0)
                .containsEntry("spread", "normal")
                .hasEntrySatisfying(
                        "lower_95_m_per_s",
                        lower -> assertThat((Double) lower).isCloseTo(10 - 2 * QUANTILE, within(1e-5)))
                .hasEntrySatisfying(
                        "upper_95_m_per_s",
                        upper -> assertThat((Double) upper).isCloseTo(10 + 2 * QUANTILE, within(1e-5)));
        assertThat(Estimate.withinFactor(Kind.SPEED, 10, 1000, List.of()).describe())
                .as("an end that no number can tell is left out")
                .containsEntry("spread", "log-normal")
                .containsEntry("lower_95_m_per_s", 0.0)
                .doesNotContainKey("upper_95_m_per_s");
    }

    @Test
    void normalIntervalUsesTheNormalQuantile() {
        Estimate<Speed> estimate = Estimate.of(Kind.SPEED, 10, 2);

        assertThat(si(estimate.lower(0.95))).isCloseTo(10 - 2 * QUANTILE, within(1e-5));
        assertThat(si(estimate.upper(0.95))).isCloseTo(10 + 2 * QUANTILE, within(1e-5));
    }

    @Test
    void relativeIntervalLiesAFactorBelowAndTheSameFactorAbove() {
        Estimate<Speed> estimate = Estimate.withinFactor(Kind.SPEED, 10, 0.5, List.of());

        assertThat(estimate.standardUncertaintySi()).isEqualTo(5);
        assertThat(si(estimate.lower(0.95))).isCloseTo(10 * Math.exp(-0.5 * QUANTILE), within(1e-5));
        assertThat(si(estimate.upper(0.95))).isCloseTo(10 * Math.exp(0.5 * QUANTILE), within(1e-4));
        assertThat(si(estimate.lower(0.999))).isPositive();
    }

    @Test
    void coverageIsAProbability() {
        Estimate<Speed> estimate = Estimate.of(Kind.SPEED, 10, 2);

        assertThatThrownBy(() -> estimate.lower(1)).hasMessageContaining("coverage is 1");
        assertThatThrownBy(() -> estimate.upper(0))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("coverage is 0; it must be above 0");
    }

    /** Of a normal distribution 97.5 percent lie no more than 1.96 deviations above the middle. */
    @Test
    void probabilityOfANormalSpread() {
        Estimate<Speed> estimate = Estimate.of(Kind.SPEED, 10, 2);

        assertThat(estimate.probabilityAtMost(metresPerSecond(10))).isEqualTo(0.5);
        assertThat(estimate.probabilityAtMost(metresPerSecond(10 + 2 * QUANTILE)))
                .isCloseTo(0.975, within(1e-7));
        assertThat(estimate.probabilityAtMost(metresPerSecond(10 - 2 * QUANTILE)))
                .isCloseTo(0.025, within(1e-7));
    }

    @Test
    void probabilityOfARelativeSpread() {
        Estimate<Speed> estimate = Estimate.withinFactor(Kind.SPEED, 10, 0.5, List.of());

        assertThat(estimate.probabilityAtMost(metresPerSecond(10))).isEqualTo(0.5);
        assertThat(estimate.probabilityAtMost(metresPerSecond(10 * Math.exp(0.5 * QUANTILE))))
                .isCloseTo(0.975, within(1e-7));
        assertThat(estimate.probabilityAtMost(metresPerSecond(0)))
                .as("a positive quantity is never zero or below")
                .isZero();
        assertThat(estimate.probabilityAtMost(metresPerSecond(-1))).isZero();
    }

    @Test
    void anExactValueIsCertain() {
        Estimate<Speed> exact = Estimate.of(Kind.SPEED, 10, 0);

        assertThat(exact.probabilityAtMost(metresPerSecond(10))).isEqualTo(1);
        assertThat(exact.probabilityAtMost(metresPerSecond(9.999))).isZero();
    }

    @Test
    void relativeUncertaintyHasNoSign() {
        assertThat(Estimate.of(Kind.SPEED, -10, 2).relativeUncertainty()).isEqualTo(0.2);
    }

    @Test
    void whatIsNoNumberIsNoEstimate() {
        assertThatThrownBy(() -> Estimate.of(Kind.SPEED, Double.NaN, 1))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("estimated speed");
        assertThatThrownBy(() -> Estimate.of(Kind.SPEED, 1, -0.1))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("standard uncertainty of speed is -0.1 m/s; it must be at least 0");
        assertThatThrownBy(() -> Estimate.of(Kind.SPEED, 1, Double.POSITIVE_INFINITY))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("it must be a finite number");
        assertThatThrownBy(() -> Estimate.withinFactor(Kind.SPEED, 0, 0.1, List.of()))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("estimated speed is 0 m/s; it must be above 0");
        assertThatThrownBy(() -> Estimate.withinFactor(Kind.SPEED, 1, -0.1, List.of()))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("relative uncertainty of speed is -0.1; it must be at least 0");
    }

    @Test
    void cautionsAddUp() {
        Estimate<Speed> estimate = Estimate.withinFactor(Kind.SPEED, 1, 0, List.of(THIN));

        assertThat(estimate.with(List.of(STEAM)).cautions()).containsExactly(THIN, STEAM);
        assertThat(estimate.with(List.of())).isEqualTo(estimate);
    }
}
