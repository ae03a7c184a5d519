package dev.waterjet.motion;

import java.util.Arrays;

/** Speed and time within one block, in m, s. Where jerk is limited, the run that the block belongs to is made up again. */
final class BlockProfile {

    private final MotionProfile motion;
    private final SmoothRun run = new SmoothRun();
    private int block = -1;
    private int runNumber = -1;
    /** Distance from the start of the run to the start of the block. */
    private double beforeM;

    BlockProfile(MotionProfile motion) {
        this.motion = motion;
    }

    /** Turns to a block. */
    BlockProfile block(int index) {
        if (motion.runFirst.length > 0 && index != block) {
            int found = Arrays.binarySearch(motion.runFirst, index);
            int number = found >= 0 ? found : -found - 2;
            if (number != runNumber || index < block) {
                enterRun(number);
                block = motion.runFirst[number];
            }
            while (block < index) {
                beforeM += motion.lengthM[block++];
            }
        }
        block = index;
        return this;
    }

    private void enterRun(int number) {
        int first = motion.runFirst[number];
        int end = number + 1 < motion.runFirst.length ? motion.runFirst[number + 1] : motion.count;
        double length = 0;
        for (int i = first; i < end; i++) {
            length += motion.lengthM[i];
        }
        run.set(
                motion.nodeMPerS[first],
                motion.nodeMPerS[end],
                motion.capMPerS[first],
                length,
                motion.accelerationMPerS2[first],
                motion.jerkMPerS3);
        runNumber = number;
        beforeM = 0;
    }

    private boolean isSmooth() {
        return motion.runFirst.length > 0;
    }

    /** Where in the block the feed is greatest. */
    double peakPlace() {
        if (isSmooth()) {
            return Math.max(0, Math.min(motion.lengthM[block], run.upLength() - beforeM));
        }
        double peak = motion.peakMPerS[block];
        double entry = motion.nodeMPerS[block];
        double place = (peak - entry) * (peak + entry) / (2 * motion.accelerationMPerS2[block]);
        return Math.min(motion.lengthM[block], place);
    }

    double speed(double atM) {
        if (isSmooth()) {
            return run.speedAt(beforeM + atM);
        }
        double entry = motion.nodeMPerS[block];
        double exit = motion.nodeMPerS[block + 1];
        double twice = 2 * motion.accelerationMPerS2[block];
        double square = Math.min(entry * entry + twice * atM, exit * exit + twice * (motion.lengthM[block] - atM));
        return Math.min(motion.peakMPerS[block], Math.sqrt(square));
    }

    /** Time from the start of the block. */
    double time(double atM) {
        if (isSmooth()) {
            return run.timeAt(beforeM + atM) - run.timeAt(beforeM);
        }
        double entry = motion.nodeMPerS[block];
        double exit = motion.nodeMPerS[block + 1];
        double peak = motion.peakMPerS[block];
        double a = motion.accelerationMPerS2[block];
        double up = (peak - entry) * (peak + entry) / (2 * a);
        double down = (peak - exit) * (peak + exit) / (2 * a);
        double here = speed(atM);
        if (atM <= up) {
            return (here - entry) / a;
        }
        if (atM <= motion.lengthM[block] - down) {
            return (peak - entry) / a + (atM - up) / peak;
        }
        return motion.timeS[block] - (here - exit) / a;
    }
}
