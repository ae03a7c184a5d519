package dev.waterjet.surface;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.surface.Surfaces.CUT;
import static dev.waterjet.surface.Surfaces.MODEL;
import static dev.waterjet.surface.Surfaces.surface;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.quality.QualityProbabilities;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Predicted and measured cut surfaces. */
class CutSurfaceTest {

    @Test
    void cutQualitiesHaveProbabilities() {
        QualityProbabilities probabilities = surface(3).quality();
        Map<CutQuality, Double> each = probabilities.probabilities();

        assertThat(probabilities.quality()).contains(CutQuality.MEDIUM);
        assertThat(probabilities.atLeast(CutQuality.MEDIUM)).isCloseTo(0.5, within(1e-6));
        assertThat(each.values().stream().mapToDouble(Double::doubleValue).sum() + probabilities.none())
                .isCloseTo(1, within(1e-12));
        assertThat(each.get(CutQuality.COARSE)).isGreaterThan(each.get(CutQuality.VERY_COARSE));
        assertThat(surface(1).quality().none()).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void cautionsAreThoseOfKerfAndRoughnessAndTheStandard() {
        assertThat(surface(2).cautions())
                .doesNotHaveDuplicates()
                .contains(Iso9013.byAgreement())
                .containsAll(surface(2).kerf().cautions())
                .containsAll(surface(2).roughness().cautions());
        assertThat(surface(2).cautions()).extracting(Caution::code).contains("kerf-not-fitted", "roughness-not-fitted");
    }

    @Test
    void aSurfaceIsItsRoughnessAndIndices() {
        ValueContract.of(() -> surface(2))
                .has("kerf", CutSurface::kerf, surface(2).kerf())
                .differs("feed rate", surface(3))
                .differs(
                        "model",
                        MODEL.withRoughness(RoughnessModel.standard().withRzOverRa(5, 0.1))
                                .surface(CUT, CUT.feed(2).value()))
                .check();
    }

    @Test
    void theIndexIsReadFromTheSmoothZoneAndTheLag() {
        MeasuredSurface surface = MeasuredSurface.ofThickness(millimetres(30)).withSmoothZone(millimetres(23.4));
        assertThat(surface.index().si()).isCloseTo(1.5, within(1e-12));
        assertThat(surface.probabilities(QualityIndexTable.standard()).quality())
                .contains(CutQuality.VERY_COARSE);

        MeasuredSurface both = surface.withExitLag(millimetres(0.2576 * 30 / 1.5), LagModel.standard());
        assertThat(both.index().si()).isCloseTo(1.5, within(1e-3));
        assertThat(both.index().relativeUncertainty())
                .isLessThan(surface.index().relativeUncertainty());
    }

    /** Two readings of one index, weighted by the inverse squares of their uncertainties, on logarithms. */
    @Test
    void readingsAreWeightedByTheirUncertainty() {
        double lagUncertainty = LagModel.standard().relativeUncertainty();
        double lagMm = LagModel.standard().coefficient() * 30 / 2.5;
        MeasuredSurface surface = MeasuredSurface.ofThickness(millimetres(30))
                .withSmoothZone(millimetres(0.52 * 1.5 * 30))
                .withExitLag(millimetres(lagMm), LagModel.standard());
        double zone = 1 / (0.15 * 0.15);
        double lag = 1 / (lagUncertainty * lagUncertainty);

        assertThat(surface.index().si())
                .isCloseTo(Math.exp((zone * Math.log(1.5) + lag * Math.log(2.5)) / (zone + lag)), within(1e-9));
        assertThat(surface.index().relativeUncertainty()).isCloseTo(1 / Math.sqrt(zone + lag), within(1e-9));
    }

    @Test
    void aSurfaceWithoutAReadingHasNoIndex() {
        MeasuredSurface surface = MeasuredSurface.ofThickness(millimetres(30));

        assertThatThrownBy(surface::index).isInstanceOf(NoSolutionException.class);
        assertThat(Refusals.of(surface::index)).isEqualTo("no-reading");
        assertThat(Refusals.of(() -> surface.withSmoothZone(millimetres(30)))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> MeasuredSurface.ofThickness(millimetres(0))))
                .isEqualTo("must-be-above");
    }
}
