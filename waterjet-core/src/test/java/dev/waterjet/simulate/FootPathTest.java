package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Side;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Places of the front beside the path of the nozzle, against geometry in closed form. */
class FootPathTest {

    private static final double H = 0.02;
    private static final KerfProfile PROFILE = DosePropertiesTest.profile(1.15);
    private static final CutFront FRONT = PROFILE.front();
    private static final double FEED = FRONT.separationFeedSi(2 * H);
    private static final double LAG = FRONT.exitLagSi(FEED);

    private static HeadPath steady(Contour path) {
        return HeadPath.of(FeedProfile.constant(path, Kind.SPEED.of(FEED)).afterSteadyFeed());
    }

    private static FootPath foot(HeadPath head, LagGeometry geometry) {
        FootPath foot = new FootPath(head, geometry);
        foot.at(FRONT, H);
        return foot;
    }

    private static Contour corner(double turn) {
        return Contour.fromSi(-30e-3, 0)
                .lineToSi(0, 0)
                .lineToSi(30e-3 * Math.cos(turn), 30e-3 * Math.sin(turn))
                .open();
    }

    /** Ends of segments by the distance of the nozzle along the path. */
    private interface Check {
        void at(double nozzle, double x, double y);
    }

    private static int ends(FootPath foot, HeadPath head, Check check) {
        FootSegments segments = foot.segments;
        for (int k = 0; k < segments.count; k++) {
            check.at(head.distance[segments.node[k]], segments.x[k], segments.y[k]);
        }
        return segments.count;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.4, 1})
    void lagsAreThoseOfTheFrontAtEachTime(double share) {
        HeadPath head = HeadPath.of(FeedProfile.perEdge(corner(1), QuantityArray.ofSi(Kind.SPEED, FEED, FEED / 3)));
        FootPath foot = new FootPath(head, LagGeometry.TANGENT);
        foot.at(FRONT, share * H);
        for (int i = 0; i < head.count; i += 5) {
            double expected = FRONT.lagAtSi(head.motion(), share * H, head.time[i]);
            assertThat(foot.lag[i]).isCloseTo(expected, within(1e-12 + 1e-9 * expected));
        }
        foot.at(FRONT, 0);
        assertThat(foot.lag).containsOnly(0);
    }

    /** At the top side there is no lag: the front is the nozzle. */
    @ParameterizedTest
    @EnumSource(LagGeometry.class)
    void atTheTopSideTheFrontIsAtTheNozzle(LagGeometry geometry) {
        HeadPath head = steady(corner(-2));
        FootPath foot = new FootPath(head, geometry);
        foot.at(FRONT, H);
        foot.at(FRONT, 0);
        FootSegments expected = head.segments();

        assertThat(foot.segments.count).isEqualTo(expected.count);
        for (int k = 0; k < expected.count; k++) {
            assertThat(foot.segments.x[k]).isEqualTo(expected.x[k]);
            assertThat(foot.segments.y[k]).isEqualTo(expected.y[k]);
            assertThat(foot.segments.length[k]).isEqualTo(expected.length[k]);
            assertThat(foot.segments.pace[k]).isEqualTo(expected.pace[k]);
        }
    }

    /** On a long arc: on the tangent sqrt(R^2 + L^2), on a string sqrt(R^2 - L^2), on the path R. */
    @ParameterizedTest
    @CsvSource({
        "TANGENT, LEFT",
        "TANGENT, RIGHT",
        "TRACTRIX, LEFT",
        "TRACTRIX, RIGHT",
        "FOLLOWING, LEFT",
        "FOLLOWING, RIGHT"
    })
    void onAnArcTheFrontIsOnACircleOfItsOwn(LagGeometry geometry, Side side) {
        double r = 3 * LAG;
        double sign = side.sign();
        Contour path = Contour.fromSi(r, 0)
                .arcToSi(r * Math.cos(5.5), sign * r * Math.sin(5.5), 0, 0, side)
                .open();
        HeadPath head = steady(path);
        double radius = switch (geometry) {
            case TANGENT -> Math.hypot(r, LAG);
            case TRACTRIX -> Math.sqrt(r * r - LAG * LAG);
            case FOLLOWING -> r;
        };
        double behind = switch (geometry) {
            case TANGENT -> Math.atan(LAG / r);
            case TRACTRIX -> Math.asin(LAG / r);
            case FOLLOWING -> LAG / r;
        };
        int[] found = new int[1];
        ends(foot(head, geometry), head, (nozzle, x, y) -> {
            if (nozzle > 4 * r) {
                double angle = sign * Math.atan2(y, x);
                double lost = Math.IEEEremainder(nozzle / r - angle - behind, 2 * Math.PI);
                // chords in place of the arc, and what is left of the start of a string
                assertThat(Math.hypot(x, y)).isCloseTo(radius, within(2e-6 + 1e-3 * LAG));
                assertThat(lost).isCloseTo(0, within(1e-3));
                found[0]++;
            }
        });
        assertThat(found[0]).isGreaterThan(50);
    }

    /** Past a corner the front is on the tangent of the nozzle at once, and the nozzle's own path is followed by the other. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, -1.2, 2, -2.9})
    void pastACornerTheTangentJumpsAndTheOtherFollows(double turn) {
        HeadPath head = steady(corner(turn));
        double cosine = Math.cos(turn);
        double sine = Math.sin(turn);
        int tangents = ends(foot(head, LagGeometry.TANGENT), head, (nozzle, x, y) -> {
            double past = nozzle - 30e-3;
            if (past > 1e-9) {
                assertThat(Math.hypot(x - (past - LAG) * cosine, y - (past - LAG) * sine))
                        .isLessThan(1e-10);
            } else if (past < -1e-9) {
                assertThat(Math.hypot(x - past + LAG, y)).isLessThan(1e-10);
            }
        });
        FootPath following = foot(head, LagGeometry.FOLLOWING);
        double[] length = new double[1];
        ends(following, head, (nozzle, x, y) -> {
            double at = nozzle - 30e-3 - LAG;
            double expectedX = at > 0 ? at * cosine : at;
            double expectedY = at > 0 ? at * sine : 0;
            // one chord cuts the corner
            assertThat(Math.hypot(x - expectedX, y - expectedY)).isLessThan(Math.abs(at) < 0.3e-3 ? 0.3e-3 : 1e-10);
        });
        for (int k = 0; k < following.segments.count; k++) {
            length[0] += following.segments.length[k];
        }
        // no way is cut between the ends of both legs: the front is on the other side at once
        assertThat(tangents).isEqualTo(2);
        assertThat(length[0]).isCloseTo(60e-3, within(0.5e-3));
    }

    /**
     * On a string behind a corner: the angle a between step and string goes with tan(a/2) = tan(turn/2) exp(-d/L). A turn of
     * more than 90 degrees leaves the string slack over d0 = -2 L cos(turn), from where it begins with 180 degrees less the turn.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.4, -0.9, 1.5, -1.8, 2.4})
    void pastACornerAStringIsATractrix(double turn) {
        HeadPath head = steady(corner(turn));
        double slack = Math.max(0, -2 * LAG * Math.cos(turn));
        double start = slack > 0 ? Math.signum(turn) * (Math.PI - Math.abs(turn)) : turn;
        int[] found = new int[1];
        ends(foot(head, LagGeometry.TRACTRIX), head, (nozzle, x, y) -> {
            double past = nozzle - 30e-3;
            if (past < 1e-9) {
                return;
            }
            double expectedX = -LAG;
            double expectedY = 0;
            if (past > slack) {
                double angle = 2 * Math.atan(Math.tan(start / 2) * Math.exp(-(past - slack) / LAG));
                expectedX = past * Math.cos(turn) - LAG * Math.cos(turn - angle);
                expectedY = past * Math.sin(turn) - LAG * Math.sin(turn - angle);
            }
            found[0]++;
            // a step that begins slack and ends taut is straight
            assertThat(Math.hypot(x - expectedX, y - expectedY)).isLessThan(slack > 0 ? 0.02 * LAG : 1e-9);
        });
        assertThat(found[0]).isGreaterThan(30);
    }

    /** A tilted jet is displaced by the depth times its tilt, and the front lags behind that jet. */
    @ParameterizedTest
    @EnumSource(LagGeometry.class)
    void aTiltDisplacesTheFront(LagGeometry geometry) {
        Contour line = Contour.fromSi(0, 0).lineToSi(24e-3, 18e-3).open();
        HeadPath head =
                HeadPath.of(FeedProfile.constant(line, Kind.SPEED.of(FEED)).afterSteadyFeed(), 0.03, 0.07);
        FootPath foot = foot(head, geometry);
        double ahead = 0.07 * H - LAG;

        // one straight segment in the direction (0.8, 0.6)
        assertThat(foot.segments.count).isEqualTo(1);
        assertThat(foot.segments.x[0]).isCloseTo(0.8 * ahead - 0.6 * 0.03 * H, within(1e-11));
        assertThat(foot.segments.y[0]).isCloseTo(0.6 * ahead + 0.8 * 0.03 * H, within(1e-11));
        assertThat(foot.segments.length[0]).isCloseTo(30e-3, within(1e-11));
        assertThat(foot.segments.ux[0]).isCloseTo(0.8, within(1e-11));
        foot.at(FRONT, 0);
        assertThat(Math.hypot(foot.segments.x[0], foot.segments.y[0])).isLessThan(1e-15);
    }

    /** The path near a place leaves the dose there that the whole path leaves. */
    @ParameterizedTest
    @CsvSource({"TANGENT, 1.2", "TANGENT, -2.6", "FOLLOWING, 1.2", "FOLLOWING, -2.6"})
    void thePathNearAPlaceLeavesTheSameDose(LagGeometry geometry, double turn) {
        HeadPath head = HeadPath.of(
                FeedProfile.constant(corner(turn), Kind.SPEED.of(FEED)).afterSteadyFeed(), 0.02, 0.05);
        FootPath whole = foot(head, geometry);
        FootPath part = foot(head.near(0, 0, 4e-3 + 3 * LAG), geometry);
        DoseField all = new DoseField(PROFILE, whole.segments);
        DoseField near = new DoseField(PROFILE, part.segments);
        all.at(H);
        near.at(H);

        assertThat(head.near(0, 0, 4e-3 + 3 * LAG).count).isLessThan(head.count);
        for (int i = 0; i < 100; i++) {
            double x = 1e-3 * Math.cos(i) * (i / 50.0);
            double y = 1e-3 * Math.sin(i) * (i / 50.0);
            all.evaluate(x, y);
            near.evaluate(x, y);
            assertThat(near.dose).isCloseTo(all.dose, within(1e-4 + 1e-6 * all.dose));
            assertThat(near.distanceM).isCloseTo(all.distanceM, within(1e-12));
        }
    }

    /** A path that comes near a place twice has no segment between its two parts. */
    @ParameterizedTest
    @EnumSource(LagGeometry.class)
    void whereThePathIsBrokenNothingIsCut(LagGeometry geometry) {
        Contour path = Contour.fromSi(-30e-3, 0)
                .lineToSi(30e-3, 0)
                .lineToSi(30e-3, 8e-3)
                .lineToSi(-30e-3, 8e-3)
                .open();
        HeadPath head = steady(path);
        FootPath part = foot(head.near(0, 4e-3, 12e-3), geometry);
        double longest = 0;
        int across = 0;
        for (int k = 0; k < part.segments.count; k++) {
            longest = Math.max(longest, part.segments.length[k]);
            across += Math.abs(part.segments.uy[k]) > 0.1 ? 1 : 0;
        }

        assertThat(across).isZero();
        assertThat(longest).isLessThan(24e-3);
        assertThat(part.segments.count).isBetween(2, 4);
    }

    @Test
    void aDwellOfTheNozzleLetsTheFrontCatchUp() {
        Contour line = Contour.fromSi(0, 0).lineToSi(24e-3, 18e-3).open();
        HeadPath head = HeadPath.of(FeedProfile.constant(line, Kind.SPEED.of(FEED))
                .afterSteadyFeed()
                .withEndDwell(Kind.TIME.of(2 * FRONT.travelTimeSi(FEED, H))));
        for (LagGeometry geometry : LagGeometry.values()) {
            FootPath foot = foot(head, geometry);
            int last = foot.segments.count - 1;
            double left = foot.lag[head.count - 1];
            assertThat(foot.segments.endX(last)).isCloseTo(24e-3 - 0.8 * left, within(1e-9));
            assertThat(foot.segments.endY(last)).isCloseTo(18e-3 - 0.6 * left, within(1e-9));
            assertThat(foot.lag[head.count - 2]).isCloseTo(LAG, within(1e-9));
            assertThat(left).isBetween(1e-9, 0.05 * LAG);
        }
    }

    /**
     * A string of any path at any feeds: it is never longer than the lag, and drags its end no farther than the jet moves and the
     * string shortens.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void aStringIsNeverLongerThanTheLagAndDragsNoFarther(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        ContourBuilder builder = Contour.fromSi(1, 2);
        double x = 1;
        double y = 2;
        double[] feeds = new double[40];
        for (int i = 0; i < feeds.length; i++) {
            double length = LAG * (0.1 + 1.5 * random.nextDouble());
            double angle = 7 * random.nextDouble();
            x += length * Math.cos(angle);
            y += length * Math.sin(angle);
            builder.lineToSi(x, y);
            feeds[i] = FEED * (0.02 + random.nextDouble());
        }
        HeadPath head = HeadPath.of(FeedProfile.perEdge(builder.open(), QuantityArray.ofSi(Kind.SPEED, feeds))
                .afterSteadyFeed());
        FootPath foot = foot(head, LagGeometry.TRACTRIX);
        int taut = 0;
        for (int k = 0; k < foot.segments.count; k++) {
            int from = foot.segments.node[k];
            double string = Math.hypot(head.x[from] - foot.segments.x[k], head.y[from] - foot.segments.y[k]);
            assertThat(string).isLessThan(foot.lag[from] + 1e-12);
            taut += string > foot.lag[from] - 1e-12 ? 1 : 0;
            int to = k + 1 < foot.segments.count ? foot.segments.node[k + 1] : head.count - 1;
            double moved = 0;
            for (int i = from; i < to; i++) {
                moved += Math.hypot(head.x[i + 1] - head.x[i], head.y[i + 1] - head.y[i])
                        + Math.max(0, foot.lag[i] - foot.lag[i + 1]);
            }
            assertThat(foot.segments.length[k]).isLessThan(moved + 1e-9);
        }
        assertThat(taut).isGreaterThan(foot.segments.count / 4);
    }
}
