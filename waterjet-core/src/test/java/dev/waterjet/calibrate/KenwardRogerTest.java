package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class KenwardRogerTest {

    /** Plate by plate the sums are those of matrices of full size. */
    @Test
    void unevenPlatesAgreeWithMatricesOfFullSize() {
        CutRows plain = DenseMixedModel.uneven(2);
        double[] delta =
                new java.util.Random(9).doubles(plain.size(), 0.01, 0.06).toArray();
        for (CutRows rows : new CutRows[] {plain, plain.withDelta(delta)}) {
            VarianceFit fit = VarianceFit.of(rows, true);
            KenwardRoger adjusted = KenwardRoger.of(fit);
            DenseMixedModel dense = new DenseMixedModel(rows, fit.sigma(), fit.tau());
            RealMatrix expected = dense.adjustedCovariance();
            RealMatrix variances = DenseMixedModel.inverse(dense.expectedInformation());
            for (int j = 0; j < 2; j++) {
                assertThat(adjusted.covariance()[j]).containsExactly(expected.getRow(j), within(1e-11));
                assertThat(adjusted.plain()[j]).containsExactly(fit.covariance()[j], within(1e-15));
                for (int k = 0; k < 2; k++) {
                    assertThat(adjusted.variances()[j][k] / variances.getEntry(j, k))
                            .isCloseTo(1, within(1e-7));
                }
            }
            assertThat(adjusted.covariance()[0][0]).isGreaterThan(adjusted.plain()[0][0]);
        }
    }

    /** Degrees of freedom by differences of the covariance with each variance. */
    @Test
    void degreesOfFreedomFollowFromTheChangeOfTheCovariance() {
        VarianceFit fit = VarianceFit.of(DenseMixedModel.uneven(6), true);
        double s = fit.sigma() * fit.sigma();
        double t = fit.tau() * fit.tau();
        double[] settings = {1, -0.4};
        double h = 1e-4;
        double[] gradient = {
            (variance(fit, settings, s * (1 + h), t) - variance(fit, settings, s * (1 - h), t)) / (2 * s * h),
            (variance(fit, settings, s, t * (1 + h)) - variance(fit, settings, s, t * (1 - h))) / (2 * t * h)
        };
        RealMatrix w =
                DenseMixedModel.inverse(new DenseMixedModel(fit.rows(), fit.sigma(), fit.tau()).expectedInformation());
        double value = variance(fit, settings, s, t);
        double expected = 2 * value * value / Matrices.dot(gradient, w.operate(gradient));

        assertThat(KenwardRoger.of(fit).degreesOfFreedom(settings)).isCloseTo(expected, within(1e-4 * expected));
    }

    private static double variance(VarianceFit fit, double[] settings, double s, double t) {
        RealMatrix information = new DenseMixedModel(fit.rows(), Math.sqrt(s), Math.sqrt(t)).information();
        return Matrices.dot(settings, DenseMixedModel.inverse(information).operate(settings));
    }
}
