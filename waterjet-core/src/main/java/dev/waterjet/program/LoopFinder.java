package dev.waterjet.program;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Finds where a contour closes on itself: the earliest node to which it comes back last. */
final class LoopFinder {

    /** Two nodes nearer than this are one, in m. */
    static final double SAME_POINT_M = 10e-6;

    private LoopFinder() {}

    /**
     * First and last node of the loop of moves first to last, both inclusive, as move indices: the loop starts with the
     * first and ends before the second. Null if the contour never comes back to a node of its own.
     */
    static int @Nullable [] find(MoveStore moves, int first, int last) {
        // nodes are hashed by cell; a node looks into the neighbouring cells for one within reach
        Map<Long, Integer> earliest = new HashMap<>();
        remember(earliest, moves.startX(first), moves.startY(first), first);
        int @Nullable [] loop = null;
        for (int move = first; move <= last; move++) {
            double x = moves.endX(move);
            double y = moves.endY(move);
            int before = earliestNear(earliest, moves, x, y);
            if (before >= 0 && (loop == null || move + 1 - before >= loop[1] - loop[0])) {
                loop = new int[] {before, move + 1};
            }
            remember(earliest, x, y, move + 1);
        }
        return loop;
    }

    private static void remember(Map<Long, Integer> earliest, double x, double y, int node) {
        earliest.putIfAbsent(cell(index(x), index(y)), node);
    }

    private static int earliestNear(Map<Long, Integer> earliest, MoveStore moves, double x, double y) {
        int found = -1;
        for (long i = index(x) - 1; i <= index(x) + 1; i++) {
            for (long j = index(y) - 1; j <= index(y) + 1; j++) {
                Integer node = earliest.get(cell(i, j));
                if (node != null && isNear(moves, node, x, y) && (found < 0 || node < found)) {
                    found = node;
                }
            }
        }
        return found;
    }

    private static boolean isNear(MoveStore moves, int node, double x, double y) {
        boolean isEnd = node == moves.size();
        double nodeX = isEnd ? moves.endX(node - 1) : moves.startX(node);
        double nodeY = isEnd ? moves.endY(node - 1) : moves.startY(node);
        return Math.hypot(nodeX - x, nodeY - y) <= SAME_POINT_M;
    }

    private static long index(double coordinate) {
        return (long) Math.floor(coordinate / SAME_POINT_M);
    }

    private static long cell(long i, long j) {
        return i * 0x1_0000_0000L + (j & 0xffff_ffffL);
    }
}
