package dev.waterjet.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Worked examples of JCGM 100:2008 and JCGM 101:2008; their figures from memory. */
class GuideExamplesTest {

    private static final double NM = 1e-9;

    /** JCGM 100, H.1: a gauge block of 50 mm by comparison; ls + d - ls (da theta + as dt). */
    private static final Measurand GAUGE_BLOCK = in -> in[0] + in[1] - in[0] * (in[2] * in[3] + in[4] * in[5]);

    private static UncertainInputs gaugeBlock() {
        return UncertainInputs.none()
                .with("standard", Distribution.student(50.000623e-3, 25 * NM, 18))
                .with("difference", Distribution.student(215 * NM, 9.7 * NM, 25.6))
                .with("difference of expansion", Distribution.student(0, 0.58e-6, 50))
                .with("temperature", Distribution.normal(-0.1, 0.41))
                .with("expansion", Distribution.normal(11.5e-6, 1.2e-6))
                .with("difference of temperature", Distribution.student(0, 0.029, 2));
    }

    @Test
    void gaugeBlockByTheLawOfPropagation() {
        UncertaintyBudget budget = UncertaintyBudget.of(GAUGE_BLOCK, gaugeBlock());

        assertThat(budget.value()).isCloseTo(50.000838e-3, within(0.5 * NM));
        assertThat(budget.standardUncertainty()).isCloseTo(32 * NM, within(0.5 * NM));
        assertThat(Math.floor(budget.degreesOfFreedom())).isEqualTo(16);
        assertThat(budget.expanded(0.99)).isCloseTo(93 * NM, within(0.8 * NM));
        assertThat(Math.abs(budget.contribution("difference of expansion"))).isCloseTo(2.9 * NM, within(0.05 * NM));
        assertThat(Math.abs(budget.contribution("difference of temperature"))).isCloseTo(16.6 * NM, within(0.1 * NM));
        assertThat(budget.share("temperature")).isZero();
    }

    /** JCGM 100, H.1.7: the terms of second order raise it to 34 nm. */
    @Test
    void gaugeBlockWithTermsOfSecondOrder() {
        assertThat(UncertaintyBudget.of(GAUGE_BLOCK, gaugeBlock()).standardUncertaintyOfSecondOrder())
                .isCloseTo(34 * NM, within(0.5 * NM));
    }

    /** JCGM 100, H.2: resistance, reactance and impedance from correlated readings of three instruments. */
    @Test
    void impedanceFromCorrelatedReadings() {
        UncertainInputs readings = UncertainInputs.none()
                .with("voltage", Distribution.normal(4.9990, 0.0032))
                .with("current", Distribution.normal(19.6610e-3, 0.0095e-3))
                .with("phase", Distribution.normal(1.04446, 0.00075))
                .withCorrelation("voltage", "current", -0.36)
                .withCorrelation("voltage", "phase", 0.86)
                .withCorrelation("current", "phase", -0.65);
        Measurand resistance = in -> in[0] / in[1] * Math.cos(in[2]);
        Measurand reactance = in -> in[0] / in[1] * Math.sin(in[2]);
        Measurand impedance = in -> in[0] / in[1];

        assertThat(UncertaintyBudget.of(resistance, readings).value()).isCloseTo(127.732, within(0.0005));
        assertThat(UncertaintyBudget.of(resistance, readings).standardUncertainty())
                .isCloseTo(0.071, within(0.0015));
        assertThat(UncertaintyBudget.of(reactance, readings).value()).isCloseTo(219.847, within(0.0005));
        assertThat(UncertaintyBudget.of(reactance, readings).standardUncertainty())
                .isCloseTo(0.295, within(0.0015));
        assertThat(UncertaintyBudget.of(impedance, readings).value()).isCloseTo(254.260, within(0.0006));
        assertThat(UncertaintyBudget.of(impedance, readings).standardUncertainty())
                .isCloseTo(0.236, within(0.0015));
        assertThat(MonteCarlo.of(impedance, readings).run().standardUncertainty())
                .isCloseTo(0.236, within(0.003));
    }

    /** JCGM 101, 9.2.3: the sum of four rectangular inputs of unit deviation; 95 percent lie within 3.88. */
    @Test
    void sumOfFourRectangularInputs() {
        Distribution input = Distribution.uniform(-Math.sqrt(3), Math.sqrt(3));
        MonteCarloResult sum = MonteCarlo.of(
                        in -> in[0] + in[1] + in[2] + in[3],
                        UncertainInputs.none()
                                .with("a", input)
                                .with("b", input)
                                .with("c", input)
                                .with("d", input))
                .withTrials(1_000_000)
                .run();

        assertThat(sum.standardUncertainty()).isCloseTo(2, within(0.006));
        assertThat(sum.lower(0.95)).isCloseTo(-3.88, within(0.02));
        assertThat(sum.upper(0.95)).isCloseTo(3.88, within(0.02));
        assertThat(sum.shortestUpper(0.95) - sum.shortestLower(0.95)).isCloseTo(7.76, within(0.03));
    }

    /**
     * Ishigami and Homma (1990) with a = 7, b = 0.1: variance 1/2 + a^2/8 + b pi^4/5 + b^2 pi^8/18, indices in closed
     * form 0.3139, 0.4424 and 0; of the third input in all 0.2437.
     */
    @Test
    void sharesOfTheIshigamiFunction() {
        Distribution angle = Distribution.uniform(-Math.PI, Math.PI);
        SobolIndices indices = SobolStudy.of(
                        in -> Math.sin(in[0])
                                + 7 * Math.pow(Math.sin(in[1]), 2)
                                + 0.1 * Math.pow(in[2], 4) * Math.sin(in[0]),
                        UncertainInputs.none()
                                .with("x1", angle)
                                .with("x2", angle)
                                .with("x3", angle))
                .withTrials(200_000)
                .run();

        double variance = 0.5 + 49 / 8.0 + Math.pow(Math.PI, 4) / 50 + Math.pow(Math.PI, 8) / 1800;
        assertThat(indices.variance()).isCloseTo(variance, within(0.01 * variance));
        assertThat(indices.firstOrder("x1")).isCloseTo(0.3139, within(0.012));
        assertThat(indices.firstOrder("x2")).isCloseTo(0.4424, within(0.012));
        assertThat(indices.firstOrder("x3")).isCloseTo(0, within(0.012));
        assertThat(indices.total("x3")).isCloseTo(0.2437, within(0.012));
        assertThat(indices.standardError("x1")).isBetween(1e-5, 0.01);
    }
}
