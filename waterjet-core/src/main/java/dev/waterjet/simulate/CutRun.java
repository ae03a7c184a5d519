package dev.waterjet.simulate;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;

/** Prediction of walls at one depth after the other, for one path in one setting of the models; in m, s. */
final class CutRun {

    /** Reach of the search into the part, in jet radii, beside the lag. */
    private static final double RADII_INWARDS = 2.2;

    private static final double ACCURACY_M = 4e-9;

    private final KerfProfile profile;
    private final HeadPath head;
    private final ContourPoints points;
    private final FootPath foot;
    private final DoseField field;
    private final WallSearch search;
    private final double[] straightMPerS;
    private final double tiltToLeft;
    private final double lead;

    private double depthM;
    private boolean isTop;

    /** Deviation, feed, lag and half-width at the last point. */
    double deviationM;

    double feedMPerS;
    double lagM;
    double halfWidthM;

    /**
     * A run.
     *
     * @param straightMPerS feed of the straight cut along each edge
     * @param tilt tangents of the side tilt to the left of the path, and of the lead
     */
    CutRun(
            KerfProfile profile,
            LagGeometry geometry,
            HeadPath head,
            ContourPoints points,
            double[] straightMPerS,
            double[] tilt) {
        this.profile = profile;
        this.head = head;
        this.points = points;
        this.straightMPerS = straightMPerS;
        this.tiltToLeft = tilt[0];
        this.lead = tilt[1];
        this.foot = new FootPath(head, geometry);
        this.field = new DoseField(profile, foot.segments);
        this.search = new WallSearch(field, ACCURACY_M);
    }

    /** Turns to a depth. */
    void at(double depth) {
        depthM = depth;
        isTop = depth == 0;
        CutFront front = profile.front();
        foot.at(front, depth, tiltToLeft, lead);
        field.at(depth);
    }

    /** Farthest that the cut can reach into the part at the depth, at the feed of an edge. */
    static double reachInwards(KerfProfile profile, double straightMPerS, double depthM) {
        return profile.front().lagSi(straightMPerS, depthM) + RADII_INWARDS * profile.jetRadiusSi(depthM);
    }

    /** Predicts the wall at a point; false if nothing is cut there. */
    boolean find(int i, double roomM) {
        int edge = points.edge[i];
        double inwards = Math.min(roomM, reachInwards(profile, straightMPerS[edge], depthM));
        double offset = points.offset[edge];
        double outwards = Math.max(offset, 0) + profile.jetRadiusSi(depthM);
        double from = -inwards + Math.min(offset, 0);
        if (!search.find(points.x[i], points.y[i], points.normalX[i], points.normalY[i], from, outwards)) {
            return false;
        }
        deviationM = search.wallM;
        halfWidthM = field.distanceM;
        int node = foot.segments.node[Math.max(0, field.nearest)];
        feedMPerS = head.feed[node];
        lagM = isTop ? 0 : foot.lag[node];
        return true;
    }

    /** Deviation of the wall of a long straight cut along the edge of a point. */
    double straight(int i) {
        int edge = points.edge[i];
        return points.offset[edge] - profile.halfWidthSi(depthM, straightMPerS[edge]);
    }
}
