package dev.waterjet.motion;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
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
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TiltProfileTest {

    private static final MachineLimits MACHINE = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5));
    private static final TiltingHead HEAD = head(10, 60, 500);

    private static TiltingHead head(double limitDeg, double degPerS, double degPerS2) {
        return TiltingHead.of(
                degrees(limitDeg),
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

    private static FeedPlanner planner(double thicknessMm, TiltingHead head) {
        return FeedPlanner.of(MACHINE, cut(thicknessMm)).withTiltingHead(head);
    }

    private static TiltProfile tilt(Contour path, Side part, double thicknessMm, TiltingHead head) {
        return planner(thicknessMm, head).plan(path, part).tilt().orElseThrow();
    }

    /** Bracket with outside corners, an inside corner, a small and a large arc, drawn with a turn, a shift and a size. */
    private static Contour bracket(double turnDeg, double size, boolean isMirrored) {
        double[][] places = {{0, 0}, {40, 0}, {40, 20}, {25, 20}, {20, 25}, {20, 40}, {0, 40}};
        double turn = Math.toRadians(turnDeg);
        double flip = isMirrored ? -1 : 1;
        ContourBuilder builder = Contour.fromSi(0.02, 0.03);
        for (int i = 1; i <= places.length; i++) {
            double[] at = turned(places[i % places.length], turn, size, flip);
            double[] centre = turned(new double[] {25, 25}, turn, size, flip);
            if (i == 4) {
                builder.arcToSi(at[0], at[1], centre[0], centre[1], isMirrored ? Side.LEFT : Side.RIGHT);
            } else {
                builder.lineToSi(at[0], at[1]);
            }
        }
        return builder.open();
    }

    private static double[] turned(double[] mm, double turn, double size, double flip) {
        double x = mm[0] * size * 1e-3;
        double y = mm[1] * size * 1e-3 * flip;
        return new double[] {
            0.02 + x * Math.cos(turn) - y * Math.sin(turn), 0.03 + x * Math.sin(turn) + y * Math.cos(turn)
        };
    }

    private static double[] at(TiltProfile tilt, double seconds) {
        HeadTilt now = tilt.atTime(Kind.TIME.of(seconds));
        return new double[] {now.displacementX(), now.displacementY()};
    }

    @ParameterizedTest
    @CsvSource({"10, 60, 500, 25", "10, 15, 40, 25", "2, 60, 500, 10", "10, 300, 20, 6", "10, 1, 1, 50", "8, 90, 900, 1"
    })
    void finiteDifferencesAlongTimeKeepTheLimits(double limit, double speed, double acceleration, double thickness) {
        FeedPlan plan = planner(thickness, head(limit, speed, acceleration)).plan(bracket(17, 1, false), Side.LEFT);
        TiltProfile tilt = plan.tilt().orElseThrow();
        double end = Kind.TIME.si(plan.time());
        double step = Math.max(end / 200_000, Kind.TIME.si(tilt.blendTime()) / 60);

        double fastest = 0;
        double sharpest = 0;
        for (double t = step; t + step < end; t += step) {
            double[] before = at(tilt, t - step);
            double[] now = at(tilt, t);
            double[] after = at(tilt, t + step);
            fastest = Math.max(fastest, Math.hypot(after[0] - now[0], after[1] - now[1]) / step);
            sharpest = Math.max(
                    sharpest,
                    Math.hypot(after[0] - 2 * now[0] + before[0], after[1] - 2 * now[1] + before[1]) / (step * step));
            assertThat(Math.hypot(now[0], now[1])).isLessThanOrEqualTo(Math.tan(Math.toRadians(limit)) * (1 + 1e-9));
        }
        assertThat(fastest).isLessThanOrEqualTo(Math.toRadians(speed) * (1 + 1e-6));
        assertThat(sharpest).isLessThanOrEqualTo(Math.toRadians(acceleration) * (1 + 1e-6));
        assertThat(Kind.ANGULAR_SPEED.si(tilt.peakSpeed()))
                .isBetween(fastest * 0.999, Math.toRadians(speed) * 1.000001);
        assertThat(Kind.ANGULAR_ACCELERATION.si(tilt.peakAcceleration()))
                .isBetween(sharpest * 0.99, Math.toRadians(acceleration) * 1.000001);
        assertThat(fastest).isPositive();
    }

    /** Without a corner the tilt is the one of the formulas: (y(0) - y(h))/h to the side and 0.828 L/h ahead. */
    @ParameterizedTest
    @CsvSource({"LEFT, 6", "RIGHT, 25", "LEFT, 50"})
    void onALongLineTheTiltIsThatOfTheFormulas(Side part, double thicknessMm) {
        CutConditions cut = cut(thicknessMm);
        KerfProfile kerf = KerfProfile.of(KerfModel.standard(), CutFront.of(LagModel.standard(), cut), cut.jet());
        double feed = cut.feedSi(3);
        double h = thicknessMm * 1e-3;
        Contour line = Contour.from(Point.millimetres(0, 0))
                .requirement(EdgeRequirement.of(CutQuality.MEDIUM))
                .lineTo(Point.millimetres(60, 80))
                .open();

        TiltProfile tilt = tilt(line, part, thicknessMm, HEAD);

        double side = Math.atan((kerf.jetRadiusSi(0) - kerf.halfWidthSi(h, feed)) / h);
        double lead = Math.atan((2 * Math.sqrt(2) - 2) * kerf.front().exitLagSi(feed) / h);
        assertThat(Kind.ANGLE.si(tilt.sideTilt(millimetres(50)))).isCloseTo(side, within(1e-9));
        assertThat(Kind.ANGLE.si(tilt.lead(millimetres(50)))).isCloseTo(lead, within(1e-6));
        HeadTilt direction = tilt.at(millimetres(50));
        assertThat(tilt.at(millimetres(51)).displacementY()).isCloseTo(direction.displacementY(), within(1e-9));
        assertThat(direction.displacementX())
                .isCloseTo(Math.tan(lead) * 0.6 - part.sign() * Math.tan(side) * 0.8, within(1e-6));
    }

    /** The limits of the axes turn with a right angle alone: else the motion near corners is a little different. */
    @ParameterizedTest
    @CsvSource({"90, 1e-9", "180, 1e-9", "30, 2e-5"})
    void theTiltTurnsWithThePath(double turnDeg, double tolerance) {
        TiltProfile plain = tilt(bracket(0, 1, false), Side.LEFT, 25, HEAD);
        TiltProfile turned = tilt(bracket(turnDeg, 1, false), Side.LEFT, 25, HEAD);

        double c = Math.cos(Math.toRadians(turnDeg));
        double s = Math.sin(Math.toRadians(turnDeg));
        for (double mm = 0.5; mm < 157; mm += 0.37) {
            HeadTilt before = plain.at(millimetres(mm));
            HeadTilt after = turned.at(millimetres(mm));
            assertThat(after.displacementX())
                    .isCloseTo(c * before.displacementX() - s * before.displacementY(), within(tolerance));
            assertThat(after.displacementY())
                    .isCloseTo(s * before.displacementX() + c * before.displacementY(), within(tolerance));
        }
    }

    @Test
    void aMirroredPathHasTheMirroredTilt() {
        TiltProfile plain = tilt(bracket(0, 1, false), Side.LEFT, 25, HEAD);
        TiltProfile mirrored = tilt(bracket(0, 1, true), Side.RIGHT, 25, HEAD);

        for (double mm = 0.5; mm < 157; mm += 0.37) {
            HeadTilt before = plain.at(millimetres(mm));
            HeadTilt after = mirrored.at(millimetres(mm));
            assertThat(after.displacementX()).isCloseTo(before.displacementX(), within(1e-9));
            assertThat(after.displacementY()).isCloseTo(-before.displacementY(), within(1e-9));
            assertThat(Kind.ANGLE.si(mirrored.sideTilt(millimetres(mm))))
                    .isCloseTo(Kind.ANGLE.si(plain.sideTilt(millimetres(mm))), within(1e-9));
        }
    }

    @Test
    void farFromCornersASizeChangesNothing() {
        Contour large = bracket(0, 4, false);
        Contour plain = bracket(0, 1, false);

        HeadTilt first = tilt(plain, Side.LEFT, 25, HEAD).at(millimetres(20));
        HeadTilt scaled = tilt(large, Side.LEFT, 25, HEAD).at(millimetres(80));

        assertThat(scaled.displacementX()).isCloseTo(first.displacementX(), within(1e-6));
        assertThat(scaled.displacementY()).isCloseTo(first.displacementY(), within(1e-6));
    }

    /** With one change of direction between long lines the blend is the shortest: D/omega + omega/alpha. */
    @ParameterizedTest
    @ValueSource(doubles = {-120, -90, -30, 30, 90, 150})
    void aSingleCornerIsBlendedInTheShortestTime(double turnDeg) {
        double turn = Math.toRadians(turnDeg);
        Contour path = Contour.fromSi(0, 0)
                .lineToSi(0.05, 0)
                .lineToSi(0.05 + 0.05 * Math.cos(turn), 0.05 * Math.sin(turn))
                .open();
        TiltProfile tilt = tilt(path, Side.LEFT, 25, HEAD.withTaperCompensation(false));

        HeadTilt before = tilt.at(millimetres(30));
        HeadTilt after = tilt.at(millimetres(70));
        double jump = Math.hypot(
                after.displacementX() - before.displacementX(), after.displacementY() - before.displacementY());
        double speed = Math.toRadians(60);
        double acceleration = Math.toRadians(500);
        double shortest = jump >= speed * speed / acceleration
                ? jump / speed + speed / acceleration
                : 2 * Math.sqrt(jump / acceleration);

        // corners are slowed, and the lead follows the smaller lag there: the jump is no larger than that of the lines
        assertThat(Kind.TIME.si(tilt.blendTime())).isBetween(0.3 * shortest, shortest * 1.3);
        double middle = Math.atan2(
                after.displacementY() + before.displacementY(), after.displacementX() + before.displacementX());
        HeadTilt corner = tilt.at(millimetres(50));
        assertThat(Math.atan2(corner.displacementY(), corner.displacementX())).isCloseTo(middle, within(0.02));
    }

    @Test
    void withoutARangeOrASpeedTheHeadStaysUpright() {
        for (TiltingHead still : List.of(
                head(0, 60, 500),
                head(10, 0, 500),
                head(10, 60, 0),
                HEAD.withTaperCompensation(false).withLead(0))) {
            FeedPlan plan = planner(25, still).plan(bracket(0, 1, false), Side.LEFT);

            assertThat(still.isTilting()).isFalse();
            assertThat(plan.tilt()).isEmpty();
            assertThat(plan.time())
                    .isEqualTo(FeedPlanner.of(MACHINE, cut(25))
                            .plan(bracket(0, 1, false), Side.LEFT)
                            .time());
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {12, 25, 50})
    void aCompensatedLagLetsCornersRunFaster(double thicknessMm) {
        double upright = Kind.TIME.si(FeedPlanner.of(MACHINE, cut(thicknessMm))
                .plan(bracket(0, 1, false), Side.LEFT)
                .time());
        double leading = Kind.TIME.si(
                planner(thicknessMm, HEAD).plan(bracket(0, 1, false), Side.LEFT).time());
        double slowHead = Kind.TIME.si(planner(thicknessMm, head(10, 3, 10))
                .plan(bracket(0, 1, false), Side.LEFT)
                .time());

        assertThat(leading).isLessThan(upright);
        assertThat(slowHead).isBetween(leading, upright * (1 + 1e-9));
    }

    @Test
    void betweenItsPlacesTheTiltIsLinear() {
        TiltProfile tilt = tilt(bracket(40, 1, false), Side.LEFT, 25, HEAD);
        double within = 1e-4;

        QuantityArray<Length> places = tilt.places(Kind.ANGLE.of(within));

        double worst = 0;
        for (int i = 0; i + 1 < places.size(); i++) {
            double from = places.si(i);
            double to = places.si(i + 1);
            for (double share : new double[] {0.1, 0.37, 0.5, 0.8}) {
                double at = from + share * (to - from);
                double x = tilt.displacementXSi(from) * (1 - share) + tilt.displacementXSi(to) * share;
                double y = tilt.displacementYSi(from) * (1 - share) + tilt.displacementYSi(to) * share;
                worst = Math.max(worst, Math.hypot(tilt.displacementXSi(at) - x, tilt.displacementYSi(at) - y));
            }
        }
        assertThat(worst).isLessThan(1.2 * within);
        assertThat(places.size()).isBetween(30, 600);
    }

    /** A closed circle with an arc of every direction: the tilt turns with the tangent. */
    @ParameterizedTest
    @CsvSource({"LEFT, 10", "RIGHT, 10", "LEFT, 3"})
    void onACircleTheTiltTurnsWithTheTangent(Side part, double radiusMm) {
        Contour circle =
                Contour.circle(Point.millimetres(5, 7), millimetres(radiusMm), EdgeRequirement.of(CutQuality.MEDIUM));
        FeedPlan plan = planner(10, HEAD).plan(circle, part);
        TiltProfile tilt = plan.tilt().orElseThrow();
        double length = plan.contour().lengthSi();

        HeadTilt third = tilt.at(Kind.LENGTH.of(length / 3));
        HeadTilt half = tilt.at(Kind.LENGTH.of(length / 2));
        double turn = Math.atan2(half.displacementY(), half.displacementX())
                - Math.atan2(third.displacementY(), third.displacementX());

        assertThat(Math.IEEEremainder(turn, 2 * Math.PI)).isCloseTo(turn(plan) * Math.PI / 3, within(1e-3));
    }

    private static double turn(FeedPlan plan) {
        EdgeCursor edge = new EdgeCursor();
        plan.contour().load(0, edge);
        return Math.signum(edge.sweep());
    }

    @Test
    void chordsOfACircleTiltAsTheCircle() {
        double radius = 15e-3;
        ContourBuilder chords = Contour.fromSi(radius, 0);
        for (int i = 1; i < 720; i++) {
            chords.lineToSi(radius * Math.cos(Math.PI * i / 360), radius * Math.sin(Math.PI * i / 360));
        }
        TiltProfile drawn = planner(25, HEAD)
                .planAsDrawn(chords.asCurve(true).close(), Side.LEFT)
                .tilt()
                .orElseThrow();
        TiltProfile smooth = tilt(
                Contour.fromSi(radius, 0)
                        .arcToSi(radius * Math.cos(6.2), radius * Math.sin(6.2), 0, 0, Side.LEFT)
                        .open(),
                Side.LEFT,
                25,
                HEAD);

        HeadTilt first = drawn.at(millimetres(40));
        HeadTilt second = smooth.at(millimetres(40));
        assertThat(Kind.ANGLE.si(first.inclination())).isCloseTo(Kind.ANGLE.si(second.inclination()), within(2e-4));
        assertThat(Kind.ANGULAR_SPEED.si(drawn.peakSpeed())).isLessThanOrEqualTo(Math.toRadians(60) * 1.000001);
        assertThat(Kind.ANGULAR_ACCELERATION.si(drawn.peakAcceleration()))
                .isLessThanOrEqualTo(Math.toRadians(500) * 1.000001);
    }

    @Test
    void placesBeyondThePathAreRefused() {
        TiltProfile tilt = tilt(bracket(0, 1, false), Side.LEFT, 25, HEAD);

        assertThat(List.of(
                        dev.waterjet.Refusals.of(() -> tilt.at(millimetres(500))),
                        dev.waterjet.Refusals.of(() -> tilt.atTime(Kind.TIME.of(-1))),
                        dev.waterjet.Refusals.of(() -> tilt.places(degrees(0))),
                        dev.waterjet.Refusals.of(() -> head(46, 1, 1)),
                        dev.waterjet.Refusals.of(() -> head(5, -1, 1)),
                        dev.waterjet.Refusals.of(() -> HEAD.withLead(1.5))))
                .containsExactly(
                        "must-be-at-most",
                        "must-be-at-least",
                        "must-be-above",
                        "must-be-at-most",
                        "must-be-at-least",
                        "must-be-at-most");
        assertThat(Units.symbol(Units.DEGREE_PER_SECOND)).isEqualTo("°/s");
    }
}
