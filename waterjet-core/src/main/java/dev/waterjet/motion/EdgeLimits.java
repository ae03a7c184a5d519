package dev.waterjet.motion;

import dev.waterjet.kerf.LagFunction;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;

/** What follows from each finish of a contour alone, by its index: flat arrays, filled once for a plan. */
final class EdgeLimits {

    /** Square of the cosine of half the turn, at the sharpest turn that still counts as the sampling of a curve. */
    private static final double LEAST_COSINE2 = (1 + Math.cos(Math.toRadians(10))) / 2;

    /** Feed of the finish, and why. */
    final double[] feedMPerS;

    final byte[] why;
    /** Lag at that feed. */
    final double[] lagM;

    final double[] toleranceM;
    final double[] outsideToleranceM;
    final boolean[] isLead;
    /** The fastest of the feeds. */
    final double fastestMPerS;

    /** Squared sine of a turn up to which the machine can round it at that feed. */
    private final double[] roundedSine2;
    /** Squared quotient of the shorter line beside a turn and its sine from which on there is room to round it. */
    private final double[] roundedLength2;
    /** The same quotient from which on the lag is within the tolerance of a sampled curve. */
    private final double[] trackedLength2;

    EdgeLimits(List<EdgeRequirement> finishes, QualityFeeds feeds, LagFunction law, MachineLimits machine) {
        int n = finishes.size();
        feedMPerS = new double[n];
        why = new byte[n];
        lagM = new double[n];
        toleranceM = new double[n];
        outsideToleranceM = new double[n];
        isLead = new boolean[n];
        roundedSine2 = new double[n];
        roundedLength2 = new double[n];
        trackedLength2 = new double[n];
        double fastest = 0;
        for (int i = 0; i < n; i++) {
            EdgeRequirement finish = finishes.get(i);
            double ofGrade = feeds.feedSi(finish.quality());
            feedMPerS[i] = Math.min(ofGrade, finish.maximumFeedSi());
            why[i] = (finish.isLead()
                            ? FeedLimit.LEAD
                            : ofGrade <= feedMPerS[i] ? FeedLimit.QUALITY : FeedLimit.REQUESTED)
                    .code();
            lagM[i] = law.lagSi(feedMPerS[i]);
            toleranceM[i] = finish.lagToleranceSi();
            outsideToleranceM[i] = finish.outsideCornerToleranceSi();
            isLead[i] = finish.isLead();
            findGentleTurns(i, machine);
            fastest = Math.max(fastest, feedMPerS[i]);
        }
        fastestMPerS = fastest;
    }

    /**
     * The conditions of {@link SegmentLimits} at a turn, squared, with the sharpest turn between samples for the cosine of
     * half the turn: sin(turn/2)^2 = sin(turn)^2 / (4 cos(turn/2)^2).
     */
    private void findGentleTurns(int i, MachineLimits machine) {
        double feed2 = feedMPerS[i] * feedMPerS[i];
        double across = machine.acrossSi();
        double rounding = machine.deviationSi() * LEAST_COSINE2 * (1 + LEAST_COSINE2);
        roundedSine2[i] = 4 * LEAST_COSINE2 * across * rounding / feed2;
        double room = feed2 / (across * LEAST_COSINE2);
        roundedLength2[i] = room * room;
        // L^2 <= e (2 R + e) with R at least l/(2 sin(turn/2)), l the shorter line
        double diameter = Math.max(0, lagM[i] * lagM[i] / toleranceM[i] - toleranceM[i]);
        trackedLength2[i] = isLead[i] ? 0 : diameter * diameter / (4 * LEAST_COSINE2);
    }

    /** Whether a machine surely rounds a turn between two samples at the feed of the finish; told without a root. */
    boolean isSurelyRounded(int finish, double sine, double shorterM) {
        double sine2 = sine * sine;
        return sine2 <= roundedSine2[finish] && sine2 * roundedLength2[finish] <= shorterM * shorterM;
    }

    /** Whether the lag at a turn between two samples surely is within the tolerance at the feed of the finish. */
    boolean isSurelyTracked(int finish, double sine, double shorterM) {
        return sine * sine * trackedLength2[finish] <= shorterM * shorterM;
    }
}
