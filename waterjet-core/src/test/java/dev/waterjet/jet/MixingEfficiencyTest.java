package dev.waterjet.jet;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import org.junit.jupiter.api.Test;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class MixingEfficiencyTest {

    private static final Evidence OWN = Evidence.of(EvidenceGrade.ASSUMED, Source.of("logbook of Hollow Ridge"));

    private static double power(MixingEfficiency mixing, double loadingRatio) {
        double speed = MixingKernel.particleSpeed(mixing.atSi(loadingRatio), 900, loadingRatio);
        return MixingKernel.abrasivePower(0.02 * loadingRatio, speed);
    }

    @Test
    void theUsualOneIsFromMemoryAndTheSameAtAnyLoading() {
        MixingEfficiency usual = MixingEfficiency.standard();

        assertThat(usual.atSi(0)).isEqualTo(usual.atSi(5)).isEqualTo(0.75);
        assertThat(usual.relativeUncertainty()).isCloseTo(0.1 / 0.75, within(1e-15));
        assertThat(usual.evidence().grade()).isEqualTo(EvidenceGrade.FROM_MEMORY);
        assertThat(usual.evidence().note()).contains("0.30", "0.57");
    }

    /** exp(-1) of the first grains' efficiency where loading equals the scale. */
    @Test
    void aFallingOneHasFallenToOneEthAtItsScale() {
        MixingEfficiency falling = MixingEfficiency.decreasing(0.8, 0.1, 0.25, OWN);

        assertThat(falling.atSi(0)).isEqualTo(0.8);
        assertThat(falling.atSi(0.25)).isCloseTo(0.8 / Math.E, within(1e-15));
        assertThat(falling.atSi(0.5)).isCloseTo(0.8 / (Math.E * Math.E), within(1e-15));
        assertThat(falling.atSi(1e6)).isEqualTo(0.8e-6);
    }

    /** By hand: s = 2/(3 - 2/(4/3)) = 4/3 for R = 1/3, and s = 2/(5 - 2/1.2) = 0.6 for R = 0.2. */
    @Test
    void theScaleForABestLoadingPutsTheMostPowerThere() {
        assertThat(MixingEfficiency.scaleForOptimumLoading(1 / 3.0)).isCloseTo(4 / 3.0, within(1e-14));
        assertThat(MixingEfficiency.scaleForOptimumLoading(0.2)).isCloseTo(0.6, within(1e-14));
        for (double best : new double[] {0.1, 0.2, 0.5, 0.9}) {
            MixingEfficiency falling = MixingEfficiency.decreasing(0.75, 0.1, MixingEfficiency.scaleForOptimumLoading(best), OWN);
            assertThat(power(falling, best))
                    .isGreaterThan(power(falling, best * 1.01))
                    .isGreaterThan(power(falling, best * 0.99));
        }
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> MixingEfficiency.of(0, 0.1, OWN))
                .hasMessage("mixing efficiency is 0; it must be above 0");
        assertThatThrownBy(() -> MixingEfficiency.of(1.01, 0.1, OWN))
                .hasMessage("mixing efficiency is 1.01; it must be at most 1 (no more momentum than the water has)");
        assertThat(MixingEfficiency.of(1, 0, OWN).relativeUncertainty()).isZero();
        assertThatThrownBy(() -> MixingEfficiency.of(0.7, -0.1, OWN))
                .hasMessageContaining("uncertainty of the mixing efficiency is -0.1");
        assertThatThrownBy(() -> MixingEfficiency.decreasing(0.7, 0.1, 0, OWN))
                .hasMessage("scale of loading is 0; it must be above 0 (the efficiency falls with loading)");
        assertThatThrownBy(() -> MixingEfficiency.decreasing(0.7, 0.1, Double.NaN, OWN))
                .hasMessageContaining("scale of loading");
        assertThatThrownBy(() -> MixingEfficiency.scaleForOptimumLoading(0)).hasMessageContaining("best loading ratio is 0");
        assertThatThrownBy(() -> MixingEfficiency.scaleForOptimumLoading(1))
                .hasMessageContaining("best loading ratio is 1")
                .hasMessageContaining("a lossless jet is at its best");
    }
}
