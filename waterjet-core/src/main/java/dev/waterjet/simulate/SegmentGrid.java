package dev.waterjet.simulate;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Arrays;

/**
 * Square cells over segments: each cell lists the segments that come within a reach of it. Only cells that hold something
 * take memory, so the size of the sheet does not matter.
 */
final class SegmentGrid {

    private static final long EMPTY = Long.MIN_VALUE;
    private static final int MAX_VISITS = 20_000_000;

    private final FootSegments segments;
    private double cellM;
    private double perCell;
    private double reachM;

    private long[] keys = new long[1024];
    /** End of the list of each slot in {@link #items}; while lists are filled, the next free place. */
    private int[] ends = new int[1024];

    private int[] counts = new int[1024];
    private int used;
    private int visits;
    private int[] items = new int[1024];

    /** List of the last cell that was found: from here ... */
    int first;
    /** ... to here, exclusive. */
    int last;

    /** Cell of the last list. */
    private long found;

    SegmentGrid(FootSegments segments) {
        this.segments = segments;
    }

    /** List item. */
    int item(int index) {
        return items[index];
    }

    /** Builds the lists afresh. */
    void build(double cell, double reach) {
        cellM = cell;
        perCell = 1 / cell;
        reachM = reach;
        found = EMPTY;
        used = 0;
        Arrays.fill(keys, EMPTY);
        Arrays.fill(counts, 0);
        visits = 0;
        for (int i = 0; i < segments.count; i++) {
            visit(i, false);
        }
        int sum = 0;
        for (int slot = 0; slot < keys.length; slot++) {
            ends[slot] = sum;
            sum += counts[slot];
        }
        if (items.length < sum) {
            items = new int[sum + sum / 2];
        }
        for (int i = 0; i < segments.count; i++) {
            visit(i, true);
        }
    }

    /** Entries of all lists. */
    int entries() {
        return visits;
    }

    /** Mean length of a list. */
    double perCell() {
        return (double) visits / Math.max(1, used);
    }

    /** Longest time that the segments of one list take together, of each no more than a length; a dwell counts in full. */
    double longestTime(double mostM) {
        double longest = 0;
        for (int slot = 0; slot < keys.length; slot++) {
            double time = 0;
            for (int i = ends[slot] - counts[slot]; i < ends[slot]; i++) {
                int k = items[i];
                time += segments.length[k] > 0
                        ? segments.pace[k] * Math.min(segments.length[k], mostM)
                        : segments.pace[k];
            }
            longest = Math.max(longest, time);
        }
        return longest;
    }

    /** Turns to the cell of a point; false if nothing is within reach of it. */
    boolean locate(double x, double y) {
        long key = key((long) Math.floor(x * perCell), (long) Math.floor(y * perCell));
        if (key != found) {
            int slot = slot(key);
            found = key;
            last = ends[slot];
            first = last - counts[slot];
        }
        return first < last;
    }

    private void visit(int i, boolean isFilling) {
        double x0 = segments.x[i];
        double y0 = segments.y[i];
        double x1 = segments.endX(i);
        double y1 = segments.endY(i);
        double dy = y1 - y0;
        long firstRow = (long) Math.floor((Math.min(y0, y1) - reachM) * perCell);
        long lastRow = (long) Math.floor((Math.max(y0, y1) + reachM) * perCell);
        for (long row = firstRow; row <= lastRow; row++) {
            double from = 0;
            double to = 1;
            if (Math.abs(dy) > cellM) {
                double a = (row * cellM - reachM - y0) / dy;
                double b = ((row + 1) * cellM + reachM - y0) / dy;
                from = Math.max(0, Math.min(a, b));
                to = Math.min(1, Math.max(a, b));
            }
            double xa = x0 + from * (x1 - x0);
            double xb = x0 + to * (x1 - x0);
            long firstColumn = (long) Math.floor((Math.min(xa, xb) - reachM) * perCell);
            long lastColumn = (long) Math.floor((Math.max(xa, xb) + reachM) * perCell);
            for (long column = firstColumn; column <= lastColumn; column++) {
                if (isFilling) {
                    items[ends[slot(key(column, row))]++] = i;
                } else {
                    count(key(column, row));
                }
            }
        }
    }

    private static long key(long column, long row) {
        return (column << 32) ^ (row & 0xffffffffL);
    }

    private int slot(long key) {
        long mixed = key * 0x9E3779B97F4A7C15L;
        int slot = (int) (mixed >>> 32) & (keys.length - 1);
        while (keys[slot] != key && keys[slot] != EMPTY) {
            slot = (slot + 1) & (keys.length - 1);
        }
        return slot;
    }

    private void count(long key) {
        visits++;
        if (visits > MAX_VISITS) {
            Require.atMost(
                    "cells along the path on which the jet acts",
                    visits,
                    MAX_VISITS,
                    Units.ONE,
                    "the lag or the path is too long for the spread of the dose; predict it in parts");
        }
        int slot = slot(key);
        if (keys[slot] == EMPTY) {
            if (2 * used >= keys.length) {
                enlarge();
                slot = slot(key);
            }
            keys[slot] = key;
            used++;
        }
        counts[slot]++;
    }

    private void enlarge() {
        long[] oldKeys = keys;
        int[] oldCounts = counts;
        keys = new long[2 * oldKeys.length];
        counts = new int[keys.length];
        ends = new int[keys.length];
        Arrays.fill(keys, EMPTY);
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldKeys[i] != EMPTY) {
                int slot = slot(oldKeys[i]);
                keys[slot] = oldKeys[i];
                counts[slot] = oldCounts[i];
            }
        }
    }
}
