package dev.waterjet.motion;

/** Makes caps reachable by steady acceleration: a walk forward, a walk back, then the time of each block. */
final class TrapezoidPass {

    private TrapezoidPass() {}

    static MotionProfile run(Segments spans) {
        MotionProfile motion = new MotionProfile(spans, Double.POSITIVE_INFINITY);
        int n = motion.count;
        double[] node = motion.nodeMPerS;
        double[] cap = motion.capMPerS;
        double[] acceleration = motion.accelerationMPerS2;
        double[] length = motion.lengthM;
        // squares of speeds: v1^2 = v0^2 + 2 a s
        double square = node[0] * node[0];
        node[0] = square;
        for (int i = 0; i < n; i++) {
            double limit = Math.min(node[i + 1], i + 1 < n ? Math.min(cap[i], cap[i + 1]) : cap[i]);
            square = Math.min(limit * limit, square + 2 * acceleration[i] * length[i]);
            node[i + 1] = square;
        }
        for (int i = n - 1; i >= 0; i--) {
            square = Math.min(node[i], square + 2 * acceleration[i] * length[i]);
            node[i] = square;
        }
        double total = 0;
        double entry = Math.sqrt(node[0]);
        for (int i = 0; i < n; i++) {
            double entry2 = node[i];
            double exit2 = node[i + 1];
            double exit = Math.sqrt(exit2);
            node[i] = entry;
            double a = acceleration[i];
            double cap2 = cap[i] * cap[i];
            double peak2 = (entry2 + exit2) / 2 + a * length[i];
            double peak;
            if (peak2 >= cap2) {
                peak = cap[i];
                double steady = length[i] - (2 * cap2 - entry2 - exit2) / (2 * a);
                motion.atCapS[i] = Math.max(0, steady) / peak;
            } else {
                peak = Math.max(Math.sqrt(peak2), Math.max(entry, exit));
            }
            motion.peakMPerS[i] = peak;
            double time = motion.atCapS[i] + (2 * peak - entry - exit) / a;
            motion.timeS[i] = time;
            total += time;
            entry = exit;
        }
        node[n] = entry;
        motion.totalS = total;
        return motion;
    }
}
