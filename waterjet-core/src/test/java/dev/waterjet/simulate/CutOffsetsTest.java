package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.simulate.CornerPredictions.CUT;
import static dev.waterjet.simulate.CornerPredictions.H;
import static dev.waterjet.simulate.CornerPredictions.OFFSET;
import static dev.waterjet.simulate.CornerPredictions.PROFILE;
import static dev.waterjet.simulate.CornerPredictions.SIMULATOR;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The straight cut beside each edge, wherever the part lies, and the motion that a plan states. */
class CutOffsetsTest {

    /** A polyline that is turned about the origin and moved far away. */
    private static Contour placed(double angle, double... coordinates) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        ContourBuilder builder = null;
        for (int i = 0; i < coordinates.length; i += 2) {
            double x = 0.7 + c * coordinates[i] - s * coordinates[i + 1];
            double y = -0.4 + s * coordinates[i] + c * coordinates[i + 1];
            builder = builder == null ? Contour.fromSi(x, y) : builder.lineToSi(x, y);
        }
        return java.util.Objects.requireNonNull(builder).open();
    }

    private static double straight(DeviationMap map, int edge, int depth) {
        for (int i = 0; i < map.size(); i++) {
            if (map.edge(i) == edge && map.isSeparated(i, depth)) {
                return map.deviationSi(i, depth) - map.addedSi(i, depth);
            }
        }
        throw new IllegalStateException("not separated");
    }

    /** Offset and feed of each of two edges, with the path on either side and in any direction. */
    @ParameterizedTest
    @CsvSource({"0.4, 1", "2.3, 1", "-1.1, -1", "-2.7, -1"})
    void eachEdgeHasTheOffsetAndFeedOfThePathBesideIt(double angle, int side) {
        double near = OFFSET + 0.1e-3;
        Contour part = placed(angle, 0, 0, 20e-3, 0, 20e-3, side * 15e-3);
        Contour path = placed(angle, -5e-3, side * near, 20e-3 - OFFSET, side * near, 20e-3 - OFFSET, side * 25e-3);
        double[] feeds = {CUT.feedSi(4), CUT.feedSi(2)};
        FeedProfile profile =
                FeedProfile.perEdge(path, QuantityArray.ofSi(Kind.SPEED, feeds)).afterSteadyFeed();
        DeviationMap map = SIMULATOR
                .predict(profile, part, side > 0 ? Side.RIGHT : Side.LEFT)
                .map();
        for (int depth : new int[] {0, 3, 5}) {
            double z = map.depths().si(depth);
            assertThat(straight(map, 0, depth)).isCloseTo(near - PROFILE.halfWidthSi(z, feeds[0]), within(2e-9));
            assertThat(straight(map, 1, depth)).isCloseTo(OFFSET - PROFILE.halfWidthSi(z, feeds[1]), within(2e-9));
        }
    }

    /** A path that comes nearer and goes away again: half of the edge is nearer than the median, half farther. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.9, -2})
    void theOffsetOfAnEdgeIsTheMedianOfItsDistances(double angle) {
        Contour part = placed(angle, 0, 0, 40e-3, 0);
        // 0.9 mm at the ends, 0.5 mm in a valley at a quarter: the median is 0.7 mm
        Contour path = placed(angle, -0.1e-3, 0.9e-3, 10e-3, 0.5e-3, 40.1e-3, 0.9e-3);
        FeedProfile profile =
                FeedProfile.constant(path, Kind.SPEED.of(CUT.feedSi(3))).afterSteadyFeed();
        DeviationMap map = SIMULATOR.predict(profile, part, Side.RIGHT).map();
        double z = map.depths().si(4);

        assertThat(straight(map, 0, 4)).isCloseTo(0.7e-3 - PROFILE.halfWidthSi(z, CUT.feedSi(3)), within(8e-6));
    }

    /** A tilt that grows along the path: the straight cut of an edge has that of its middle, within a step of the nodes. */
    @ParameterizedTest
    @CsvSource({"0, 0.4, 0", "1.9, 0.4, 0", "1.9, -0.4, 0", "-0.8, 0, 0.4"})
    void theTiltOfAnEdgeIsThatOfItsMiddle(double angle, double left, double ahead) {
        Contour part = placed(angle, 0, 0, 41e-3, 0);
        Contour path = placed(angle, -10e-3, OFFSET, 50e-3, OFFSET);
        double x = Math.cos(angle) * ahead - Math.sin(angle) * left;
        double y = Math.sin(angle) * ahead + Math.cos(angle) * left;
        FeedProfile profile = FeedProfile.constant(path, Kind.SPEED.of(CUT.feedSi(3)))
                .afterSteadyFeed()
                .withTilts(QuantityArray.ofSi(Kind.LENGTH, 0, 60e-3), List.of(HeadTilt.upright(), HeadTilt.ofSi(x, y)));
        DeviationMap map = SIMULATOR.predict(profile, part, Side.RIGHT).map();
        double upright = OFFSET - PROFILE.halfWidthSi(H, CUT.feedSi(3));
        double across = (straight(map, 0, 5) - upright) / H;
        double ofMiddle = left * 30.5 / 60;

        // one step of 0.225 mm at most
        assertThat(across).isCloseTo(ofMiddle, within(Math.abs(left) * 0.23 / 60 + 1e-6));
        assertThat(Math.abs(across)).isGreaterThanOrEqualTo(Math.abs(ofMiddle) - 1e-6);
    }

    @Test
    void predictionsOfTooManyCellsAreRefused() {
        Contour path = Contour.fromSi(0, 0).lineToSi(99, 0).open();
        Contour part = Contour.fromSi(0, -OFFSET).lineToSi(0.1, -OFFSET).open();
        FeedProfile profile = FeedProfile.constant(path, Kind.SPEED.of(CUT.feedSi(2)));
        CutSimulator simulator = SIMULATOR.withDepths(1000).withPoints(1);

        Refusals.assertRefused(
                () -> simulator.predict(profile, part, Side.RIGHT),
                "must-be-at-most",
                "number of cells of the prediction",
                3e8);
        Contour little = Contour.fromSi(0, 0).lineToSi(1, 0).open();
        assertThat(Refusals.of(() -> SIMULATOR
                        .withDepths(50)
                        .withPoints(1)
                        .predict(FeedProfile.constant(little, Kind.SPEED.of(CUT.feedSi(2))), part, Side.RIGHT)))
                .isEqualTo("no refusal");
    }

    /** 3000 strokes within half a millimetre: each dose adds up all of them. */
    @Test
    void predictionsOfTooManySegmentsAreRefused() {
        ContourBuilder zigzag = Contour.fromSi(0, 0);
        for (int i = 1; i < 3000; i++) {
            zigzag.lineToSi(1e-7 * i, i % 2 * 0.5e-3);
        }
        Contour part = Contour.fromSi(-1e-3, -OFFSET).lineToSi(1e-3, -OFFSET).open();
        FeedProfile profile = FeedProfile.constant(zigzag.open(), Kind.SPEED.of(CUT.feedSi(2)));

        Refusals.assertRefused(
                () -> SIMULATOR.withDepths(1000).withPoints(300).predict(profile, part, Side.RIGHT),
                "must-be-at-most",
                "number of segments of the prediction",
                3e9);
    }

    @Test
    void anOutlineHasTwoPointsOrMore() {
        Contour part = Contour.fromSi(0, 0).lineToSi(10e-3, 0).open();
        Contour path = Contour.fromSi(-5e-3, OFFSET).lineToSi(20e-3, OFFSET).open();
        FeedProfile profile =
                FeedProfile.constant(path, Kind.SPEED.of(CUT.feedSi(3))).afterSteadyFeed();

        assertThat(SIMULATOR.withPoints(1).predict(profile, part, Side.RIGHT).bottomOutline())
                .isEmpty();
        PredictedCut two = SIMULATOR.withPoints(2).predict(profile, part, Side.RIGHT);
        assertThat(two.map().size()).isEqualTo(2);
        assertThat(two.bottomOutline().orElseThrow().size()).isEqualTo(1);
    }

    /** v^2 = v0^2 + 2 a s from rest and back to rest, and the time of the plan. */
    @ParameterizedTest
    @CsvSource({"0.02, 0.05", "0.005, 0.01", "0.3, 1"})
    void aPlanAcceleratesAsItsMachine(double speed, double acceleration) {
        Contour path =
                Contour.fromSi(0, 0).lineToSi(30e-3, 0).lineToSi(30e-3, 30e-3).open();
        FeedPlan plan = FeedPlanner.of(
                        MachineLimits.of(metresPerSecond(speed), metresPerSquareSecond(acceleration)), CUT)
                .plan(path, Side.LEFT);
        FeedProfile profile = FeedProfile.of(plan);
        List<Double> off = new ArrayList<>();
        double at = 0;
        for (int i = 0; i < plan.size(); i++) {
            double length = plan.lengthSi(i);
            double peak = plan.peakFeedSi(i);
            double up = (peak * peak - plan.entrySi(i) * plan.entrySi(i)) / (2 * acceleration);
            double down = (peak * peak - plan.exitSi(i) * plan.exitSi(i)) / (2 * acceleration);
            for (double share = 0.02; share < 1; share += 0.07) {
                double s = share * length;
                double expected = s < up
                        ? Math.sqrt(plan.entrySi(i) * plan.entrySi(i) + 2 * acceleration * s)
                        : s > length - down
                                ? Math.sqrt(plan.exitSi(i) * plan.exitSi(i) + 2 * acceleration * (length - s))
                                : peak;
                off.add(Math.abs(profile.feedAtSi(at + s) - expected) / expected);
            }
            at += length;
        }

        assertThat(off).hasSizeGreaterThan(10).allMatch(one -> one < 1e-6);
        assertThat(Kind.TIME.si(profile.time()))
                .isCloseTo(Kind.TIME.si(plan.time()), within(1e-9 * Kind.TIME.si(plan.time())));
        HeadPath head = HeadPath.of(profile);
        assertThat(head.time[head.count - 1])
                .isCloseTo(Kind.TIME.si(plan.time()), within(2e-3 * Kind.TIME.si(plan.time())));
        for (int i = 0; i < profile.pieces() - 1; i++) {
            double jump = Math.abs(profile.feed(i + 1, profile.end(i)) - profile.feed(i, profile.end(i)));
            assertThat(profile.isStep(i)).isEqualTo(jump > 1e-9 * profile.feed(i, profile.end(i)));
        }
    }
}
