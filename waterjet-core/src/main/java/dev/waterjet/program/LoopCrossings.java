package dev.waterjet.program;

import dev.waterjet.part.EdgeCursor;
import org.jspecify.annotations.Nullable;

/** Loops that close within a block: the last blocks cross or touch the first ones. */
final class LoopCrossings {

    /** Blocks at either end that are compared: leads and overcuts have few. */
    private static final int ENDS = 16;

    private final ProgramBlocks blocks;
    private final int first;
    private final int end;
    private final double sameM;
    private final EdgeCursor a = new EdgeCursor();
    private final EdgeCursor b = new EdgeCursor();
    private final EdgeCursor part = new EdgeCursor();
    private final double[] places = new double[4];

    private @Nullable Loop best;
    private double bestArea;

    LoopCrossings(ProgramBlocks blocks, int first, int end, double sameM) {
        this.blocks = blocks;
        this.first = first;
        this.end = end;
        this.sameM = sameM;
    }

    /** The loop of the largest area; of equal ones that which closes first. */
    @Nullable
    Loop largest() {
        int lastStart = Math.min(end - 2, first + ENDS);
        for (int j = Math.max(first + 2, end - ENDS); j < end; j++) {
            for (int i = Math.min(lastStart, j - 2); i >= first; i--) {
                compare(i, j);
            }
        }
        return best;
    }

    private void compare(int i, int j) {
        blocks.load(i, a);
        blocks.load(j, b);
        if (isApart()) {
            return;
        }
        int touches = touch(i, j, b, a.endX(), a.endY()) + touch(i, j, b, a.startX(), a.startY());
        touches += touch(i, j, a, b.endX(), b.endY()) + touch(i, j, a, b.startX(), b.startY());
        // edges that run along each other cross where their rounding has it
        int count = touches < 2 ? a.crossings(b, places) : 0;
        for (int k = 0; k < count; k++) {
            consider(i, j, places[2 * k], places[2 * k + 1]);
        }
    }

    /** Considers an end of one block that lies on the other. */
    private int touch(int i, int j, EdgeCursor other, double x, double y) {
        if (other.distance(x, y) > sameM) {
            return 0;
        }
        consider(i, j, x, y);
        return 1;
    }

    private boolean isApart() {
        return a.minimumX() > b.maximumX() + sameM
                || b.minimumX() > a.maximumX() + sameM
                || a.minimumY() > b.maximumY() + sameM
                || b.minimumY() > a.maximumY() + sameM;
    }

    private void consider(int i, int j, double x, double y) {
        boolean isAtEndOfFirst = isSame(x, y, blocks.endX[i], blocks.endY[i]);
        boolean isAtStartOfLast = isSame(x, y, blocks.startX[j], blocks.startY[j]);
        boolean isAtStartOfFirst = isSame(x, y, blocks.startX[i], blocks.startY[i]);
        boolean isAtEndOfLast = isSame(x, y, blocks.endX[j], blocks.endY[j]);
        int from = isAtEndOfFirst ? i + 1 : i;
        int to = isAtStartOfLast ? j : j + 1;
        Loop loop = new Loop(
                from - first,
                to - first,
                x,
                y,
                !isAtEndOfFirst && !isAtStartOfFirst,
                !isAtStartOfLast && !isAtEndOfLast,
                from - first,
                from - first);
        double area = Math.abs(area(loop));
        double length = length(loop);
        // a difference no wider than a point is none
        if (area > bestArea + sameM * length) {
            best = loop;
            bestArea = area;
        }
    }

    private double area(Loop loop) {
        double sum = 0;
        for (int i = loop.first(); i < loop.end(); i++) {
            load(loop, i, part);
            sum += PartialBlock.areaTerm(part, loop.x(), loop.y());
        }
        return sum;
    }

    private double length(Loop loop) {
        double sum = 0;
        for (int i = loop.first(); i < loop.end(); i++) {
            sum += blocks.length(first + i);
        }
        return sum;
    }

    /** Loads the stretch of a block that belongs to a loop. */
    private void load(Loop loop, int block, EdgeCursor edge) {
        blocks.load(first + block, edge);
        if (block == loop.first() && loop.startsWithin()) {
            PartialBlock.keepFrom(edge, loop.x(), loop.y());
        }
        if (block == loop.end() - 1 && loop.endsWithin()) {
            PartialBlock.keepTo(edge, loop.x(), loop.y());
        }
    }

    private boolean isSame(double x, double y, double toX, double toY) {
        return Math.hypot(x - toX, y - toY) <= sameM;
    }
}
