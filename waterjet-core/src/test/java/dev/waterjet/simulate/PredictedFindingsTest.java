package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.simulate.CornerPredictions.FIRST;
import static dev.waterjet.simulate.CornerPredictions.H;
import static dev.waterjet.simulate.CornerPredictions.SECOND;
import static dev.waterjet.simulate.CornerPredictions.SIMULATOR;
import static dev.waterjet.simulate.CornerPredictions.ending;
import static dev.waterjet.simulate.CornerPredictions.part;
import static dev.waterjet.simulate.CornerPredictions.profile;
import static dev.waterjet.simulate.CornerPredictions.whole;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.quality.Iso9013;
import java.util.List;
import java.util.Objects;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Places and findings of a predicted cut against a search through all of its points. */
class PredictedFindingsTest {

    private static int largest(DeviationMap map, IntPredicate isThere, IntToDoubleFunction value) {
        int best = -1;
        for (int i = 0; i < map.size(); i++) {
            if (isThere.test(i) && value.applyAsDouble(i) > (best < 0 ? 0 : value.applyAsDouble(best))) {
                best = i;
            }
        }
        return best;
    }

    private static double parameter(Finding finding, String key) {
        return ((Number) Objects.requireNonNull(finding.message().parameters().get(key))).doubleValue();
    }

