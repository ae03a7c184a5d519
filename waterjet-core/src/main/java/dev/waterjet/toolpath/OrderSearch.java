package dev.waterjet.toolpath;

import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Search for a short order of paths in which inner ones precede outer ones: nearest neighbour, then reversals and moves of
 * stretches as long as one of them saves length. Paths keep their direction.
 */
final class OrderSearch {

    private static final double SAVING_M = 1e-9;

    /** Longest stretch that is moved as a whole. */
    private static final int MAX_MOVED = 3;

    /** Paths up to which every pair is tried; of more, only pairs this near in the order. */
    private static final int MAX_PAIRS = 2000;

    private static final int MAX_ROUNDS = 50;

    private final int n;
    private final double[] startX;
    private final double[] startY;
    private final double[] endX;
    private final double[] endY;
    private final int[][] inside;
    private final int[] order;
    private final int[] place;
    /** Latest place of what lies inside the path at a place; -1 if nothing does. */
    private final int[] latestInside;

    /** Length of the traverse to each place. */
    private final double[] legTo;

    /** Length of the traverses up to each place, in the order and against it. */
    private final double[] forward;

    private final double[] backward;

    OrderSearch(List<Contour> paths, List<List<Integer>> inside, Point from) {
        this.n = paths.size();
        this.startX = new double[n + 1];
        this.startY = new double[n + 1];
        this.endX = new double[n + 1];
        this.endY = new double[n + 1];
        this.inside = new int[n + 1][];
        for (int i = 0; i < n; i++) {
            Contour path = paths.get(i);
            startX[i] = path.xSi(0);
            startY[i] = path.ySi(0);
            endX[i] = path.xSi(path.size());
            endY[i] = path.ySi(path.size());
            this.inside[i] = inside.get(i).stream().mapToInt(Integer::intValue).toArray();
        }
        // the place from which the head comes is a path of no length, always first
        endX[n] = from.xSi();
        endY[n] = from.ySi();
        this.inside[n] = new int[0];
        this.order = new int[n + 1];
        this.place = new int[n + 1];
        this.latestInside = new int[n + 1];
        this.legTo = new double[n + 2];
        this.forward = new double[n + 1];
        this.backward = new double[n + 1];
    }

    List<Integer> run() {
        nearestNeighbours();
        measure();
        boolean isBetter = true;
        for (int round = 0; round < MAX_ROUNDS && isBetter; round++) {
            boolean isReversed = reverseStretches();
            isBetter = moveStretches() || isReversed;
        }
        List<Integer> result = new ArrayList<>(n);
        for (int k = 1; k <= n; k++) {
            result.add(order[k]);
        }
        return List.copyOf(result);
    }

