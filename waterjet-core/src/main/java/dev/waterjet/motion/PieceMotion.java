package dev.waterjet.motion;

/**
 * Motion on each piece of a path: feeds at its ends, the greatest one in between, and the time. In flat arrays, in SI, by
 * index of the piece.
 */
final class PieceMotion {

    final double[] entryMPerS;
    final double[] peakMPerS;
    final double[] exitMPerS;
    final double[] timeS;

    private PieceMotion(int pieces) {
        entryMPerS = new double[pieces];
        peakMPerS = new double[pieces];
        exitMPerS = new double[pieces];
        timeS = new double[pieces];
    }

    /**
     * Sums a motion up by stretches.
     *
     * @param motion motion along the path
     * @param endsM distances of the ends of the stretches from the start, rising; the last one is that of the path
     */
    static PieceMotion of(MotionCurve motion, double[] endsM) {
        PieceMotion sum = new PieceMotion(endsM.length);
        int interval = 0;
        double at = 0;
        double feed = motion.feedIn(0, 0);
        for (int i = 0; i < endsM.length; i++) {
            double end = Math.min(endsM[i], motion.lengthM());
            double entered = motion.timeIn(interval, at);
            double peak = feed;
            double before = entered;
            int first = interval;
            while (true) {
                double until = Math.min(end, motion.placeM(interval + 1));
                double time = motion.timeIn(interval, until);
                feed = motion.feedIn(interval, until);
                peak = Math.max(peak, feed);
                before = time;
                if (motion.placeM(interval + 1) >= end || interval == motion.intervals() - 1) {
                    break;
                }
                interval++;
            }
            sum.entryMPerS[i] = motion.feedIn(first, at);
            sum.peakMPerS[i] = peak;
            sum.exitMPerS[i] = feed;
            sum.timeS[i] = before - entered;
            at = end;
        }
        return sum;
    }
}
