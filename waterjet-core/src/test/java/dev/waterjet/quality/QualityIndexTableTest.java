package dev.waterjet.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import java.util.Map;
import org.junit.jupiter.api.Test;

class QualityIndexTableTest {

    private static Map<CutQuality, Double> indices(double fine) {
        return Map.of(
                CutQuality.VERY_COARSE, 1.0,
                CutQuality.COARSE, 1.0,
                CutQuality.MEDIUM, 2.0,
                CutQuality.FINE, fine,
                CutQuality.VERY_FINE, 2.5);
    }

    @Test
    void isItsIndices() {
        ValueContract.of(QualityIndexTable::standard)
                .has("very coarse", table -> table.index(CutQuality.VERY_COARSE), 1.0)
                .has("very fine", table -> table.index(CutQuality.VERY_FINE), 5.0)
                .differs("indices", QualityIndexTable.of(indices(2)))
                .prints("very coarse 1", "very fine 5")
                .check();
    }

    @Test
    void levelsMayShareAnIndex() {
        assertThat(QualityIndexTable.of(indices(2)).index(CutQuality.FINE)).isEqualTo(2);
    }

    @Test
    void finerLevelHasNoLowerIndex() {
        refuses(indices(1.9));
    }

    @Test
    void everyLevelHasAnIndex() {
        refuses(Map.of(CutQuality.VERY_COARSE, 1.0));
    }

    private static void refuses(Map<CutQuality, Double> indices) {
        assertThatThrownBy(() -> QualityIndexTable.of(indices)).isInstanceOf(DomainException.class);
    }

    /** A level's own index, known within a normal spread, is reached with a probability of one half. */
    @Test
    void levelsOfASurfaceHaveProbabilitiesThatAddUp() {
        QualityProbabilities surface =
                new QualityProbabilities(Estimate.of(Kind.RATIO, 3, 0.5), QualityIndexTable.standard());

        assertThat(surface.quality()).contains(CutQuality.MEDIUM);
        assertThat(surface.atLeast(CutQuality.MEDIUM)).isCloseTo(0.5, within(1e-12));
        // normal table: two standard deviations, 0.02275
        assertThat(surface.atLeast(CutQuality.FINE)).isCloseTo(0.02275, within(1e-6));
        assertThat(surface.probabilities().values().stream().mapToDouble(p -> p).sum() + surface.none())
                .isCloseTo(1, within(1e-12));
    }

    @Test
    void surfaceBelowTheCoarsestLevelHasNone() {
        QualityProbabilities surface =
                new QualityProbabilities(Estimate.of(Kind.RATIO, 0.5, 0.1), QualityIndexTable.standard());

        assertThat(surface.quality()).isEmpty();
        assertThat(surface.none()).isGreaterThan(0.999);
        assertThat(surface.describe()).containsKeys("index", "none", "very_coarse", "very_fine");
    }

    @Test
    void cutOffFollowsTheRoughness() {
        assertThat(CutOff.forRa(Kind.LENGTH.of(2e-6))).isEqualTo(CutOff.MM_0_8);
        assertThat(CutOff.forRa(Kind.LENGTH.of(10e-6))).isEqualTo(CutOff.MM_2_5);
        assertThat(CutOff.forRa(Kind.LENGTH.of(10.1e-6))).isEqualTo(CutOff.MM_8);
        assertThatThrownBy(() -> CutOff.forRa(Kind.LENGTH.of(0.1e-6))).isInstanceOf(DomainException.class);
    }
}
