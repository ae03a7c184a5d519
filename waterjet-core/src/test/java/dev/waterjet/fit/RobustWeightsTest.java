package dev.waterjet.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class RobustWeightsTest {

    private static final double C = 4.685;

    /** Sizes 0, 1, 1, 2 and 3 have the median 1; five observations of one parameter have four degrees of freedom. */
    @Test
    void theSpreadIsTheMedianSizeAsADeviation() {
        assertThat(RobustWeights.spread(new double[] {-2, 1, 0, -1, 3}, 1))
                .isCloseTo(1.482602218505602 * Math.sqrt(5 / 4.0), within(1e-12));
    }

    @Test
    void hubersWeightDecreasesWithTheSizeBeyondItsCorner() {
        assertThat(RobustWeights.huber(0)).isEqualTo(1);
        assertThat(RobustWeights.huber(1.3)).isEqualTo(1);
        assertThat(RobustWeights.huber(2 * 1.345)).isEqualTo(0.5);
        assertThat(RobustWeights.huber(-4 * 1.345)).isEqualTo(0.25);
    }

    @Test
    void theBisquareEndsAtItsCorner() {
        assertThat(RobustWeights.bisquare(0)).isEqualTo(1);
        assertThat(RobustWeights.bisquare(-C / 2)).isCloseTo(9 / 16.0, within(1e-15));
        assertThat(RobustWeights.bisquare(C)).isZero();
        assertThat(RobustWeights.bisquare(2 * C)).isZero();
    }

    /**
     * Residuals of 0, 0, c/2 and 2c spreads by hand: psi is 0, 0, (c/2)(9/16) and 0; its derivative (1 - s)(1 - 5s), with s
     * the square of r/c, is 1, 1, -3/16 and 0.
     */
    @Test
    void theVarianceIsThatOfAnMEstimate() {
        double spread = 3;
        double[] residuals = {0, 0, C / 2 * spread, 2 * C * spread};
        double slope = (1 + 1 - 3 / 16.0) / 4;
        double slopeSquares = (1 + 1 + 9 / 256.0) / 4;
        double psi = C / 2 * 9 / 16;
        double correction = 1 + 1 / 4.0 * (slopeSquares - slope * slope) / (slope * slope);

        assertThat(RobustWeights.variance(residuals, spread, 1))
                .isCloseTo(9 * correction * correction * psi * psi / 3 / (slope * slope), within(1e-9));
    }

    /**
     * Readings that lie evenly about zero have their centre there, whatever the weights; the two far ones count nothing.
     * The sizes 0, 1, 1, 2, 2, 50 and 50 have the median 2.
     */
    @Test
    void aRobustCentreHasTheErrorOfItsMEstimate() {
        double[] y = {-50, -2, -1, 0, 1, 2, 50};
        Fit fit = LeastSquares.of((i, b) -> b[0])
                .withParameter("centre", 1)
                .withRobustWeights()
                .fit(y);
        double spread = 2 * 1.482602218505602 * Math.sqrt(7 / 6.0);
        double one = RobustWeights.bisquare(1 / spread);
        double two = RobustWeights.bisquare(2 / spread);

        assertThat(fit.value("centre")).isCloseTo(0, within(1e-9));
        assertThat(fit.weights()).containsExactly(new double[] {0, two, one, 1, one, two, 0}, within(1e-8));
        assertThat(fit.standardError("centre"))
                .isCloseTo(Math.sqrt(RobustWeights.variance(y, spread, 1) / 7), within(1e-7));
        assertThat(fit.chiSquare()).isCloseTo(2 * one + 8 * two, within(1e-6));
        assertThat(fit.residualDeviation())
                .isCloseTo(Math.sqrt((2 * one + 8 * two) / (2 * one + 2 * two + 1 - 1)), within(1e-6));
    }

    private static double weightedMean(double[] y, double center, DoubleUnaryOperator weight) {
        double sum = 0;
        double weights = 0;
        for (double value : y) {
            double share = weight.applyAsDouble(value - center);
            sum += share * value;
            weights += share;
        }
        return sum / weights;
    }

    /** Two steps by hand: Huber's centre with the median size about it, then the bisquare with that scale held. */
    @Test
    void theScaleOfTheBisquareIsThatOfHubersCentre() {
        double[] y = {0, 0.1, 0.25, 0.3, 0.42, 0.61, 0.9, 3, 4};
        double center = Arrays.stream(y).average().orElseThrow();
        double spread = 0;
        for (int step = 0; step < 500; step++) {
            double from = center;
            double[] sizes =
                    Arrays.stream(y).map(v -> Math.abs(v - from)).sorted().toArray();
            spread = 1.482602218505602 * sizes[4] * Math.sqrt(9 / 8.0);
            double scale = spread;
            center = weightedMean(y, center, r -> Math.min(1, 1.345 * scale / Math.abs(r)));
        }
        double huber = center;
        double held = spread;
        for (int step = 0; step < 500; step++) {
            center = weightedMean(y, center, r -> Math.pow(Math.max(0, 1 - Math.pow(r / held / C, 2)), 2));
        }
        Fit fit = LeastSquares.of((i, b) -> b[0])
                .withParameter("centre", 1)
                .withRobustWeights()
                .fit(y);

        assertThat(Math.abs(huber - center)).isGreaterThan(0.01);
        assertThat(fit.value("centre")).isCloseTo(center, within(1e-7));
        double[] residuals = new double[9];
        double found = center;
        Arrays.setAll(residuals, i -> y[i] - found);
        assertThat(fit.standardError("centre"))
                .isCloseTo(Math.sqrt(RobustWeights.variance(residuals, held, 1) / 9), within(1e-7));
    }
}
