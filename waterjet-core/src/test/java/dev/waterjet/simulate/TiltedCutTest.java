package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cuts with a tilting head, planned and judged by the predicted cut. */
class TiltedCutTest {

    private static final MachineLimits MACHINE = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5));
    private static final KerfModel KERF = KerfModel.standard();

    private static TiltingHead head(double degPerS, double degPerS2) {
        return TiltingHead.of(
                degrees(12),
                Kind.ANGULAR_SPEED.of(Math.toRadians(degPerS)),
                Kind.ANGULAR_ACCELERATION.of(Math.toRadians(degPerS2)));
    }

    private static CutConditions cut(double thicknessMm) {
        CuttingHead head = CuttingHead.of(
                Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(80)));
        return CutConditions.of(
                head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
                Workpiece.of(Materials.standard().get("mild-steel"), millimetres(thicknessMm)),
                MachinabilityFeed.published());
    }

    private static KerfProfile kerf(CutConditions cut) {
        return KerfProfile.of(KERF, CutFront.of(KERF.lagModel(), cut), cut.jet());
    }

    private static CutSimulator simulator(CutConditions cut) {
        return CutSimulator.of(cut, KERF, LagModel.standard());
    }

    /** Two legs with a turn, drawn beside a path of the same shape. */
    private static Contour legs(double legM, double turn, double toLeft, CutQuality quality) {
        double cosine = Math.cos(turn);
        double sine = Math.sin(turn);
        double shift = toLeft * Math.tan(turn / 2);
        return Contour.fromSi(-legM, toLeft)
                .requirement(EdgeRequirement.of(quality))
                .lineToSi(-shift, toLeft)
                .lineToSi(legM * cosine - toLeft * sine, legM * sine + toLeft * cosine)
                .open();
    }

    /** Largest gouge within a distance of the middle of a map, over all depths. */
    private static double gouge(DeviationMap map, double lengthM, double withinM) {
        double worst = 0;
        for (int i = 0; i < map.size(); i++) {
            if (Math.abs(map.distanceSi(i) - lengthM / 2) < withinM) {
                for (int depth = 0; depth < map.depths().size(); depth++) {
                    if (map.isSeparated(i, depth)) {
                        worst = Math.max(worst, -map.addedSi(i, depth));
                    }
                }
            }
        }
        return worst;
    }

    private static int missing(DeviationMap map, double lengthM, double withinM) {
        int missing = 0;
        for (int i = 0; i < map.size(); i++) {
            for (int depth = 0; depth < map.depths().size(); depth++) {
                boolean isNear = Math.abs(map.distanceSi(i) - lengthM / 2) < withinM;
                missing += isNear && !map.isSeparated(i, depth) ? 1 : 0;
            }
        }
        return missing;
    }

    @ParameterizedTest
    @CsvSource({
        "25, 90, MEDIUM, 60, 500", "25, -90, MEDIUM, 60, 500", "25, -90, MEDIUM, 10, 40", "25, 90, MEDIUM, 10, 40",
        "10, -90, MEDIUM, 60, 500", "10, 90, FINE, 60, 500", "10, -90, FINE, 20, 100", "50, -90, MEDIUM, 60, 500",
        "50, 90, FINE, 30, 200", "25, -45, FINE, 60, 500", "25, 45, FINE, 60, 500", "25, -135, MEDIUM, 60, 500",
        "25, -120, VERY_COARSE, 60, 500", "50, 120, VERY_COARSE, 20, 60", "10, -30, VERY_FINE, 60, 500",
                "15, -90, COARSE, 5, 10",
        "15, 90, COARSE, 5, 10"
    })
    void aPlannedCornerKeepsItsTolerance(
            double thicknessMm, double turnDeg, CutQuality quality, double speed, double acceleration) {
        CutConditions cut = cut(thicknessMm);
        double turn = Math.toRadians(turnDeg);
        double leg = 20e-3;
        FeedPlan plan = FeedPlanner.of(MACHINE, cut)
                .withTiltingHead(head(speed, acceleration))
                .plan(legs(leg, turn, 0, quality), Side.LEFT);
        FeedPlan upright = FeedPlanner.of(MACHINE, cut).plan(legs(leg, turn, 0, quality), Side.LEFT);
        Contour part = legs(leg, turn, kerf(cut).jetRadiusSi(0), quality);
        double tolerance = EdgeRequirement.of(quality).lagToleranceSi(thicknessMm * 1e-3);

        assertThat(plan.findings()).isEmpty();
        assertThat(plan.time().getValue().doubleValue())
                .isLessThan(upright.time().getValue().doubleValue());
        for (LagGeometry geometry : List.of(LagGeometry.TANGENT, LagGeometry.TRACTRIX)) {
            DeviationMap map = simulator(cut)
                    .withGeometry(geometry)
                    .predict(FeedProfile.of(plan), part, Side.LEFT)
                    .map();
            assertThat(gouge(map, part.lengthSi(), 8e-3)).isLessThan(tolerance + 0.04e-3);
            if (geometry == LagGeometry.TANGENT) {
                assertThat(missing(map, part.lengthSi(), 2.5e-3)).isZero();
            }
        }
    }

    /** A front on the path itself does not leave it at a bend, so there is nothing that a lead compensates. */
    @Test
    void aFrontThatFollowsThePathGetsNoLead() {
        CutConditions cut = cut(25);
        FeedPlan plan = FeedPlanner.of(MACHINE, cut)
                .withTiltingHead(head(60, 500))
                .withLagGeometry(LagGeometry.FOLLOWING)
                .plan(legs(20e-3, -Math.PI / 2, 0, CutQuality.MEDIUM), Side.LEFT);
        Contour part = legs(20e-3, -Math.PI / 2, kerf(cut).jetRadiusSi(0), CutQuality.MEDIUM);

        DeviationMap map = simulator(cut)
                .withGeometry(LagGeometry.FOLLOWING)
                .predict(FeedProfile.of(plan), part, Side.LEFT)
                .map();

        assertThat(Kind.ANGLE.si(plan.tilt().orElseThrow().lead(millimetres(15))))
                .isCloseTo(0, within(1e-9));
        assertThat(Kind.ANGLE.si(plan.tilt().orElseThrow().sideTilt(millimetres(15))))
                .isPositive();
        assertThat(gouge(map, part.lengthSi(), 8e-3)).isLessThan(0.2e-3);
    }

    /** Range of the deviation over the depth in the middle of a cut; at the top side, where the offset is exact, it is 0. */
    private static double range(DeviationMap map) {
        int middle = map.size() / 2;
        double least = 0;
        double most = 0;
        for (int depth = 0; depth < map.depths().size(); depth++) {
            least = Math.min(least, map.deviationSi(middle, depth));
            most = Math.max(most, map.deviationSi(middle, depth));
        }
        return most - least;
    }

    private static Contour arc(double radius, Side turn) {
        double sign = turn.sign();
        return Contour.fromSi(radius, 0)
                .arcToSi(radius * Math.cos(4), sign * radius * Math.sin(4), 0, 0, turn)
                .open();
    }

    /**
     * Walls of mild steel 25 mm at quality index 3 with a half-angle of 1 degree, range over the depth in micrometres, with
     * side tilt and lead of the formulas; derived: simulation of the stated formulas in Python. A radius of 0 stands for a line,
     * and a side on which the path turns towards the part for an outside arc.
     */
    @ParameterizedTest
    @CsvSource({
        "0, LEFT, 0, 0, 175", "0, LEFT, 1, 0, 66", "0, LEFT, 1, 1, 66", "10, RIGHT, 0, 0, 110", "10, RIGHT, 1, 0, 216",
        "10, RIGHT, 1, 1, 69", "10, LEFT, 0, 0, 405", "10, LEFT, 1, 0, 296", "10, LEFT, 1, 1, 65",
                "3, RIGHT, 0, 0, 504",
        "3, RIGHT, 1, 0, 614", "3, RIGHT, 1, 1, 84"
    })
    void theWallsOfArcsAreThoseOfTheReference(double radiusMm, Side turn, double side, double lead, double expectedUm) {
        CutConditions cut = cut(25);
        KerfModel narrow = KERF.withHalfAngle(degrees(1), 0, KERF.evidence());
        KerfProfile kerf = KerfProfile.of(narrow, CutFront.of(narrow.lagModel(), cut), cut.jet());
        double feed = cut.feedSi(3);
        double offset = kerf.jetRadiusSi(0);
        double toPart = (turn == Side.LEFT ? -1 : 1) * offset;
        Contour path = radiusMm == 0 ? Contour.fromSi(0, 0).lineToSi(0.06, 0).open() : arc(radiusMm * 1e-3, turn);
        Contour part = radiusMm == 0
                ? Contour.fromSi(0, offset).lineToSi(0.06, offset).open()
                : arc(radiusMm * 1e-3 + toPart, turn);

        DeviationMap map = CutSimulator.of(cut, narrow, LagModel.standard())
                .withDepths(11)
                .withTilt(
                        Kind.ANGLE.of(Math.atan(side * (offset - kerf.halfWidthSi(0.025, feed)) / 0.025)),
                        Kind.ANGLE.of(Math.atan(
                                lead * HeadTilt.MINIMAX_LEAD * kerf.front().exitLagSi(feed) / 0.025)))
                .predict(FeedProfile.constant(path, Kind.SPEED.of(feed)).afterSteadyFeed(), part, Side.LEFT)
                .map();

        assertThat(range(map) * 1e6).isCloseTo(expectedUm, within(0.02 * expectedUm + 4));
    }

    /** The wall is upright from entry to exit; what remains is the barrel between them. */
    @ParameterizedTest
    @CsvSource({"3, LEFT, 25", "12, RIGHT, -70", "50, LEFT, 130"})
    void aPlannedStraightCutHasNoTaper(double thicknessMm, Side part, double directionDeg) {
        CutConditions cut = cut(thicknessMm);
        double direction = Math.toRadians(directionDeg);
        double across = part.sign() * kerf(cut).jetRadiusSi(0);
        Contour path = line(direction, 0);
        FeedPlan plan =
                FeedPlanner.of(MACHINE, cut).withTiltingHead(head(60, 500)).plan(path, part);
        FeedPlan upright = FeedPlanner.of(MACHINE, cut).plan(path, part);

        DeviationMap tilted = simulator(cut)
                .predict(FeedProfile.of(plan), line(direction, across), part)
                .map();
        DeviationMap plain = simulator(cut)
                .predict(FeedProfile.of(upright), line(direction, across), part)
                .map();

        int middle = tilted.size() / 2;
        int bottom = tilted.depths().size() - 1;
        double taper = plain.deviationSi(middle, bottom) - plain.deviationSi(middle, 0);
        assertThat(tilted.deviationSi(middle, bottom)).isCloseTo(0, within(2e-6));
        assertThat(range(tilted)).isLessThan(0.75 * Math.abs(taper));
        assertThat(tilted.addedSi(middle, bottom)).isCloseTo(0, within(2e-6));
    }

    private static Contour line(double direction, double toLeft) {
        double c = Math.cos(direction);
        double s = Math.sin(direction);
        return Contour.fromSi(-toLeft * s, toLeft * c)
                .requirement(EdgeRequirement.of(CutQuality.MEDIUM))
                .lineToSi(0.08 * c - toLeft * s, 0.08 * s + toLeft * c)
                .open();
    }

    /** A given tilt along the path is the constant one of the simulator. */
    @Test
    void tiltsGivenByPlaceAreThoseOfTheSimulator() {
        CutConditions cut = cut(12);
        Contour path = line(0.3, 0);
        Contour part = line(0.3, kerf(cut).jetRadiusSi(0));
        FeedProfile profile =
                FeedProfile.constant(path, Kind.SPEED.of(cut.feedSi(3))).afterSteadyFeed();
        HeadTilt tilt = HeadTilt.along(degrees(2), degrees(3), Math.cos(0.3), Math.sin(0.3), Side.LEFT);
        FeedProfile tilted = profile.withTilts(QuantityArray.ofSi(Kind.LENGTH, 0, 0.02), List.of(tilt, tilt));

        DeviationMap given = simulator(cut).predict(tilted, part, Side.LEFT).map();
        DeviationMap constant = simulator(cut)
                .withTilt(degrees(2), degrees(3))
                .predict(profile, part, Side.LEFT)
                .map();

        for (int i = 0; i < given.size(); i += 7) {
            assertThat(given.deviationSi(i, 8)).isCloseTo(constant.deviationSi(i, 8), within(1e-9));
        }
        assertThat(tilted.tiltAt(millimetres(40))).contains(tilt);
        assertThat(profile.tiltAt(millimetres(40))).isEmpty();
        assertThat(tilted).isNotEqualTo(profile);
        assertThat(Refusals.of(() -> profile.withTilts(QuantityArray.ofSi(Kind.LENGTH, 0, 0), List.of(tilt, tilt))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> profile.withTilts(QuantityArray.ofSi(Kind.LENGTH, 0), List.of(tilt, tilt))))
                .isEqualTo("must-be-at-most");
    }

    @Test
    void aLeaningJetHasACaution() {
        CutConditions cut = cut(12);
        Contour path = line(0, 0);
        FeedPlan plan =
                FeedPlanner.of(MACHINE, cut).withTiltingHead(head(60, 500)).plan(path, Side.LEFT);

        PredictedCut predicted =
                simulator(cut).predict(FeedProfile.of(plan), line(0, kerf(cut).jetRadiusSi(0)), Side.LEFT);

        assertThat(plan.cautions()).extracting(Caution::code).contains("leaning-front-unknown");
        assertThat(predicted.cautions()).extracting(Caution::code).contains("leaning-front-unknown");
    }
}
