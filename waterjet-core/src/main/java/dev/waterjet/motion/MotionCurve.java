package dev.waterjet.motion;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Units;
import java.util.Arrays;

/**
 * Motion along a path: the square of the feed at nodes, linear over the distance in between, which is constant
 * acceleration; the time at each node; the limit that governs each interval. In SI, in flat arrays.
 */
final class MotionCurve {

    private int intervals;
    private double[] placeM;
    private double[] square;
    private double[] timeS;
    private byte[] limit;
    private double lastSpeed;

    /** A motion that starts at rest and has a room for some intervals; it grows as needed. */
    MotionCurve(int capacity) {
        int room = Math.max(4, capacity);
        placeM = new double[room + 1];
        square = new double[room + 1];
        timeS = new double[room + 1];
        limit = new byte[room];
    }

    /**
     * Adds an interval of constant acceleration.
     *
     * @param endM distance of its end from the start of the path
     * @param endSquare square of the feed there
     * @param why code of the governing limit
     */
    void add(double endM, double endSquare, byte why) {
        int n = intervals;
        if (n > 0 && limit[n - 1] == why && square[n] == endSquare && square[n - 1] == endSquare) {
            timeS[n] += (endM - placeM[n]) / lastSpeed;
            placeM[n] = endM;
            return;
        }
        if (n == limit.length) {
            grow();
        }
        double speed = Math.sqrt(endSquare);
        timeS[n + 1] = timeS[n] + 2 * (endM - placeM[n]) / (lastSpeed + speed);
        placeM[n + 1] = endM;
        square[n + 1] = endSquare;
        limit[n] = why;
        lastSpeed = speed;
        intervals++;
    }

    private void grow() {
        int room = 2 * intervals;
        placeM = Arrays.copyOf(placeM, room + 1);
        square = Arrays.copyOf(square, room + 1);
        timeS = Arrays.copyOf(timeS, room + 1);
        limit = Arrays.copyOf(limit, room);
    }

    int intervals() {
        return intervals;
    }

    double placeM(int node) {
        return placeM[node];
    }

    /** Square of the feed at a node. */
    double square(int node) {
        return square[node];
    }

    double timeS(int node) {
        return timeS[node];
    }

    byte limitCode(int interval) {
        return limit[interval];
    }

    GoverningLimit limit(int interval) {
        return GoverningLimit.ofCode(limit[interval]);
    }

    double lengthM() {
        return placeM[intervals];
    }

    double timeS() {
        return timeS[intervals];
    }

    /** Acceleration along the path within an interval. */
    double acceleration(int interval) {
        return (square[interval + 1] - square[interval]) / (2 * (placeM[interval + 1] - placeM[interval]));
    }

    /** Interval that contains a place; the one before it if the place is a node. */
    int intervalAt(double atM) {
        if (!(atM >= 0 && atM <= lengthM())) {
            throw new DomainException(
                    "distance along the path",
                    atM,
                    atM < 0 ? "at least" : "at most",
                    atM < 0 ? 0 : lengthM(),
                    Units.MILLIMETRE,
                    "");
        }
        int found = Arrays.binarySearch(placeM, 0, intervals + 1, atM);
        return Math.max(0, (found >= 0 ? found : -found - 1) - 1);
    }

    double feedAt(double atM) {
        return feedIn(intervalAt(atM), atM);
    }

    double timeAt(double atM) {
        return timeIn(intervalAt(atM), atM);
    }

    /** Place at a time. */
    double placeAt(double atS) {
        int found = Arrays.binarySearch(timeS, 0, intervals + 1, atS);
        return placeIn(Math.max(0, Math.min(intervals - 1, found >= 0 ? found : -found - 2)), atS);
    }

    /** Place at a time within an interval. */
    double placeIn(int interval, double atS) {
        double passed = Math.max(0, atS - timeS[interval]);
        double way = passed * (Math.sqrt(square[interval]) + acceleration(interval) * passed / 2);
        return Math.max(placeM[interval], Math.min(placeM[interval] + way, placeM[interval + 1]));
    }

    /** Feed at a place within an interval. */
    double feedIn(int interval, double atM) {
        return Math.sqrt(squareIn(interval, atM));
    }

    double squareIn(int interval, double atM) {
        double length = placeM[interval + 1] - placeM[interval];
        double share = length > 0 ? Math.min(1, Math.max(0, (atM - placeM[interval]) / length)) : 0;
        return square[interval] + share * (square[interval + 1] - square[interval]);
    }

    /** Time at a place within an interval. */
    double timeIn(int interval, double atM) {
        double done = atM - placeM[interval];
        return done == 0
                ? timeS[interval]
                : timeS[interval] + 2 * done / (Math.sqrt(square[interval]) + Math.sqrt(squareIn(interval, atM)));
    }
}
