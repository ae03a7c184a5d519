package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.calibrate.ArcMeasurement;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.CornerCase;
import java.util.List;
import org.junit.jupiter.api.Test;

class CornerMeasurementTest {

    private static final KerfModel NARROW = KerfModel.standard()
            .withHalfAngle(degrees(1), 0.1, KerfModel.standard().evidence());

    private static CutConditions cut(double thicknessMm) {
        CuttingHead head = CuttingHead.of(
                Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)));
        return CutConditions.of(
                head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
                Workpiece.of(Materials.standard().get("mild-steel"), millimetres(thicknessMm)),
                MachinabilityFeed.published());
    }

    /** A corner of the reference table, whose gouges come from another implementation of the same formulas. */
    private static CornerMeasurement measured(CornerCase row, double factor) {
        CutConditions cut = cut(row.thicknessM() * 1e3);
        double feed = cut.feedSi(row.index());
        double slow = row.feedRatio() * feed;
        return CornerMeasurement.of(cut, Kind.SPEED.of(feed), Kind.ANGLE.of(row.turnRad()))
                .withZone(
                        Kind.SPEED.of(slow),
                        Kind.LENGTH.of(row.profile().front().exitLagSi(slow)))
                .withDeviation(Kind.LENGTH.of(-factor * row.gougeM()));
    }

    private static List<CornerCase> deepCorners() {
        return CornerCase.all().stream()
                .filter(row -> row.isInside() && row.gougeM() > 0.3e-3 && row.thicknessM() <= 0.051)
                .limit(6)
                .toList();
    }

    @Test
    void theGougesOfTheReferenceGiveItsCoefficient() {
        List<CornerMeasurement> corners =
                deepCorners().stream().map(row -> measured(row, 1)).toList();

        ArcMeasurement.Result result = CornerMeasurement.fit(corners, NARROW);

        double expected = LagModel.standard().coefficient();
        assertThat(corners).hasSize(6);
        assertThat(result.geometry()).isEqualTo(LagGeometry.TANGENT);
        assertThat(result.lag().model().coefficient()).isCloseTo(expected, within(0.04 * expected));
        assertThat(result.lag().model().relativeUncertainty()).isBetween(0.001, 0.2);
    }

    @Test
    void deeperGougesAreALongerLag() {
        List<CornerMeasurement> corners =
                deepCorners().stream().map(row -> measured(row, 1.3)).toList();

        double coefficient =
                CornerMeasurement.fit(corners, NARROW).lag().model().coefficient();

        assertThat(coefficient).isGreaterThan(1.2 * LagModel.standard().coefficient());
    }

    @Test
    void materialLeftAtCornersIsATractrix() {
        CutConditions cut = cut(25);
        double standard = LagModel.standard().coefficient();
        // a tractrix leaves 0.426 lags at a turn of 75 degrees and 0.248 at 40, beside what the growth of the kerf
        // takes
        List<CornerMeasurement> corners =
                List.of(left(cut, 75, 0.42641729318), left(cut, 40, 0.248474092124), left(cut, 75, 0.42641729318));

        ArcMeasurement.Result result = CornerMeasurement.fit(corners, KerfModel.standard());

        assertThat(result.geometry()).isEqualTo(LagGeometry.TRACTRIX);
        assertThat(result.lag().model().coefficient()).isCloseTo(standard, within(0.35 * standard));
    }

    private static CornerMeasurement left(CutConditions cut, double turnDeg, double share) {
        double feed = cut.feedSi(3);
        double lag = LagModel.standard().lagSi(cut.separationDepthSi(feed), cut.thicknessSi());
        return CornerMeasurement.of(cut, Kind.SPEED.of(feed), degrees(turnDeg))
                .withDeviation(Kind.LENGTH.of(share * lag));
    }

    @Test
    void cornersThatShowNoLagAreRefused() {
        CutConditions cut = cut(25);
        CornerMeasurement none = CornerMeasurement.of(cut, Kind.SPEED.of(cut.feedSi(3)), degrees(90))
                .withDeviation(millimetres(-1e-4));

        assertThat(Refusals.of(() -> CornerMeasurement.fit(List.of(none, none), NARROW)))
                .isEqualTo("too-few-corners");
        assertThat(Refusals.of(() -> CornerMeasurement.fit(List.of(none, none, none), NARROW)))
                .isEqualTo("corners-without-lag");
        assertThat(Refusals.of(() -> CornerMeasurement.of(cut, Kind.SPEED.of(1.01 * cut.feedSi(1)), degrees(90))))
                .isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> CornerMeasurement.of(cut, Kind.SPEED.of(cut.feedSi(3)), degrees(178))))
                .isEqualTo("must-be-at-most");
    }
}
