package dev.waterjet.simulate;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;

/** Two long legs that meet at a re-entrant corner of the part, cut at one feed, with a zone of another one; in m, s. */
final class CornerCut {

    private static final double POINTS_M = 0.1e-3;
    private static final double POINTS_AT_CORNER_M = 0.05e-3;
    /** Depth at which a jet cuts the part to size, over the thickness. */
    private static final double TOP = 0.02;

    private final KerfProfile profile;
    private final LagGeometry geometry;
    private final double turnRad;
    private final double feedMPerS;
    private final double cornerFeedMPerS;
    private final double zoneM;

    CornerCut(KerfProfile profile, LagGeometry geometry, double turnRad, double[] feeds, double zoneM) {
        this.profile = profile;
        this.geometry = geometry;
        this.turnRad = turnRad;
        this.feedMPerS = feeds[0];
        this.cornerFeedMPerS = feeds[1];
        this.zoneM = feeds[0] == feeds[1] ? 0 : zoneM;
    }

    /** Largest deviation of one sign at a depth, less that of a straight cut: below 0 of gouges, above 0 of what is left. */
    double largest(double depthM, double sign) {
        double lag = profile.front().lagSi(feedMPerS, depthM);
        double leg = Math.max(6e-3, Math.max(2.5 * lag + 3e-3, 2.2 * zoneM + 1.2 * lag + 4e-3));
        double offset = profile.halfWidthSi(TOP * depthM, feedMPerS);
        Contour part = legs(leg, offset);
        ContourPoints points = new ContourPoints(
                part, -1, new ContourPoints.Spacing(POINTS_M, POINTS_M, POINTS_AT_CORNER_M, false), new double[] {
                    offset, offset
                });
        CutRun run = new CutRun(
                profile, geometry, HeadPath.of(feeds(leg)), points, new double[] {feedMPerS, feedMPerS}, new double[] {
                    0, 0
                });
        PartRoom room = new PartRoom(points, CutRun.reachInwards(profile, feedMPerS, depthM));
        run.at(depthM);
        // the ends of the legs are no part of the corner
        double far = Math.max(2.5e-3, 1.3 * Math.max(zoneM, lag) + 1.5e-3);
        double largest = 0;
        for (int i = 0; i < points.count; i++) {
            boolean isNear = Math.abs(points.distance[i] - part.lengthSi() / 2) <= far;
            if (isNear && run.find(i, room.behind(i))) {
                largest = Math.max(largest, sign * (run.deviationM - run.straight(i)));
            }
        }
        return sign * largest;
    }

    private FeedProfile feeds(double leg) {
        Contour path = legs(leg, 0);
        return zoneM > 0
                ? FeedProfile.asWritten(
                                path,
                                QuantityArray.ofSi(Kind.LENGTH, 0, leg - zoneM, leg + zoneM),
                                QuantityArray.ofSi(Kind.SPEED, feedMPerS, cornerFeedMPerS, feedMPerS))
                        .afterSteadyFeed()
                : FeedProfile.constant(path, Kind.SPEED.of(feedMPerS)).afterSteadyFeed();
    }

    /** Two legs that turn to the right, seen from a line beside them on the left. */
    private Contour legs(double leg, double toLeft) {
        double cosine = Math.cos(turnRad);
        double sine = -Math.sin(turnRad);
        double shift = -toLeft * Math.tan(turnRad / 2);
        return Contour.fromSi(-leg, toLeft)
                .lineToSi(-shift, toLeft)
                .lineToSi(leg * cosine - toLeft * sine, leg * sine + toLeft * cosine)
                .open();
    }
}
