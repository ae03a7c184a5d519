package dev.waterjet.part;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * Boxes along the axes in a tree: sorted into upright strips, within each strip by height, then packed sixteen to a box,
 * level by level. Flat arrays; nothing is allocated while walking.
 *
 * <p>Source: S. T. Leutenegger, M. A. Lopez, J. Edgington, "STR: a simple and efficient algorithm for R-tree packing",
 * ICDE 1997 (method from memory).
 */
public final class BoxTree {

    private static final int FAN = 16;
    private static final int MAX_LEVELS = 16;

    private final int[] order;
    /** First box of each level; level 0 holds the given boxes. */
    private final int[] levelStart;
    /** Four numbers a box: minimum x and y, maximum x and y. */
    private final double[] boxes;

    private final int levels;

    private BoxTree(int[] order, int[] levelStart, double[] boxes) {
        this.order = order;
        this.levelStart = levelStart;
        this.boxes = boxes;
        this.levels = levelStart.length - 1;
    }

    /**
     * Packs boxes.
     *
     * @param boxes four numbers a box: minimum x and y, maximum x and y, in m
     * @return the tree
     */
    public static BoxTree ofSi(double[] boxes) {
        int n = boxes.length / 4;
        int[] order = packedOrder(boxes, n);
        int[] levelStart = levelStarts(n);
        double[] packed = new double[4 * levelStart[levelStart.length - 1]];
        for (int i = 0; i < n; i++) {
            System.arraycopy(boxes, 4 * order[i], packed, 4 * i, 4);
        }
        for (int level = 1; level < levelStart.length - 1; level++) {
            for (int box = levelStart[level]; box < levelStart[level + 1]; box++) {
                int first = levelStart[level - 1] + (box - levelStart[level]) * FAN;
                int last = Math.min(first + FAN, levelStart[level]);
                System.arraycopy(packed, 4 * first, packed, 4 * box, 4);
                for (int child = first + 1; child < last; child++) {
                    packed[4 * box] = Math.min(packed[4 * box], packed[4 * child]);
                    packed[4 * box + 1] = Math.min(packed[4 * box + 1], packed[4 * child + 1]);
                    packed[4 * box + 2] = Math.max(packed[4 * box + 2], packed[4 * child + 2]);
                    packed[4 * box + 3] = Math.max(packed[4 * box + 3], packed[4 * child + 3]);
                }
            }
        }
        return new BoxTree(order, levelStart, packed);
    }

    /**
     * Returns the boxes of contours, to be packed: of many contours, few are near.
     *
     * @param contours the contours
     * @return four numbers a contour: minimum x and y, maximum x and y, in m
     */
    public static double[] boxesSi(List<Contour> contours) {
        Objects.requireNonNull(contours, "contours");
        double[] boxes = new double[4 * contours.size()];
        for (int i = 0; i < contours.size(); i++) {
            Box box = contours.get(i).box();
            boxes[4 * i] = box.minimum().xSi();
            boxes[4 * i + 1] = box.minimum().ySi();
            boxes[4 * i + 2] = box.maximum().xSi();
            boxes[4 * i + 3] = box.maximum().ySi();
        }
        return boxes;
    }

    private static int[] levelStarts(int n) {
        int[] starts = new int[MAX_LEVELS];
        int level = 0;
        int count = n;
        int sum = n;
        starts[1] = n;
        while (count > 1) {
            count = (count + FAN - 1) / FAN;
            sum += count;
            level++;
            starts[level + 1] = sum;
        }
        return Arrays.copyOf(starts, level + 2);
    }

    /** Order of boxes: strips by the middle in x, within a strip by the middle in y. */
    private static int[] packedOrder(double[] boxes, int n) {
        long[] keys = new long[n];
        for (int i = 0; i < n; i++) {
            keys[i] = key(boxes[4 * i] + boxes[4 * i + 2], i);
        }
        Arrays.sort(keys);
        int strips = (int) Math.ceil(Math.sqrt((double) n / FAN));
        int perStrip = Math.max(FAN, ((n + strips - 1) / Math.max(1, strips) + FAN - 1) / FAN * FAN);
        int[] order = new int[n];
        for (int i = 0; i < n; i++) {
            order[i] = (int) keys[i];
            keys[i] = key(boxes[4 * order[i] + 1] + boxes[4 * order[i] + 3], order[i]);
        }
        for (int first = 0; first < n; first += perStrip) {
            Arrays.sort(keys, first, Math.min(n, first + perStrip));
        }
        for (int i = 0; i < n; i++) {
            order[i] = (int) keys[i];
        }
        return order;
    }

    /** A number that sorts as the value does, with an index in its lower half. */
    private static long key(double value, int index) {
        int bits = Float.floatToIntBits((float) value);
        int sortable = bits ^ ((bits >> 31) & 0x7fffffff);
        return ((long) sortable << 32) | index;
    }

    /**
     * Returns a walk, to be used by one thread.
     *
     * @return the walk
     */
    public Walk walk() {
        return new Walk();
    }

    /** Walk over the boxes that meet a given box. */
    public final class Walk {

        private final int[] stack = new int[levels * FAN + 1];
        private int depth;
        private double x0;
        private double y0;
        private double x1;
        private double y1;

        private Walk() {}

        /**
         * Starts anew.
         *
         * @param minimumX minimum x of the box to meet, in m
         * @param minimumY minimum y in m
         * @param maximumX maximum x in m
         * @param maximumY maximum y in m
         */
        public void start(double minimumX, double minimumY, double maximumX, double maximumY) {
            narrow(minimumX, minimumY, maximumX, maximumY);
            depth = 0;
            if (order.length > 0) {
                stack[depth++] = levelStart[levels] - 1;
            }
        }

        /**
         * Narrows the box while walking.
         *
         * @param minimumX minimum x of the box to meet, in m
         * @param minimumY minimum y in m
         * @param maximumX maximum x in m
         * @param maximumY maximum y in m
         */
        public void narrow(double minimumX, double minimumY, double maximumX, double maximumY) {
            x0 = minimumX;
            y0 = minimumY;
            x1 = maximumX;
            y1 = maximumY;
        }

        /**
         * Returns the next box that meets the given one.
         *
         * @return its index; -1 if there is none left
         */
        public int next() {
            while (depth > 0) {
                int box = stack[--depth];
                if (boxes[4 * box] > x1
                        || boxes[4 * box + 1] > y1
                        || boxes[4 * box + 2] < x0
                        || boxes[4 * box + 3] < y0) {
                    continue;
                }
                if (box < levelStart[1]) {
                    return order[box];
                }
                int level = levelOf(box);
                int first = levelStart[level - 1] + (box - levelStart[level]) * FAN;
                int last = Math.min(first + FAN, levelStart[level]);
                for (int child = last - 1; child >= first; child--) {
                    stack[depth++] = child;
                }
            }
            return -1;
        }

        private int levelOf(int box) {
            int level = 1;
            while (box >= levelStart[level + 1]) {
                level++;
            }
            return level;
        }
    }
}
