package dev.waterjet.placement;

import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import dev.waterjet.placement.AccuracyBudget.Cause;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AccuracyBudgetTest {

    private static Estimate<javax.measure.quantity.Length> deviation(double um, double uncertaintyUm) {
        return Estimate.of(Kind.LENGTH, um * 1e-6, uncertaintyUm * 1e-6);
    }

    /** 3, 4 and 12 give 13. */
    @Test
    void uncertaintiesAddInQuadratureAndDeviationsAddUp() {
        AccuracyBudget budget = AccuracyBudget.none()
                .with(Cause.MACHINE, deviation(0, 3))
                .with(Cause.KERF_OFFSET, deviation(10, 4))
                .with(Cause.WEAR, deviation(-2, 12));

        assertThat(budget.deviation().si()).isCloseTo(8e-6, within(1e-18));
        assertThat(budget.deviation().standardUncertaintySi()).isCloseTo(13e-6, within(1e-18));
        assertThat(budget.dominant()).contains(Cause.WEAR);
        assertThat(budget.share(Cause.WEAR)).isCloseTo((4 + 144) / (9 + 116 + 148.0), within(1e-12));
        assertThat(budget.share(Cause.LOCATING)).isZero();
    }

    /** Table of the normal distribution: 0.6827, 0.9545, 0.9973 within 1, 2, 3 standard deviations; with a shift of one, 0.4772. */
    @ParameterizedTest
    @CsvSource({"0, 20, 0.6827", "0, 40, 0.9545", "0, 60, 0.9973", "20, 20, 0.4772", "-20, 20, 0.4772"})
    void theChanceIsThatOfTheNormalDistribution(double deviationUm, double toleranceUm, double chance) {
        AccuracyBudget budget = AccuracyBudget.none().with(Cause.MACHINE, deviation(deviationUm, 20));

        assertThat(budget.probabilityWithin(micrometres(toleranceUm))).isCloseTo(chance, within(1e-4));
    }

    /** 11.5e-6 x 0.5 m x 10 K is 57.5 um (hand calculation); 50 um over the square root of 3 is 28.87 um. */
    @Test
    void expansionAndLimitsEnterByTheirFormulas() {
        AccuracyBudget budget = AccuracyBudget.none()
                .withThermalExpansion(millimetres(500), 11.5e-6, Estimate.of(Kind.TEMPERATURE, 303.15, 2))
                .withLimit(Cause.MACHINE, micrometres(50));

        assertThat(budget.deviation().si()).isCloseTo(57.5e-6, within(1e-12));
        assertThat(budget.deviation().standardUncertaintySi())
                .isCloseTo(Math.hypot(11.5e-6, 28.8675e-6), within(1e-10));
        assertThat(budget.dominant()).contains(Cause.THERMAL_EXPANSION);
    }

    /** Sampled with independent normal and rectangular causes: standard error of the spread 0.2 %. */
    @Test
    void theCombinedUncertaintyIsThatOfSampling() {
        AccuracyBudget budget = AccuracyBudget.none()
                .with(Cause.KERF_OFFSET, deviation(5, 17))
                .withLimit(Cause.MACHINE, micrometres(40));
        SplittableRandom random = new SplittableRandom(3);
        int trials = 200_000;
        int within = 0;
        double square = 0;
        for (int i = 0; i < trials; i++) {
            double error = 5 + 17 * random.nextGaussian() + 40 * (2 * random.nextDouble() - 1);
            square += (error - 5) * (error - 5) / trials;
            within += Math.abs(error) <= 45 ? 1 : 0;
        }

        assertThat(1e6 * budget.deviation().standardUncertaintySi()).isCloseTo(Math.sqrt(square), within(0.2));
        assertThat(budget.probabilityWithin(micrometres(45))).isCloseTo(within / (double) trials, within(0.02));
    }

    @Test
    void locatingCountsAtThePlaceOfTheFeature() {
        Point a = Point.millimetres(0, 0);
        Point b = Point.millimetres(100, 0);
        Location location = PartLocator.locate(List.of(ProbedPoint.hole(a, a), ProbedPoint.hole(b, b)));
        AccuracyBudget near = AccuracyBudget.none().withLocating(location, Point.millimetres(50, 0));
        AccuracyBudget far = AccuracyBudget.none().withLocating(location, Point.millimetres(900, 0));

        assertThat(far.deviation().standardUncertaintySi())
                .isGreaterThan(5 * near.deviation().standardUncertaintySi());
    }

    @Test
    void aBudgetIsAValue() {
        ValueContract.of(() -> AccuracyBudget.none().with(Cause.WEAR, deviation(2, 3)))
                .differs("deviation", AccuracyBudget.none().with(Cause.WEAR, deviation(1, 3)))
                .differs("uncertainty", AccuracyBudget.none().with(Cause.WEAR, deviation(2, 4)))
                .differs("cause", AccuracyBudget.none().with(Cause.MACHINE, deviation(2, 3)))
                .check();
        assertThat(AccuracyBudget.none().probabilityWithin(micrometres(1))).isEqualTo(1);
        assertThat(AccuracyBudget.none().dominant()).isEmpty();
        assertThat(Refusals.of(() -> AccuracyBudget.none().probabilityWithin(millimetres(0))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> AccuracyBudget.none().withLimit(Cause.MACHINE, millimetres(-1))))
                .isEqualTo("must-be-at-least");
    }

    @Test
    void causesAreNamedAndNoDeviationHasNoSign() {
        assertThat(Cause.values())
                .extracting(Cause::label)
                .containsExactly(
                        "machine", "locating", "thermal expansion", "kerf offset", "wear", "predicted deviation");
        assertThat(AccuracyBudget.none().with(Cause.WEAR, deviation(-0.0, 3)))
                .isEqualTo(AccuracyBudget.none().with(Cause.WEAR, deviation(0.0, 3)));
    }

    /** A dimension of length 0 does not expand, whether it is colder or warmer than 20 degrees Celsius. */
    @Test
    void noLengthHasNoExpansionOfEitherSign() {
        assertThat(expanded(283.15)).isEqualTo(expanded(303.15));
    }

    private static AccuracyBudget expanded(double kelvins) {
        return AccuracyBudget.none()
                .withThermalExpansion(millimetres(0), 11.5e-6, Estimate.of(Kind.TEMPERATURE, kelvins, 2));
    }

    @Test
    void causesThatAddNothingDominateNothing() {
        AccuracyBudget nothing =
                AccuracyBudget.none().with(Cause.WEAR, deviation(0, 0)).with(Cause.MACHINE, deviation(0, 0));

        assertThat(nothing.dominant()).isEmpty();
        assertThat(nothing.share(Cause.WEAR)).isZero();
        assertThat(nothing.with(Cause.MACHINE, deviation(-1, 0)).dominant()).contains(Cause.MACHINE);
    }

    /** Without any uncertainty a deviation is within the tolerance up to its limit, and not beyond. */
    @Test
    void anExactDeviationIsWithinUpToTheLimit() {
        AccuracyBudget exact = AccuracyBudget.none().with(Cause.WEAR, Estimate.of(Kind.LENGTH, -25e-6, 0));

        assertThat(exact.probabilityWithin(Kind.LENGTH.of(25e-6))).isEqualTo(1);
        assertThat(exact.probabilityWithin(Kind.LENGTH.of(24.999e-6))).isEqualTo(0);
    }
}
