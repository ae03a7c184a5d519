package dev.waterjet.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.SourceBlock;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.OffsetFeed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Path of the jet axis along a cut whose kerf offset the machine applies, and the distances along the cut to which it belongs. */
final class JetPath {

    /** Shortest stretch of a program that has a feed of its own. */
    private static final double SHORT_M = 1e-6;

    private final Contour axis;
    private final List<JetPiece> pieces;
    private final double[] blockEnds;

    private JetPath(Contour axis, List<JetPiece> pieces, double[] blockEnds) {
        this.axis = axis;
        this.pieces = pieces;
        this.blockEnds = blockEnds;
    }

    /**
     * A path of pieces.
     *
     * @param pieces the pieces in order, each from where the one before ends
     * @param blockEnds distances along the cut at which its blocks end
     */
    static JetPath of(List<JetPiece> pieces, double[] blockEnds) {
        JetPiece first = pieces.get(0);
        ContourBuilder builder = Contour.fromSi(first.edge.startX(), first.edge.startY());
        for (JetPiece piece : pieces) {
            builder.requirement(piece.requirement).edgeTo(piece.edge);
        }
        return new JetPath(builder.open(), List.copyOf(pieces), blockEnds);
    }

    /** The path of the jet axis, one edge a piece. */
    Contour axis() {
        return axis;
    }

    /** Block of the cut to which a place of a piece belongs. */
    int block(int piece, double share) {
        JetPiece at = pieces.get(piece);
        double distance = at.fromM + share * (at.toM - at.fromM);
        int found = Arrays.binarySearch(blockEnds, distance);
        return Math.min(found >= 0 ? found + 1 : -found - 1, blockEnds.length - 1);
    }

    /** Feeds of the words of the cut that take the times of a plan along this path. */
    CutFeeds feeds(FeedPlan plan, double feedChange, OffsetFeed convention) {
        Feeds feeds = new Feeds(convention);
        for (SourceBlock block : plan.sourceBlocks(feedChange)) {
            feeds.add(pieces.get(block.edge()), block);
        }
        return feeds.result(blockEnds[blockEnds.length - 1]);
    }

    /** Collects stretches of a program; what has no length there belongs to the stretch before, or to the first. */
    private static final class Feeds {

        private final OffsetFeed convention;
        private final List<double[]> stretches = new ArrayList<>();
        private double waitingM;
        private double waitingS;

        Feeds(OffsetFeed convention) {
            this.convention = convention;
        }

        void add(JetPiece piece, SourceBlock block) {
            double time = Kind.TIME.si(block.time());
            double length = Kind.LENGTH.si(block.length()) * piece.wordRatio(convention);
            // what a corner cuts off stays with the edge, so that no block lies in it alone
            double end = block.to() < 1 ? piece.fromM + block.to() * (piece.toM - piece.fromM) : piece.edgeEndM;
            double before = stretches.isEmpty() ? 0 : stretches.get(stretches.size() - 1)[0];
            if (end - before < SHORT_M) {
                wait(length, time);
                return;
            }
            stretches.add(new double[] {end, length + waitingM, time + waitingS});
            waitingM = 0;
            waitingS = 0;
        }

        private void wait(double length, double time) {
            if (stretches.isEmpty()) {
                waitingM += length;
                waitingS += time;
            } else {
                stretches.get(stretches.size() - 1)[1] += length;
                stretches.get(stretches.size() - 1)[2] += time;
            }
        }

        CutFeeds result(double lengthM) {
            double[] ends = new double[stretches.size()];
            double[] paths = new double[ends.length];
            double[] feeds = new double[ends.length];
            for (int i = 0; i < ends.length; i++) {
                double[] stretch = stretches.get(i);
                ends[i] = i + 1 == ends.length ? lengthM : stretch[0];
                paths[i] = stretch[1];
                feeds[i] = stretch[1] / stretch[2];
            }
            return new CutFeeds(
                    QuantityArray.ofSi(Kind.LENGTH, ends),
                    QuantityArray.ofSi(Kind.SPEED, feeds),
                    QuantityArray.ofSi(Kind.LENGTH, paths));
        }
    }
}
