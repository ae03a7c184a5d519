package dev.waterjet.uncertainty;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Results of so few trials that they can be reckoned by hand. */
class ResultsTest {

    private static MonteCarloResult of(double... results) {
        return MonteCarloResult.of(results);
    }

    @Test
    void momentsAreThoseOfTheSample() {
        assertThat(of(4, 1, 3, 2).mean()).isEqualTo(2.5);
        assertThat(of(4, 1, 3, 2).standardUncertainty()).isCloseTo(Math.sqrt(5 / 3.0), within(1e-15));
        assertThat(of(4, 1, 3, 2).results()).containsExactly(1, 2, 3, 4);
        assertThat(of(4, 1, 3, 2).trials()).isEqualTo(4);
        assertThat(of(1, 1)).hasToString("1.0 +/- 0.0 from 2 trials");
    }

    @Test
    void quantilesLieOnTheLineBetweenResults() {
        MonteCarloResult result = of(1, 2, 4, 8);

        assertThat(result.quantile(0)).isEqualTo(1);
        assertThat(result.quantile(1 / 3.0)).isCloseTo(2, within(1e-14));
        assertThat(result.quantile(0.5)).isEqualTo(3);
        assertThat(result.quantile(0.75)).isEqualTo(5);
        assertThat(result.quantile(1)).isEqualTo(8);
        assertThat(result.lower(0.5)).isEqualTo(1.75);
        assertThat(result.upper(0.5)).isEqualTo(5);
    }

    @Test
    void theShortestIntervalIsFoundAndTheFirstOfEquals() {
        MonteCarloResult result = of(0, 1, 1.5, 2, 9);

        assertThat(result.shortestLower(0.4)).isEqualTo(1);
        assertThat(result.shortestUpper(0.4)).isEqualTo(2);
        assertThat(of(0, 1, 2, 3).shortestLower(0.25)).isZero();
        assertThat(of(0, 1, 2, 3).shortestLower(0.99)).isZero();
        assertThat(of(0, 1, 2, 3).shortestUpper(0.99)).isEqualTo(3);
    }

    @Test
    void probabilitiesAreChecked() {
        assertRefused(() -> of(1, 2).quantile(1.1), "must-be-at-most", "probability", 1);
        assertRefused(() -> of(1, 2).lower(0), "must-be-above", "coverage", 0);
        assertRefused(() -> of(1, 2).upper(1), "must-be-at-most", "coverage", 1);
    }

    /** Saltelli (2010) and Jansen (1999) by hand: mean 3, variance (4 + 0 + 1 + 9)/3, terms -1 and 3 over the variance. */
    @Test
    void sharesOfTwoTrials() {
        double variance = 14 / 3.0;
        SobolIndices indices =
                SobolIndices.of(List.of("x"), new double[] {1, 3}, new double[] {2, 6}, new double[][] {{2, 4}}, 2);

        assertThat(indices.names()).containsExactly("x");
        assertThat(indices.variance()).isCloseTo(variance, within(1e-14));
        assertThat(indices.firstOrder("x")).isCloseTo(1 / variance, within(1e-15));
        assertThat(indices.total("x")).isCloseTo(0.5 / variance, within(1e-15));
        // each trial alone: first 1 and 1/3, total 1 and 1/9
        assertThat(indices.standardError("x")).isCloseTo(1 / 3.0, within(1e-15));
        assertThat(indices.totalStandardError("x")).isCloseTo(4 / 9.0, within(1e-15));
        assertThat(indices).hasToString("shares of variance of [x]");
        assertRefused(() -> indices.total("y"), "unknown-input");
    }

    @Test
    void whatNeverVariesHasNoShares() {
        SobolIndices indices =
                SobolIndices.of(List.of("x"), new double[] {5, 5}, new double[] {5, 5}, new double[][] {{5, 5}}, 2);

        assertThat(indices.firstOrder("x")).isZero();
        assertThat(indices.total("x")).isZero();
        assertThat(indices.standardError("x")).isZero();
    }

    private static final UncertainInputs TWO =
            UncertainInputs.none().with("x", Distribution.normal(2, 0.1)).with("y", Distribution.normal(3, 0.2));

