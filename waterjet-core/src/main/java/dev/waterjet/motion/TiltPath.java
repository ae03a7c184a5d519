package dev.waterjet.motion;

import dev.waterjet.kerf.NozzleMotion;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import java.util.Arrays;

/**
 * Tilt that a planned path wants: places close behind every change of edge and feed, the lag of the front at each, and the
 * side tilt and lead that follow from them; in m, s.
 */
final class TiltPath {

    private static final double FIRST_STEP_M = 0.05e-3;
    private static final double GROWTH = 1.6;
    private static final double ARC_STEP_RAD = Math.toRadians(2);
    /** A slowdown zone shorter than this keeps the side tilt of the straight feed. */
    private static final double SHORT_ZONE_M = 2e-3;

    private static final double SLOW = 0.9;

    private final Contour path;
    private final MotionCurve motion;
    private final TiltLaw law;
    private final int sign;
    private final double[] nominal;

    private int count;
    private double[] place = new double[256];
    private double[] time = new double[256];
    /** Edge behind each place. */
    private int[] edge = new int[256];

    TiltPath(Contour path, MotionCurve motion, TiltLaw law, Side part, EdgePolicy[] policies) {
        this.path = path;
        this.motion = motion;
        this.law = law;
        this.sign = part.sign();
        this.nominal = nominalFeeds(path, policies);
        walk();
    }

    /** Feed of straight edges; a lead takes that of the nearest edge behind it along the part, else before it. */
    private static double[] nominalFeeds(Contour path, EdgePolicy[] policies) {
        int n = path.size();
        double[] feeds = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            boolean isLead = path.requirement(i).isLead();
            double own = policies[path.requirementIndex(i)].feedMPerS();
            feeds[i] = isLead && i + 1 < n ? feeds[i + 1] : isLead ? 0 : own;
        }
        double last = 0;
        for (int i = 0; i < n; i++) {
            last = feeds[i] > 0 ? feeds[i] : last;
            feeds[i] = last > 0 ? last : policies[path.requirementIndex(i)].feedMPerS();
        }
        return feeds;
    }

    private void walk() {
        EdgeCursor cursor = new EdgeCursor();
        double start = 0;
        int node = 0;
        double last = motion.lengthM();
        add(0, 0);
        for (int i = 0; i < path.size(); i++) {
            path.load(i, cursor);
            double end = i + 1 < path.size() ? Math.min(start + cursor.length(), last) : last;
            double most = cursor.isArc() ? ARC_STEP_RAD * cursor.radius() : Double.POSITIVE_INFINITY;
            double at = start;
            edge[count - 1] = i;
            while (node < motion.intervals() && motion.placeM(node) <= at) {
                node++;
            }
            while (motion.placeM(node) < end) {
                refine(at, motion.placeM(node), most, i);
                at = motion.placeM(node++);
            }
            refine(at, end, most, i);
            start = end;
        }
    }

    /** Places from one change to the next one: steps grow up to the middle and shrink from there. */
    private void refine(double from, double to, double most, int onEdge) {
        double half = (to - from) / 2;
        double at = 0;
        double step = Math.min(FIRST_STEP_M, most);
        int first = count;
        while (at + step < half) {
            at += step;
            add(from + at, onEdge);
            step = Math.min(step * GROWTH, most);
        }
        int steps = count - first;
        add(from + half, onEdge);
        for (int k = steps - 1; k >= 0; k--) {
            add(to - (place[first + k] - from), onEdge);
        }
        add(to, onEdge);
    }

    private void add(double atM, int onEdge) {
        double now = motion.timeAt(Math.min(atM, motion.lengthM()));
        if (count > 0 && !(atM > place[count - 1] && now > time[count - 1])) {
            return;
        }
        if (count == place.length) {
            place = Arrays.copyOf(place, 2 * count);
            time = Arrays.copyOf(time, 2 * count);
            edge = Arrays.copyOf(edge, 2 * count);
        }
        place[count] = atM;
        time[count] = now;
        edge[count++] = onEdge;
    }

    /** The wanted tilt over the time since the start of the path. */
    WantedTilt wanted() {
        double[] lags = lags();
        double[] sideFeed = sideFeeds();
        WantedTilt wanted = new WantedTilt();
        EdgeCursor cursor = new EdgeCursor();
        int loaded = -1;
        double start = 0;
        double[] from = new double[2];
        double[] to = new double[2];
        for (int i = 0; i + 1 < count; i++) {
            int of = edge[i];
            while (loaded < of) {
                start += loaded >= 0 ? cursor.length() : 0;
                path.load(++loaded, cursor);
            }
            double side = law.side(sideFeed[i]);
            tilt(cursor, place[i] - start, side, lags[i], i, from);
            tilt(cursor, place[i + 1] - start, side, lags[i + 1], i, to);
            wanted.add(time[i + 1], from[0], from[1], to[0], to[1]);
        }
        return wanted;
    }

    private void tilt(EdgeCursor cursor, double along, double side, double lagM, int interval, double[] result) {
        double share = Math.max(0, Math.min(1, along / cursor.length()));
        double tx = cursor.directionXAt(share);
        double ty = cursor.directionYAt(share);
        double lead = law.lead(lagM);
        double feed = (place[interval + 1] - place[interval]) / (time[interval + 1] - time[interval]);
        double curvature = cursor.isArc() ? 1 / cursor.radius() : 0;
        double kept = law.share(Math.hypot(side, lead), feed, curvature);
        double across = kept * side * sign;
        double ahead = kept * lead;
        result[0] = ahead * tx - across * ty;
        result[1] = ahead * ty + across * tx;
    }

    /** Lag of the front at the exit at each place. */
    private double[] lags() {
        double[] times = Arrays.copyOf(time, count);
        double[] feeds = new double[count - 1];
        for (int i = 0; i + 1 < count; i++) {
            feeds[i] = (place[i + 1] - place[i]) / (time[i + 1] - time[i]);
        }
        double[] lags = new double[count];
        law.front()
                .positionsSi(NozzleMotion.fromRestSi(times, feeds), law.front().thicknessSi(), times, lags);
        for (int i = 0; i < count; i++) {
            lags[i] = Math.max(0, place[i] - lags[i]);
        }
        return lags;
    }

    /** Feed that the side tilt of each interval follows: the planned one in long slowdown zones, else that of the edge. */
    private double[] sideFeeds() {
        double[] feeds = new double[count];
        int first = 0;
        for (int i = 0; i + 1 < count; i++) {
            double mean = (place[i + 1] - place[i]) / (time[i + 1] - time[i]);
            feeds[i] = mean < SLOW * nominal[edge[i]] ? mean : nominal[edge[i]];
            boolean isSlow = feeds[i] < nominal[edge[i]];
            if (!isSlow || i + 2 == count) {
                int end = isSlow ? i + 1 : i;
                if (place[end] - place[first] < SHORT_ZONE_M) {
                    for (int k = first; k < end; k++) {
                        feeds[k] = nominal[edge[k]];
                    }
                }
                first = i + 1;
            }
        }
        return feeds;
    }
}
