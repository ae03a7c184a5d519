package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Times that each limit governs, in all and block by block. Where the motion runs at the maximum feed of the process, that
 * governs, also if the optimum over the whole path is shaped by another limit nearby; elsewhere the limit of the motion does.
 */
final class LimitTimes {

    /** A feed this near to the maximum is at it: the optimum with jerk dips a little beside a change. */
    private static final double AT_MAXIMUM = 0.98;

    private static final FeedLimit[] LIMITS = FeedLimit.values();

    private final double[] byLimitS = new double[LIMITS.length];
    private final byte[] ofBlock;

    LimitTimes(PlanBlocks blocks, MotionCurve motion) {
        ofBlock = new byte[blocks.count()];
        double[] governed = new double[byLimitS.length];
        int interval = 0;
        for (int i = 0; i < blocks.count(); i++) {
            Arrays.fill(governed, 0);
            double at = blocks.startM(i);
            while (true) {
                double until = Math.min(blocks.endM(i), motion.placeM(interval + 1));
                double time = motion.timeIn(interval, until) - motion.timeIn(interval, at);
                if (time > 0) {
                    governed[limit(blocks, i, motion, interval, (until - at) / time)] += time;
                }
                at = until;
                if (motion.placeM(interval + 1) >= blocks.endM(i) || interval == motion.intervals() - 1) {
                    break;
                }
                interval++;
            }
            for (int k = 0; k < governed.length; k++) {
                byLimitS[k] += governed[k];
                ofBlock[i] = governed[k] > governed[ofBlock[i]] ? (byte) k : ofBlock[i];
            }
        }
    }

    @SuppressWarnings("EnumOrdinal") // limits are counted by their place in the enum
    private static int limit(PlanBlocks blocks, int block, MotionCurve motion, int interval, double feed) {
        boolean isAtMaximum = feed >= AT_MAXIMUM * blocks.allowed(block);
        return FeedLimit.ofCode(isAtMaximum ? blocks.code(block) : motion.limitCode(interval))
                .ordinal();
    }

    @SuppressWarnings("EnumOrdinal") // limits are counted by their place in the enum
    double timeS(FeedLimit limit) {
        return byLimitS[limit.ordinal()];
    }

    /** Limit that governs most of the time of a block. */
    @SuppressWarnings("EnumOrdinal") // limits are counted by their place in the enum
    FeedLimit ofBlock(int block) {
        return LIMITS[ofBlock[block]];
    }
}
