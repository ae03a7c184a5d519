package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.reference.CornerCase;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Corners cut at the feeds of the slowdown policy, judged by the predicted cut. The rows come from another implementation of
 * the same formulas. Its points are farther apart, but come as near to a corner as 1 µm; those here stop 0.025 mm before it.
 */
class CornerJudgementTest {

    private static final double[] DEPTHS = {0.02, 0.51, 1};

    static List<CornerCase> corners() {
        return CornerCase.all();
    }

    /** Largest gouge and excess beside a straight cut, and the number of points that are not separated. */
    private record Judged(double gougeM, double excessM, int missing) {}

    @ParameterizedTest
    @MethodSource("corners")
    void theGougeStaysNearThePredictionOfThePolicy(CornerCase row) {
        Judged judged = judge(row, row.isInside() ? LagGeometry.TANGENT : LagGeometry.TRACTRIX);

        assertThat(judged.gougeM).isLessThan(1.05 * row.predictedM() + 0.04e-3);
    }

    static List<CornerCase> cornersWithinTheirTolerance() {
        return CornerCase.all().stream()
                .filter(row -> !row.reason().equals("least-error"))
                .toList();
    }

    /** The tolerance is promised at 136 of 180 corners; at the others the least error is out of its reach. */
    @ParameterizedTest
    @MethodSource("cornersWithinTheirTolerance")
    void whereThePolicyPromisesTheToleranceItIsKept(CornerCase row) {
        Judged judged = judge(row, row.isInside() ? LagGeometry.TANGENT : LagGeometry.TRACTRIX);

        // the ratio of the feeds is given to four places
        assertThat(judged.gougeM).isLessThan(row.toleranceM() + 0.2e-6);
    }

    @Test
    void allCornersOfTheJudgementAreThere() {
        assertThat(CornerCase.all()).hasSize(180);
        assertThat(cornersWithinTheirTolerance()).hasSize(136);
    }

    @ParameterizedTest
    @MethodSource("corners")
    void noPointOfACornerStaysUncut(CornerCase row) {
        assertThat(judge(row, LagGeometry.TANGENT).missing).isZero();
    }

    @ParameterizedTest
    @MethodSource("corners")
    void theGougeIsThatOfTheReference(CornerCase row) {
        Judged judged = judge(row, row.isInside() ? LagGeometry.TANGENT : LagGeometry.TRACTRIX);

        assertThat(judged.gougeM).isCloseTo(row.gougeM(), within(0.03e-3 + 0.03 * row.gougeM()));
    }

    private static Judged judge(CornerCase row, LagGeometry geometry) {
        KerfProfile profile = row.profile();
        double straight = row.straightFeed();
        double slow = row.feedRatio() * straight;
        double zone = row.feedRatio() < 0.9999 ? profile.front().exitLagSi(slow) : 0;
        double lag = profile.front().exitLagSi(straight);
        double leg = Math.max(6e-3, Math.max(2.5 * lag + 3e-3, 2.2 * zone + 1.2 * lag + 4e-3));
        double offset = profile.halfWidthSi(0.02 * row.thicknessM(), straight);
        double turn = row.isInside() ? -row.turnRad() : row.turnRad();
        FeedProfile feeds = feeds(legs(leg, turn, 0), leg, zone, new double[] {straight, slow});
        Contour part = legs(leg, turn, offset);
        ContourPoints points = new ContourPoints(
                part, -1, new ContourPoints.Spacing(0.1e-3, 0.1e-3, 0.05e-3, false), new double[] {offset, offset});
        CutRun run = new CutRun(
                profile, geometry, HeadPath.of(feeds), points, new double[] {straight, straight}, new double[] {0, 0});
        PartRoom room = new PartRoom(points, CutRun.reachInwards(profile, straight, row.thicknessM()));
        // the ends of the legs are no part of the judgement
        double far = Math.max(2.5e-3, 1.3 * Math.max(zone, zone == 0 ? lag : 0) + 1.5e-3);
        return judge(run, points, room, row.thicknessM(), far);
    }

    private static Judged judge(CutRun run, ContourPoints points, PartRoom room, double thickness, double far) {
        double vertex = points.contour.lengthSi() / 2;
        double gouge = 0;
        double excess = 0;
        int missing = 0;
        for (double share : DEPTHS) {
            run.at(share * thickness);
            for (int i = 0; i < points.count; i++) {
                if (Math.abs(points.distance[i] - vertex) > far) {
                    continue;
                }
                if (run.find(i, room.behind(i))) {
                    double added = run.deviationM - run.straight(i);
                    gouge = Math.max(gouge, -added);
                    excess = Math.max(excess, added);
                } else {
                    missing++;
                }
            }
        }
        return new Judged(gouge, excess, missing);
    }

    private static FeedProfile feeds(Contour path, double leg, double zone, double[] feeds) {
        if (zone == 0) {
            return FeedProfile.constant(path, Kind.SPEED.of(feeds[0])).afterSteadyFeed();
        }
        return FeedProfile.asWritten(
                        path,
                        QuantityArray.ofSi(Kind.LENGTH, 0, leg - zone, leg + zone),
                        QuantityArray.ofSi(Kind.SPEED, feeds[0], feeds[1], feeds[0]))
                .afterSteadyFeed();
    }

    /** Two legs that meet at a corner, seen from a line beside them on the left. */
    private static Contour legs(double leg, double turn, double toLeft) {
        double cosine = Math.cos(turn);
        double sine = Math.sin(turn);
        double shift = toLeft * Math.tan(turn / 2);
        return Contour.fromSi(-leg, toLeft)
                .lineToSi(-shift, toLeft)
                .lineToSi(leg * cosine - toLeft * sine, leg * sine + toLeft * cosine)
                .open();
    }

    /** The formula for the notch, and so the policy, allows for a lag that the zone has brought down exactly. */
    @ParameterizedTest
    @MethodSource("corners")
    void theLagAtTheCornerIsThatOfTheSlowFeed(CornerCase row) {
        double straight = row.straightFeed();
        double slow = row.feedRatio() * straight;
        double lag = row.profile().front().exitLagSi(slow);
        double leg = 3 * row.profile().front().exitLagSi(straight) + 3 * lag;
        FeedProfile feeds = feeds(
                legs(leg, row.turnRad(), 0), leg, row.feedRatio() < 0.9999 ? lag : 0, new double[] {straight, slow});
        HeadPath head = HeadPath.of(feeds);
        FootPath foot = new FootPath(head, LagGeometry.TANGENT);
        foot.at(row.profile().front(), row.thicknessM());

        int corner = Arrays.binarySearch(head.distance, 0, head.count, leg);
        assertThat(foot.lag[Math.abs(corner)]).isCloseTo(lag, within(1e-6 * lag + 1e-12));
    }
}