    /** f = x^2 y at (2, 3): derivatives 12 and 4, so contributions 1.2 and 0.8. */
    @Test
    void aBudgetTellsWhatEachInputContributes() {
        UncertaintyBudget budget = UncertaintyBudget.of(in -> in[0] * in[0] * in[1], TWO);

        assertThat(budget.names()).containsExactly("x", "y");
        assertThat(budget.sensitivity("x")).isCloseTo(12, within(1e-8));
        assertThat(budget.sensitivity("y")).isCloseTo(4, within(1e-8));
        assertThat(budget.contribution("x")).isCloseTo(1.2, within(1e-9));
        assertThat(budget.standardUncertainty()).isCloseTo(Math.sqrt(1.44 + 0.64), within(1e-9));
        assertThat(budget.share("x")).isCloseTo(1.44 / 2.08, within(1e-9));
        assertThat(budget.share("y")).isCloseTo(0.64 / 2.08, within(1e-9));
        assertThat(budget.degreesOfFreedom()).isInfinite();
        assertThat(budget.expanded(0.95)).isCloseTo(1.959963984540054 * Math.sqrt(2.08), within(1e-8));
        assertThat(budget).asString().startsWith("12.0 +/- 1.44");
    }

    /**
     * The terms of the note to 5.1.2 for f = x^2 y: f_xx = 6, f_xy = 4, f_yxx = 2, all else of higher order is zero, so
     * f_xx^2/2 u_x^4 + f_xy^2 u_x^2 u_y^2 + f_y f_yxx u_x^2 u_y^2.
     */
    @Test
    void termsOfSecondOrderAreThoseOfTheDerivatives() {
        double higher = 18 * 1e-4 + 16 * 0.01 * 0.04 + 4 * 2 * 0.01 * 0.04;

        assertThat(UncertaintyBudget.of(in -> in[0] * in[0] * in[1], TWO).standardUncertaintyOfSecondOrder())
                .isCloseTo(Math.sqrt(2.08 + higher), within(1e-6));
        // x^3: (f'')^2/2 + f' f''' = 72 + 72 at x = 2
        assertThat(UncertaintyBudget.of(
                                in -> in[0] * in[0] * in[0],
                                UncertainInputs.none().with("x", Distribution.normal(2, 0.1)))
                        .standardUncertaintyOfSecondOrder())
                .isCloseTo(Math.sqrt(1.44 + 144e-4), within(1e-6));
    }

    @Test
    void anInputWithoutUncertaintyContributesNothing() {
        UncertainInputs exact = UncertainInputs.none().with("x", Distribution.normal(2, 0));
        UncertaintyBudget budget = UncertaintyBudget.of(in -> 7 * in[0], exact);

        assertThat(budget.value()).isEqualTo(14);
        assertThat(budget.sensitivity("x")).isZero();
        assertThat(budget.share("x")).isZero();
        assertThat(budget.degreesOfFreedom()).isInfinite();
        assertThat(budget.expanded(0.95)).isZero();
    }

    @Test
    void resultsDescribeThemselvesInPlainNumbers() {
        assertThat(of(1, 2, 4, 8).describe())
                .containsEntry("trials", 4L)
                .containsEntry("mean", 3.75)
                .hasEntrySatisfying(
                        "lower_95", lower -> assertThat((Double) lower).isBetween(1.0, 1.1))
                .hasEntrySatisfying(
                        "upper_95", upper -> assertThat((Double) upper).isBetween(7.0, 8.0));
        assertThat(SobolIndices.of(List.of("x"), new double[] {5, 5}, new double[] {5, 5}, new double[][] {{5, 5}}, 2)
                        .describe())
                .containsEntry("variance", 0.0)
                .containsEntry(
                        "inputs",
                        List.of(Map.of(
                                "type",
                                "share of variance",
                                "name",
                                "x",
                                "first_order",
                                0.0,
                                "standard_error",
                                0.0,
                                "total",
                                0.0,
                                "total_standard_error",
                                0.0)));
        assertThat(UncertaintyBudget.of(in -> 7 * in[0], UncertainInputs.none().with("x", Distribution.normal(2, 0)))
                        .describe())
                .containsEntry("value", 14.0)
                .containsEntry("standard_uncertainty", 0.0)
                .containsEntry(
                        "inputs",
                        List.of(Map.of(
                                "type",
                                "uncertain input",
                                "name",
                                "x",
                                "value",
                                2.0,
                                "standard_uncertainty",
                                0.0,
                                "sensitivity",
                                0.0,
                                "contribution",
                                0.0)));
    }

