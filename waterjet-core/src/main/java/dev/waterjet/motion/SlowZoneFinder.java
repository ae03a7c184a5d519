package dev.waterjet.motion;

import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;

/** Gathers the stretches of a plan that run below a share of the feed of their finish. */
final class SlowZoneFinder {

    private final Contour contour;
    private final MotionProfile motion;
    private final double[] usualByFinish;
    private final double share;
    private final BlockProfile within;
    private final List<SlowZone> found = new ArrayList<>();

    // the open stretch
    private boolean isOpen;
    private double fromM;
    private double timeS;
    private double leastMPerS;
    private int leastNode;
    private boolean isLeastAtNode;
    private double usualMPerS;

    private SlowZoneFinder(Contour contour, MotionProfile motion, QualityFeeds feeds, double share) {
        this.contour = contour;
        this.motion = motion;
        this.share = share;
        this.within = new BlockProfile(motion);
        this.usualByFinish = new double[contour.requirements().size()];
        for (int i = 0; i < usualByFinish.length; i++) {
            EdgeRequirement finish = contour.requirements().get(i);
            usualByFinish[i] = Math.min(feeds.feedSi(finish.quality()), finish.maximumFeedSi());
        }
    }

    static List<SlowZone> find(Contour contour, MotionProfile motion, QualityFeeds feeds, double share) {
        return new SlowZoneFinder(contour, motion, feeds, share).walk();
    }

    private List<SlowZone> walk() {
        double atM = 0;
        for (int i = 0; i < motion.count; i++) {
            double usual = usualByFinish[contour.requirementIndex(motion.edge(i))];
            double threshold = share * usual;
            double length = motion.lengthM[i];
            double peak = motion.peakMPerS[i];
            if (peak < threshold) {
                open(i, atM, usual);
                timeS += motion.timeS[i];
                lowest(i, usual);
            } else {
                within.block(i);
                double top = within.peakPlace();
                if (motion.nodeMPerS[i] < threshold) {
                    double until = crossing(0, top, threshold);
                    open(i, atM, usual);
                    timeS += within.time(until);
                    close(atM + until);
                } else if (isOpen) {
                    close(atM);
                }
                if (motion.nodeMPerS[i + 1] < threshold) {
                    double from = crossing(length, top, threshold);
                    open(i + 1, atM + from, usual);
                    timeS += motion.timeS[i] - within.time(from);
                    lowestAtNode(i + 1, usual);
                }
            }
            atM += length;
        }
        if (isOpen) {
            close(atM);
        }
        return List.copyOf(found);
    }

    /** Place between a slow end and the fastest place of the block at which a speed is passed. */
    private double crossing(double slowEnd, double fastPlace, double speed) {
        double slow = slowEnd;
        double fast = fastPlace;
        for (int step = 0; step < 50; step++) {
            double middle = (slow + fast) / 2;
            if (within.speed(middle) < speed) {
                slow = middle;
            } else {
                fast = middle;
            }
        }
        return slow;
    }

    private void open(int node, double atM, double usual) {
        if (!isOpen) {
            isOpen = true;
            fromM = atM;
            timeS = 0;
            leastMPerS = Double.POSITIVE_INFINITY;
            lowestAtNode(node, usual);
        }
    }

    private void lowest(int block, double usual) {
        double peak = motion.peakMPerS[block];
        boolean isCause = peak == leastMPerS
                && isOfRecovery()
                && FeedLimit.of(motion.limit[block]) != FeedLimit.FRONT_RECOVERY
                && peak == motion.capMPerS[block];
        if (peak < leastMPerS || isCause) {
            leastMPerS = motion.peakMPerS[block];
            leastNode = block;
            isLeastAtNode = false;
            usualMPerS = usual;
        }
        lowestAtNode(block, usual);
        lowestAtNode(block + 1, usual);
    }

    private void lowestAtNode(int node, double usual) {
        double speed = motion.nodeMPerS[node];
        boolean isLower = speed < leastMPerS;
        // of a level stretch the corner or arc that caused it is told, not the recovery around it
        boolean isCause = speed == leastMPerS && isOfRecovery();
        if (isLower || isCause) {
            leastMPerS = speed;
            leastNode = node;
            isLeastAtNode = true;
            usualMPerS = usual;
        }
    }

    private boolean isOfRecovery() {
        FeedLimit limit = reason();
        return limit == FeedLimit.FRONT_RECOVERY || limit == FeedLimit.ACCELERATION;
    }

    private FeedLimit reason() {
        if (!isLeastAtNode) {
            return FeedLimit.of(motion.limit[leastNode]);
        }
        FeedLimit atNode = FeedLimit.of(motion.nodeLimit[leastNode]);
        if (motion.isHeldByNode(leastNode)) {
            return atNode;
        }
        double before = leastNode == 0 ? Double.POSITIVE_INFINITY : motion.capMPerS[leastNode - 1];
        double after = leastNode == motion.count ? Double.POSITIVE_INFINITY : motion.capMPerS[leastNode];
        FeedLimit slower = FeedLimit.of(motion.limit[before < after ? leastNode - 1 : leastNode]);
        return leastMPerS >= Math.min(before, after) * (1 - 1e-12) ? slower : FeedLimit.ACCELERATION;
    }

    private void close(double untilM) {
        int edge = motion.edge(Math.min(leastNode, motion.count - 1));
        EdgeCursor shape = new EdgeCursor();
        contour.load(edge, shape);
        double alongM = 0;
        for (int i = leastNode - 1; i >= 0 && motion.edge(i) == edge; i--) {
            alongM += motion.lengthM[i];
        }
        boolean isEnd = leastNode == motion.count;
        double share = isEnd ? 1 : Math.min(1, alongM / shape.length());
        found.add(new SlowZone(
                edge,
                Point.ofSi(shape.xAt(share), shape.yAt(share)),
                fromM,
                untilM,
                leastMPerS,
                usualMPerS,
                timeS,
                reason()));
        isOpen = false;
    }
}
