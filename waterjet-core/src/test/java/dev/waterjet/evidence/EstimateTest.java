package dev.waterjet.evidence;

import static dev.waterjet.Refusals.codeOf;
import static dev.waterjet.Refusals.refusal;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EstimateTest {

    private static final Caution THIN = Caution.notice(Message.of("thin", "Thin sheet."));
    private static final Caution STEAM = Caution.danger(Message.of("steam", "Steam."));

    /** Quantile of the normal distribution that 97.5 percent lie below: NIST/SEMATECH e-Handbook, 1.3.6.7.1. */
    private static final double QUANTILE = 1.959964;

    private static double si(Quantity<Speed> quantity) {
        return Kind.SPEED.si(quantity);
    }

    @Test
    void isAValue() {
        ValueContract.of(() -> Estimate.of(Kind.SPEED, 10, 2))
                .has("kind", Estimate::kind, Kind.SPEED)
                .has("value", Estimate::value, metresPerSecond(10))
                .has("si", Estimate::si, 10.0)
                .has("standard uncertainty", Estimate::standardUncertaintySi, 2.0)
                .has("relative uncertainty", Estimate::relativeUncertainty, 0.2)
                .has("number in a unit", estimate -> estimate.to(Units.METRE_PER_MINUTE), 600.0)
                .change("cautions", estimate -> estimate.with(List.of(THIN)), Estimate::cautions, List.of(THIN))
                .has("uncertainty in a unit", estimate -> estimate.standardUncertainty(Units.METRE_PER_MINUTE), 120.0)
                .change(
                        "degrees of freedom",
                        estimate -> estimate.withDegreesOfFreedom(4),
                        Estimate::degreesOfFreedom,
                        4.0)
                .differs("value", Estimate.of(Kind.SPEED, 11, 2))
                .differs("uncertainty", Estimate.of(Kind.SPEED, 10, 3))
                .differs("spread", Estimate.withinFactor(Kind.SPEED, 10, 0.2, List.of()))
                .prints("10 m/s ± 2 m/s")
                .check();
        assertThat(Estimate.of(Kind.RATIO, 10, 2)).isNotEqualTo(Estimate.of(Kind.LENGTH, 10, 2));
    }

    @Test
    void itsTextEndsWithItsCautions() {
        assertThat(Estimate.of(Kind.SPEED, 10, 2)).hasToString("10 m/s ± 2 m/s");
        assertThat(Estimate.of(Kind.SPEED, 10, 2).with(List.of(THIN)))
                .hasToString("10 m/s ± 2 m/s [thin: Thin sheet.]");
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

        assertThat(codeOf(() -> estimate.lower(1))).isEqualTo("must-be-at-most");
        assertThat(codeOf(() -> estimate.upper(0))).isEqualTo("must-be-above");
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
    void valueAndUncertaintyAreNumbers() {
        assertThat(codeOf(() -> Estimate.of(Kind.SPEED, Double.NaN, 1))).isEqualTo("must-be-at-most");
        assertThat(codeOf(() -> Estimate.of(Kind.SPEED, 1, -0.1))).isEqualTo("must-be-at-least");
        assertThat(codeOf(() -> Estimate.of(Kind.SPEED, 1, Double.POSITIVE_INFINITY)))
                .isEqualTo("must-be-at-most");
        assertThat(codeOf(() -> Estimate.withinFactor(Kind.SPEED, 0, 0.1, List.of())))
                .isEqualTo("must-be-above");
        assertThat(codeOf(() -> Estimate.withinFactor(Kind.SPEED, 1, -0.1, List.of())))
                .isEqualTo("must-be-at-least");
    }

    /** Student's distribution of 4 degrees of freedom, 97.5 percent: NIST/SEMATECH e-Handbook, 1.3.6.7.2. */
    @Test
    void fewDataGiveAStudentInterval() {
        Estimate<Speed> few = Estimate.of(Kind.SPEED, 10, 2).withDegreesOfFreedom(4);

        assertThat(si(few.lower(0.95))).isCloseTo(10 - 2 * 2.776, within(2e-3));
        assertThat(si(few.upper(0.95))).isCloseTo(10 + 2 * 2.776, within(2e-3));
        assertThat(few.probabilityAtMost(metresPerSecond(10 + 2 * 2.776))).isCloseTo(0.975, within(2e-5));
        assertThat(few.standardUncertaintySi()).isEqualTo(2);
    }

    /** Student's distribution of 2 degrees of freedom, 95 percent: NIST/SEMATECH e-Handbook, 1.3.6.7.2. */
    @Test
    void fewDataGiveAStudentIntervalOnTheLogarithm() {
        Estimate<Speed> few =
                Estimate.withinFactor(Kind.SPEED, 10, 0.5, List.of()).withDegreesOfFreedom(2);

        assertThat(si(few.upper(0.9)) / 10).isCloseTo(Math.exp(0.5 * 2.920), within(2e-3));
        assertThat(si(few.lower(0.9)) * si(few.upper(0.9))).isCloseTo(100, within(1e-6));
        assertThat(few.probabilityAtMost(metresPerSecond(0))).isZero();
    }

    @Test
    void manyDataComeCloseToTheNormalInterval() {
        Estimate<Speed> many = Estimate.of(Kind.SPEED, 10, 2).withDegreesOfFreedom(1e6);

        assertThat(si(many.upper(0.95))).isCloseTo(10 + 2 * QUANTILE, within(1e-4));
    }

    @Test
    void knownUncertaintyHasInfiniteDegreesOfFreedom() {
        Estimate<Speed> known = Estimate.of(Kind.SPEED, 10, 2);

        assertThat(known.degreesOfFreedom()).isInfinite();
        assertThat(known.withDegreesOfFreedom(3).withDegreesOfFreedom(Double.POSITIVE_INFINITY))
                .isEqualTo(known);
        assertThat(known.describe()).doesNotContainKey("degrees_of_freedom");
        assertThat(known.withDegreesOfFreedom(3).describe())
                .containsEntry("degrees_of_freedom", 3.0)
                .containsEntry("spread", "student");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.99, -1, Double.NaN, Double.NEGATIVE_INFINITY})
    void degreesOfFreedomAreAtLeastOne(double degrees) {
        Estimate<Speed> estimate = Estimate.of(Kind.SPEED, 10, 2);

        assertThat(refusal(DomainException.class, () -> estimate.withDegreesOfFreedom(degrees))
                        .quantity())
                .isEqualTo("degrees of freedom");
    }

    @Test
    void anExactFactorKeepsTheRelativeUncertainty() {
        Estimate<Speed> few = Estimate.of(Kind.SPEED, 10, 2).with(List.of(THIN)).withDegreesOfFreedom(4);

        assertThat(few.scaled(-3))
                .isEqualTo(Estimate.of(Kind.SPEED, -30, 6).with(List.of(THIN)).withDegreesOfFreedom(4));
        assertThat(few.scaled(Kind.LENGTH, 60))
                .isEqualTo(
                        Estimate.of(Kind.LENGTH, 600, 120).with(List.of(THIN)).withDegreesOfFreedom(4));
        assertThat(codeOf(() -> few.scaled(0))).isEqualTo("must-be-above");
    }

    @Test
    void aLogNormalSpreadCannotBecomeNegative() {
        Estimate<Speed> estimate = Estimate.withinFactor(Kind.SPEED, 10, 0.2, List.of());

        assertThat(codeOf(() -> estimate.scaled(-1))).isEqualTo("must-be-above");
    }

    /** A length of 2 m at 10 m/s within 20 percent takes 0.2 s within 20 percent. */
    @Test
    void aReciprocalKeepsTheRelativeUncertainty() {
        Estimate<Speed> feed =
                Estimate.withinFactor(Kind.SPEED, 10, 0.2, List.of(THIN)).withDegreesOfFreedom(4);
        Estimate<Time> time = feed.reciprocal(Kind.TIME, 2);

        assertThat(time.si()).isEqualTo(0.2);
        assertThat(time.relativeUncertainty()).isCloseTo(0.2, within(1e-15));
        assertThat(time.degreesOfFreedom()).isEqualTo(4);
        assertThat(time.cautions()).containsExactly(THIN);
        assertThat(Kind.TIME.si(time.upper(0.95))).isCloseTo(2 / si(feed.lower(0.95)), within(1e-12));
    }

    @Test
    void itsNumbersAreGivenInUnits() {
        Estimate<Temperature> warm = Estimate.of(Kind.TEMPERATURE, 293.15, 0.5);

        assertThat(warm.to(Units.CELSIUS)).isCloseTo(20, within(1e-12));
        assertThat(warm.standardUncertainty(Units.CELSIUS)).isEqualTo(0.5);
        assertThat(warm.standardUncertainty(Units.FAHRENHEIT)).isCloseTo(0.9, within(1e-15));
        assertThat(warm.lower(0.95, Units.CELSIUS)).isCloseTo(20 - 0.5 * QUANTILE, within(1e-5));
        assertThat(warm.upper(0.95, Units.CELSIUS)).isCloseTo(20 + 0.5 * QUANTILE, within(1e-5));
        assertThat(warm).hasToString("20.0 °C ± 0.5 °C");
    }

    @Test
    void cautionsAddUp() {
        Estimate<Speed> estimate = Estimate.withinFactor(Kind.SPEED, 1, 0, List.of(THIN));

        assertThat(estimate.with(List.of(STEAM)).cautions()).containsExactly(THIN, STEAM);
        assertThat(estimate.with(List.of())).isEqualTo(estimate);
    }
}
