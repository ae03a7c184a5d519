package dev.waterjet.simulate;

import java.util.Arrays;

/**
 * Room behind each point of a contour: radius of the largest disc in the part that touches the contour there, up to a limit.
 * A search farther inwards would cross the part and find the cut along another edge.
 */
final class PartRoom {

    private static final int MAX_CELLS_BESIDE = 3;

    private final ContourPoints points;
    private final double limitM;
    private final double cellM;
    private final long[] keys;
    private final int[] order;

    PartRoom(ContourPoints points, double limitM) {
        this.points = points;
        this.limitM = limitM;
        this.cellM = 2 * limitM / MAX_CELLS_BESIDE;
        this.keys = new long[points.count];
        this.order = new int[points.count];
        for (int i = 0; i < points.count; i++) {
            keys[i] = key(column(points.x[i]), column(points.y[i]));
        }
        Arrays.sort(keys);
        int[] taken = new int[points.count];
        for (int i = 0; i < points.count; i++) {
            int at = firstNotBelow(key(column(points.x[i]), column(points.y[i])));
            order[at + taken[at]++] = i;
        }
    }

    /** Place of the first key that is a given one or above. */
    private int firstNotBelow(long key) {
        int low = 0;
        int high = keys.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (keys[middle] < key) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private long column(double value) {
        return (long) Math.floor(value / cellM);
    }

    /** Cells in one row have neighbouring keys. */
    private static long key(long column, long row) {
        return (row << 32) + column;
    }

    /** Radius of the largest disc behind a point. */
    double behind(int i) {
        double atX = points.x[i];
        double atY = points.y[i];
        long firstColumn = column(atX - 2 * limitM);
        long lastColumn = column(atX + 2 * limitM);
        double least = limitM;
        for (long row = column(atY - 2 * limitM); row <= column(atY + 2 * limitM); row++) {
            int k = firstNotBelow(key(firstColumn, row));
            long end = key(lastColumn, row);
            for (; k < keys.length && keys[k] <= end; k++) {
                int j = order[k];
                double dx = points.x[j] - atX;
                double dy = points.y[j] - atY;
                double inwards = -(dx * points.normalX[i] + dy * points.normalY[i]);
                if (inwards > 0 && dx * dx + dy * dy < 2 * inwards * least) {
                    least = (dx * dx + dy * dy) / (2 * inwards);
                }
            }
        }
        return least;
    }
}