    private void nearestNeighbours() {
        int[] left = new int[n];
        int[][] outside = outside(left);
        boolean[] isCut = new boolean[n];
        order[0] = n;
        for (int k = 1; k <= n; k++) {
            int best = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < n; i++) {
                if (!isCut[i] && left[i] == 0) {
                    double leg = leg(order[k - 1], i);
                    if (leg < least) {
                        least = leg;
                        best = i;
                    }
                }
            }
            isCut[best] = true;
            order[k] = best;
            for (int outer : outside[best]) {
                left[outer]--;
            }
        }
    }

    /** For each path those around it; {@code left} receives the number inside each. */
    private int[][] outside(int[] left) {
        List<List<Integer>> outside = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            outside.add(new ArrayList<>());
        }
        for (int outer = 0; outer < n; outer++) {
            left[outer] = inside[outer].length;
            for (int inner : inside[outer]) {
                outside.get(inner).add(outer);
            }
        }
        return outside.stream()
                .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
    }

    private double leg(int a, int b) {
        double dx = startX[b] - endX[a];
        double dy = startY[b] - endY[a];
        return Math.sqrt(dx * dx + dy * dy);
    }

    /** Whether the traverse from one path to another is shorter than a length. */
    private boolean isShorter(int a, int b, double lengthM) {
        double dx = startX[b] - endX[a];
        double dy = startY[b] - endY[a];
        return lengthM > 0 && dx * dx + dy * dy < lengthM * lengthM;
    }

    private void measure() {
        for (int k = 0; k <= n; k++) {
            place[order[k]] = k;
        }
        for (int k = 0; k <= n; k++) {
            latestInside[k] = -1;
            for (int inner : inside[order[k]]) {
                latestInside[k] = Math.max(latestInside[k], place[inner]);
            }
            legTo[k] = k == 0 ? 0 : leg(order[k - 1], order[k]);
            if (k > 1) {
                forward[k] = forward[k - 1] + legTo[k];
                backward[k] = backward[k - 1] + leg(order[k], order[k - 1]);
            }
        }
    }

    /** Length of the traverse from a path to the place after another; the last place has none after it. */
    private double legAfter(int path, int k) {
        return k < n ? leg(path, order[k + 1]) : 0;
    }

    private int reach(int from) {
        return Math.min(n, from + MAX_PAIRS);
    }

    private boolean reverseStretches() {
        boolean isBetter = false;
        for (int i = 1; i < n; i++) {
            for (int j = i + 1; j <= reach(i) && latestInside[j] < i; j++) {
                double budget =
                        legTo[i] + forward[j] - forward[i] + legTo[j + 1] - backward[j] + backward[i] - SAVING_M;
                if (isShorter(order[i - 1], order[j], budget)
                        && leg(order[i - 1], order[j]) + legAfter(order[i], j) < budget) {
                    for (int a = i, b = j; a < b; a++, b--) {
                        int swap = order[a];
                        order[a] = order[b];
                        order[b] = swap;
                    }
                    measure();
                    isBetter = true;
                }
            }
        }
        return isBetter;
    }

    private boolean moveStretches() {
        boolean isBetter = false;
        for (int length = 1; length <= MAX_MOVED; length++) {
            for (int i = 1; i + length - 1 <= n; i++) {
                isBetter |= moveLater(i, i + length - 1) || moveEarlier(i, i + length - 1);
            }
        }
        return isBetter;
    }

    /** Moves a stretch behind a later place, past nothing that lies around it. */
    private boolean moveLater(int i, int j) {
        if (j == n) {
            return false;
        }
        double saved = legTo[i] + legTo[j + 1] - leg(order[i - 1], order[j + 1]) - SAVING_M;
        for (int k = j + 1; k <= reach(j) && !hasInside(k, i, j); k++) {
            double budget = saved + legTo[k + 1];
            if (isShorter(order[k], order[i], budget) && leg(order[k], order[i]) + legAfter(order[j], k) < budget) {
                rotate(i, j, k);
                return true;
            }
        }
        return false;
    }

    /** Moves a stretch before an earlier place, past nothing that lies inside it. */
    private boolean moveEarlier(int i, int j) {
        int first = 0;
        for (int k = i; k <= j; k++) {
            for (int inner : inside[order[k]]) {
                first = place[inner] < i ? Math.max(first, place[inner]) : first;
            }
        }
        double saved = legTo[i] + legTo[j + 1] - legAfter(order[i - 1], j) - SAVING_M;
        for (int k = i - 1; k > Math.max(first, i - MAX_PAIRS); k--) {
            double budget = saved + legTo[k];
            if (isShorter(order[j], order[k], budget)
                    && leg(order[k - 1], order[i]) + leg(order[j], order[k]) < budget) {
                rotate(k, i - 1, j);
                return true;
            }
        }
        return false;
    }

    private boolean hasInside(int k, int i, int j) {
        if (latestInside[k] < i) {
            return false;
        }
        for (int inner : inside[order[k]]) {
            if (place[inner] >= i && place[inner] <= j) {
                return true;
            }
        }
        return false;
    }

    /** Puts the stretch from i to j behind the stretch from j + 1 to k. */
    private void rotate(int i, int j, int k) {
        int[] moved = Arrays.copyOfRange(order, i, j + 1);
        System.arraycopy(order, j + 1, order, i, k - j);
        System.arraycopy(moved, 0, order, i + k - j, moved.length);
        measure();
    }
}
