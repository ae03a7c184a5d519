package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Stretches and points of a path that limit the feed, in the order of the path, in flat arrays and SI. Each limits the feed
 * within itself and over a reach on both sides, where the cut front comes to its lag.
 */
final class PathPlaces {

    /** Mark of a place for which no error is predicted. */
    static final double NO_ERROR = -1;

    private int count;
    private double[] startM = new double[16];
    private double[] endM = new double[16];
    private double[] feedMPerS = new double[16];
    private double[] reachM = new double[16];
    private double[] errorM = new double[16];
    private double[] toleranceM = new double[16];
    private byte[] code = new byte[16];

    int count() {
        return count;
    }

    double startM(int place) {
        return startM[place];
    }

    double endM(int place) {
        return endM[place];
    }

    double feedMPerS(int place) {
        return feedMPerS[place];
    }

    double reachM(int place) {
        return reachM[place];
    }

    /** Predicted error, or {@link #NO_ERROR}. */
    double errorM(int place) {
        return errorM[place];
    }

    double toleranceM(int place) {
        return toleranceM[place];
    }

    byte code(int place) {
        return code[place];
    }

    /** Adds an edge with its own feed. */
    void edge(double fromM, double toM, double feed, double reach, FeedLimit limit) {
        add(fromM, toM, feed, reach, limit, NO_ERROR, 0);
    }

    /** Adds a slowdown. */
    void slowdown(double fromM, double toM, Slowdown slowdown, double reach, FeedLimit limit) {
        add(fromM, toM, slowdown.feedMPerS(), reach, limit, slowdown.predictedErrorM(), slowdown.toleranceM());
    }

    private void add(
            double fromM, double toM, double feed, double reach, FeedLimit limit, double error, double tolerance) {
        if (count == startM.length) {
            int capacity = 2 * count;
            startM = Arrays.copyOf(startM, capacity);
            endM = Arrays.copyOf(endM, capacity);
            feedMPerS = Arrays.copyOf(feedMPerS, capacity);
            reachM = Arrays.copyOf(reachM, capacity);
            errorM = Arrays.copyOf(errorM, capacity);
            toleranceM = Arrays.copyOf(toleranceM, capacity);
            code = Arrays.copyOf(code, capacity);
        }
        startM[count] = fromM;
        endM[count] = toM;
        feedMPerS[count] = feed;
        reachM[count] = reach;
        errorM[count] = error;
        toleranceM[count] = tolerance;
        code[count] = (byte) limit.processCode();
        count++;
    }
}
