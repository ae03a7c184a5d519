package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Nodes of the grid on which motion with jerk is optimized, in flat arrays: a buffer that {@link JerkGrid} fills at its
 * end and {@link JerkPass} empties at its start. Squares of feeds throughout.
 */
final class GridNodes {

    int count;
    double[] placeM;
    /** Cap of the square of the feed, and the code of what sets it. */
    double[] capSquare;

    byte[] capWhy;
    /** Square of the feed without limits of jerk. */
    double[] reference;
    /** Square of the feed with them, not a number where it has not been found. */
    double[] solution;
    /** Stretch of the path in which the interval behind the node starts. */
    int[] stretch;
    /** Whether the interval behind the node is in the middle of a long stretch at the cap. */
    boolean[] isSteady;

    GridNodes(int capacity) {
        placeM = new double[capacity];
        capSquare = new double[capacity];
        capWhy = new byte[capacity];
        reference = new double[capacity];
        solution = new double[capacity];
        stretch = new int[capacity];
        isSteady = new boolean[capacity];
    }

    void add(double atM, double referenceSquare, int stretchBehind) {
        if (count == placeM.length) {
            int room = 2 * count;
            placeM = Arrays.copyOf(placeM, room);
            capSquare = Arrays.copyOf(capSquare, room);
            capWhy = Arrays.copyOf(capWhy, room);
            reference = Arrays.copyOf(reference, room);
            solution = Arrays.copyOf(solution, room);
            stretch = Arrays.copyOf(stretch, room);
            isSteady = Arrays.copyOf(isSteady, room);
        }
        placeM[count] = atM;
        capSquare[count] = Double.POSITIVE_INFINITY;
        reference[count] = referenceSquare;
        solution[count] = Double.NaN;
        stretch[count] = stretchBehind;
        isSteady[count] = false;
        count++;
    }

    /** Adds a node in the middle of the interval behind a node, in the same stretch and under the cap of the process. */
    void halve(int node, double square, byte why) {
        int behind = count - 1 - node;
        add(0, 0, 0);
        for (double[] each : new double[][] {placeM, capSquare, reference, solution}) {
            System.arraycopy(each, node + 1, each, node + 2, behind);
        }
        System.arraycopy(capWhy, node + 1, capWhy, node + 2, behind);
        System.arraycopy(stretch, node + 1, stretch, node + 2, behind);
        System.arraycopy(isSteady, node + 1, isSteady, node + 2, behind);
        placeM[node + 1] = (placeM[node] + placeM[node + 2]) / 2;
        stretch[node + 1] = stretch[node];
        capSquare[node + 1] = square;
        capWhy[node + 1] = why;
        reference[node + 1] = square;
        solution[node + 1] = Double.NaN;
        isSteady[node + 1] = false;
    }

    void cap(int node, double limitSquare, byte why) {
        if (limitSquare < capSquare[node]) {
            capSquare[node] = limitSquare;
            capWhy[node] = why;
        }
    }

    /** Removes the first nodes. */
    void drop(int nodes) {
        count -= nodes;
        System.arraycopy(placeM, nodes, placeM, 0, count);
        System.arraycopy(capSquare, nodes, capSquare, 0, count);
        System.arraycopy(capWhy, nodes, capWhy, 0, count);
        System.arraycopy(reference, nodes, reference, 0, count);
        System.arraycopy(solution, nodes, solution, 0, count);
        System.arraycopy(stretch, nodes, stretch, 0, count);
        System.arraycopy(isSteady, nodes, isSteady, 0, count);
    }
}
