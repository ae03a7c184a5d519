package dev.waterjet.program;

import java.util.HashMap;
import java.util.Map;

/**
 * Closed loop of a cut: from the first point that the head passes twice, to its return there. The blocks before it are the
 * lead-in, those after it the lead-out.
 */
final class LoopFinder {

    /** Points nearer than this are one point. */
    private static final double SAME_M = 1e-6;

    private LoopFinder() {}

    /** First block of the loop and the block after its last, counted from 0; empty if there is no loop. */
    static int[] find(ProgramBlocks blocks, int first, int end, double startX, double startY) {
        Map<Long, Integer> seen = new HashMap<>((end - first) * 2);
        seen.put(cell(startX, startY, 0, 0), 0);
        for (int i = first; i < end; i++) {
            double x = blocks.endX[i];
            double y = blocks.endY[i];
            int before = earlier(seen, blocks, first, startX, startY, x, y);
            int length = i + 1 - first - before;
            if (before >= 0 && hasArea(blocks, first + before, length)) {
                return new int[] {before, i + 1 - first};
            }
            if (before < 0) {
                seen.put(cell(x, y, 0, 0), i + 1 - first);
            }
        }
        return new int[0];
    }

    private static int earlier(
            Map<Long, Integer> seen,
            ProgramBlocks blocks,
            int first,
            double startX,
            double startY,
            double x,
            double y) {
        int best = -1;
        for (int dx = -1; dx <= 1; dx++) {
            for (int dy = -1; dy <= 1; dy++) {
                Integer node = seen.get(cell(x, y, dx, dy));
                if (node == null) {
                    continue;
                }
                double nodeX = node == 0 ? startX : blocks.endX[first + node - 1];
                double nodeY = node == 0 ? startY : blocks.endY[first + node - 1];
                if (Math.hypot(x - nodeX, y - nodeY) <= SAME_M && (best < 0 || node < best)) {
                    best = node;
                }
            }
        }
        return best;
    }

    /** Two lines out and back enclose nothing. */
    private static boolean hasArea(ProgramBlocks blocks, int from, int count) {
        if (count >= 3) {
            return true;
        }
        for (int i = from; i < from + count; i++) {
            if (blocks.turn[i] != 0) {
                return true;
            }
        }
        return false;
    }

    private static long cell(double x, double y, int dx, int dy) {
        long column = Math.round(x / SAME_M) + dx;
        long row = Math.round(y / SAME_M) + dy;
        return column * 4_000_000_007L + row;
    }
}
