package dev.waterjet.sheet;

/** Counting on a grid. */
final class TableKernel {

    /** Part of a pitch by which a row may overrun, so that 500 mm holds fifty times 10 mm in doubles too. */
    private static final double SLACK = 1e-9;

    private TableKernel() {}

    /** How many whole pitches fit in a length; -1 if the length is negative. */
    static int fits(double lengthM, double pitchM) {
        double slackM = SLACK * pitchM;
        return lengthM < -slackM ? -1 : (int) Math.floor((lengthM + slackM) / pitchM);
    }
}
