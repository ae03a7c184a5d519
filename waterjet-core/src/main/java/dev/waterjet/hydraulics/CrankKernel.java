package dev.waterjet.hydraulics;

/** Flow of plungers on one crankshaft over one turn, relative to its mean. */
final class CrankKernel {

    private static final int STEPS = 7200;

    private CrankKernel() {}

    /** Flow at an angle over the mean flow: pi/n times the sum of sin a + (ratio/2) sin 2a over the delivering plungers. */
    private static double flow(int plungers, double rodRatio, double angle) {
        double sum = 0;
        for (int i = 0; i < plungers; i++) {
            double a = angle + 2 * Math.PI * i / plungers;
            sum += Math.max(0, Math.sin(a) + rodRatio / 2 * Math.sin(2 * a));
        }
        return Math.PI / plungers * sum;
    }

    /** Flow ripple, peak to peak, over the mean flow. */
    static double ripple(int plungers, double rodRatio) {
        double maximum = 0;
        double minimum = Double.POSITIVE_INFINITY;
        for (int i = 0; i < STEPS; i++) {
            double flow = flow(plungers, rodRatio, 2 * Math.PI * i / STEPS);
            maximum = Math.max(maximum, flow);
            minimum = Math.min(minimum, flow);
        }
        return maximum - minimum;
    }

    /** Fluctuation, peak to peak, of the delivered volume about that of a constant flow, over the volume of one turn. */
    static double fluctuation(int plungers, double rodRatio) {
        double sum = 0;
        double maximum = 0;
        double minimum = 0;
        for (int i = 0; i < STEPS; i++) {
            // middle of each step
            sum += (flow(plungers, rodRatio, 2 * Math.PI * (i + 0.5) / STEPS) - 1) / STEPS;
            maximum = Math.max(maximum, sum);
            minimum = Math.min(minimum, sum);
        }
        return maximum - minimum;
    }
}
