package dev.waterjet.simulate;

import static dev.waterjet.simulate.CornerPredictions.CUT;
import static dev.waterjet.simulate.CornerPredictions.H;
import static dev.waterjet.simulate.CornerPredictions.KERF;
import static dev.waterjet.simulate.CornerPredictions.SIMULATOR;
import static dev.waterjet.simulate.CornerPredictions.ending;
import static dev.waterjet.simulate.CornerPredictions.part;
import static dev.waterjet.simulate.CornerPredictions.profile;
import static dev.waterjet.simulate.CornerPredictions.whole;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Numbers of a predicted cut against a search through all of its points. */
class PredictedMapTest {

    /** h/50 + 0.98 h s (3 - s)/2 for s from 0 to 1; of six the one nearest to the middle is the third. */
    @Test
    void depthsAreCloserTowardsTheBottom() {
        QuantityArray<javax.measure.quantity.Length> depths = ending().map().depths();

        assertThat(depths.size()).isEqualTo(6);
        for (int i = 0; i < 6; i++) {
            double s = i / 5.0;
            assertThat(depths.si(i)).isCloseTo(H * (0.02 + 0.98 * s * (3 - s) / 2), within(1e-15));
        }
        assertThat(depths.si(5)).isEqualTo(H);
        double[] off = IntStream.range(0, 6)
                .mapToDouble(i -> Math.abs(depths.si(i) - H / 2))
                .toArray();
        assertThat(off[2]).isLessThan(off[1]).isLessThan(off[3]);
    }

