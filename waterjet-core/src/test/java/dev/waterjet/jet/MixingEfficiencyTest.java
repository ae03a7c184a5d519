package dev.waterjet.jet;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import org.junit.jupiter.api.Test;

class MixingEfficiencyTest {

    private static final Evidence OWN = Evidence.of(EvidenceGrade.ASSUMED, Source.of("logbook of Hollow Ridge"));

    private static double power(MixingEfficiency mixing, double loadingRatio) {
        double speed = mixing.atSi(loadingRatio) * 900 / (1 + loadingRatio);
        return 0.02 * loadingRatio * speed * speed / 2;
    }

    @Test
    void theStandardOneIsFromMemoryAndIndependentOfLoading() {
        MixingEfficiency usual = MixingEfficiency.standard();

        assertThat(usual.atSi(0)).isEqualTo(usual.atSi(5)).isEqualTo(0.75);
        assertThat(usual.relativeUncertainty()).isCloseTo(0.1 / 0.75, within(1e-15));
        assertThat(usual.evidence().grade()).isEqualTo(EvidenceGrade.FROM_MEMORY);
        assertThat(usual.evidence().note()).contains("0.30", "0.57");
    }

    /** exp(-1) of the first grains' efficiency where loading equals the scale. */
    @Test
    void aDecreasingOneIsOneEthAtItsScale() {
        MixingEfficiency falling = MixingEfficiency.decreasing(0.8, 0.1, 0.25, OWN);

        assertThat(falling.atSi(0)).isEqualTo(0.8);
        assertThat(falling.atSi(0.25)).isCloseTo(0.8 / Math.E, within(1e-15));
        assertThat(falling.atSi(0.5)).isCloseTo(0.8 / (Math.E * Math.E), within(1e-15));
        assertThat(falling.atSi(1e6)).isEqualTo(0.8e-6);
    }

    /** By hand: s = 2/(3 - 2/(4/3)) = 4/3 for R = 1/3, and s = 2/(5 - 2/1.2) = 0.6 for R = 0.2. */
    @Test
    void theScaleForAnOptimumLoadingHasItsMaximumPowerThere() {
        assertThat(MixingEfficiency.scaleForOptimumLoading(1 / 3.0)).isCloseTo(4 / 3.0, within(1e-14));
        assertThat(MixingEfficiency.scaleForOptimumLoading(0.2)).isCloseTo(0.6, within(1e-14));
        for (double best : new double[] {0.1, 0.2, 0.5, 0.9}) {
            MixingEfficiency falling =
                    MixingEfficiency.decreasing(0.75, 0.1, MixingEfficiency.scaleForOptimumLoading(best), OWN);
            assertThat(power(falling, best))
                    .isGreaterThan(power(falling, best * 1.01))
                    .isGreaterThan(power(falling, best * 0.99));
        }
    }

    @Test
    void impossibleEfficienciesAreRefused() {
        assertRefused(() -> MixingEfficiency.of(0, 0.1, OWN), "must-be-above", "mixing efficiency", 0);
        assertRefused(() -> MixingEfficiency.of(1.01, 0.1, OWN), "must-be-at-most", "mixing efficiency", 1);
        assertThat(MixingEfficiency.of(1, 0, OWN).relativeUncertainty()).isZero();
        assertRefused(
                () -> MixingEfficiency.of(0.7, -0.1, OWN),
                "must-be-at-least",
                "uncertainty of the mixing efficiency",
                0);
        assertRefused(
                () -> MixingEfficiency.decreasing(0.7, 0.1, 0, OWN),
                "must-be-above",
                "loading scale of the mixing efficiency",
                0);
        assertRefused(() -> MixingEfficiency.decreasing(0.7, 0.1, Double.NaN, OWN), "must-be-above");
        assertRefused(() -> MixingEfficiency.scaleForOptimumLoading(0), "must-be-above", "optimum loading ratio", 0);
        assertRefused(() -> MixingEfficiency.scaleForOptimumLoading(1), "must-be-at-most", "optimum loading ratio", 1);
    }
}
