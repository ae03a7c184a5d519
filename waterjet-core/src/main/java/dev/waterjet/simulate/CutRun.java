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
    private final double[] across;
    private final double largestTilt;

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
     * @param across displacement of the jet over depth of the straight cut along each edge, away from the part
     */
    CutRun(
            KerfProfile profile,
            LagGeometry geometry,
            HeadPath head,
            ContourPoints points,
            double[] straightMPerS,
            double[] across) {
        this.profile = profile;
        this.head = head;
        this.points = points;
        this.straightMPerS = straightMPerS;
        this.across = across;
        this.largestTilt = head.largestTilt();
        this.foot = new FootPath(head, geometry);
        this.field = new DoseField(profile, foot.segments);
        this.search = new WallSearch(field, ACCURACY_M);
    }

    /** Turns to a depth. */
    void at(double depth) {
        depthM = depth;
        isTop = depth == 0;
        CutFront front = profile.front();
        foot.at(front, depth);
        field.at(depth);
    }

    SegmentGrid grid() {
        return field.grid();
    }

    /** Farthest that the cut can reach into the part at the depth, at the feed of an edge. */
    static double reachInwards(KerfProfile profile, double straightMPerS, double depthM) {
        return profile.front().lagSi(straightMPerS, depthM) + RADII_INWARDS * profile.jetRadiusSi(depthM);
    }

    /** Predicts the wall at a point; false if nothing is cut there. */
    boolean find(int i, double roomM) {
        int edge = points.edge[i];
        double shift = depthM * largestTilt;
        double inwards = Math.min(roomM, reachInwards(profile, straightMPerS[edge], depthM) + shift);
        double offset = points.offset[edge];
        double outwards = Math.max(offset, 0) + profile.jetRadiusSi(depthM) + shift;
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

    /** Deviation of the wall of a long straight cut along the edge of a point, with the tilt of the edge. */
    double straight(int i) {
        return straightOfEdge(points.edge[i]);
    }

    double straightOfEdge(int edge) {
        return points.offset[edge] + depthM * across[edge] - profile.halfWidthSi(depthM, straightMPerS[edge]);
    }
}
