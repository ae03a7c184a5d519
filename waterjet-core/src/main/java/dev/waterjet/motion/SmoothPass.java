package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Makes caps reachable with jerk. Acceleration is zero at the ends of a run; neighbouring spans whose caps differ by at
 * most a tenth share one run at the lowest of them, so that fine samples of a curve do not stop the acceleration at each.
 */
final class SmoothPass {

    private static final double SAME_RUN = 1.1;

    private final MotionProfile motion;
    private final double jerk;
    private int runs;
    /** First span of each run. */
    private int[] first;

    private double[] cap;
    private double[] acceleration;
    private double[] length;
    private byte[] limit;
    private double[] node;

    private SmoothPass(Segments spans, double jerk) {
        this.motion = new MotionProfile(spans, jerk);
        this.jerk = jerk;
        int room = 16;
        first = new int[room + 1];
        cap = new double[room];
        acceleration = new double[room];
        length = new double[room];
        limit = new byte[room];
        node = new double[room + 1];
    }

    static MotionProfile run(Segments spans, double jerkMPerS3) {
        SmoothPass pass = new SmoothPass(spans, jerkMPerS3);
        pass.gather();
        pass.reach();
        pass.time();
        return pass.motion;
    }

    private void gather() {
        int n = motion.count;
        int i = 0;
        while (i < n) {
            double lowest = motion.capMPerS[i];
            double highest = lowest;
            double weakest = motion.accelerationMPerS2[i];
            double sum = motion.lengthM[i];
            byte why = motion.limit[i];
            int start = i;
            for (i++; i < n; i++) {
                double atNode = motion.nodeMPerS[i];
                double next = Math.min(atNode, motion.capMPerS[i]);
                double highestThen = Math.max(highest, motion.capMPerS[i]);
                if (highestThen > SAME_RUN * Math.min(lowest, next)) {
                    break;
                }
                if (next < lowest) {
                    lowest = next;
                    why = atNode < motion.capMPerS[i] ? motion.nodeLimit[i] : motion.limit[i];
                }
                highest = highestThen;
                weakest = Math.min(weakest, motion.accelerationMPerS2[i]);
                sum += motion.lengthM[i];
            }
            add(start, lowest, weakest, sum, why);
        }
        first[runs] = n;
        motion.runFirst = Arrays.copyOf(first, runs);
    }

    private void add(int start, double lowest, double weakest, double sum, byte why) {
        if (runs == cap.length) {
            int room = 2 * runs;
            first = Arrays.copyOf(first, room + 1);
            cap = Arrays.copyOf(cap, room);
            acceleration = Arrays.copyOf(acceleration, room);
            length = Arrays.copyOf(length, room);
            limit = Arrays.copyOf(limit, room);
            node = Arrays.copyOf(node, room + 1);
        }
        first[runs] = start;
        cap[runs] = lowest;
        acceleration[runs] = weakest;
        length[runs] = sum;
        limit[runs] = why;
        runs++;
    }

    private void reach() {
        node[0] = motion.nodeMPerS[0];
        for (int k = 0; k < runs; k++) {
            double most =
                    Math.min(motion.nodeMPerS[first[k + 1]], k + 1 < runs ? Math.min(cap[k], cap[k + 1]) : cap[k]);
            node[k + 1] = reachable(k, node[k], most);
        }
        for (int k = runs - 1; k >= 0; k--) {
            node[k] = reachable(k, node[k + 1], node[k]);
        }
    }

    /** The speed that a run leads to from one end to the other, at most a given one. */
    private double reachable(int run, double from, double most) {
        return most <= from || RampKernel.rampLength(from, most, acceleration[run], jerk) <= length[run]
                ? most
                : RampKernel.rampReach(from, length[run], acceleration[run], jerk);
    }

    private void time() {
        SmoothRun run = new SmoothRun();
        double total = 0;
        for (int k = 0; k < runs; k++) {
            run.set(node[k], node[k + 1], cap[k], length[k], acceleration[k], jerk);
            double runTime = run.time();
            double place = 0;
            double before = 0;
            motion.nodeMPerS[first[k]] = node[k];
            for (int i = first[k]; i < first[k + 1]; i++) {
                boolean isLast = i == first[k + 1] - 1;
                double until = place + motion.lengthM[i];
                double after = isLast ? runTime : run.timeAt(until);
                motion.nodeMPerS[i + 1] = isLast ? node[k + 1] : run.speedAt(until);
                double steady = Math.min(until, run.downStart()) - Math.max(place, run.upLength());
                motion.timeS[i] = after - before;
                motion.peakMPerS[i] = steady >= 0 ? run.peak() : Math.max(motion.nodeMPerS[i], motion.nodeMPerS[i + 1]);
                motion.atCapS[i] = steady > 0 && run.peak() >= cap[k] ? steady / run.peak() : 0;
                motion.capMPerS[i] = cap[k];
                motion.limit[i] = limit[k];
                motion.accelerationMPerS2[i] = acceleration[k];
                place = until;
                before = after;
            }
            total += runTime;
        }
        motion.totalS = total;
    }
}
