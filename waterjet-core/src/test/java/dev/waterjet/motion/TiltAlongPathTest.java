package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourPlace;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.reference.CornerCase;
import java.util.List;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Tilts in the frame of the path, their extremes, and the tilt wanted where feed and edge change. */
class TiltAlongPathTest {

    private static final double THICKNESS = 0.025;
    private static final KerfProfile PROFILE = CornerCase.profile(THICKNESS);
    private static final double STRAIGHT = PROFILE.front().separationFeedSi(3 * THICKNESS);
    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);
    private static final TiltingHead QUICK =
            TiltingHead.of(Kind.ANGLE.of(0.2), Kind.ANGULAR_SPEED.of(50), Kind.ANGULAR_ACCELERATION.of(50_000));

    private static Contour path(double turn) {
        return Contour.fromSi(0, 0)
                .requirement(MEDIUM)
                .lineToSi(0.04, 0)
                .arcToSi(0.06, 0.02, 0.04, 0.02, Side.LEFT)
                .lineToSi(0.06, 0.05)
                .arcToSi(0.07, 0.06, 0.07, 0.05, Side.RIGHT)
                .lineToSi(0.07 + 0.04 * Math.cos(turn), 0.06 + 0.04 * Math.sin(turn))
                .open();
    }

    private static TiltProfile tilt(Contour path, Side part, TiltingHead head) {
        QualityFeeds feeds = QualityFeeds.same(Kind.SPEED.of(STRAIGHT));
        TiltLaw law = new TiltLaw(head, PROFILE, STRAIGHT);
        return TiltProfile.of(path, motion(path), part, law, policies(path, feeds));
    }

    private static EdgePolicy[] policies(Contour path, QualityFeeds feeds) {
        return path.requirements().stream()
                .map(each -> new EdgePolicy(each, feeds, PROFILE, SlowdownSettings.upright(SlowdownRules.cautious())))
                .toArray(EdgePolicy[]::new);
    }

    /** One feed over the whole path, but for the ends. */
    private static MotionCurve motion(Contour path) {
        MotionCurve motion = new MotionCurve(8);
        double length = path.lengthSi();
        motion.add(1e-6, STRAIGHT * STRAIGHT, (byte) 0);
        motion.add(length - 1e-6, STRAIGHT * STRAIGHT, (byte) 0);
        motion.add(length, 0, (byte) 0);
        return motion;
    }

    @ParameterizedTest
    @EnumSource
    void sideTiltAndLeadAreTheComponentsAcrossAndAlong(Side part) {
        Contour path = path(0.8);
        TiltProfile tilt = tilt(path, part, QUICK);
        EdgeCursor edge = new EdgeCursor();
        for (double at = 0.0005; at < path.lengthSi(); at += 0.0013) {
            ContourPlace place = path.placeAtSi(at);
            path.load(place.edge(), edge);
            double tx = edge.directionXAt(place.share());
            double ty = edge.directionYAt(place.share());
            double x = tilt.displacementXSi(at);
            double y = tilt.displacementYSi(at);
            HeadTilt here = tilt.at(Kind.LENGTH.of(at));
            assertThat(here.displacementX()).isCloseTo(x, within(1e-15));
            assertThat(here.displacementY()).isCloseTo(y, within(1e-15));
            assertThat(Kind.ANGLE.si(tilt.lead(Kind.LENGTH.of(at))))
                    .isCloseTo(Math.atan(x * tx + y * ty), within(1e-9));
            assertThat(Kind.ANGLE.si(tilt.sideTilt(Kind.LENGTH.of(at))))
                    .isCloseTo(Math.atan((y * tx - x * ty) * part.sign()), within(1e-9));
        }
    }

    /** Away from changes the lead is a L/h and the side tilt that of the wall, in lines and on arcs alike. */
    @ParameterizedTest
    @EnumSource
    void onEachEdgeTheTiltIsThatOfItsFeed(Side part) {
        Contour path = path(0.8);
        TiltProfile tilt = tilt(path, part, QUICK);
        double side = Math.atan((PROFILE.jetRadiusSi(0) - PROFILE.halfWidthSi(THICKNESS, STRAIGHT)) / THICKNESS);
        double lead = Math.atan(HeadTilt.MINIMAX_LEAD * PROFILE.front().exitLagSi(STRAIGHT) / THICKNESS);
        double arc = 0.02 * Math.PI / 2;
        for (double at : new double[] {0.03, 0.04 + arc / 2, 0.04 + arc + 0.015, 0.075 + arc, 0.11 + arc}) {
            assertThat(Kind.ANGLE.si(tilt.sideTilt(Kind.LENGTH.of(at)))).isCloseTo(side, within(1e-5));
            assertThat(Kind.ANGLE.si(tilt.lead(Kind.LENGTH.of(at)))).isCloseTo(lead, within(1e-5));
        }
        assertThat(Kind.ANGLE.si(tilt.maximumInclination()))
                .isCloseTo(Math.atan(Math.hypot(Math.tan(side), Math.tan(lead))), within(1e-5));
        assertThat(Kind.ANGLE.si(tilt.sideTilt(Kind.LENGTH.of(0)))).isCloseTo(side, within(1e-3));
    }

    /** Where the front starts at rest, there is no lag to compensate yet. */
    @Test
    void theLeadGrowsWithTheLagOfTheFront() {
        TiltProfile tilt = tilt(path(0), Side.LEFT, QUICK.withTaperCompensation(false));
        double before = 0;
        for (double at = 1e-4; at < 0.03; at += 1e-3) {
            double lead = Kind.ANGLE.si(tilt.lead(Kind.LENGTH.of(at)));
            double lag = Math.tan(lead) * THICKNESS / HeadTilt.MINIMAX_LEAD;
            assertThat(lead).isGreaterThanOrEqualTo(before - 1e-9);
            assertThat(lag).isLessThanOrEqualTo(Math.min(at, PROFILE.front().exitLagSi(STRAIGHT)) + 2e-5);
            before = lead;
        }
        assertThat(Math.tan(before) * THICKNESS / HeadTilt.MINIMAX_LEAD)
                .isCloseTo(PROFILE.front().exitLagSi(STRAIGHT), within(1e-5));
    }

    /** Slow zones of 2 mm or more have the side tilt of their feed, shorter ones that of the edge. */
    @ParameterizedTest
    @CsvSource({"0.0019, false, 0.5", "0.0021, true, 0.5", "0.01, true, 0.89", "0.01, false, 0.91"})
    void aLongSlowZoneHasTheSideTiltOfItsFeed(double zone, boolean isOwn, double share) {
        Contour path = Contour.fromSi(0, 0).requirement(MEDIUM).lineToSi(0.1, 0).open();
        double slow = share * STRAIGHT;
        MotionCurve motion = new MotionCurve(8);
        motion.add(1e-6, STRAIGHT * STRAIGHT, (byte) 0);
        motion.add(0.05, STRAIGHT * STRAIGHT, (byte) 0);
        motion.add(0.05 + 1e-8, slow * slow, (byte) 0);
        motion.add(0.05 + zone, slow * slow, (byte) 0);
        motion.add(0.05 + zone + 1e-8, STRAIGHT * STRAIGHT, (byte) 0);
        motion.add(0.1 - 1e-6, STRAIGHT * STRAIGHT, (byte) 0);
        motion.add(0.1, 0, (byte) 0);
        TiltingHead head = QUICK.withLead(0);
        TiltProfile tilt = TiltProfile.of(
                path,
                motion,
                Side.LEFT,
                new TiltLaw(head, PROFILE, STRAIGHT),
                policies(path, QualityFeeds.same(Kind.SPEED.of(STRAIGHT))));

        double feed = isOwn ? slow : STRAIGHT;
        double side = Math.atan((PROFILE.jetRadiusSi(0) - PROFILE.halfWidthSi(THICKNESS, feed)) / THICKNESS);
        assertThat(Kind.ANGLE.si(tilt.sideTilt(Kind.LENGTH.of(0.05 + zone / 2))))
                .isCloseTo(side, within(1e-6));
    }

    /** A lead takes the tilt of the edge behind it, one at the end that of the edge before it. */
    @Test
    void leadsHaveTheSideTiltOfTheNearestEdge() {
        EdgeRequirement lead = MEDIUM.asLead();
        Contour path = Contour.fromSi(0, 0)
                .requirement(lead)
                .lineToSi(0.02, 0)
                .lineToSi(0.04, 0)
                .requirement(MEDIUM)
                .lineToSi(0.08, 0)
                .requirement(lead)
                .lineToSi(0.12, 0)
                .open();
        double medium = 0.6 * STRAIGHT;
        QualityFeeds feeds = QualityFeeds.same(Kind.SPEED.of(STRAIGHT)).with(CutQuality.MEDIUM, Kind.SPEED.of(medium));
        TiltProfile tilt = TiltProfile.of(
                path,
                motion(path),
                Side.LEFT,
                new TiltLaw(QUICK.withLead(0), PROFILE, STRAIGHT),
                policies(path, feeds));
        double side = Math.atan((PROFILE.jetRadiusSi(0) - PROFILE.halfWidthSi(THICKNESS, medium)) / THICKNESS);

        for (double at : new double[] {0.01, 0.03, 0.06, 0.1}) {
            assertThat(Kind.ANGLE.si(tilt.sideTilt(Kind.LENGTH.of(at)))).isCloseTo(side, within(1e-6));
        }
    }

    @Test
    void extremesAreThoseOfManySamples() {
        TiltProfile tilt = tilt(
                path(0.8),
                Side.LEFT,
                TiltingHead.of(Kind.ANGLE.of(0.05), Kind.ANGULAR_SPEED.of(0.02), Kind.ANGULAR_ACCELERATION.of(0.01)));
        double length = path(0.8).lengthSi();
        double end = motion(path(0.8)).timeS();
        double largest = 0;
        double fastest = 0;
        double sharpest = 0;
        double dt = 0.01;
        for (double t = dt; t < end - dt; t += 0.05) {
            double[] x = new double[3];
            double[] y = new double[3];
            for (int i = 0; i < 3; i++) {
                HeadTilt now = tilt.atTime(Kind.TIME.of(t + (i - 1) * dt));
                x[i] = now.displacementX();
                y[i] = now.displacementY();
            }
            largest = Math.max(largest, Math.hypot(x[1], y[1]));
            fastest = Math.max(fastest, Math.hypot(x[2] - x[0], y[2] - y[0]) / (2 * dt));
            sharpest = Math.max(sharpest, Math.hypot(x[2] - 2 * x[1] + x[0], y[2] - 2 * y[1] + y[0]) / (dt * dt));
        }
        assertThat(Math.tan(Kind.ANGLE.si(tilt.maximumInclination()))).isCloseTo(largest, within(0.01 * largest));
        assertThat(Kind.ANGULAR_SPEED.si(tilt.peakSpeed())).isCloseTo(fastest, within(0.01 * fastest));
        assertThat(Kind.ANGULAR_ACCELERATION.si(tilt.peakAcceleration())).isCloseTo(sharpest, within(0.02 * sharpest));
        assertThat(tilt.describe())
                .containsEntry(Kind.LENGTH.column("length"), length)
                .containsEntry(Kind.TIME.column("blend_time"), Kind.TIME.si(tilt.blendTime()))
                .containsEntry(Kind.ANGULAR_SPEED.column("peak_speed"), Kind.ANGULAR_SPEED.si(tilt.peakSpeed()));
        assertThat(tilt.toString()).contains("tilt up to");
    }

    /** Places are as few as a tolerance allows: a looser one has fewer, and none of them can be left out with its neighbour. */
    @Test
    void aLooserToleranceNeedsFewerPlaces() {
        TiltProfile tilt = tilt(path(0.8), Side.LEFT, QUICK);
        int before = Integer.MAX_VALUE;
        for (double within : new double[] {1e-5, 1e-4, 1e-3, 1e-2}) {
            QuantityArray<Length> places = tilt.places(Kind.ANGLE.of(within));
            assertThat(places.size()).isLessThan(before);
            assertThat(places.si(0)).isZero();
            assertThat(places.si(places.size() - 1)).isEqualTo(motion(path(0.8)).lengthM());
            int longer = 0;
            for (int i = 0; i + 2 < places.size(); i++) {
                longer += deviation(tilt, places.si(i), places.si(i + 2)) > 0.3 * within ? 1 : 0;
            }
            assertThat((double) longer).isGreaterThan(0.6 * (places.size() - 2) - 2);
            before = places.size();
        }
    }

    private static double deviation(TiltProfile tilt, double from, double to) {
        double worst = 0;
        for (double share : List.of(0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9)) {
            double at = from + share * (to - from);
            double x = tilt.displacementXSi(from) * (1 - share) + tilt.displacementXSi(to) * share;
            double y = tilt.displacementYSi(from) * (1 - share) + tilt.displacementYSi(to) * share;
            worst = Math.max(worst, Math.hypot(tilt.displacementXSi(at) - x, tilt.displacementYSi(at) - y));
        }
        return worst;
    }
}
