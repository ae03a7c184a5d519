package dev.waterjet.motion;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.Arrays;
import java.util.Optional;

/** Blocks of a plan in flat arrays: stretches of one edge with one maximum feed. */
final class PlanBlocks {

    /** Blocks shorter than this are rounding. */
    private static final double SHORT_M = 1e-11;

    private int count;
    private final double[] endM;
    private final int[] edge;
    private final double[] allowedMPerS;
    private final byte[] code;
    private final double[] edgeStartM;
    private final PieceMotion motion;
    private final LimitTimes limits;

    PlanBlocks(PathPieces pieces, FeedCaps caps, MotionCurve curve) {
        int room = pieces.count() + caps.count();
        double[] ends = new double[room];
        int[] edges = new int[room];
        double[] allowed = new double[room];
        byte[] codes = new byte[room];
        edgeStartM = new double[pieces.count() + 1];
        int piece = 0;
        int cap = 0;
        double at = 0;
        while (piece < pieces.count()) {
            double pieceEnd = pieces.startM(piece + 1);
            double until = Math.min(pieceEnd, caps.untilM(cap));
            if (pieceEnd - until < SHORT_M) {
                until = pieceEnd;
            }
            if (until - at >= SHORT_M || (until == pieceEnd && (count == 0 || edges[count - 1] != piece))) {
                ends[count] = until;
                edges[count] = piece;
                allowed[count] = caps.feedMPerS(cap);
                codes[count] = caps.code(cap);
                count++;
                at = until;
            } else if (count > 0) {
                ends[count - 1] = until;
                at = until;
            }
            edgeStartM[piece + 1] = pieceEnd;
            cap += caps.untilM(cap) <= until && cap < caps.count() - 1 ? 1 : 0;
            piece += until == pieceEnd ? 1 : 0;
        }
        endM = Arrays.copyOf(ends, count);
        edge = Arrays.copyOf(edges, count);
        allowedMPerS = Arrays.copyOf(allowed, count);
        code = Arrays.copyOf(codes, count);
        motion = PieceMotion.of(curve, endM);
        limits = new LimitTimes(this, curve);
    }

    int count() {
        return count;
    }

    int edge(int block) {
        return edge[block];
    }

    double startM(int block) {
        return block == 0 ? 0 : endM[block - 1];
    }

    double endM(int block) {
        return endM[block];
    }

    double allowed(int block) {
        return allowedMPerS[block];
    }

    /** Code of the limit that gives the maximum feed of a block. */
    byte code(int block) {
        return code[block];
    }

    PieceMotion motion() {
        return motion;
    }

    LimitTimes limits() {
        return limits;
    }

    /** First block of an edge. */
    int firstOfEdge(int index) {
        int low = 0;
        int high = count;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (edge[middle] < index) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Block that contains a distance; the later one at a border. */
    int at(double distanceM) {
        int found = Arrays.binarySearch(endM, distanceM);
        return Math.min(count - 1, found >= 0 ? found + 1 : -found - 1);
    }

    /** Place of a distance on an edge, as a share of its length. */
    double shareOf(int index, double atM) {
        double start = edgeStartM[index];
        return Math.min(1, Math.max(0, (atM - start) / (edgeStartM[index + 1] - start)));
    }

    /** Blocks from a first to a last one, which lie on one edge, as one. */
    PlanBlock block(Contour path, int first, int last) {
        EdgeCursor cursor = new EdgeCursor();
        int index = edge[first];
        path.load(index, cursor);
        double from = shareOf(index, startM(first));
        double to = shareOf(index, endM[last]);
        Optional<Point> centre =
                cursor.isArc() ? Optional.of(Point.ofSi(cursor.centreX(), cursor.centreY())) : Optional.empty();
        double time = 0;
        double peak = 0;
        double allowed = 0;
        int longest = first;
        for (int i = first; i <= last; i++) {
            time += motion.timeS[i];
            peak = Math.max(peak, motion.peakMPerS[i]);
            allowed = Math.max(allowed, allowedMPerS[i]);
            longest = motion.timeS[i] > motion.timeS[longest] ? i : longest;
        }
        return new PlanBlock(
                index,
                place(cursor, from),
                place(cursor, to),
                centre,
                cursor.isArc() ? Optional.of(cursor.sweep() > 0 ? Side.LEFT : Side.RIGHT) : Optional.empty(),
                Kind.LENGTH.of(startM(first)),
                Kind.LENGTH.of(endM[last] - startM(first)),
                Kind.SPEED.of(motion.entryMPerS[first]),
                Kind.SPEED.of(peak),
                Kind.SPEED.of(motion.exitMPerS[last]),
                Kind.SPEED.of(allowed),
                Kind.TIME.of(time),
                limits.ofBlock(longest));
    }

    private static Point place(EdgeCursor cursor, double share) {
        if (share == 0) {
            return Point.ofSi(cursor.startX(), cursor.startY());
        }
        return share == 1 ? Point.ofSi(cursor.endX(), cursor.endY()) : Point.ofSi(cursor.xAt(share), cursor.yAt(share));
    }
}
