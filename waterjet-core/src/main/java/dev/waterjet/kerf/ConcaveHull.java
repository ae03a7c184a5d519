package dev.waterjet.kerf;

import java.util.Arrays;

/** Least concave line above points (monotone chain). */
final class ConcaveHull {

    private ConcaveHull() {}

    /**
     * Corners of the hull.
     *
     * @param x ascending
     * @param y as many
     * @return indices of the points that are corners, ascending; the first and the last point are among them
     */
    static int[] corners(double[] x, double[] y) {
        int[] corners = new int[x.length];
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            while (count >= 2 && !isAbove(x, y, corners[count - 2], corners[count - 1], i)) {
                count--;
            }
            corners[count++] = i;
        }
        return Arrays.copyOf(corners, count);
    }

    /** Whether the middle one of three points is above the chord of the other two. */
    private static boolean isAbove(double[] x, double[] y, int first, int middle, int last) {
        return (y[middle] - y[first]) * (x[last] - x[first]) > (y[last] - y[first]) * (x[middle] - x[first]);
    }
}
