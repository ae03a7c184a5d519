package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Displacement of the jet over depth that a path wants, over time: linear pieces with jumps between them, in flat arrays.
 * Before its first time and after its last one it is constant. In s.
 */
final class WantedTilt {

    private int count;
    private double[] timeS = new double[65];
    private double[] startX = new double[64];
    private double[] startY = new double[64];
    private double[] endX = new double[64];
    private double[] endY = new double[64];
    /** Integrals from the first time to each time. */
    private double[] sumX = new double[65];

    private double[] sumY = new double[65];

    /** Adds a piece that ends at a time after the one before. */
    void add(double untilS, double fromX, double fromY, double toX, double toY) {
        if (count == startX.length) {
            grow();
        }
        double spent = untilS - timeS[count];
        startX[count] = fromX;
        startY[count] = fromY;
        endX[count] = toX;
        endY[count] = toY;
        sumX[count + 1] = sumX[count] + spent * (fromX + toX) / 2;
        sumY[count + 1] = sumY[count] + spent * (fromY + toY) / 2;
        timeS[++count] = untilS;
    }

    private void grow() {
        int room = 2 * count;
        timeS = Arrays.copyOf(timeS, room + 1);
        sumX = Arrays.copyOf(sumX, room + 1);
        sumY = Arrays.copyOf(sumY, room + 1);
        startX = Arrays.copyOf(startX, room);
        startY = Arrays.copyOf(startY, room);
        endX = Arrays.copyOf(endX, room);
        endY = Arrays.copyOf(endY, room);
    }

    int pieces() {
        return count;
    }

    /** Time at which a piece starts; of the number of pieces the last time. */
    double timeS(int piece) {
        return timeS[piece];
    }

    double endS() {
        return timeS[count];
    }

    /** Largest displacement. */
    double largest() {
        double most = 0;
        for (int i = 0; i < count; i++) {
            most = Math.max(most, Math.max(Math.hypot(startX[i], startY[i]), Math.hypot(endX[i], endY[i])));
        }
        return most;
    }

    /** Largest jump from a piece to the next. */
    double largestJump() {
        double most = 0;
        for (int i = 1; i < count; i++) {
            most = Math.max(most, Math.hypot(startX[i] - endX[i - 1], startY[i] - endY[i - 1]));
        }
        return most;
    }

    private int piece(double atS) {
        int found = Arrays.binarySearch(timeS, 0, count + 1, atS);
        return Math.max(0, Math.min(count - 1, found >= 0 ? found : -found - 2));
    }

    private static double between(double from, double to, double share) {
        return from + Math.max(0, Math.min(1, share)) * (to - from);
    }

    private double share(int piece, double atS) {
        return (atS - timeS[piece]) / (timeS[piece + 1] - timeS[piece]);
    }

    double x(double atS) {
        int i = piece(atS);
        return between(startX[i], endX[i], share(i, atS));
    }

    double y(double atS) {
        int i = piece(atS);
        return between(startY[i], endY[i], share(i, atS));
    }

    /** Value at the start of a piece, or just before it. */
    double xAt(int piece, boolean isBefore) {
        return isStart(piece, isBefore) ? startX[piece] : endX[piece - 1];
    }

    /** Value at the start of a piece, or just before it. */
    double yAt(int piece, boolean isBefore) {
        return isStart(piece, isBefore) ? startY[piece] : endY[piece - 1];
    }

    /** Whether the value is that of the start of a piece: before the first one it is constant, behind the last one too. */
    private boolean isStart(int piece, boolean isBefore) {
        return piece == 0 || (!isBefore && piece < count);
    }

    /** Integral of x from the first time. */
    double integralX(double atS) {
        int i = piece(atS);
        return integral(i, atS, sumX[i], startX[i], endX[i]);
    }

    /** Integral of y from the first time. */
    double integralY(double atS) {
        int i = piece(atS);
        return integral(i, atS, sumY[i], startY[i], endY[i]);
    }

    private double integral(int i, double atS, double sum, double start, double end) {
        double passed = atS - timeS[i];
        double length = timeS[i + 1] - timeS[i];
        if (passed < 0) {
            return sum + passed * start;
        }
        double within = Math.min(passed, length);
        double slope = (end - start) / length;
        return sum + within * (start + slope * within / 2) + (passed - within) * end;
    }
}