    private static Finding finding(PredictedCut cut, String code) {
        return cut.findings().stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void thePlacesAreTheWorstOfTheirLevels() {
        for (PredictedCut cut : List.of(ending(), whole())) {
            DeviationMap map = cut.map();
            int found = 0;
            for (CutPlace.Level level : CutPlace.Level.values()) {
                int depth = level == CutPlace.Level.TOP ? 0 : level == CutPlace.Level.MIDDLE ? 2 : 5;
                for (int sign : new int[] {-1, 1}) {
                    int worst = largest(map, i -> map.isSeparated(i, depth), i -> sign * map.addedSi(i, depth));
                    if (worst >= 0) {
                        CutPlace place = cut.places().get(found++);
                        assertThat(place.level()).isEqualTo(level);
                        assertThat(place.place()).isEqualTo(map.point(worst));
                        assertThat(place.added().si()).isEqualTo(map.addedSi(worst, depth));
                        assertThat(place.edge()).isEqualTo(map.edge(worst));
                        assertThat(Kind.LENGTH.si(place.distance())).isEqualTo(map.distanceSi(worst));
                        assertThat(Kind.LENGTH.si(place.depth()))
                                .isEqualTo(map.depths().si(depth));
                        assertThat(Kind.LENGTH.si(place.tolerance()))
                                .isCloseTo((map.edge(worst) == 0 ? FIRST : SECOND).lagToleranceSi(H), within(1e-12));
                    }
                }
            }
            assertThat(cut.places()).hasSize(found);
        }
    }

    @Test
    void theCautionCountsPointsThatOnlyTheBestValuesSeparate() {
        PredictedCut ending = ending();
        DeviationMap map = ending.map();
        int count = 0;
        for (int depth = 0; depth < 6; depth++) {
            for (int i = 0; i < map.size(); i++) {
                count += map.isSeparated(i, depth) && Double.isInfinite(map.uncertaintySi(i, depth)) ? 1 : 0;
            }
        }
        Caution caution = ending.cautions().stream()
                .filter(one -> one.code().equals("separation-uncertain"))
                .findFirst()
                .orElseThrow();

        assertThat(caution.message().parameters())
                .containsEntry("count", (long) count)
                .containsEntry("points", 6L * map.size());
        assertThat(whole().cautions()).extracting(Caution::code).doesNotContain("separation-uncertain");
    }

    @Test
    void theFindingOfSeparationCountsWhatIsNotCutFromTheBottomUp() {
        PredictedCut ending = ending();
        DeviationMap map = ending.map();
        int missing = 0;
        int first = -1;
        for (int depth = 5; depth >= 0; depth--) {
            for (int i = 0; i < map.size(); i++) {
                if (!map.isSeparated(i, depth)) {
                    missing++;
                    first = first < 0 ? i : first;
                    assertThat(map.deviationSi(i, depth)).isInfinite();
                    assertThat(map.addedSi(i, depth)).isInfinite();
                    assertThat(map.feedSi(i, depth)).isZero();
                    assertThat(map.lagSi(i, depth)).isZero();
                    assertThat(map.halfWidthSi(i, depth)).isZero();
                    assertThat(map.roughnessSi(i, depth)).isZero();
                }
            }
        }
        Finding finding = finding(ending, "predicted-separation");

        assertThat(missing).isPositive();
        assertThat(finding.isSatisfied()).isFalse();
        assertThat(parameter(finding, "count")).isEqualTo(missing);
        assertThat(parameter(finding, "points")).isEqualTo(6 * map.size());
        assertThat(parameter(finding, "edge")).isEqualTo(map.edge(first) + 1);
        assertThat(parameter(finding, "depth_m")).isEqualTo(H);
        assertThat(finding.place()).isEqualTo(map.point(first));
        assertThat(ending.isSeparated()).isFalse();
        assertThat(ending).asString().contains("not separated");
        Contour line = Contour.fromSi(0, 0).lineToSi(18e-3, 0).open();
        PredictedCut straight = SIMULATOR.predict(profile(0.6, 25e-3), line, Side.RIGHT);
        assertThat(straight.isSeparated()).isTrue();
        assertThat(finding(straight, "predicted-separation").isSatisfied()).isTrue();
        assertThat(straight).asString().doesNotContain("not separated");
    }

    @Test
    void eachPlaceIsAFindingAgainstItsTolerance() {
        for (PredictedCut cut : List.of(ending(), whole())) {
            List<Finding> findings = cut.findings().stream()
                    .filter(one ->
                            one.code().equals("predicted-gouge") || one.code().equals("predicted-excess"))
                    .toList();
            assertThat(findings).hasSameSizeAs(cut.places());
            for (int i = 0; i < findings.size(); i++) {
                CutPlace place = cut.places().get(i);
                double added = place.added().si();
                assertThat(findings.get(i).code()).isEqualTo(added < 0 ? "predicted-gouge" : "predicted-excess");
                assertThat(parameter(findings.get(i), "value_m")).isEqualTo(Math.abs(added));
                assertThat(parameter(findings.get(i), "limit_m")).isEqualTo(Kind.LENGTH.si(place.tolerance()));
                assertThat(findings.get(i).isSatisfied())
                        .isEqualTo(place.isWithinTolerance())
                        .isEqualTo(Math.abs(added) <= Kind.LENGTH.si(place.tolerance()));
                assertThat(findings.get(i).place()).isEqualTo(place.place());
                assertThat(place).asString().contains(place.level().name().toLowerCase(java.util.Locale.ROOT));
            }
        }
        PredictedCut exact =
                SIMULATOR.withTolerance(millimetres(1e-6)).predict(profile(0.6, 25e-3), part(), Side.RIGHT);
        assertThat(exact.findings())
                .filteredOn(one -> one.code().equals("predicted-gouge"))
                .isNotEmpty()
                .noneMatch(Finding::isSatisfied);
    }

    /** Of both edges the point with the largest ratio of a value to the limit of its edge. */
    @Test
    void findingsOfTheSurfaceAreAtTheLargestShareOfTheLimit() {
        double strip = Kind.LENGTH.si(Iso9013.forThickness(millimetres(12)).edgeHeight());
        for (PredictedCut cut : List.of(ending(), whole())) {
            DeviationMap map = cut.map();
            check(
                    cut,
                    "predicted-taper",
                    "rad",
                    new double[] {Math.toRadians(1.2), Math.toRadians(0.4)},
                    i -> map.taperSi(i));
            check(
                    cut,
                    "predicted-roughness",
                    "m",
                    new double[] {6e-6, 30e-6},
                    i -> map.isSeparated(i, 5) ? map.roughnessSi(i, 5) : Double.NaN);
            check(cut, "predicted-perpendicularity", "m", new double[] {limit(1), limit(3)}, i -> range(map, i, strip));
        }
    }

    private static double limit(int range) {
        return Kind.LENGTH.si(Iso9013.forThickness(millimetres(12)).perpendicularityLimit(range));
    }

    private static double range(DeviationMap map, int i, double strip) {
        double[] inside = IntStream.range(0, 6)
                .filter(depth -> map.depths().si(depth) >= strip && map.depths().si(depth) <= H - strip)
                .mapToDouble(depth -> map.deviationSi(i, depth))
                .sorted()
                .toArray();
        double range = inside[inside.length - 1] - inside[0];
        return range < Double.POSITIVE_INFINITY ? range : Double.NaN;
    }

    private static void check(PredictedCut cut, String code, String unit, double[] limits, IntToDoubleFunction value) {
        DeviationMap map = cut.map();
        int worst = largest(
                map,
                i -> !Double.isNaN(value.applyAsDouble(i)),
                i -> Math.abs(value.applyAsDouble(i)) / limits[map.edge(i)]);
        Finding finding = finding(cut, code);

        assertThat(finding.place()).isEqualTo(map.point(worst));
        assertThat(parameter(finding, "edge")).isEqualTo(map.edge(worst) + 1);
        assertThat(parameter(finding, "value_" + unit)).isEqualTo(value.applyAsDouble(worst));
        assertThat(parameter(finding, "limit_" + unit)).isCloseTo(limits[map.edge(worst)], within(1e-15));
        assertThat(finding.isSatisfied()).isEqualTo(Math.abs(value.applyAsDouble(worst)) <= limits[map.edge(worst)]);
    }

    private static PredictedCut beside(Contour line, double fromM, double toM) {
        Contour path = Contour.fromSi(fromM, CornerPredictions.OFFSET)
                .lineToSi(toM, CornerPredictions.OFFSET)
                .open();
        return SIMULATOR
                .withTolerance(millimetres(100))
                .predict(
                        FeedProfile.constant(path, Kind.SPEED.of(CornerPredictions.CUT.feedSi(2)))
                                .afterSteadyFeed(),
                        line,
                        Side.RIGHT);
    }

    /** Without the start of the cut nothing is separated there, from the first point on. */
    @Test
    void thePointAtTheStartCountsAsOthers() {
        Contour line = Contour.fromSi(0, 0).lineToSi(18e-3, 0).open();
        Finding late = finding(beside(line, 6e-3, 30e-3), "predicted-separation");
        PredictedCut just = beside(line, 0.4e-3, 30e-3);
        DeviationMap map = just.map();

        assertThat(late.isSatisfied()).isFalse();
        assertThat(late.place()).isEqualTo(beside(line, 6e-3, 30e-3).map().point(0));
        // where the dose of the run before is missing, most is left
        assertThat(largest(map, i -> map.isSeparated(i, 0), i -> map.addedSi(i, 0)))
                .isZero();
        assertThat(just.places())
                .filteredOn(place ->
                        place.level() == CutPlace.Level.TOP && place.added().si() > 0)
                .extracting(CutPlace::place)
                .containsExactly(map.point(0));
    }

    /** Separated or not is a finding of its own: limits that are met or not change nothing in it. */
    @Test
    void separationDoesNotDependOnTheOtherFindings() {
        Contour strict = Contour.fromSi(0, 0)
                .requirement(EdgeRequirement.of(CutQuality.FINE).withRoughness(micrometres(0.1)))
                .lineToSi(18e-3, 0)
                .open();
        Contour plain = Contour.fromSi(0, 0).lineToSi(18e-3, 0).open();
        PredictedCut rough = beside(strict, -6e-3, 30e-3);
        PredictedCut late = beside(plain, 6e-3, 30e-3);

        assertThat(rough.findings()).anyMatch(one -> !one.isSatisfied());
        assertThat(rough.isSeparated()).isTrue();
        assertThat(late.findings())
                .filteredOn(one -> !one.isSatisfied())
                .extracting(Finding::code)
                .containsExactly("predicted-separation");
        assertThat(late.isSeparated()).isFalse();
    }
}
