package dev.waterjet.program;

import java.util.Arrays;

/** Numbered points in a hashed grid, found again within a radius. */
final class PointIndex {

    private static final int NONE = -1;

    /** Cells are wider than the radius, so that most circles lie in one. */
    private static final double CELL_RADII = 8;

    private final double radiusM;
    private final double cellM;
    private final double[] x;
    private final double[] y;

    /** Numbers of the points; they may be replaced. */
    private final int[] number;

    /** The last point of each slot of the table, and the point before each. */
    private final int[] last;

    private final int[] before;
    private int count;

    /** An empty index for up to a number of points. */
    PointIndex(int capacity, double radiusM) {
        this.radiusM = radiusM;
        this.cellM = CELL_RADII * radiusM;
        this.x = new double[capacity];
        this.y = new double[capacity];
        this.number = new int[capacity];
        this.before = new int[capacity];
        this.last = new int[Integer.highestOneBit(Math.max(1, capacity)) * 2];
        Arrays.fill(last, NONE);
    }

    void add(double pointX, double pointY, int pointNumber) {
        int slot = slot(cell(pointX), cell(pointY));
        x[count] = pointX;
        y[count] = pointY;
        number[count] = pointNumber;
        before[count] = last[slot];
        last[slot] = count++;
    }

    /** The least number of a point within the radius; -1 if there is none. */
    int find(double atX, double atY) {
        int point = nearest(atX, atY);
        return point == NONE ? NONE : number[point];
    }

    /** Replaces the number that {@link #find} gives there. */
    void replace(double atX, double atY, int pointNumber) {
        number[nearest(atX, atY)] = pointNumber;
    }

    private int nearest(double atX, double atY) {
        int best = NONE;
        for (long column = cell(atX - radiusM); column <= cell(atX + radiusM); column++) {
            for (long row = cell(atY - radiusM); row <= cell(atY + radiusM); row++) {
                for (int i = last[slot(column, row)]; i != NONE; i = before[i]) {
                    boolean isEarlier = best == NONE || number[i] < number[best];
                    if (isEarlier && Math.hypot(atX - x[i], atY - y[i]) <= radiusM) {
                        best = i;
                    }
                }
            }
        }
        return best;
    }

    private long cell(double coordinateM) {
        return (long) Math.floor(coordinateM / cellM);
    }

    /** Fibonacci hashing: neighbours lie far apart in the table. */
    private int slot(long column, long row) {
        long mixed = (column * 0x9E3779B97F4A7C15L + row) * 0xD1B54A32D192ED03L;
        return (int) (mixed >>> 40) & (last.length - 1);
    }
}
