package dev.waterjet.motion;

import java.util.Arrays;

/** Symmetric positive definite matrix with two diagonals on either side of the main one, and its factors L D L^T. */
final class BandMatrix {

    final double[] diagonal;
    /** Entries (i, i + 1). */
    final double[] first;
    /** Entries (i, i + 2). */
    final double[] second;

    private final double[] pivot;
    private final double[] lower1;
    private final double[] lower2;

    BandMatrix(int capacity) {
        int room = capacity + 2;
        diagonal = new double[room];
        first = new double[room];
        second = new double[room];
        pivot = new double[room];
        lower1 = new double[room];
        lower2 = new double[room];
    }

    void clear(int size) {
        Arrays.fill(diagonal, 0, size, 0);
        Arrays.fill(first, 0, size, 0);
        Arrays.fill(second, 0, size, 0);
    }

    /** Factors the rows and columns from one index up to and including another. */
    void factor(int from, int to) {
        double d1 = 0;
        double d2 = 0;
        double l1 = 0;
        double l2 = 0;
        double l2Before = 0;
        for (int i = from; i <= to; i++) {
            // d1, l1, l2: pivot and factors of the row before; d2, l2Before: of the one before that
            double u1 = l1 * d1;
            double d = diagonal[i] - u1 * l1 - l2Before * l2Before * d2;
            double inverse = 1 / d;
            double next1 = (first[i] - u1 * l2) * inverse;
            pivot[i] = inverse;
            lower1[i] = next1;
            l2Before = l2;
            l2 = second[i] * inverse;
            lower2[i] = l2;
            l1 = next1;
            d2 = d1;
            d1 = d;
        }
    }

    /** Solves for a right side, in place, between the same indices as {@link #factor}. */
    void solve(double[] right, int from, int to) {
        double before = 0;
        double before2 = 0;
        double l1 = 0;
        double l2 = 0;
        double l2Before = 0;
        for (int i = from; i <= to; i++) {
            double value = right[i] - l1 * before - l2Before * before2;
            right[i] = value;
            before2 = before;
            before = value;
            l2Before = l2;
            l1 = lower1[i];
            l2 = lower2[i];
        }
        double after = 0;
        double after2 = 0;
        for (int i = to; i >= from; i--) {
            double value = right[i] * pivot[i] - lower1[i] * after - lower2[i] * after2;
            right[i] = value;
            after2 = after;
            after = value;
        }
    }
}