    @Test
    void inputsAreAValue() {
        ValueContract.of(() -> TWO)
                .has("names", UncertainInputs::names, List.of("x", "y"))
                .has("size", UncertainInputs::size, 2)
                .change(
                        "correlation",
                        inputs -> inputs.withCorrelation("x", "y", -0.4),
                        inputs -> inputs.correlation("y", "x"),
                        -0.4)
                .differs("a name", UncertainInputs.none().with("x", Distribution.normal(2, 0.1)))
                .differs(
                        "a distribution",
                        UncertainInputs.none()
                                .with("x", Distribution.normal(2, 0.1))
                                .with("y", Distribution.normal(3, 0.3)))
                .prints("inputs [x, y]")
                .check();
    }

    @Test
    void inputsTellWhatTheyWereGiven() {
        UncertainInputs inputs = TWO.withCorrelation("x", "y", -0.4);

        assertThat(inputs.names()).containsExactly("x", "y");
        assertThat(inputs.size()).isEqualTo(2);
        assertThat(inputs.distribution(1)).isEqualTo(Distribution.normal(3, 0.2));
        assertThat(inputs.correlation("y", "x")).isEqualTo(-0.4);
        assertThat(TWO.correlation("x", "y")).as("the inputs before").isZero();
        assertThat(inputs).hasToString("inputs [x, y]");
        assertRefused(() -> TWO.withCorrelation("x", "x", 0.1), "self-correlation");
        assertRefused(() -> TWO.withCorrelation("x", "z", 0.1), "unknown-input");
        assertRefused(() -> TWO.withCorrelation("x", "y", 1.1), "must-be-at-most", "correlation", 1);
    }

    private static SobolIndices shares(String name, double[] atA, double[] atB, double[] mixed) {
        return SobolIndices.of(List.of(name), atA, atB, new double[][] {mixed}, 2);
    }

    /** Results are equal if all their numbers are. */
    @Test
    void resultsAreTheirNumbers() {
        assertThat(of(3, 1, 2)).isEqualTo(of(1, 2, 3)).hasSameHashCodeAs(of(1, 2, 3));
        assertThat(of(3, 1, 2)).isNotEqualTo(of(1, 2, 4)).isNotEqualTo(List.of(1, 2, 3));
        assertThat(of(3, 1, 2).hashCode()).isNotEqualTo(of(1, 2, 4).hashCode());

        double[] a = {1, 3};
        double[] b = {2, 6};
        double[] mixed = {2, 4};
        SobolIndices indices = shares("x", a, b, mixed);
        assertThat(shares("x", a.clone(), b.clone(), mixed.clone()))
                .isEqualTo(indices)
                .hasSameHashCodeAs(indices);
        assertThat(shares("y", a, b, mixed)).isNotEqualTo(indices);
        assertThat(shares("x", a, b, new double[] {2, 5})).isNotEqualTo(indices);
        assertThat(shares("x", a, new double[] {2, 7}, mixed)).isNotEqualTo(indices);
        assertThat(shares("x", a, b, new double[] {2, 5}).hashCode()).isNotEqualTo(indices.hashCode());
        assertThat(indices).isNotEqualTo("x");

        UncertaintyBudget budget = UncertaintyBudget.of(in -> in[0] * in[1], TWO);
        assertThat(UncertaintyBudget.of(in -> in[0] * in[1], TWO))
                .isEqualTo(budget)
                .hasSameHashCodeAs(budget);
        assertThat(UncertaintyBudget.of(in -> in[0] * in[1] + 1, TWO))
                .as("value")
                .isNotEqualTo(budget);
        // 6 + 3 (x - 2) + 2.5 (y - 3) has another slope, x y + (x - 2)^2 another bend
        assertThat(UncertaintyBudget.of(in -> 3 * in[0] + 2.5 * in[1] - 7.5, TWO))
                .isNotEqualTo(budget);
        assertThat(UncertaintyBudget.of(in -> in[0] * in[1] + Math.pow(in[0] - 2, 2), TWO))
                .isNotEqualTo(budget);
        assertThat(UncertaintyBudget.of(in -> in[0] * in[1], TWO.with("z", Distribution.normal(0, 1))))
                .isNotEqualTo(budget);
        assertThat(budget.hashCode())
                .isNotEqualTo(UncertaintyBudget.of(in -> in[0] * in[1] + 1, TWO).hashCode());
        assertThat(budget).isNotEqualTo("6");
    }
}
