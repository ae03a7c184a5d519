package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.toolpath.KerfOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Laws that every predicted cut keeps: order of convergence, limits of large radii, scaling and rotation. */
class PredictionLawsTest {

    private static final CutConditions CUT = CutConditions.of(
            CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(80)))
                    .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
            Workpiece.of(Materials.standard().get("mild-steel"), millimetres(25)),
            MachinabilityFeed.published());
    private static final CutSimulator SIMULATOR =
            CutSimulator.of(CUT, KerfModel.standard(), LagModel.standard()).withDepths(2);
    private static final KerfProfile PROFILE =
            KerfProfile.of(KerfModel.standard(), CutFront.of(LagModel.standard(), CUT), CUT.jet());
    private static final double FEED = CUT.feedSi(3);
    private static final double OFFSET = PROFILE.halfWidthSi(0.0005, FEED);
    private static final int BOTTOM = 1;

    /** Walls beside chords of an arc come to the wall beside the circle as the square of their length. */
    @Test
    void chordsOfAnArcConvergeWithTheSecondOrder() {
        double radius = 6e-3;
        double expected = new SteadyArc(PROFILE, LagGeometry.FOLLOWING, radius, FEED, 25e-3).outerWall();
        double before = error(radius, 50, expected);
        for (int chords = 100; chords <= 400; chords *= 2) {
            double error = error(radius, chords, expected);
            assertThat(before / error).isBetween(3.6, 4.4);
            before = error;
        }
        assertThat(before).isLessThan(1e-6);
    }

    private static double error(double radius, int chords, double expected) {
        FootSegments segments = new FootSegments(chords);
        double step = 5.0 / chords;
        for (int i = 0; i < chords; i++) {
            segments.add(
                    radius * Math.cos(i * step),
                    radius * Math.sin(i * step),
                    radius * Math.cos((i + 1) * step),
                    radius * Math.sin((i + 1) * step),
                    radius * step / FEED,
                    i);
        }
        DoseField field = new DoseField(PROFILE, segments);
        field.at(25e-3);
        WallSearch search = new WallSearch(field, 1e-13);
        double x = Math.cos(2.5);
        double y = Math.sin(2.5);
        assertThat(search.find(x * (radius + 4e-3), y * (radius + 4e-3), -x, -y, 0, 5e-3))
                .isTrue();
        return Math.abs(4e-3 - search.wallM - expected);
    }

    /** The front swings wide by sqrt(R^2 + L^2) - R; on its larger circle it runs a little faster. */
    @ParameterizedTest
    @ValueSource(doubles = {10, 20, 60, 200, 1000})
    void anArcOfGrowingRadiusTendsToTheStraightCut(double radiusMm) {
        double radius = radiusMm * 1e-3;
        double sweep = Math.min(2, 0.02 / radius);
        Contour path = arc(radius, sweep);
        FeedProfile profile = FeedProfile.constant(path, Kind.SPEED.of(FEED)).afterSteadyFeed();

        DeviationMap map = SIMULATOR
                .withPoints(41)
                .predict(profile, arc(radius - OFFSET, sweep), Side.LEFT)
                .map();

        double lag = PROFILE.front().exitLagSi(FEED);
        double wide = Math.hypot(radius, lag) - radius;
        assertThat(map.addedSi(20, BOTTOM)).isBetween(0.9 * wide, 1.01 * wide);
    }

    private static Contour arc(double radius, double sweep) {
        return Contour.fromSi(radius, 0)
                .arcToSi(radius * Math.cos(sweep), radius * Math.sin(sweep), 0, 0, Side.LEFT)
                .open();
    }

    /** All lengths times a factor at the same feed rates: a thicker plate of a better jet. */
    @ParameterizedTest
    @CsvSource({"0.5, 90", "2, 90", "4, 50"})
    void aScaledCutDeviatesInProportion(double factor, double turnDeg) {
        double plain = corner(1, turnDeg);

        assertThat(plain).isLessThan(-0.2e-3);
        assertThat(corner(factor, turnDeg)).isCloseTo(factor * plain, within(0.01 * factor * Math.abs(plain)));
    }

    private static double corner(double factor, double turnDeg) {
        double feed = 1e-3;
        double depth = 15e-3 * factor;
        CutFront front = CutFront.powerLaw(LagModel.standard(), depth, 1.15, 40e-3 * factor * Math.pow(feed, 1 / 1.15));
        KerfProfile profile = KerfProfile.ofSi(front, 0.25e-3 * factor, 0.55e-3 * factor, Math.tan(0.024));
        return new CornerCut(
                        profile,
                        LagGeometry.TANGENT,
                        Math.toRadians(turnDeg),
                        new double[] {feed, 0.6 * feed},
                        0.3e-3 * factor)
                .largest(depth, -1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 1.7, -2.6})
    void aRotatedPartDeviatesAsMuch(double angle) {
        DeviationMap plain = predicted(0);
        DeviationMap rotated = predicted(angle);

        assertThat(rotated.size()).isEqualTo(plain.size());
        for (int i = 0; i < plain.size(); i++) {
            assertThat(rotated.isSeparated(i, BOTTOM)).isEqualTo(plain.isSeparated(i, BOTTOM));
            if (plain.isSeparated(i, BOTTOM)) {
                // doses are cut off at six spreads, by cells of a grid that is not rotated
                assertThat(rotated.deviationSi(i, BOTTOM)).isCloseTo(plain.deviationSi(i, BOTTOM), within(1e-6));
            }
        }
    }

    private static DeviationMap predicted(double angle) {
        Contour part = rotated(angle, 0, 0, 18, 0, 18, -12, 30, -12);
        Contour path = KerfOffset.of(Kind.LENGTH.of(OFFSET))
                .withCorners(KerfOffset.CornerStyle.EXTENDED)
                .apply(part, Side.RIGHT)
                .path()
                .contour();
        return SIMULATOR
                .withPoints(200)
                .predict(FeedProfile.constant(path, Kind.SPEED.of(FEED)).afterSteadyFeed(), part, Side.LEFT)
                .map();
    }

    private static Contour rotated(double angle, double... millimetres) {
        double c = Math.cos(angle) * 1e-3;
        double s = Math.sin(angle) * 1e-3;
        var builder = Contour.fromSi(c * millimetres[0] - s * millimetres[1], s * millimetres[0] + c * millimetres[1]);
        for (int i = 2; i < millimetres.length; i += 2) {
            builder.lineToSi(c * millimetres[i] - s * millimetres[i + 1], s * millimetres[i] + c * millimetres[i + 1]);
        }
        return builder.open();
    }
}
