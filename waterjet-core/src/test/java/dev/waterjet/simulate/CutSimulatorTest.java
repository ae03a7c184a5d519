package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.KerfOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CutSimulatorTest {

    private static final CutConditions CUT = cut(25);
    private static final KerfModel KERF = KerfModel.standard();
    private static final CutSimulator SIMULATOR = CutSimulator.of(CUT, KERF, LagModel.standard());
    private static final KerfProfile PROFILE = KerfProfile.of(KERF, CutFront.of(LagModel.standard(), CUT), CUT.jet());
    private static final double FEED = CUT.feedSi(3);
    private static final double OFFSET = PROFILE.halfWidthSi(0.0005, FEED);
    private static final int BOTTOM = 8;

    private static CutConditions cut(double thicknessMm) {
        CuttingHead head = CuttingHead.of(
                Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(80)));
        AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
        Workpiece plate = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(thicknessMm));
        return CutConditions.of(jet, plate, MachinabilityFeed.published());
    }

    private static Contour path(Contour part, Side jetSide, KerfOffset.CornerStyle style) {
        return KerfOffset.of(Kind.LENGTH.of(OFFSET))
                .withCorners(style)
                .apply(part, jetSide)
                .path()
                .contour();
    }

    private static FeedProfile steady(Contour path, double feed) {
        return FeedProfile.constant(path, Kind.SPEED.of(feed)).afterSteadyFeed();
    }

    private static Contour lPart() {
        return Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(40, 0))
                .lineTo(Point.millimetres(40, 20))
                .lineTo(Point.millimetres(20, 20))
                .lineTo(Point.millimetres(20, 40))
                .lineTo(Point.millimetres(0, 40))
                .close();
    }

    private static double worstGouge(PredictedCut cut, int depth) {
        double worst = 0;
        for (int i = 0; i < cut.map().size(); i++) {
            worst = Math.min(worst, cut.map().addedSi(i, depth));
        }
        return -worst;
    }

    @Test
    void aStraightCutDeviatesAsTheClosedForm() {
        Contour part = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(60, 0))
                .open();
        Contour path = path(part, Side.RIGHT, KerfOffset.CornerStyle.ROUND);

        DeviationMap map =
                SIMULATOR.predict(steady(path, FEED), part, Side.LEFT).map();

        int middle = map.size() / 2;
        for (int depth = 0; depth < map.depths().size(); depth++) {
            double expected = OFFSET - PROFILE.halfWidthSi(map.depths().si(depth), FEED);
            assertThat(map.deviationSi(middle, depth)).isCloseTo(expected, within(3e-9));
            assertThat(map.lagSi(middle, depth))
                    .isCloseTo(PROFILE.front().lagSi(FEED, map.depths().si(depth)), within(1e-9));
        }
        assertThat(map.feedSi(middle, BOTTOM)).isCloseTo(FEED, within(1e-12));
    }

    /**
     * Part of 40 mm by 40 mm with one re-entrant corner, mild steel 25 mm, quality index 3, no slowdown: largest gouge 1.89 mm
     * at the re-entrant corner, with a half-angle of 1 degree; derived: simulation of the stated formulas in Python.
     */
    @Test
    void theGougeAtAReentrantCornerIsThatOfTheReference() {
        KerfModel narrow = KERF.withHalfAngle(degrees(1), 0, KERF.evidence());
        CutSimulator simulator = CutSimulator.of(CUT, narrow, LagModel.standard());
        Contour path = path(lPart(), Side.RIGHT, KerfOffset.CornerStyle.EXTENDED);

        PredictedCut predicted = simulator.predict(steady(path, FEED), lPart(), Side.LEFT);

        assertThat(worstGouge(predicted, BOTTOM) * 1e3).isCloseTo(1.89, within(0.01));
        assertThat(predicted.isSeparated()).isFalse();
        assertThat(predicted.findings())
                .filteredOn(finding -> !finding.isSatisfied())
                .extracting(Finding::code)
                .contains("predicted-separation", "predicted-gouge");
    }

    @ParameterizedTest
    @EnumSource(LagGeometry.class)
    void onACircleTheWallsAreThoseOfTheClosedForm(LagGeometry geometry) {
        double radius = 9e-3;
        Contour path = arc(radius, 4);
        Contour part = arc(radius - OFFSET, 4);

        DeviationMap map = SIMULATOR
                .withGeometry(geometry)
                .predict(steady(path, FEED), part, Side.LEFT)
                .map();

        SteadyArc arc = new SteadyArc(PROFILE, geometry, radius, FEED, CUT.thicknessSi());
        // past the start the front is on its own circle
        assertThat(map.deviationSi(map.size() / 2, BOTTOM)).isCloseTo(OFFSET - arc.innerWall(), within(2e-6));
    }

    private static Contour arc(double radius, double sweep) {
        return Contour.fromSi(radius, 0)
                .arcToSi(radius * Math.cos(sweep), radius * Math.sin(sweep), 0, 0, Side.LEFT)
                .open();
    }

    @Test
    void aMirroredPartDeviatesAsMuch() {
        Contour part = lPart();
        Contour mirrored = mirrored(part);
        Contour path = path(part, Side.RIGHT, KerfOffset.CornerStyle.EXTENDED);

        DeviationMap map =
                SIMULATOR.predict(steady(path, FEED), part, Side.LEFT).map();
        DeviationMap other = SIMULATOR
                .predict(steady(mirrored(path), FEED), mirrored, Side.RIGHT)
                .map();

        for (int i = 0; i < map.size(); i++) {
            if (map.isSeparated(i, BOTTOM)) {
                // doses are cut off at six spreads, by cells of a grid that is not mirrored
                assertThat(other.deviationSi(i, BOTTOM)).isCloseTo(map.deviationSi(i, BOTTOM), within(1e-6));
            }
        }
    }

    private static Contour mirrored(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        contour.load(0, edge);
        var builder = Contour.fromSi(edge.startX(), -edge.startY());
        int drawn = contour.isClosed() ? contour.size() - 1 : contour.size();
        for (int i = 0; i < drawn; i++) {
            contour.load(i, edge);
            builder.lineToSi(edge.endX(), -edge.endY());
        }
        return contour.isClosed() ? builder.close() : builder.open();
    }

    @Test
    void aTiltOfZeroChangesNothing() {
        Contour path = path(lPart(), Side.RIGHT, KerfOffset.CornerStyle.ROUND);
        FeedProfile profile = steady(path, FEED);

        assertThat(SIMULATOR
                        .withTilt(degrees(0), degrees(0))
                        .predict(profile, lPart(), Side.LEFT)
                        .map())
                .isEqualTo(SIMULATOR.predict(profile, lPart(), Side.LEFT).map());
    }

    @Test
    void aLeadTiltTakesMostOfTheGougeOfAReentrantCorner() {
        double lag = PROFILE.front().exitLagSi(FEED);
        Contour path = path(lPart(), Side.RIGHT, KerfOffset.CornerStyle.EXTENDED);
        var lead = Kind.ANGLE.of(Math.atan(0.828 * lag / CUT.thicknessSi()));

        PredictedCut upright = SIMULATOR.predict(steady(path, FEED), lPart(), Side.LEFT);
        PredictedCut leading = SIMULATOR.withTilt(degrees(0), lead).predict(steady(path, FEED), lPart(), Side.LEFT);

        assertThat(worstGouge(leading, BOTTOM)).isLessThan(0.3 * worstGouge(upright, BOTTOM));
    }

    @Test
    void aPathThatEndsWhereItStartedDoesNotPartTheBottom() {
        Contour part =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(30, 30), EdgeRequirement.defaults());
        Contour path = path(part, Side.RIGHT, KerfOffset.CornerStyle.ROUND).startingAt(millimetres(15));
        FeedProfile profile = FeedProfile.constant(path, Kind.SPEED.of(FEED));

        PredictedCut ending = SIMULATOR.predict(profile, part, Side.LEFT);
        PredictedCut waiting = SIMULATOR.predict(profile.withEndDwell(seconds(60)), part, Side.LEFT);

        // the start of the path is in the middle of an edge, 15 mm from both corners
        assertThat(missing(ending, path.start())).isPositive();
        assertThat(missing(waiting, path.start())).isZero();
    }

    private static long missing(PredictedCut cut, Point near) {
        return java.util.stream.IntStream.range(0, cut.map().size())
                .filter(i -> Kind.LENGTH.si(cut.map().point(i).distance(near)) < 5e-3)
                .filter(i -> !cut.map().isSeparated(i, BOTTOM))
                .count();
    }

    @Test
    void moreDepthsAndPointsGiveTheSameDeviations() {
        Contour path = path(lPart(), Side.RIGHT, KerfOffset.CornerStyle.EXTENDED);
        PredictedCut coarse = SIMULATOR.withPoints(160).predict(steady(path, FEED), lPart(), Side.LEFT);
        PredictedCut fine = SIMULATOR.withPoints(480).withDepths(17).predict(steady(path, FEED), lPart(), Side.LEFT);

        // each third point of the finer one is a point of the coarser one
        int found = 0;
        for (int i = 0; i < coarse.map().size(); i++) {
            for (int j = 0; j < fine.map().size(); j++) {
                if (coarse.map().edge(i) == fine.map().edge(j)
                        && Kind.LENGTH.si(coarse.map()
                                        .point(i)
                                        .distance(fine.map().point(j)))
                                < 1e-9
                        && coarse.map().isSeparated(i, BOTTOM)) {
                    found++;
                    assertThat(fine.map().deviationSi(j, 16))
                            .isCloseTo(coarse.map().deviationSi(i, BOTTOM), within(1e-6));
                }
            }
        }
        assertThat(found).isGreaterThan(50);
    }

    @Test
    void aPlaceHasTheUncertaintyOfItsModels() {
        Contour path = path(lPart(), Side.RIGHT, KerfOffset.CornerStyle.EXTENDED);
        KerfModel exact = KERF.withDoseSpread(KERF.doseRatio(), 0, KERF.evidence())
                .withHalfAngle(KERF.halfAngle(), 0, KERF.evidence());
        double lagOnly = worst(CutSimulator.of(CUT, exact, LagModel.standard()), path)
                .added()
                .standardUncertaintySi();
        double all = worst(SIMULATOR, path).added().standardUncertaintySi();

        // a lag of 2.1 mm, known within 30 per cent and by the feed, goes into the gouge as it is
        assertThat(lagOnly).isBetween(0.4e-3, 1.1e-3);
        assertThat(all).isGreaterThanOrEqualTo(lagOnly);
    }

    private static CutPlace worst(CutSimulator simulator, Contour path) {
        return simulator.predict(steady(path, FEED), lPart(), Side.LEFT).places().stream()
                .filter(place ->
                        place.level() == CutPlace.Level.BOTTOM && place.added().si() < 0)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void feedsAsWrittenAreThoseOfTheirEdges() {
        Contour path = path(lPart(), Side.RIGHT, KerfOffset.CornerStyle.EXTENDED);
        double[] feeds = new double[path.size()];
        for (int i = 0; i < feeds.length; i++) {
            feeds[i] = FEED / (1 + i);
        }
        FeedProfile profile = FeedProfile.perEdge(path, QuantityArray.ofSi(Kind.SPEED, feeds));

        EdgeCursor edge = new EdgeCursor();
        double start = 0;
        double time = 0;
        for (int i = 0; i < feeds.length; i++) {
            path.load(i, edge);
            assertThat(profile.feedAtSi(start + edge.length() / 2)).isEqualTo(feeds[i]);
            start += edge.length();
            time += edge.length() / feeds[i];
        }
        assertThat(Kind.TIME.si(profile.time())).isCloseTo(time, within(1e-9 * time));
    }

    @Test
    void feedsThatDoNotFitThePathAreRefused() {
        Contour path = arc(9e-3, 2);

        assertThat(Refusals.of(() -> FeedProfile.perEdge(path, QuantityArray.ofSi(Kind.SPEED, 1e-3, 2e-3))))
                .isEqualTo("must-be-at-most");
        assertThat(List.of(
                        Refusals.of(() -> FeedProfile.constant(path, Kind.SPEED.of(0))),
                        Refusals.of(() -> SIMULATOR.withDepths(1))))
                .containsExactly("must-be-above", "must-be-at-least");
    }
}
