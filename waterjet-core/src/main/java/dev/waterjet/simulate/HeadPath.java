package dev.waterjet.simulate;

import dev.waterjet.kerf.NozzleMotion;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Nodes along the path of the nozzle: time, distance, place and direction, in flat arrays; in m, s. A corner gives two nodes
 * at one time, a dwell two at one place. Nodes are close where the lag changes: near corners and changes of the feed.
 */
final class HeadPath {

    private static final double SPACING_M = 0.15e-3;
    private static final double MIN_SPACING_M = 0.02e-3;
    /** Spacing over the distance from the nearest corner or change of the feed. */
    private static final double GROWTH = 0.12;
    /** Deviation of a chord from an arc. */
    private static final double CHORD_M = 5e-7;

    private static final double MAX_ARC_STEP_RAD = 0.2;
    /** A longer path has nodes in proportion farther apart, away from corners and changes of the feed. */
    private static final double FINE_LENGTH_M = 100;

    private double spacingM;

    int count;
    double[] time = new double[256];
    double[] distance = new double[256];
    double[] x = new double[256];
    double[] y = new double[256];
    double[] directionX = new double[256];
    double[] directionY = new double[256];
    /** Mean feed from each node to the next; 0 in a dwell. */
    double[] feed = new double[256];
    /** Whether the nodes before are missing. */
    boolean[] isBreak = new boolean[256];

    /** Displacement of the jet over depth at each node; empty for an upright head. */
    double[] tiltX = {};

    double[] tiltY = {};

    private @Nullable NozzleMotion motion;

    private HeadPath(@Nullable NozzleMotion motion) {
        this.motion = motion;
    }

    /** Way of the nozzle over time. */
    NozzleMotion motion() {
        return Objects.requireNonNull(motion, "motion");
    }

    static HeadPath of(FeedProfile profile) {
        HeadPath path = new HeadPath(null);
        path.build(profile);
        path.motion = path.motion(profile.approach());
        TiltTable tilts = profile.tilts();
        if (tilts != null) {
            path.tilt(tilts);
        }
        return path;
    }

    /** The path of a profile; without a tilt of its own it has a constant one across the path to the left, and ahead. */
    static HeadPath of(FeedProfile profile, double toLeft, double ahead) {
        HeadPath path = of(profile);
        if (profile.tilts() == null && (toLeft != 0 || ahead != 0)) {
            path.tiltX = new double[path.count];
            path.tiltY = new double[path.count];
            for (int i = 0; i < path.count; i++) {
                path.tiltX[i] = ahead * path.directionX[i] - toLeft * path.directionY[i];
                path.tiltY[i] = ahead * path.directionY[i] + toLeft * path.directionX[i];
            }
        }
        return path;
    }

    private void tilt(TiltTable tilts) {
        tiltX = new double[count];
        tiltY = new double[count];
        for (int i = 0; i < count; i++) {
            tiltX[i] = tilts.x(distance[i]);
            tiltY[i] = tilts.y(distance[i]);
        }
    }

    boolean isTilted() {
        return tiltX.length > 0;
    }

    /** Largest displacement of the jet over depth. */
    double largestTilt() {
        double most = 0;
        for (int i = 0; i < tiltX.length; i++) {
            most = Math.max(most, Math.hypot(tiltX[i], tiltY[i]));
        }
        return most;
    }

    /** Factor by which points along a length are farther apart than they could be. */
    static double coarsening(double lengthM) {
        return Math.max(1, lengthM / FINE_LENGTH_M);
    }