    @Test
    void aPlaceHasTheUncertaintyOfTheMap() {
        PredictedCut ending = ending();
        DeviationMap map = ending.map();
        int compared = 0;
        for (CutPlace place : ending.places()) {
            for (int i = 0; i < map.size(); i++) {
                for (int depth = 0; depth < 6; depth++) {
                    if (map.point(i).equals(place.place())
                            && map.depths().si(depth) == Kind.LENGTH.si(place.depth())
                            && map.addedUncertaintySi(i, depth) < Double.POSITIVE_INFINITY) {
                        compared++;
                        double expected = map.addedUncertaintySi(i, depth);
                        assertThat(place.added().standardUncertaintySi())
                                .isCloseTo(expected, within(1e-3 * expected + 1e-8));
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(2);
    }

    /** Half of each change, with the profiles moved one at a time; JCGM 100, equation 13. */
    @Test
    void theUncertaintyAtEachPointIsThatOfMovedModels() {
        DeviationMap map = ending().map();
        List<KerfProfile> moved = SIMULATOR.variations();
        double[] straight = {CUT.feedSi(3), 0.93 * CUT.feedSi(1)};
        HeadPath head = HeadPath.of(profile(0.93, 9e-3));
        CutRun[] runs = new CutRun[8];
        for (int k = 0; k < 8; k++) {
            runs[k] = new CutRun(moved.get(k), SIMULATOR.geometry(), head, map.points(), straight, new double[2]);
        }
        double[] room = new double[map.size()];
        PartRoom behind = new PartRoom(map.points(), 1e-2);
        java.util.Arrays.setAll(room, behind::behind);
        int finite = 0;
        for (int depth = 0; depth < 6; depth++) {
            for (CutRun run : runs) {
                run.at(map.depths().si(depth));
            }
            for (int i = 0; i < map.size(); i++) {
                double[] change = new double[4];
                double[] added = new double[4];
                boolean isFound = map.isSeparated(i, depth);
                for (int k = 0; k < 8; k++) {
                    boolean isCut = runs[k].find(i, room[i]);
                    isFound &= isCut;
                    double share = k % 2 == 0 ? 0.5 : -0.5;
                    change[k / 2] += share * runs[k].deviationM;
                    added[k / 2] += share * (runs[k].deviationM - runs[k].straight(i));
                }
                if (isFound) {
                    finite++;
                    assertThat(map.uncertaintySi(i, depth)).isCloseTo(combined(change), within(3e-8));
                    assertThat(map.addedUncertaintySi(i, depth)).isCloseTo(combined(added), within(3e-8));
                } else {
                    assertThat(map.uncertaintySi(i, depth)).isInfinite();
                    assertThat(map.addedUncertaintySi(i, depth)).isInfinite();
                }
            }
        }
        assertThat(finite).isBetween(100, 419);
    }

    private static double combined(double[] change) {
        double variance = 2 * KERF.correlation() * change[2] * change[3];
        for (double one : change) {
            variance += one * one;
        }
        return Math.sqrt(Math.max(0, variance));
    }

    /** The taper of the map is the slope of the wall between its first and last depth. */
    @Test
    void theTaperIsTheSlopeOfTheWall() {
        DeviationMap map = ending().map();
        int without = 0;
        for (int i = 0; i < map.size(); i++) {
            if (map.isSeparated(i, 0) && map.isSeparated(i, 5)) {
                assertThat(Math.tan(map.taperSi(i)) * 0.98 * H)
                        .isCloseTo(map.deviationSi(i, 5) - map.deviationSi(i, 0), within(1e-15));
            } else {
                without++;
                assertThat(map.taperSi(i)).isNaN();
            }
        }
        assertThat(without).isPositive();
    }

    /** Each corner of an outline is a point moved along its normal by its deviation. */
    @Test
    void outlinesRunThroughTheMovedPoints() {
        PredictedCut ending = ending();
        DeviationMap map = ending.map();
        for (int depth : new int[] {0, 3, 5}) {
            Contour outline = map.outline(depth).orElseThrow();
            EdgeCursor edge = new EdgeCursor();
            int next = 0;
            for (int i = 0; i < map.size(); i++) {
                if (map.isSeparated(i, depth)) {
                    Point point = map.point(i);
                    double x = point.xSi() + map.deviationSi(i, depth) * map.normalX(i);
                    double y = point.ySi() + map.deviationSi(i, depth) * map.normalY(i);
                    outline.load(Math.min(next, outline.size() - 1), edge);
                    double fromX = next < outline.size() ? edge.startX() : edge.endX();
                    double fromY = next < outline.size() ? edge.startY() : edge.endY();
                    assertThat(Math.hypot(fromX - x, fromY - y)).isLessThan(2e-9);
                    next++;
                }
            }
            assertThat(next).isEqualTo(outline.size() + 1);
        }
        assertThat(ending.topOutline()).isEqualTo(map.outline(0));
        assertThat(ending.bottomOutline()).isEqualTo(map.outline(5));
    }

    @Test
    void indicesOutsideOfTheMapAreRefused() {
        DeviationMap map = whole().map();
        int n = map.size();
        List<IntToDoubleFunction> byPoint = List.of(
                map::normalX,
                map::normalY,
                map::edge,
                map::distanceSi,
                i -> map.point(i).xSi());

        for (IntToDoubleFunction value : byPoint) {
            assertThat(value.applyAsDouble(n - 1)).isFinite();
            assertThat(Refusals.of(() -> value.applyAsDouble(n))).isNotEqualTo("no refusal");
            assertThat(Refusals.of(() -> value.applyAsDouble(-1))).isNotEqualTo("no refusal");
        }
        assertThat(Refusals.of(() -> map.deviationSi(0, 6))).isNotEqualTo("no refusal");
        assertThat(Refusals.of(() -> map.addedSi(n, 0))).isNotEqualTo("no refusal");
        assertThat(Refusals.of(() -> map.lagSi(0, -1))).isNotEqualTo("no refusal");
        assertThat(map).asString().contains(n + " points", "6 depths");
    }

    @Test
    void mapsAreEqualByTheirNumbers() {
        PredictedCut whole = whole();
        PredictedCut again = SIMULATOR.predict(profile(0.6, 25e-3), part(), Side.RIGHT);
        List<DeviationMap> others = List.of(
                ending().map(),
                SIMULATOR.predict(profile(0.61, 25e-3), part(), Side.RIGHT).map(),
                SIMULATOR
                        .withDepths(5)
                        .predict(profile(0.6, 25e-3), part(), Side.RIGHT)
                        .map(),
                SIMULATOR
                        .withUncertainty()
                        .predict(profile(0.6, 25e-3), part(), Side.RIGHT)
                        .map());

        assertThat(again.map())
                .isEqualTo(whole.map())
                .hasSameHashCodeAs(whole.map())
                .isNotEqualTo("a map");
        assertThat(again.describe()).isEqualTo(whole.describe());
        assertThat(again.describe())
                .containsEntry("points", (long) whole.map().size())
                .containsKeys("places", "findings");
        assertThat(again).isEqualTo(whole);
        assertThat(others).doesNotContain(whole.map()).doesNotHaveDuplicates();
        assertThat(others).anyMatch(other -> other.hashCode() != whole.map().hashCode());
        assertThat(others.get(3).hasUncertainty()).isTrue();
    }
}
