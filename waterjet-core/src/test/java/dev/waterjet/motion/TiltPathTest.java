package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourPlace;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.reference.CornerCase;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The tilt that a path wants: where its pieces end, and what they hold at each end. */
class TiltPathTest {

    private static final double THICKNESS = 0.025;
    private static final KerfProfile PROFILE = CornerCase.profile(THICKNESS);
    private static final double STRAIGHT = PROFILE.front().separationFeedSi(3 * THICKNESS);
    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);

    private static final Contour PATH = Contour.fromSi(0, 0)
            .requirement(MEDIUM)
            .lineToSi(0.04, 0)
            .arcToSi(0.06, 0.02, 0.04, 0.02, Side.LEFT)
            .lineToSi(0.06, 0.05)
            .lineToSi(0.09, 0.05)
            .open();

    /** A motion whose feed changes at given places, and is linear over the time in between. */
    private static MotionCurve motion() {
        MotionCurve motion = new MotionCurve(8);
        double v2 = STRAIGHT * STRAIGHT;
        motion.add(1e-5, v2, (byte) 0);
        motion.add(0.02, v2, (byte) 0);
        motion.add(0.021, 0.3 * v2, (byte) 0);
        motion.add(0.05, 0.3 * v2, (byte) 0);
        motion.add(0.051, v2, (byte) 0);
        motion.add(PATH.lengthSi() - 1e-5, v2, (byte) 0);
        motion.add(PATH.lengthSi(), 0, (byte) 0);
        return motion;
    }

    private static WantedTilt wanted(TiltingHead head, Side part) {
        QualityFeeds feeds = QualityFeeds.same(Kind.SPEED.of(STRAIGHT));
        EdgePolicy[] policies = PATH.requirements().stream()
                .map(each -> new EdgePolicy(each, feeds, PROFILE, SlowdownSettings.upright(SlowdownRules.cautious())))
                .toArray(EdgePolicy[]::new);
        return new TiltPath(PATH, motion(), new TiltLaw(head, PROFILE, STRAIGHT), part, policies).wanted();
    }

    private static TiltingHead head(double inclination, double speed, double acceleration) {
        return TiltingHead.of(
                Kind.ANGLE.of(inclination), Kind.ANGULAR_SPEED.of(speed), Kind.ANGULAR_ACCELERATION.of(acceleration));
    }

    private static List<Double> places(WantedTilt wanted) {
        List<Double> places = new ArrayList<>();
        for (int i = 0; i <= wanted.pieces(); i++) {
            places.add(motion().placeAt(wanted.timeS(i)));
        }
        return places;
    }

    private static double[] changes() {
        double arc = 0.01 * Math.PI;
        return new double[] {
            0, 1e-5, 0.02, 0.021, 0.04, 0.05, 0.051, 0.04 + arc, 0.07 + arc, PATH.lengthSi() - 1e-5, PATH.lengthSi()
        };
    }

    /** Behind and before every change the first step is 0.05 mm, from there steps grow by 1.6; on arcs they turn by 2 degrees. */
    @Test
    void stepsAreSmallBesideEveryChange() {
        List<Double> places = places(wanted(head(0.3, 50, 50_000), Side.LEFT));
        double[] changes = changes();
        int at = 0;
        for (int c = 0; c + 1 < changes.length; c++) {
            double from = changes[c];
            double to = changes[c + 1];
            assertThat(places.get(at)).isCloseTo(from, within(1e-9));
            boolean isArc = from >= 0.04 - 1e-12 && to <= 0.04 + 0.01 * Math.PI + 1e-12;
            double most = isArc ? 0.02 * Math.toRadians(2) : Double.POSITIVE_INFINITY;
            List<Double> steps = new ArrayList<>();
            double step = Math.min(5e-5, most);
            for (double sum = 0; sum + step < (to - from) / 2; step = Math.min(1.6 * step, most)) {
                steps.add(step);
                sum += step;
            }
            int n = steps.size();
            for (int i = 0; i < n; i++) {
                assertThat(places.get(at + i + 1) - places.get(at + i)).isCloseTo(steps.get(i), within(1e-9));
                assertThat(places.get(at + 2 * n + 2 - i) - places.get(at + 2 * n + 1 - i))
                        .isCloseTo(steps.get(i), within(1e-9));
            }
            assertThat(places.get(at + n + 1)).isCloseTo((from + to) / 2, within(1e-9));
            at += 2 * n + 2;
        }
        assertThat(at).isEqualTo(places.size() - 1);
        assertThat(places.get(at)).isCloseTo(PATH.lengthSi(), within(1e-9));
    }

    /** Each end of a piece has the lead of the lag there and the side tilt of its feed, in the direction of its edge. */
    @ParameterizedTest
    @EnumSource
    void piecesHoldLeadAndSideTiltInTheDirectionOfTheirEdge(Side part) {
        for (TiltingHead head : new TiltingHead[] {
            head(0.3, 50, 50_000), head(0.01, 50, 50_000), head(0.3, 1e-3, 50_000), head(0.3, 50, 1e-5)
        }) {
            WantedTilt wanted = wanted(head, part);
            TiltLaw law = new TiltLaw(head, PROFILE, STRAIGHT);
            EdgeCursor edge = new EdgeCursor();
            MotionCurve motion = motion();
            for (int i = 0; i < wanted.pieces(); i++) {
                double from = motion.placeAt(wanted.timeS(i));
                double to = motion.placeAt(wanted.timeS(i + 1));
                double feed = (to - from) / (wanted.timeS(i + 1) - wanted.timeS(i));
                ContourPlace middle = PATH.placeAtSi((from + to) / 2);
                PATH.load(middle.edge(), edge);
                double slow = feed < 0.9 * STRAIGHT ? feed : STRAIGHT;
                boolean isShort = from < 0.0199 || from > 0.06;
                double side = law.side(isShort ? STRAIGHT : slow);
                for (boolean isEnd : new boolean[] {false, true}) {
                    double x = isEnd ? wanted.xAt(i + 1, true) : wanted.xAt(i, false);
                    double y = isEnd ? wanted.yAt(i + 1, true) : wanted.yAt(i, false);
                    double share = share(edge, middle, isEnd ? (to - from) / 2 : (from - to) / 2);
                    double tx = edge.directionXAt(share);
                    double ty = edge.directionYAt(share);
                    double ahead = x * tx + y * ty;
                    double across = (y * tx - x * ty) * part.sign();
                    double curvature = edge.isArc() ? 1 / edge.radius() : 0;
                    // the lead follows from the lag; the share that the limits keep is one of both
                    double lead = Math.abs(side) < 1e-12 ? ahead : ahead / across * side;
                    double kept = law.share(Math.hypot(side, lead), feed, curvature);
                    assertThat(across).isCloseTo(kept * side, within(1e-5));
                    assertThat(lead).isBetween(-1e-9, law.lead(PROFILE.front().exitLagSi(STRAIGHT)) * (1 + 1e-3));
                }
            }
        }
    }

    private static double share(EdgeCursor edge, ContourPlace middle, double off) {
        return Math.max(0, Math.min(1, middle.share() + off / edge.length()));
    }

    @Test
    void aSteadyFeedHasTheLeadOfItsLag() {
        TiltingHead head = head(0.3, 50, 50_000);
        WantedTilt wanted = wanted(head, Side.LEFT);
        MotionCurve motion = motion();
        for (double[] place : new double[][] {{0.019, STRAIGHT}, {0.035, Math.sqrt(0.3) * STRAIGHT}}) {
            double lag = PROFILE.front().exitLagSi(place[1]);
            assertThat(wanted.x(motion.timeAt(place[0])))
                    .isCloseTo(HeadTilt.MINIMAX_LEAD * lag / THICKNESS, within(2e-4));
        }
        assertThat(wanted.x(0)).isCloseTo(0, within(1e-9));
        assertThat(wanted.endS()).isCloseTo(motion.timeS(), within(1e-9));
    }
}
