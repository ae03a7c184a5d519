package dev.waterjet.surface;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.surface.Surfaces.CUT;
import static dev.waterjet.surface.Surfaces.MODEL;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.surface.FastestFeed.Requirement;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Texts and descriptions of cut surfaces and fastest feed rates. */
class SurfaceTextsTest {

    private static final EdgeRequirement SEPARATED = EdgeRequirement.of(CutQuality.VERY_COARSE);

    private static FastestFeed conflicting() {
        return MODEL.fastestFeed(
                Surfaces.cut("titanium", 6), SEPARATED.withTaper(degrees(0.1)).withRoughness(micrometres(3.8)));
    }

    @Test
    void aFastestFeedNamesWhatGovernsAndWhatConflicts() {
        FastestFeed fine = MODEL.fastestFeed(CUT, EdgeRequirement.of(CutQuality.FINE));

        assertThat(fine).asString().contains("mm/min", "governed by " + Requirement.QUALITY.label());
        assertThat(fine.describe()).containsKeys("governing", "feed", "ranges").doesNotContainKey("conflicting");
        assertThat(conflicting()).asString().contains(Requirement.ROUGHNESS.label(), Requirement.TAPER.label());
        assertThat(conflicting().describe()).containsKeys("governing", "ranges", "conflicting");
        assertThat(fine.ranges().get(0).describe()).containsKeys("requirement", "maximum");
        assertThat(Requirement.ROUGHNESS.label()).contains("roughness");
        assertThat(Requirement.TAPER.label()).contains("taper");
    }

    /** From 0.1 degrees wider at the bottom up to 0.1 degrees wider at the top. */
    @Test
    void theFeedRatesOfATaperReachFromReverseToTaper() {
        CutConditions titanium = Surfaces.cut("titanium", 6);
        FastestFeed.Range taper = conflicting().range(Requirement.TAPER).orElseThrow();
        double slow = taper.minimum().orElseThrow().si();
        double fast = taper.maximum().orElseThrow().si();

        assertThat(slow).isLessThan(fast);
        assertThat(taper(titanium, slow)).isCloseTo(-0.1, within(1e-6));
        assertThat(taper(titanium, fast)).isCloseTo(0.1, within(1e-6));
    }

    private static double taper(CutConditions cut, double feed) {
        return MODEL.surface(cut, Kind.SPEED.of(feed)).kerf().taperPerSide().to(Units.DEGREE);
    }

    @Test
    void aMeasuredSurfaceCountsItsReadings() {
        MeasuredSurface none = MeasuredSurface.ofThickness(millimetres(30));
        MeasuredSurface one = none.withSmoothZone(millimetres(20));
        MeasuredSurface two = one.withExitLag(millimetres(4), LagModel.standard());

        assertThat(none).asString().contains("30 mm", "0 readings");
        assertThat(one).asString().endsWith("1 reading");
        assertThat(two).asString().endsWith("2 readings");
        assertThat(two.describe()).containsKeys("readings").containsEntry("thickness_m", 0.03);
        assertThat(Refusals.of(() -> new MeasuredSurface(millimetres(30), List.of(Estimate.of(Kind.RATIO, 0, 0.1)))))
                .isEqualTo("must-be-above");
    }

    @Test
    void aRoughnessStatesEntryAndExit() {
        SurfaceRoughness roughness = Surfaces.surface(1.5).roughness();

        assertThat(roughness.describe())
                .containsKeys("model", "kerf", "ra_at_exit")
                .containsEntry("ra_at_entry_m", roughness.raSi(0))
                .containsEntry("smooth_zone_m", roughness.smoothZone().si());
        assertThat(roughness).asString().contains("at entry", "at exit", "µm");
    }
}
