package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.quality.CutQuality;
import org.junit.jupiter.api.Test;

/** Feed rates, depths and indices that follow from the two functions of a model, and models that change another. */
class DerivedFeedsTest {

    private static final Evidence OWN = Evidence.of(EvidenceGrade.ASSUMED, Source.of("logbook of Hollow Ridge"));
    private static final Material STEEL = Materials.standard().get("mild-steel");

    private final AbrasiveJet jet = FeedModelContract.jet(380, 0.3, 0.9, 400);
    private final Workpiece plate = Workpiece.of(STEEL, millimetres(12));
    private final MachinabilityFeed published = MachinabilityFeed.published();

    /** An index is depth over thickness; at half the feed of the machinability model it grows by 2^(1/1.15). */
    @Test
    void depthAndIndexAreTwoSidesOfOneThing() {
        double feed = published.separationFeedSi(jet, STEEL, 0.012);

        assertThat(published.index(jet, plate, metresPerSecond(feed / 2)))
                .isCloseTo(Math.pow(2, 1 / 1.15), within(1e-9));
        var depth = published.depth(jet, STEEL, metresPerSecond(feed / 2));
        assertThat(depth.si()).isCloseTo(0.012 * Math.pow(2, 1 / 1.15), within(1e-11));
        // the depth goes with the feed to the power 1/1.15
        assertThat(depth.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.115) / 1.15, within(1e-4));
        assertRefused(() -> published.index(jet, plate, metresPerSecond(0)), "must-be-above", "feed rate", 0);
        assertRefused(
                () -> published.curve(jet, STEEL, 0.5, QuantityArray.ofSi(Kind.LENGTH, 0.01)),
                "must-be-at-least",
                "quality index",
                1);
        assertRefused(
                () -> published.curve(jet, STEEL, 1, QuantityArray.ofSi(Kind.LENGTH, 0.01, 0)),
                "must-be-above",
                "thickness",
                0);
        assertThat(published
                        .curve(jet, STEEL, 1, QuantityArray.ofSi(Kind.LENGTH, 1e-6))
                        .feeds()
                        .si(0))
                .isEqualTo(FeedModel.DEFAULT_MAXIMUM_FEED_M_PER_S);
        FeedModel energy = SpecificEnergyFeed.ofSteel();
        assertRefused(
                () -> energy.curve(jet, STEEL, 0.5, QuantityArray.ofSi(Kind.LENGTH, 0.01)),
                "must-be-at-least",
                "quality index",
                1);
        assertRefused(
                () -> energy.curve(jet, STEEL, 1, QuantityArray.ofSi(Kind.LENGTH, 0.01, 0)),
                "must-be-above",
                "thickness",
                0);
        assertThat(energy.curve(jet, STEEL, 1, QuantityArray.ofSi(Kind.LENGTH, 1e-6))
                        .feeds()
                        .si(0))
                .isEqualTo(FeedModel.DEFAULT_MAXIMUM_FEED_M_PER_S);
    }

    @Test
    void qualitiesGoThroughTheStandardIndices() {
        assertThat(published.feed(jet, plate, CutQuality.FINE)).isEqualTo(published.feed(jet, plate, 4));
    }

    /** Depth times (eta(R)/eta(R_0))^2 = exp(-2 (R - R_0)/s). */
    @Test
    void aLoadedModelCutsAsDeepAsItsEfficiencySquared() {
        MixingEfficiency falling = MixingEfficiency.decreasing(0.9, 0.1, 0.6, OWN);
        FeedModel model = published.corrected(falling, 0.15);
        double factor = Math.exp(-2 * (jet.loadingRatioSi() - 0.15) / 0.6);

        assertThat(model.separationDepthSi(jet, STEEL, 0.002))
                .isCloseTo(published.separationDepthSi(jet, STEEL, 0.002) * factor, within(1e-14));
        assertThat(model.separationFeedSi(jet, STEEL, 0.012))
                .isCloseTo(published.separationFeedSi(jet, STEEL, 0.012 / factor), within(1e-14));
        assertThat(model.feedSi(jet, STEEL, 0.012, 3))
                .isCloseTo(published.feedSi(jet, STEEL, 0.012 / factor, 3), within(1e-14));
        assertThat(model.indexSi(jet, STEEL, 0.012, 0.002))
                .isCloseTo(published.indexSi(jet, STEEL, 0.012, 0.002) * factor, within(1e-12));
        assertThat(MixingEfficiency.scaleForOptimumLoading(0.18, 0.343)).isCloseTo(0.36 / 0.343, within(1e-15));
        assertRefused(
                () -> MixingEfficiency.scaleForOptimumLoading(0, 0.3), "must-be-above", "optimum loading ratio", 0);
        assertRefused(
                () -> MixingEfficiency.scaleForOptimumLoading(0.1, 0),
                "must-be-above",
                "exponent of the abrasive flow rate",
                0);
        assertRefused(() -> published.corrected(falling, 0), "must-be-above", "reference loading ratio", 0);
    }

    @Test
    void aCappedModelAnswersAsTheModelBelow() {
        ThresholdFeed law = ThresholdFeed.of(STEEL, jet, 8e-9, megapascals(60), millimetresPerMinute(1));
        FeedModel limited = law.capped(millimetresPerMinute(3000));
        AbrasiveJet other = FeedModelContract.jet(380, 0.31, 0.9, 400);

        assertThat(limited.separationFeedSi(jet, STEEL, 0.012)).isEqualTo(law.separationFeedSi(jet, STEEL, 0.012));
        assertThat(limited.separationDepthSi(jet, STEEL, 0.01)).isEqualTo(law.separationDepthSi(jet, STEEL, 0.01));
        assertThat(limited.indexSi(jet, STEEL, 0.012, 0.01)).isEqualTo(law.indexSi(jet, STEEL, 0.012, 0.01));
        assertThat(limited.cautions(other, STEEL, 0.012, 0.01))
                .isEqualTo(law.cautions(other, STEEL, 0.012, 0.01))
                .hasSize(1);
        assertThat(limited.relativeUncertainty(STEEL)).isEqualTo(0.2);
        assertThat(limited.feed(jet, plate.withThickness(millimetres(0.01)), 1).si())
                .isEqualTo(0.05);
        assertRefused(() -> law.capped(millimetresPerMinute(0)), "must-be-above", "maximum feed rate", 0);
    }
}
