package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.surface.SurfaceModel;
import dev.waterjet.toolpath.KerfOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PredictedSurfaceTest {

    private static final CutConditions CUT = CutConditions.of(
            CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(80)))
                    .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
            Workpiece.of(Materials.standard().get("mild-steel"), millimetres(25)),
            MachinabilityFeed.published());
    private static final KerfModel KERF = KerfModel.standard();
    private static final CutSimulator SIMULATOR = CutSimulator.of(CUT, KERF, LagModel.standard());
    private static final KerfProfile PROFILE = KerfProfile.of(KERF, CutFront.of(LagModel.standard(), CUT), CUT.jet());
    private static final double FEED = CUT.feedSi(3);
    private static final double OFFSET = PROFILE.halfWidthSi(0.0005, FEED);
    private static final int BOTTOM = 8;

    private static Contour line(EdgeRequirement requirement) {
        return Contour.from(Point.millimetres(3, -2))
                .requirement(requirement)
                .lineTo(Point.millimetres(43, 28))
                .open();
    }

    private static Contour corner() {
        return Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(20, 0))
                .lineTo(Point.millimetres(20, -20))
                .open();
    }

    private static PredictedCut predicted(CutSimulator simulator, Contour part, double feed) {
        Contour path = KerfOffset.of(Kind.LENGTH.of(OFFSET))
                .withCorners(KerfOffset.CornerStyle.EXTENDED)
                .apply(part, Side.RIGHT)
                .path()
                .contour();
        return simulator.predict(FeedProfile.constant(path, Kind.SPEED.of(feed)).afterSteadyFeed(), part, Side.LEFT);
    }

    /** The straight wall in closed form, with the same parameters moved one at a time. */
    @Test
    void theUncertaintyOfAStraightCutIsThatOfItsClosedForm() {
        DeviationMap map = predicted(SIMULATOR.withUncertainty(), line(EdgeRequirement.defaults()), FEED)
                .map();

        List<KerfProfile> moved = SIMULATOR.variations();
        for (int depth = 0; depth <= BOTTOM; depth++) {
            double z = map.depths().si(depth);
            double[] change = new double[4];
            for (int k = 0; k < 4; k++) {
                change[k] = (moved.get(2 * k).halfWidthSi(z, FEED)
                                - moved.get(2 * k + 1).halfWidthSi(z, FEED))
                        / 2;
            }
            double variance = 2 * KERF.correlation() * change[2] * change[3];
            for (double one : change) {
                variance += one * one;
            }
            int middle = map.size() / 2;
            assertThat(map.uncertaintySi(middle, depth)).isCloseTo(Math.sqrt(variance), within(1e-8));
            assertThat(map.addedUncertaintySi(middle, depth)).isCloseTo(0, within(1e-8));
        }
    }

    @Test
    void theUncertaintyAtTheWorstPlaceIsThatOfThePlace() {
        PredictedCut cut = predicted(SIMULATOR.withUncertainty(), corner(), FEED);

        CutPlace place = cut.places().stream()
                .filter(one ->
                        one.level() == CutPlace.Level.BOTTOM && one.added().si() < 0)
                .findFirst()
                .orElseThrow();
        int worst = 0;
        for (int i = 0; i < cut.map().size(); i++) {
            worst = cut.map().addedSi(i, BOTTOM) < cut.map().addedSi(worst, BOTTOM) ? i : worst;
        }
        double expected = place.added().standardUncertaintySi();
        assertThat(expected).isGreaterThan(0.1e-3);
        assertThat(cut.map().addedUncertaintySi(worst, BOTTOM)).isCloseTo(expected, within(0.001 * expected));
    }

    @Test
    void aMapWithoutUncertaintySaysSo() {
        DeviationMap map = predicted(SIMULATOR, corner(), FEED).map();

        assertThat(map.hasUncertainty()).isFalse();
        assertThat(Refusals.of(() -> map.uncertaintySi(0, 0))).isEqualTo("uncertainty-not-propagated");
    }

    /** A feed rate 3 % below that of separation, of a feed model known within some 20 %. */
    @Test
    void whereOnlyTheBestValuesSeparateTheBottomTheUncertaintyHasNoBound() {
        PredictedCut cut =
                predicted(SIMULATOR.withUncertainty(), line(EdgeRequirement.defaults()), 0.97 * CUT.feedSi(1));

        int middle = cut.map().size() / 2;
        assertThat(cut.map().isSeparated(middle, BOTTOM)).isTrue();
        assertThat(cut.map().uncertaintySi(middle, BOTTOM)).isInfinite();
        assertThat(cut.map().uncertaintySi(middle, 0)).isFinite();
        assertThat(cut.cautions()).extracting(caution -> caution.code()).contains("separation-uncertain");
    }

    @Test
    void roughnessAndTaperOfAStraightCutAreThoseOfTheSurfaceModel() {
        PredictedCut cut = predicted(SIMULATOR, line(EdgeRequirement.defaults()), FEED);
        var surface = SurfaceModel.standard().surface(CUT, Kind.SPEED.of(FEED));

        int middle = cut.map().size() / 2;
        double ra = surface.roughness().raAtExit().si();
        assertThat(cut.map().roughnessSi(middle, BOTTOM)).isCloseTo(ra, within(1e-9 * ra));
        double top = 0.02 * 25e-3;
        double slope = (PROFILE.halfWidthSi(top, FEED) - PROFILE.halfWidthSi(25e-3, FEED)) / (25e-3 - top);
        assertThat(cut.map().taperSi(middle)).isCloseTo(Math.atan(slope), within(1e-6));
    }

    @Test
    void aSlowerFeedLeavesASmootherBottom() {
        DeviationMap fast = predicted(SIMULATOR, line(EdgeRequirement.defaults()), 0.9 * CUT.feedSi(1))
                .map();
        DeviationMap slow = predicted(SIMULATOR, line(EdgeRequirement.defaults()), 0.5 * CUT.feedSi(1))
                .map();

        int middle = fast.size() / 2;
        assertThat(fast.roughnessSi(middle, BOTTOM)).isGreaterThan(1.1 * slow.roughnessSi(middle, BOTTOM));
    }

    @ParameterizedTest
    @CsvSource({"0.02, 1, 5, false, false, true", "5, 200, 5, true, true, true", "5, 200, 1, true, true, false"})
    void limitsThatAnEdgeStatesAreFindings(
            double taperDeg, double raUm, int range, boolean isUpright, boolean isSmooth, boolean isPerpendicular) {
        EdgeRequirement requirement = EdgeRequirement.defaults()
                .withTaper(degrees(taperDeg))
                .withRoughness(micrometres(raUm))
                .withPerpendicularityRange(range);

        PredictedCut cut = predicted(SIMULATOR, line(requirement), 0.9 * CUT.feedSi(1));

        assertThat(cut.findings())
                .filteredOn(finding -> List.of("predicted-taper", "predicted-roughness", "predicted-perpendicularity")
                        .contains(finding.code()))
                .extracting(Finding::isSatisfied)
                .containsExactly(isUpright, isSmooth, isPerpendicular);
    }

    @Test
    void edgesWithoutLimitsHaveNoSuchFindings() {
        assertThat(predicted(SIMULATOR, corner(), FEED).findings())
                .extracting(Finding::code)
                .doesNotContain("predicted-taper", "predicted-roughness", "predicted-perpendicularity");
    }

    /** Points and nodes grow in number up to 100 m, and then in distance. */
    @Test
    void aPathOfHundredsOfMetresIsPredicted() {
        Contour part = Contour.fromSi(0, 0).lineToSi(400, 0).open();
        ContourPoints.Spacing spacing = ContourPoints.Spacing.fine(400, PROFILE.spreadSi());

        PredictedCut cut = predicted(SIMULATOR.withDepths(2).withPoints(2000), part, FEED);

        assertThat(new ContourPoints(part, -1, spacing, new double[] {OFFSET}).count)
                .isBetween(400_000, 600_000);
        assertThat(cut.map().deviationSi(1000, 1)).isCloseTo(OFFSET - PROFILE.halfWidthSi(25e-3, FEED), within(5e-9));
    }
}
