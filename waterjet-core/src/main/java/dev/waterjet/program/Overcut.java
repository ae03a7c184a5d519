package dev.waterjet.program;

import dev.waterjet.part.EdgeCursor;

/** Second cut of a closed contour over its start. */
final class Overcut {

    private Overcut() {}

    /** The block, from 0 within the cut, after those that run again over the first edges of a loop. */
    static int end(ProgramBlocks blocks, int first, int end, Loop loop) {
        EdgeCursor over = new EdgeCursor();
        EdgeCursor edge = new EdgeCursor();
        int at = loop.first();
        int i = first + loop.end();
        if (loop.endsWithin()) {
            blocks.load(i - 1, over);
            blocks.load(first + at, edge);
            // the last block may go on to the end of the first edge
            at += isOn(edge.endX(), edge.endY(), over.endX(), over.endY()) ? 1 : 0;
        }
        while (i < end && at < loop.end()) {
            blocks.load(i, over);
            blocks.load(first + at, edge);
            if (!isAlong(over, edge)) {
                break;
            }
            boolean isWhole = isOn(edge.endX(), edge.endY(), over.endX(), over.endY());
            at += isWhole ? 1 : 0;
            i++;
        }
        return i - first;
    }

    /**
     * The loop from where its line is first cut: blocks before it that run where its last ones do are edges, which the last
     * ones cut again.
     */
    static Loop startingEarlier(ProgramBlocks blocks, int first, Loop found) {
        EdgeCursor before = new EdgeCursor();
        EdgeCursor last = new EdgeCursor();
        Loop loop = found;
        while (loop.first() > 0 && loop.end() - loop.first() > 1 && !loop.startsWithin() && !loop.endsWithin()) {
            blocks.load(first + loop.first() - 1, before);
            blocks.load(first + loop.end() - 1, last);
            boolean endsThere = isOn(before.endX(), before.endY(), last.endX(), last.endY());
            if (!endsThere || !isAlong(before, last)) {
                break;
            }
            boolean isWhole = isOn(before.startX(), before.startY(), last.startX(), last.startY());
            int start = loop.first() - 1;
            int end = isWhole ? loop.end() - 1 : loop.end();
            loop = new Loop(start, end, before.startX(), before.startY(), false, !isWhole, start, start);
        }
        return loop;
    }

    static double length(ProgramBlocks blocks, int first, Loop loop, int overcutEnd) {
        double sum = 0;
        if (loop.endsWithin()) {
            EdgeCursor edge = new EdgeCursor();
            blocks.load(first + loop.end() - 1, edge);
            PartialBlock.keepFrom(edge, loop.x(), loop.y());
            sum = edge.length();
        }
        for (int i = loop.end(); i < overcutEnd; i++) {
            sum += blocks.length(first + i);
        }
        return sum;
    }

    /** Whether an edge runs along another one, in its direction. */
    private static boolean isAlong(EdgeCursor over, EdgeCursor edge) {
        double same = LoopFinder.SAME_M;
        double share = edge.shareAt(over.startX(), over.startY());
        return edge.distance(over.startX(), over.startY()) <= same
                && edge.distance(over.endX(), over.endY()) <= same
                && edge.distance(over.xAt(0.5), over.yAt(0.5)) <= same
                && over.length() <= edge.length() + same
                && over.startDirectionX() * edge.directionXAt(share) + over.startDirectionY() * edge.directionYAt(share)
                        > 0;
    }

    private static boolean isOn(double x, double y, double toX, double toY) {
        return Math.hypot(x - toX, y - toY) <= LoopFinder.SAME_M;
    }
}
