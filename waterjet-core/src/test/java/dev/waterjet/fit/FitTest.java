package dev.waterjet.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.TextException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Results of a fit against closed forms of the mean and the straight line. */
class FitTest {

    private static final double[] X = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};

    /** Readings 1, 2 and 4 with deviations 1, 1 and 2: weights 1, 1 and 1/4, mean 16/9. */
    private static Fit mean() {
        return LeastSquares.of((i, b) -> b[0])
                .withParameter("mean", 1)
                .withKnownDeviations()
                .fit(new double[] {1, 2, 4}, new double[] {1, 1, 2});
    }

    private static double[] line(double noise) {
        Random random = new Random(20);
        return Arrays.stream(X)
                .map(x -> 3 + 2 * x + noise * random.nextGaussian())
                .toArray();
    }

    private static LeastSquares question(boolean isPositive) {
        LeastSquares empty = LeastSquares.of((i, b) -> b[0] + b[1] * X[i]);
        return isPositive
                ? empty.withPositiveParameter("intercept", 1).withPositiveParameter("slope", 1)
                : empty.withParameter("intercept", 1).withParameter("slope", 1);
    }

    @Test
    void residualsAreInTheUnitOfTheObservations() {
        assertThat(mean().residuals()).containsExactly(new double[] {-7 / 9.0, 2 / 9.0, 20 / 9.0}, within(1e-8));
    }

    @Test
    void leveragesOfAMeanAreTheSharesOfTheWeights() {
        assertThat(mean().leverages()).containsExactly(new double[] {4 / 9.0, 4 / 9.0, 1 / 9.0}, within(1e-9));
    }

    @Test
    void anOrdinaryFitLeavesAllWeights() {
        assertThat(mean().weights()).containsExactly(1, 1, 1);
    }

    @Test
    void degreesOfFreedomAreObservationsLessParameters() {
        assertThat(mean().observations()).isEqualTo(3);
        assertThat(mean().degreesOfFreedom()).isEqualTo(2);
    }

    /** Chi-square is (49 + 4 + 400/4)/81 = 17/9; with two degrees of freedom more than that has the probability exp(-17/18). */
    @Test
    void chiSquareOfTheMean() {
        assertThat(mean().chiSquare()).isCloseTo(17 / 9.0, within(1e-12));
        assertThat(mean().residualDeviation()).isCloseTo(Math.sqrt(17 / 18.0), within(1e-12));
        assertThat(mean().pValue()).isCloseTo(Math.exp(-17 / 18.0), within(1e-12));
    }

    @Test
    void aMeanHasAnRSquaredOfZero() {
        assertThat(mean().rSquared()).isCloseTo(0, within(1e-12));
    }

    @Test
    void studentizedResidualsAreOverTheirOwnDeviation() {
        double spread = Math.sqrt(17 / 18.0);

        assertThat(mean().studentizedResiduals())
                .containsExactly(
                        new double[] {
                            -7 / 9.0 / spread / Math.sqrt(5 / 9.0),
                            2 / 9.0 / spread / Math.sqrt(5 / 9.0),
                            10 / 9.0 / spread / Math.sqrt(8 / 9.0)
                        },
                        within(1e-7));
    }

    @Test
    void equalObservationsHaveNoResiduals() {
        Fit fit = LeastSquares.of((i, b) -> b[0]).withParameter("mean", 2).fit(new double[] {2, 2, 2});

        assertThat(fit.studentizedResiduals()).containsExactly(0, 0, 0);
        assertThat(fit.rSquared()).isZero();
    }

    /** The weighted line through (0, 1), (1, 2) and (2, 4) is 8/9 + 4/3 x, with chi-square 1/9 of 17/9 in all. */
    @Test
    void rSquaredOfAWeightedLine() {
        Fit fit = LeastSquares.of((i, b) -> b[0] + b[1] * i)
                .withParameter("intercept", 0)
                .withParameter("slope", 1)
                .fit(new double[] {1, 2, 4}, new double[] {1, 1, 2});

        assertThat(fit.values()).containsExactly(new double[] {8 / 9.0, 4 / 3.0}, within(1e-9));
        assertThat(fit.rSquared()).isCloseTo(16 / 17.0, within(1e-10));
    }

    /** Slope and intercept are correlated by minus the mean of x over its root mean square: -5.5/sqrt(38.5). */
    @Test
    void covariancesAreThoseOfTheClosedForm() {
        double expected = -5.5 / Math.sqrt(38.5);

        for (boolean isPositive : new boolean[] {false, true}) {
            Fit fit = question(isPositive).fit(line(0.1));
            double product = fit.standardError("intercept") * fit.standardError("slope");
            assertThat(fit.correlation("intercept", "slope")).isCloseTo(expected, within(1e-6));
            assertThat(fit.covariance("slope", "intercept")).isCloseTo(expected * product, within(1e-9));
            assertThat(fit.covariance("slope", "slope"))
                    .isCloseTo(Math.pow(fit.standardError("slope"), 2), within(1e-15));
        }
    }

    /** To first order the logarithm of a parameter has its error over its value. */
    @Test
    void aPositiveParameterHasTheErrorOfAnyOtherAndAnIntervalOfFactors() {
        Fit plain = question(false).fit(line(0.1));
        Fit positive = question(true).fit(line(0.1));
        double slope = positive.value("slope");

        assertThat(positive.standardError("slope")).isCloseTo(plain.standardError("slope"), within(1e-9));
        assertThat(positive.lower("slope", 0.95) * positive.upper("slope", 0.95))
                .isCloseTo(slope * slope, within(1e-9));
        assertThat(positive.upper("slope", 0.95) / slope)
                .isCloseTo(Math.exp((plain.upper("slope", 0.95) - slope) / slope), within(1e-9));
    }

    @Test
    void aSearchMayStartFarOffOnEitherSideOfZero() {
        Fit fit = LeastSquares.of((i, b) -> b[0] * X[i] + b[1])
                .withPositiveParameter("slope", 1e9)
                .withParameter("intercept", -5)
                .fit(line(0.1));

        assertThat(fit.value("slope")).isCloseTo(2, within(0.1));
        assertThat(fit.value("intercept")).isCloseTo(3, within(0.3));
    }

    @Test
    void isAValue() {
        ValueContract.of(FitTest::mean)
                .differs("observations", question(false).fit(line(0.1)))
                .prints("3 observations", "mean 1.778 ± 0.67")
                .check();
    }

    /** The correlation does not depend on the size of the residuals, so it exists where they are 0. */
    @Test
    void anExactFitHasACorrelation() {
        Fit fit = LeastSquares.of((i, b) -> b[0] + b[1] * i)
                .withParameter("intercept", 0)
                .withParameter("slope", 0)
                .fit(new double[] {0, 0, 0});

        assertThat(fit.correlation("intercept", "slope")).isCloseTo(-1 / Math.sqrt(5 / 3.0), within(1e-9));
        assertThat(fit.covariance("intercept", "slope")).isZero();
    }

    @Test
    void describesItselfInPlainNumbers() {
        Fit fit = LeastSquares.of((i, b) -> b[0]).withParameter("mean", 2).fit(new double[] {2, 2, 2});

        assertThat(fit.describe())
                .containsEntry("observations", 3L)
                .containsEntry("degrees_of_freedom", 2L)
                .containsEntry("chi_square", 0.0)
                .containsEntry(
                        "parameters",
                        List.of(Map.of("type", "parameter", "name", "mean", "value", 2.0, "standard_error", 0.0)));
    }

    @Test
    void anUnknownParameterIsRefusedByName() {
        assertThatExceptionOfType(TextException.class)
                .isThrownBy(() -> mean().value("slope"))
                .satisfies(e -> assertThat(e.code()).isEqualTo("unknown-parameter"))
                .satisfies(e ->
                        assertThat(e.parameters()).containsExactly(entry("name", "slope"), entry("known", "mean")));
    }

    @Test
    void twoParametersOfOneNameAreRefused() {
        LeastSquares mean = LeastSquares.of((i, b) -> b[0]).withParameter("mean", 1);

        assertThatExceptionOfType(TextException.class)
                .isThrownBy(() -> mean.withPositiveParameter("mean", 2))
                .satisfies(e -> assertThat(e.code()).isEqualTo("repeated-name"))
                .satisfies(e -> assertThat(e.parameters()).containsExactly(entry("name", "mean")));
    }

    @Test
    void aFitNeedsAParameter() {
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> LeastSquares.of((i, b) -> 1).fit(new double[] {1, 2}))
                .satisfies(e -> assertThat(e.code()).isEqualTo("must-be-at-least"))
                .satisfies(e -> assertThat(e.quantity()).isEqualTo("number of parameters"));
    }

    @Test
    void eachObservationNeedsItsOwnDeviation() {
        LeastSquares mean = LeastSquares.of((i, b) -> b[0]).withParameter("mean", 1);

        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> mean.fit(new double[] {1, 2}, new double[] {1}))
                .satisfies(e -> assertThat(e.code()).isEqualTo("unequal-lengths"))
                .satisfies(e ->
                        assertThat(e.parameters()).containsEntry("value", 1.0).containsEntry("limit", 2.0));
    }
}
