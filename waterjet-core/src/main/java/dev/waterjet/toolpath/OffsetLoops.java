package dev.waterjet.toolpath;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Joins slices end to end into loops, or into a path from end to end. */
final class OffsetLoops {

    /** Points nearer than this are one. */
    private static final double NODE_M = 2e-8;

    private static final double CELL_M = 1e-7;

    private final OffsetSlices slices;
    private final boolean[] isKept;
    private final Map<Long, List<Integer>> cells = new HashMap<>();
    private final List<double[]> nodes = new ArrayList<>();
    private final int[] fromNode;
    private final int[] toNode;
    private List<List<Integer>> leaving = List.of();

    private OffsetLoops(OffsetSlices slices, boolean[] isKept) {
        this.slices = slices;
        this.isKept = isKept;
        this.fromNode = new int[slices.size];
        this.toNode = new int[slices.size];
    }

    /**
     * Joins slices.
     *
     * @param slices all slices
     * @param isKept which of them keep the offset; those that lead nowhere are struck out
     * @param isClosed whether loops are sought; else a path may start at the first element and end at the last
     * @return chains of slices in order
     */
    static List<int[]> of(OffsetSlices slices, boolean[] isKept, boolean isClosed) {
        OffsetLoops loops = new OffsetLoops(slices, isKept);
        loops.findNodes();
        loops.strikeDeadEnds(isClosed);
        return loops.chains();
    }

    private void findNodes() {
        for (int i = 0; i < slices.size; i++) {
            if (isKept[i]) {
                fromNode[i] = node(slices.x0[i], slices.y0[i]);
                toNode[i] = node(slices.x1[i], slices.y1[i]);
                if (fromNode[i] == toNode[i] && isShort(i)) {
                    isKept[i] = false;
                }
            }
        }
        leaving = new ArrayList<>();
        for (int node = 0; node < nodes.size(); node++) {
            leaving.add(new ArrayList<>(2));
        }
        for (int i = 0; i < slices.size; i++) {
            if (isKept[i]) {
                leaving.get(fromNode[i]).add(i);
            }
        }
        strikeTwins();
    }

    /** A slice that ends where it starts is a full circle, or nothing. */
    private boolean isShort(int i) {
        double[] middle = new double[2];
        slices.middle(i, middle);
        return Math.hypot(middle[0] - slices.x0[i], middle[1] - slices.y0[i]) <= NODE_M;
    }

    /** Of slices that cover one another, one stays: the image of an edge before what goes around a vertex. */
    private void strikeTwins() {
        double[] one = new double[2];
        double[] other = new double[2];
        for (List<Integer> out : leaving) {
            out.sort(Comparator.comparing(slices::isCorner));
            for (int a = 0; a < out.size(); a++) {
                for (int b = out.size() - 1; b > a; b--) {
                    int i = out.get(a);
                    int j = out.get(b);
                    slices.middle(i, one);
                    slices.middle(j, other);
                    if (toNode[i] == toNode[j] && Math.hypot(one[0] - other[0], one[1] - other[1]) <= NODE_M) {
                        isKept[j] = false;
                        out.remove(b);
                    }
                }
            }
        }
    }

    private int node(double x, double y) {
        long column = (long) Math.floor(x / CELL_M);
        long row = (long) Math.floor(y / CELL_M);
        for (long c = column - 1; c <= column + 1; c++) {
            for (long r = row - 1; r <= row + 1; r++) {
                for (int node : cells.getOrDefault(cell(c, r), List.of())) {
                    double[] at = nodes.get(node);
                    if (Math.hypot(at[0] - x, at[1] - y) <= NODE_M) {
                        return node;
                    }
                }
            }
        }
        nodes.add(new double[] {x, y});
        cells.computeIfAbsent(cell(column, row), key -> new ArrayList<>(1)).add(nodes.size() - 1);
        return nodes.size() - 1;
    }

    private static long cell(long column, long row) {
        return column * 0x1f1f1f1fL ^ row << 32 ^ row;
    }

    /** Strikes out slices that nothing reaches, or from which nothing goes on. */
    private void strikeDeadEnds(boolean isClosed) {
        int[] in = new int[nodes.size()];
        int[] out = new int[nodes.size()];
        List<List<Integer>> reaching = new ArrayList<>();
        for (int node = 0; node < nodes.size(); node++) {
            reaching.add(new ArrayList<>(2));
        }
        int first = -1;
        int last = -1;
        for (int i = 0; i < slices.size; i++) {
            if (isKept[i]) {
                out[fromNode[i]]++;
                in[toNode[i]]++;
                reaching.get(toNode[i]).add(i);
                first = first < 0 ? i : first;
                last = i;
            }
        }
        if (!isClosed && first >= 0) {
            in[fromNode[first]]++;
            out[toNode[last]]++;
        }
        ArrayDeque<Integer> open = new ArrayDeque<>();
        for (int node = 0; node < nodes.size(); node++) {
            open.add(node);
        }
        while (!open.isEmpty()) {
            int node = open.poll();
            if ((in[node] == 0 && out[node] > 0) || (out[node] == 0 && in[node] > 0)) {
                List<Integer> struck = in[node] == 0 ? leaving.get(node) : reaching.get(node);
                for (int i : struck) {
                    if (isKept[i]) {
                        isKept[i] = false;
                        out[fromNode[i]]--;
                        in[toNode[i]]--;
                        open.add(fromNode[i]);
                        open.add(toNode[i]);
                    }
                }
            }
        }
    }

    private List<int[]> chains() {
        List<int[]> chains = new ArrayList<>();
        boolean[] isUsed = new boolean[slices.size];
        for (int i = 0; i < slices.size; i++) {
            if (isKept[i] && !isUsed[i]) {
                chains.add(chain(i, isUsed));
            }
        }
        return chains;
    }

    private int[] chain(int start, boolean[] isUsed) {
        int[] chain = new int[16];
        int length = 0;
        int at = start;
        while (at >= 0) {
            if (length == chain.length) {
                chain = Arrays.copyOf(chain, 2 * length);
            }
            chain[length++] = at;
            isUsed[at] = true;
            at = toNode[at] == fromNode[start] ? -1 : following(at, isUsed);
        }
        return Arrays.copyOf(chain, length);
    }

    /** The slice that goes on: of the same element, else of the next element in order, else any. */
    private int following(int at, boolean[] isUsed) {
        int best = -1;
        int bestRank = Integer.MAX_VALUE;
        for (int i : leaving.get(toNode[at])) {
            int ahead = Math.floorMod(slices.element[i] - slices.element[at], slices.elementCount());
            if (isKept[i] && !isUsed[i] && ahead < bestRank) {
                best = i;
                bestRank = ahead;
            }
        }
        return best;
    }
}
