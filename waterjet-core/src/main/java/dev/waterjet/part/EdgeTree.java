package dev.waterjet.part;

import java.util.Arrays;

/**
 * The edges of a contour in a tree of boxes: sorted into upright strips, within each strip by height, then packed
 * sixteen to a box, level by level. Flat arrays; nothing is allocated while asking.
 *
 * <p>Source: S. T. Leutenegger, M. A. Lopez, J. Edgington, "STR: a simple and efficient algorithm for R-tree packing",
 * ICDE 1997 (method from memory).
 */
public final class EdgeTree {

    private static final int FAN = 16;
    private static final int DEEPEST = 16;

    private final Contour contour;
    private final int[] order;
    /** First box of each level; level 0 holds the edges themselves. */
    private final int[] levelStart;
    /** Four numbers a box: lowest x and y, highest x and y. */
    private final double[] boxes;

    private final int levels;

    private EdgeTree(Contour contour, int[] order, int[] levelStart, double[] boxes) {
        this.contour = contour;
        this.order = order;
        this.levelStart = levelStart;
        this.boxes = boxes;
        this.levels = levelStart.length - 1;
    }

    public static EdgeTree of(Contour contour) {
        int n = contour.size();
        double[] edgeBoxes = new double[4 * n];
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < n; i++) {
            contour.load(i, edge);
            edgeBoxes[4 * i] = edge.minimumX();
            edgeBoxes[4 * i + 1] = edge.minimumY();
            edgeBoxes[4 * i + 2] = edge.maximumX();
            edgeBoxes[4 * i + 3] = edge.maximumY();
        }
        int[] order = packedOrder(edgeBoxes, n);
        int[] levelStart = levelStarts(n);
        double[] boxes = new double[4 * levelStart[levelStart.length - 1]];
        for (int i = 0; i < n; i++) {
            System.arraycopy(edgeBoxes, 4 * order[i], boxes, 4 * i, 4);
        }
        for (int level = 1; level < levelStart.length - 1; level++) {
            for (int box = levelStart[level]; box < levelStart[level + 1]; box++) {
                int first = levelStart[level - 1] + (box - levelStart[level]) * FAN;
                int last = Math.min(first + FAN, levelStart[level]);
                System.arraycopy(boxes, 4 * first, boxes, 4 * box, 4);
                for (int child = first + 1; child < last; child++) {
                    boxes[4 * box] = Math.min(boxes[4 * box], boxes[4 * child]);
                    boxes[4 * box + 1] = Math.min(boxes[4 * box + 1], boxes[4 * child + 1]);
                    boxes[4 * box + 2] = Math.max(boxes[4 * box + 2], boxes[4 * child + 2]);
                    boxes[4 * box + 3] = Math.max(boxes[4 * box + 3], boxes[4 * child + 3]);
                }
            }
        }
        return new EdgeTree(contour, order, levelStart, boxes);
    }

    private static int[] levelStarts(int n) {
        int[] starts = new int[DEEPEST];
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

    /** Order of edges: strips by the middle in x, within a strip by the middle in y. */
    private static int[] packedOrder(double[] boxes, int n) {
        long[] keys = new long[n];
        for (int i = 0; i < n; i++) {
            keys[i] = key(boxes[4 * i] + boxes[4 * i + 2], i);
        }
        Arrays.sort(keys);
        int strips = (int) Math.ceil(Math.sqrt((double) n / FAN));
        int perStrip = Math.max(FAN, ((n + strips - 1) / strips + FAN - 1) / FAN * FAN);
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

    public Contour contour() {
        return contour;
    }

    /** Walks the edges whose boxes meet a given box. */
    public final class Walk {

        private final int[] stack = new int[DEEPEST * FAN + 1];
        private int depth;
        private double x0;
        private double y0;
        private double x1;
        private double y1;

        public void start(double lowestX, double lowestY, double highestX, double highestY) {
            x0 = lowestX;
            y0 = lowestY;
            x1 = highestX;
            y1 = highestY;
            depth = 0;
            stack[depth++] = levelStart[levels] - 1;
        }

        /** Narrows the box while walking. */
        void narrow(double lowestX, double lowestY, double highestX, double highestY) {
            x0 = lowestX;
            y0 = lowestY;
            x1 = highestX;
            y1 = highestY;
        }

        /** The next edge, or -1. */
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

    public Walk walk() {
        return new Walk();
    }

    /** Shortest distance to another tree's contour. */
    public double clearance(EdgeTree other) {
        EdgeCursor mine = new EdgeCursor();
        EdgeCursor theirs = new EdgeCursor();
        double[] scratch = new double[4];
        contour.load(0, mine);
        other.contour.load(0, theirs);
        double least = EdgeKernel.distance(mine, theirs, scratch);
        Walk walk = other.walk();
        for (int i = 0; i < contour.size() && least > 0; i++) {
            contour.load(i, mine);
            least = nearest(mine, other.contour, walk, least, theirs, scratch);
        }
        return least;
    }

    private static double nearest(
            EdgeCursor mine, Contour others, Walk walk, double least, EdgeCursor theirs, double[] scratch) {
        double best = least;
        double x0 = mine.minimumX();
        double y0 = mine.minimumY();
        double x1 = mine.maximumX();
        double y1 = mine.maximumY();
        walk.start(x0 - best, y0 - best, x1 + best, y1 + best);
        for (int edge = walk.next(); edge >= 0; edge = walk.next()) {
            others.load(edge, theirs);
            double distance = EdgeKernel.distance(mine, theirs, scratch);
            if (distance < best) {
                best = distance;
                walk.narrow(x0 - best, y0 - best, x1 + best, y1 + best);
            }
        }
        return best;
    }

    /** Distance of a point from the contour, if it is below a bound; else the bound. */
    public double distance(double x, double y, double bound, Walk walk, EdgeCursor scratch) {
        double best = bound;
        walk.start(x - best, y - best, x + best, y + best);
        for (int edge = walk.next(); edge >= 0; edge = walk.next()) {
            contour.load(edge, scratch);
            double distance = EdgeKernel.distance(scratch, x, y);
            if (distance < best) {
                best = distance;
                walk.narrow(x - best, y - best, x + best, y + best);
            }
        }
        return best;
    }
}
