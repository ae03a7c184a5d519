package dev.waterjet.motion;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.List;

/** Collects the stretches of a motion that run below a share of the feed of their edge. */
final class SlowZoneFinder {

    /** Rounding of a feed, relative to it, and of a distance along the path, in m. */
    private static final double LEVEL = 1e-9;

    private static final double SAME_PLACE_M = 1e-9;

    private final Contour path;
    private final PlanBlocks blocks;
    private final MotionCurve motion;
    private final EdgePolicy[] policies;
    private final PathPlaces places;
    private final double share;
    private final List<SlowZone> found = new ArrayList<>();

    private boolean isOpen;
    private double fromM;
    private double untilM;
    private double timeS;
    private double leastMPerS;
    private double leastAtM;
    private int leastBlock;
    private int leastInterval;

    private int nextPlace;
    private FeedLimit cause = FeedLimit.PATH_END;

    SlowZoneFinder(
            Contour path,
            PlanBlocks blocks,
            MotionCurve motion,
            EdgePolicy[] policies,
            PathPlaces places,
            double share) {
        this.path = path;
        this.blocks = blocks;
        this.motion = motion;
        this.policies = policies;
        this.places = places;
        this.share = share;
    }

    List<SlowZone> find() {
        int interval = 0;
        for (int i = 0; i < blocks.count(); i++) {
            double threshold = share * nominal(i);
            double at = blocks.startM(i);
            while (true) {
                double until = Math.min(blocks.endM(i), motion.placeM(interval + 1));
                visit(i, interval, at, until, threshold * threshold);
                at = until;
                if (motion.placeM(interval + 1) >= blocks.endM(i) || interval == motion.intervals() - 1) {
                    break;
                }
                interval++;
            }
        }
        close();
        return List.copyOf(found);
    }

    private double nominal(int block) {
        return policies[path.requirementIndex(blocks.edge(block))].feedMPerS();
    }

    /** Takes the part of an interval, of constant acceleration, that runs below the threshold. */
    private void visit(int block, int interval, double from, double to, double threshold) {
        if (to <= from) {
            return;
        }
        double first = motion.squareIn(interval, from);
        double last = motion.squareIn(interval, to);
        if (first >= threshold && last >= threshold) {
            close();
            return;
        }
        double crossing = from + (to - from) * (threshold - first) / (last - first);
        double slowFrom = first < threshold ? from : crossing;
        double slowTo = last < threshold ? to : crossing;
        if (!isOpen) {
            isOpen = true;
            fromM = slowFrom;
            timeS = 0;
            leastMPerS = Double.POSITIVE_INFINITY;
        }
        untilM = slowTo;
        timeS += motion.timeIn(interval, slowTo) - motion.timeIn(interval, slowFrom);
        boolean isFirstLower = first <= last;
        double least = Math.sqrt(Math.min(first, last));
        boolean isLevel = least <= leastMPerS * (1 + LEVEL);
        if (least < leastMPerS * (1 - LEVEL) || (isLevel && isBetterCause(interval))) {
            leastMPerS = Math.min(leastMPerS, least);
            leastAtM = isFirstLower ? from : to;
            leastBlock = block;
            leastInterval = interval;
        }
        if (slowTo < to) {
            close();
        }
    }

    /** Of a level stretch the corner or arc that causes it is named, not the acceleration beside it. */
    private boolean isBetterCause(int interval) {
        boolean isPlain = motion.limit(leastInterval) != GoverningLimit.PROCESS;
        return isPlain && motion.limit(interval) == GoverningLimit.PROCESS;
    }

    private void close() {
        if (!isOpen) {
            return;
        }
        moveToCause();
        int edge = blocks.edge(leastBlock);
        EdgeCursor cursor = new EdgeCursor();
        path.load(edge, cursor);
        double at = blocks.shareOf(edge, leastAtM);
        found.add(new SlowZone(
                edge,
                Point.ofSi(cursor.xAt(at), cursor.yAt(at)),
                Kind.LENGTH.of(fromM),
                Kind.LENGTH.of(untilM),
                Kind.SPEED.of(leastMPerS),
                Kind.SPEED.of(nominal(leastBlock)),
                Kind.TIME.of(timeS),
                cause));
        isOpen = false;
    }

    /** Of a level stretch around a corner or arc the place is that of the corner, or the middle of the arc. */
    private void moveToCause() {
        cause = leastMPerS == 0 ? FeedLimit.PATH_END : FeedLimit.ofCode(motion.limitCode(leastInterval));
        while (nextPlace < places.count()) {
            double from = places.startM(nextPlace);
            double to = places.endM(nextPlace);
            // the optimum with jerk dips a little below the maximum beside a change of it
            boolean isCause = places.errorM(nextPlace) != PathPlaces.NO_ERROR
                    && places.feedMPerS(nextPlace) >= leastMPerS * (1 - LEVEL)
                    && places.feedMPerS(nextPlace) <= leastMPerS * 1.1;
            if (from - places.reachM(nextPlace) > leastAtM + SAME_PLACE_M) {
                return;
            }
            if (isCause && to + places.reachM(nextPlace) >= leastAtM - SAME_PLACE_M) {
                leastAtM = (from + to) / 2;
                leastBlock = blocks.at(leastAtM);
                cause = FeedLimit.ofCode(places.code(nextPlace));
                return;
            }
            nextPlace++;
        }
    }
}
