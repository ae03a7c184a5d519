package dev.waterjet.motion;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.ConditionedContour;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Way back from a plan to the edges as drawn. A piece of the planned path replaces whole edges; distances along them are
 * scaled to its length, from which they differ by no more than the tolerance of conditioning.
 */
final class SourceBlocks {

    /** Stretches shorter than this are not split off: a control would not reach their feed. */
    private static final double SHORT_M = 1e-4;

    private final Contour source;
    private final Contour path;
    private final @Nullable ConditionedContour conditioned;
    private final PlanBlocks blocks;
    private final MotionCurve motion;
    private final double share;
    private final EdgeCursor cursor = new EdgeCursor();
    private final List<SourceBlock> list = new ArrayList<>();
    private int block;

    SourceBlocks(
            Contour source,
            Contour path,
            @Nullable ConditionedContour conditioned,
            PlanBlocks blocks,
            MotionCurve motion,
            double share) {
        this.source = source;
        this.path = path;
        this.conditioned = conditioned;
        this.blocks = blocks;
        this.motion = motion;
        this.share = share;
    }

    List<SourceBlock> list() {
        double at = 0;
        for (int piece = 0; piece < path.size(); piece++) {
            path.load(piece, cursor);
            double pieceLength = cursor.length();
            int first = conditioned == null ? piece : conditioned.firstSourceEdge(piece);
            int last = conditioned == null ? piece : conditioned.lastSourceEdge(piece);
            double drawn = 0;
            for (int edge = first; edge <= last; edge++) {
                source.load(edge, cursor);
                drawn += cursor.length();
            }
            double done = 0;
            for (int edge = first; edge <= last; edge++) {
                source.load(edge, cursor);
                double length = cursor.length();
                double from = at + pieceLength * (done / drawn);
                done += length;
                double to = edge == last ? at + pieceLength : at + pieceLength * (done / drawn);
                split(edge, length, from, Math.min(to, motion.lengthM()));
            }
            at += pieceLength;
        }
        return List.copyOf(list);
    }

    /** Splits an edge, which lies between two distances of the plan, where the maximum feed changes. */
    private void split(int edge, double lengthM, double fromM, double toM) {
        while (block < blocks.count() - 1 && blocks.endM(block) <= fromM + SHORT_M) {
            block++;
        }
        double start = fromM;
        double least = blocks.allowed(block);
        double most = least;
        int longest = block;
        double longestM = 0;
        int i = block;
        while (true) {
            double end = Math.min(blocks.endM(i), toM);
            if (end - Math.max(start, blocks.startM(i)) > longestM) {
                longestM = end - Math.max(start, blocks.startM(i));
                longest = i;
            }
            if (i == blocks.count() - 1 || blocks.endM(i) >= toM - SHORT_M) {
                break;
            }
            double next = blocks.allowed(i + 1);
            if (Math.max(most, next) > Math.min(least, next) * (1 + share) && blocks.endM(i) - start > SHORT_M) {
                add(edge, lengthM, fromM, toM, start, blocks.endM(i), longest);
                start = blocks.endM(i);
                least = next;
                most = next;
                longestM = 0;
            }
            least = Math.min(least, next);
            most = Math.max(most, next);
            i++;
        }
        block = i;
        add(edge, lengthM, fromM, toM, start, toM, longest);
    }

    private void add(int edge, double lengthM, double fromM, double toM, double start, double end, int governing) {
        double scale = 1 / (toM - fromM);
        double from = start == fromM ? 0 : (start - fromM) * scale;
        double to = end == toM ? 1 : (end - fromM) * scale;
        double length = (to - from) * lengthM;
        double time = motion.timeAt(Math.min(end, motion.lengthM())) - motion.timeAt(start);
        list.add(new SourceBlock(
                edge,
                from,
                to,
                Kind.LENGTH.of(length),
                Kind.SPEED.of(length / time),
                Kind.TIME.of(time),
                blocks.limits().ofBlock(governing)));
    }
}
