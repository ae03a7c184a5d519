package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.simulate.CornerPredictions.CUT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import dev.waterjet.reference.CornerCase;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Corners of a test cut against the table of corners, which comes from another implementation of the same formulas. */
class CornerCutTest {

    static List<CornerCase> insideCorners() {
        List<CornerCase> all = CornerCase.all().stream()
                .filter(row -> row.isInside() && row.gougeM() > 0.1e-3 && row.thicknessM() < 0.06)
                .toList();
        return List.of(all.get(0), all.get(all.size() / 3), all.get(2 * all.size() / 3), all.get(all.size() - 1));
    }

    private static double gouge(CornerCase row, double[] feeds, double zone) {
        return new CornerCut(row.profile(), LagGeometry.TANGENT, row.turnRad(), feeds, zone)
                .largest(row.thicknessM(), -1);
    }

    @ParameterizedTest
    @MethodSource("insideCorners")
    void theGougeIsThatOfTheTable(CornerCase row) {
        double straight = row.straightFeed();
        double slow = row.feedRatio() * straight;
        double zone = row.profile().front().exitLagSi(slow);
        double slowed = gouge(row, new double[] {straight, slow}, zone);
        double unslowed = gouge(row, new double[] {straight, straight}, zone);

        assertThat(-slowed).isCloseTo(row.gougeM(), within(0.03e-3 + 0.03 * row.gougeM()));
        assertThat(unslowed).isEqualTo(gouge(row, new double[] {straight, straight}, 0));
        if (row.feedRatio() < 0.9 && !row.reason().equals("separation")) {
            // without the zone the gouge is that of the whole lag
            assertThat(unslowed).isLessThan(1.1 * slowed);
        }
    }

    private static CornerMeasurement corner(double feedShare, double turnDeg, double zoneMm, double deviationMm) {
        return CornerMeasurement.of(CUT, Kind.SPEED.of(feedShare * CUT.feedSi(1)), degrees(turnDeg))
                .withZone(Kind.SPEED.of(0.3 * CUT.feedSi(1)), millimetres(zoneMm))
                .withDeviation(millimetres(deviationMm));
    }

    @Test
    void aCornerIsAllItsNumbers() {
        ValueContract.of(() -> corner(0.5, 80, 1, -0.2))
                .has("turn", CornerMeasurement::turn, degrees(80))
                .has("zone", CornerMeasurement::zone, millimetres(1))
                .differs("feed", corner(0.6, 80, 1, -0.2))
                .differs("turn", corner(0.5, 81, 1, -0.2))
                .differs("zone", corner(0.5, 80, 1.1, -0.2))
                .differs("deviation", corner(0.5, 80, 1, 0.2))
                .prints("80°", "-0.2 mm")
                .check();
        assertThat(Refusals.of(() -> corner(1, 5, 0, 1000))).isEqualTo("no refusal");
        assertThat(Refusals.of(() -> corner(1, 175, 0, -1000))).isEqualTo("no refusal");
        Refusals.assertRefused(() -> corner(1, 4.9, 0, 0), "must-be-at-least", "turn of the corner", Math.toRadians(5));
        Refusals.assertRefused(
                () -> corner(1, 175.1, 0, 0), "must-be-at-most", "turn of the corner", Math.toRadians(175));
        Refusals.assertRefused(() -> corner(1, 90, 0, 1001), "must-be-at-most", "deviation of the bottom edge", 1);
        Refusals.assertRefused(() -> corner(1, 90, 0, -1001), "must-be-at-least", "deviation of the bottom edge", -1);
        Refusals.assertRefused(() -> corner(1, 90, -1, 0), "must-be-at-least", "length of the zone", 0);
        Refusals.assertRefused(() -> corner(0, 90, 0, 0), "must-be-above", "feed rate", 0);
    }

    private static CutPlace place(double addedMm, double toleranceMm) {
        return new CutPlace(
                CutPlace.Level.MIDDLE,
                millimetres(6),
                4,
                millimetres(33),
                Point.millimetres(7, 8),
                Estimate.of(Kind.LENGTH, addedMm * 1e-3, 1e-5),
                millimetres(toleranceMm));
    }

    /** Deviations of either sign up to the tolerance. */
    @Test
    void aPlaceIsWithinItsToleranceUpToTheLimit() {
        assertThat(place(0.25, 0.25).isWithinTolerance()).isTrue();
        assertThat(place(-0.25, 0.25).isWithinTolerance()).isTrue();
        assertThat(place(0.2501, 0.25).isWithinTolerance()).isFalse();
        assertThat(place(-0.2501, 0.25).isWithinTolerance()).isFalse();
        assertThat(place(-0.1, 0.25)).asString().contains("-0.1 mm", "middle", "edge 5", "7");
        assertThat(place(-0.1, 0.25).describe())
                .containsKeys("level", "added", "place")
                .containsEntry("depth_m", 6e-3)
                .containsEntry("edge", 4L)
                .containsEntry("distance_m", 33e-3)
                .containsEntry("tolerance_m", 0.25e-3);
    }
}