    private void build(FeedProfile profile) {
        Contour contour = profile.path();
        spacingM = SPACING_M * coarsening(contour.lengthSi());
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor next = new EdgeCursor();
        double now = 0;
        double start = 0;
        int piece = 0;
        boolean isAbrupt = true;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            double end = start + edge.length();
            boolean isCorner = true;
            if (i + 1 < contour.size()) {
                contour.load(i + 1, next);
                isCorner = Math.abs(next.turnFrom(edge)) > 1e-6;
            }
            now = add(edge, start, start, now, 0);
            if (i == 0 && profile.startDwell() > 0) {
                now = add(edge, start, start, now + profile.startDwell(), 0);
            }
            double from = start;
            while (from < end) {
                boolean isLast = piece == profile.pieces() - 1 || profile.end(piece) >= end;
                double to = isLast ? end : profile.end(piece);
                boolean isAbruptAfter = to == end ? isCorner : profile.isStep(piece);
                now = run(profile, piece, edge, start, new double[] {from, to}, now, isAbrupt, isAbruptAfter);
                isAbrupt = isAbruptAfter;
                from = to;
                if (piece < profile.pieces() - 1 && profile.end(piece) <= to) {
                    isAbrupt |= profile.isStep(piece);
                    piece++;
                }
            }
            start = end;
        }
        if (profile.endDwell() > 0) {
            add(edge, start - edge.length(), start, now + profile.endDwell(), 0);
        }
    }

    /** Nodes of one piece on one edge; returns the time at its end. */
    private double run(
            FeedProfile profile,
            int piece,
            EdgeCursor edge,
            double edgeStart,
            double[] fromTo,
            double startS,
            boolean isAbrupt,
            boolean isAbruptAfter) {
        double most = edge.isArc()
                ? Math.min(
                        4 * spacingM,
                        Math.min(Math.sqrt(8 * edge.radius() * CHORD_M), MAX_ARC_STEP_RAD * edge.radius()))
                : spacingM;
        double at = fromTo[0];
        double end = fromTo[1];
        double now = startS;
        double here = profile.feed(piece, at);
        while (at < end) {
            double step = most;
            step = isAbrupt ? Math.min(step, GROWTH * (at - fromTo[0])) : step;
            step = isAbruptAfter ? Math.min(step, GROWTH / (1 + GROWTH) * (end - at)) : step;
            step = Math.max(step, Math.min(most, MIN_SPACING_M));
            double to = at + 1.5 * step >= end ? end : at + step;
            double there = profile.feed(piece, to);
            double mean = (here + there) / 2;
            feed[count - 1] = mean;
            now += (to - at) / mean;
            add(edge, edgeStart, to, now, mean);
            here = there;
            at = to;
        }
        return now;
    }

    private double add(EdgeCursor edge, double edgeStart, double at, double now, double feedAfter) {
        if (count == time.length) {
            grow();
        }
        double share = Math.max(0, Math.min(1, (at - edgeStart) / edge.length()));
        time[count] = now;
        distance[count] = at;
        x[count] = edge.xAt(share);
        y[count] = edge.yAt(share);
        directionX[count] = edge.directionXAt(share);
        directionY[count] = edge.directionYAt(share);
        feed[count] = feedAfter;
        count++;
        return now;
    }

    private void grow() {
        int capacity = 2 * count;
        time = Arrays.copyOf(time, capacity);
        distance = Arrays.copyOf(distance, capacity);
        x = Arrays.copyOf(x, capacity);
        y = Arrays.copyOf(y, capacity);
        directionX = Arrays.copyOf(directionX, capacity);
        directionY = Arrays.copyOf(directionY, capacity);
        feed = Arrays.copyOf(feed, capacity);
        isBreak = Arrays.copyOf(isBreak, capacity);
    }

    private NozzleMotion motion(double approachMPerS) {
        double[] times = new double[count];
        double[] feeds = new double[count];
        int n = 1;
        times[0] = time[0];
        for (int i = 1; i < count; i++) {
            if (time[i] > time[i - 1]) {
                feeds[n - 1] = distance[i] > distance[i - 1] ? feed[i - 1] : 0;
                times[n++] = time[i];
            }
        }
        double[] steps = Arrays.copyOf(times, n);
        double[] speeds = Arrays.copyOf(feeds, n - 1);
        return approachMPerS > 0
                ? NozzleMotion.fromSteadyFeedSi(approachMPerS, steps, speeds)
                : NozzleMotion.fromRestSi(steps, speeds);
    }

    /** The nodes within a distance of a place, with the motion of the whole path. */
    HeadPath near(double atX, double atY, double withinM) {
        HeadPath part = new HeadPath(motion);
        part.tiltX = tiltX.clone();
        part.tiltY = tiltY.clone();
        int before = -2;
        for (int i = 0; i < count; i++) {
            if (Math.hypot(x[i] - atX, y[i] - atY) <= withinM) {
                if (part.count == part.time.length) {
                    part.grow();
                }
                int k = part.count++;
                part.time[k] = time[i];
                part.distance[k] = distance[i];
                part.x[k] = x[i];
                part.y[k] = y[i];
                part.directionX[k] = directionX[i];
                part.directionY[k] = directionY[i];
                part.feed[k] = feed[i];
                if (isTilted()) {
                    part.tiltX[k] = tiltX[i];
                    part.tiltY[k] = tiltY[i];
                }
                part.isBreak[k] = before != i - 1;
                before = i;
            }
        }
        return part;
    }

    /** The path of the nozzle itself as segments. */
    FootSegments segments() {
        FootSegments segments = new FootSegments(count);
        for (int i = 0; i + 1 < count; i++) {
            if (time[i + 1] > time[i]) {
                segments.add(x[i], y[i], x[i + 1], y[i + 1], time[i + 1] - time[i], i);
            }
        }
        return segments;
    }
}
