package dev.waterjet.hydraulics;

/** Flow of direct-drive pumps over one turn, told in their mean flow. */
final class CrankKernel {

    private static final int STEPS = 7200;

    private CrankKernel() {}

    /** Flow at an angle over the mean flow: pi/n times the sum of the pushing plungers' sin a + (ratio/2) sin 2a. */
    private static double flow(int plungers, double rodRatio, double angle) {
        double sum = 0;
        for (int i = 0; i < plungers; i++) {
            double a = angle + 2 * Math.PI * i / plungers;
            sum += Math.max(0, Math.sin(a) + rodRatio / 2 * Math.sin(2 * a));
        }
        return Math.PI / plungers * sum;
    }

    /** Highest less lowest flow over the mean. */
    static double swing(int plungers, double rodRatio) {
        double highest = 0;
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < STEPS; i++) {
            double flow = flow(plungers, rodRatio, 2 * Math.PI * i / STEPS);
            highest = Math.max(highest, flow);
            lowest = Math.min(lowest, flow);
        }
        return highest - lowest;
    }

    /** Largest swing of the volume that has come, against an even flow, over the volume of a turn. */
    static double gap(int plungers, double rodRatio) {
        double sum = 0;
        double highest = 0;
        double lowest = 0;
        for (int i = 0; i < STEPS; i++) {
            // middle of each step
            sum += (flow(plungers, rodRatio, 2 * Math.PI * (i + 0.5) / STEPS) - 1) / STEPS;
            highest = Math.max(highest, sum);
            lowest = Math.min(lowest, sum);
        }
        return highest - lowest;
    }
}
