package dev.waterjet.surface;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.surface.Surfaces.CUT;
import static dev.waterjet.surface.Surfaces.MODEL;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.surface.FastestFeed.Requirement;
import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;

class FastestFeedTest {

    /** A separation cut, without further limits. */
    private static final EdgeRequirement SEPARATED = EdgeRequirement.of(CutQuality.VERY_COARSE);

    private static FastestFeed fastest(EdgeRequirement required) {
        return MODEL.fastestFeed(CUT, required);
    }

    private static CutSurface surface(EdgeRequirement required, Requirement governing) {
        FastestFeed fastest = fastest(required);
        assertThat(fastest.governing()).isEqualTo(governing);
        return MODEL.surface(CUT, fastest.feed().orElseThrow().value());
    }

    @Test
    void theFastestFeedRateJustMeetsEachRequirement() {
        CutSurface byTaper = surface(SEPARATED.withTaper(degrees(0.4)), Requirement.TAPER);
        assertThat(byTaper.kerf().taperPerSide().to(Units.DEGREE)).isCloseTo(0.4, within(1e-6));

        CutSurface byRange = surface(SEPARATED.withPerpendicularityRange(1), Requirement.PERPENDICULARITY_RANGE);
        assertThat(byRange.perpendicularity().to(Units.MILLIMETRE)).isCloseTo(0.086, within(1e-6));

        CutSurface byHeight = surface(SEPARATED.withProfileHeightRange(2), Requirement.PROFILE_HEIGHT_RANGE);
        assertThat(byHeight.profileHeight().to(Units.MICROMETRE)).isCloseTo(49.6, within(1e-4));

        CutSurface byRoughness = surface(SEPARATED.withRoughness(micrometres(6)), Requirement.ROUGHNESS);
        assertThat(byRoughness.roughness().raAtExit().to(Units.MICROMETRE)).isCloseTo(6, within(1e-6));

        CutSurface byArc = surface(
                SEPARATED.withArcRadius(millimetres(5)).withLagTolerance(millimetres(0.05)), Requirement.LAG_ON_ARC);
        assertThat(byArc.kerf().lag().errorOnArc(millimetres(5)).to(Units.MILLIMETRE))
                .isCloseTo(0.05, within(1e-8));

        CutSurface byQuality = surface(EdgeRequirement.of(CutQuality.FINE), Requirement.QUALITY);
        assertThat(byQuality.kerf().index()).isCloseTo(4, within(1e-9));
        assertThat(fastest(SEPARATED.withMaximumFeed(millimetresPerMinute(50)))
                        .feed()
                        .orElseThrow()
                        .si())
                .isEqualTo(50 / 60e3);
        assertThat(byQuality.quality().quality()).contains(CutQuality.FINE);
    }

    @Test
    void theSlowestRequirementGoverns() {
        EdgeRequirement coarse = EdgeRequirement.of(CutQuality.COARSE).withTaper(degrees(3));
        FastestFeed square = fastest(coarse.withTaper(degrees(0.1)));

        assertThat(fastest(coarse).governing()).isEqualTo(Requirement.QUALITY);
        assertThat(square.governing()).isEqualTo(Requirement.TAPER);
        assertThat(square.ranges())
                .extracting(FastestFeed.Range::requirement)
                .containsExactly(Requirement.QUALITY, Requirement.TAPER);
        assertThat(square.feed().orElseThrow().si()).isLessThan(CUT.feed(2).si());
        assertThat(fastest(SEPARATED).governing()).isEqualTo(Requirement.QUALITY);
    }

    @Test
    void aSurfaceFinerThanTheAbrasiveIsOutOfReach() {
        FastestFeed fastest = fastest(SEPARATED.withRoughness(micrometres(1)));

        assertThat(fastest.feed()).isEmpty();
        assertThat(fastest.governing()).isEqualTo(Requirement.ROUGHNESS);
        assertThat(fastest.range(Requirement.ROUGHNESS).orElseThrow().maximum()).isEmpty();
        assertThat(fastest.conflicting()).isEmpty();
    }

    /** A taper tolerance has two sides: a cut slow enough for the roughness widens downwards by more than it allows. */
    @Test
    void aRoughnessThatForcesReverseTaperIsOutOfReach() {
        CutConditions titanium = Surfaces.cut("titanium", 6);
        FastestFeed fastest =
                MODEL.fastestFeed(titanium, SEPARATED.withTaper(degrees(0.1)).withRoughness(micrometres(3.8)));
        FastestFeed.Range taper = fastest.range(Requirement.TAPER).orElseThrow();
        FastestFeed.Range roughness = fastest.range(Requirement.ROUGHNESS).orElseThrow();

        assertThat(fastest.feed()).isEmpty();
        assertThat(fastest.governing()).isEqualTo(Requirement.ROUGHNESS);
        assertThat(fastest.conflicting()).contains(Requirement.TAPER);
        assertThat(taper.minimum().orElseThrow().si())
                .isGreaterThan(roughness.maximum().orElseThrow().si());
        for (Estimate<Speed> end :
                List.of(taper.minimum().orElseThrow(), taper.maximum().orElseThrow())) {
            double angle =
                    MODEL.surface(titanium, end.value()).kerf().taperPerSide().to(Units.DEGREE);
            assertThat(Math.abs(angle)).isCloseTo(0.1, within(1e-6));
        }
    }

    @Test
    void aRequirementThatHardlyDependsOnTheFeedRateHasACaution() {
        Estimate<Speed> vague =
                fastest(SEPARATED.withRoughness(micrometres(3.8))).feed().orElseThrow();
        Estimate<Speed> decisive =
                fastest(SEPARATED.withTaper(degrees(1))).feed().orElseThrow();

        assertThat(vague.relativeUncertainty()).isGreaterThan(1);
        assertThat(vague.cautions()).extracting(Caution::code).contains("requirement-not-decisive");
        assertThat(decisive.cautions()).extracting(Caution::code).doesNotContain("requirement-not-decisive");
    }

    /** Zeng and Kim: feed goes as the depth to the power of -1.15, so an uncertain depth counts 1.15 times in the feed. */
    @Test
    void theUncertaintyOfTheDepthGoesIntoTheFeedRate() {
        Estimate<Speed> feed = fastest(SEPARATED.withArcRadius(millimetres(5)).withLagTolerance(millimetres(0.02)))
                .feed()
                .orElseThrow();

        assertThat(feed.relativeUncertainty())
                .isCloseTo(
                        Math.hypot(
                                CUT.relativeUncertainty(),
                                1.15 * LagModel.standard().relativeUncertainty()),
                        within(1e-6));
    }

    @Test
    void aModelIsItsKerfRoughnessAndIndices() {
        ValueContract.of(SurfaceModel::standard)
                .differs("kerf", MODEL.withKerf(MODEL.kerfModel().withWidthScatter(millimetres(0.1))))
                .differs("roughness", MODEL.withRoughness(MODEL.roughnessModel().withRzOverRa(5, 0.1)))
                .check();
        assertThat(MODEL.withIndices(MODEL.indices())).isEqualTo(MODEL);
        assertThat(Arrays.stream(Requirement.values()).map(Requirement::label)).doesNotHaveDuplicates();
        assertThat(Refusals.of(() -> new FastestFeed(List.of()))).isEqualTo("no-requirement");
    }
}
