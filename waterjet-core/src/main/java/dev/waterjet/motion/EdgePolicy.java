package dev.waterjet.motion;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import org.jspecify.annotations.Nullable;

/** Feed of one requirement of a path on straight edges, and its slowdowns at corners and on arcs. */
final class EdgePolicy {

    private final double feedMPerS;
    private final FeedLimit limit;
    private final double lagM;
    private final double spreadM;
    private final @Nullable SlowdownTable inside;
    private final @Nullable SlowdownTable outside;

    /**
     * Makes a policy.
     *
     * @param requirement requirement of the edge
     * @param feeds feed by cut quality
     * @param profile front and kerf; null where the jet counts as straight and thin
     * @param settings choices behind slowdowns
     */
    EdgePolicy(
            EdgeRequirement requirement, QualityFeeds feeds, @Nullable KerfProfile profile, SlowdownSettings settings) {
        double ofQuality = feeds.feedSi(quality(requirement));
        feedMPerS = straightFeed(requirement, feeds);
        FeedLimit own = requirement.isLead() ? FeedLimit.LEAD : FeedLimit.QUALITY;
        limit = feedMPerS < ofQuality ? FeedLimit.REQUESTED : own;
        lagM = profile == null ? 0 : profile.front().exitLagSi(feedMPerS);
        spreadM = profile == null ? 0 : profile.spreadSi();
        if (profile == null || requirement.isLead()) {
            inside = null;
            outside = null;
            return;
        }
        double thicknessM = profile.front().thicknessSi();
        double tolerance = requirement.lagToleranceSi(thicknessM);
        double outsideTolerance = requirement.outsideCornerToleranceSi(thicknessM);
        inside = new SlowdownTable(new SlowdownPolicy(profile, feedMPerS, tolerance, settings), profile.spreadSi());
        outside = tolerance == outsideTolerance
                ? inside
                : new SlowdownTable(
                        new SlowdownPolicy(profile, feedMPerS, outsideTolerance, settings), profile.spreadSi());
    }

    private static CutQuality quality(EdgeRequirement requirement) {
        return requirement.isLead() ? CutQuality.VERY_COARSE : requirement.quality();
    }

    /** Feed of straight edges with a requirement. */
    static double straightFeed(EdgeRequirement requirement, QualityFeeds feeds) {
        return Math.min(feeds.feedSi(quality(requirement)), requirement.maximumFeedSi());
    }

    double feedMPerS() {
        return feedMPerS;
    }

    FeedLimit limit() {
        return limit;
    }

    /** Lag at the exit at the feed of straight edges. */
    double lagM() {
        return lagM;
    }

    /** Spread of the dose across the kerf. */
    double spreadM() {
        return spreadM;
    }

    /** Whether the bottom edge matters: not on leads, and not for a jet without lag. */
    boolean isSlowing() {
        return inside != null;
    }

    /** Slowdown at a corner of the part; null if the bottom edge does not matter. */
    @Nullable
    Slowdown corner(double turnRad, boolean isInside) {
        SlowdownTable table = isInside ? inside : outside;
        return table == null ? null : table.corner(turnRad, isInside);
    }

    /** Slowdown on an arc; null if the bottom edge does not matter. */
    @Nullable
    Slowdown arc(double radiusM, double lengthM, boolean isInside) {
        return inside == null ? null : inside.arc(radiusM, lengthM, isInside);
    }

    /** Slowdown before an end that nothing overlaps; null if the bottom edge does not matter. */
    @Nullable
    Slowdown end() {
        return inside == null ? null : inside.end();
    }
}
