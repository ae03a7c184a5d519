package dev.waterjet.program;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Closed loop of a cut. A path that passes a point twice encloses a loop; so does one that crosses or touches its first edges
 * near its end, as an overcut does. The largest loop is the contour, of those on which the machine offsets the path if there
 * are any; closed circles before it are the moving pierce.
 */
final class LoopFinder {

    /** Points nearer than this are one point. */
    static final double SAME_M = 1e-6;

    /** Where a path closes nowhere else, points nearer than the accepted rounding are one: increments add up their roundings. */
    private static final double ROUNDED_M = ArcGeometry.ROUNDING_M;

    /** Minimum length of a loop that closes within the rounding. */
    private static final double MIN_ROUNDED_LENGTH_M = 100 * ROUNDED_M;

    /** Areas that differ by less are equal. */
    private static final double AREA_RATIO = 1 + 1e-9;

    private final ProgramBlocks blocks;
    private final int first;
    private final int end;

    /** Area between the path so far and its start, and blocks with an offset so far. */
    private final double[] area;

    private final int[] compensated;

    private double sameM = SAME_M;

    private LoopFinder(ProgramBlocks blocks, int first, int end) {
        this.blocks = blocks;
        this.first = first;
        this.end = end;
        this.area = new double[end - first + 1];
        this.compensated = new int[end - first + 1];
        double originX = blocks.startX[first];
        double originY = blocks.startY[first];
        for (int i = 0; i < end - first; i++) {
            area[i + 1] = area[i] + PartialBlock.areaTerm(blocks, first + i, originX, originY);
            compensated[i + 1] = compensated[i] + (blocks.has(first + i, ProgramBlocks.COMPENSATED) ? 1 : 0);
        }
    }

    /** The loop of a range of blocks; null if there is none. */
    static @Nullable Loop find(ProgramBlocks blocks, int first, int end) {
        return new LoopFinder(blocks, first, end).find();
    }

    private @Nullable Loop find() {
        List<Loop> loops = byPoints();
        Loop best = null;
        for (Loop loop : loops) {
            best = best == null || isBetter(loop, best) ? loop : best;
        }
        Loop crossing = new LoopCrossings(blocks, first, end, sameM).largest();
        if (crossing != null
                && (best == null
                        || ((best.isBefore(crossing) || crossing.isBefore(best)) && isBetter(crossing, best)))) {
            best = crossing;
        }
        if (best == null && sameM < ROUNDED_M) {
            sameM = ROUNDED_M;
            return find();
        }
        return best == null ? null : withPierce(Overcut.startingEarlier(blocks, first, best), loops);
    }

    private boolean isBetter(Loop loop, Loop than) {
        boolean isOffset = isOffset(loop);
        return isOffset == isOffset(than) ? area(loop) > area(than) * AREA_RATIO : isOffset;
    }

    private boolean isOffset(Loop loop) {
        return 2 * (compensated[loop.end()] - compensated[loop.first()]) > loop.end() - loop.first();
    }

    private double area(Loop loop) {
        int from = first + loop.first();
        double closing = PartialBlock.lineTerm(
                blocks.endX[first + loop.end() - 1],
                blocks.endY[first + loop.end() - 1],
                blocks.startX[from],
                blocks.startY[from],
                blocks.startX[first],
                blocks.startY[first]);
        return Math.abs(area[loop.end()] - area[loop.first()] + closing);
    }

    private static Loop withPierce(Loop best, List<Loop> loops) {
        int from = best.first();
        int pierceEnd = from;
        for (Loop loop : loops) {
            if (loop.isBefore(best) && pierceEnd == best.first() && from == best.first()) {
                from = loop.first();
                pierceEnd = loop.end();
            } else if (loop.isBefore(best)) {
                pierceEnd = loop.end();
            }
        }
        return from < best.first() ? best.withPierce(from, pierceEnd) : best;
    }

    /** Loops between two visits of a point; after one, the next begins anew at that point. */
    private List<Loop> byPoints() {
        List<Loop> loops = new ArrayList<>();
        PointIndex seen = new PointIndex(end - first + 1, sameM);
        seen.add(blocks.startX[first], blocks.startY[first], 0);
        for (int i = first; i < end; i++) {
            double x = blocks.endX[i];
            double y = blocks.endY[i];
            int before = seen.find(x, y);
            int node = i + 1 - first;
            if (before >= 0 && hasArea(first + before, node - before) && isLong(before, node)) {
                double atX = before == 0 ? blocks.startX[first] : blocks.endX[first + before - 1];
                double atY = before == 0 ? blocks.startY[first] : blocks.endY[first + before - 1];
                loops.add(new Loop(before, node, atX, atY, false, false, before, before));
                seen.replace(x, y, node);
            } else if (before < 0) {
                seen.add(x, y, node);
            }
        }
        return loops;
    }

    private boolean isLong(int from, int node) {
        double length = 0;
        for (int i = from; sameM > SAME_M && i < node && length < MIN_ROUNDED_LENGTH_M; i++) {
            length += blocks.length(first + i);
        }
        return sameM == SAME_M || length >= MIN_ROUNDED_LENGTH_M;
    }

    /** Two lines out and back enclose nothing. */
    private boolean hasArea(int from, int count) {
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
}
