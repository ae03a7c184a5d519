package dev.waterjet.plan;

import dev.waterjet.part.ConditionedContour;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Pieces of the jet axis beside a conditioned path. Neighbours are joined one after the other, as a control does that looks a few
 * blocks ahead: a piece that vanishes between its neighbours is left out.
 */
final class OffsetRun {

    /** An offset arc of a smaller radius has vanished. */
    private static final double MIN_RADIUS_M = 1e-6;

    /** Joints that are shorter, between nearly tangent pieces, are left out. */
    private static final double SHORT_JOINT_M = 5e-6;

    private static final double SHORT_JOINT_RAD = 0.05;

    /** A path that turns back goes around its end. */
    private static final double REVERSAL_RAD = 1e-6;

    /** Pieces that may vanish at one corner. */
    private static final int LOOK_AHEAD = 4;

    private final ConditionedContour conditioned;
    private final double sign;
    private final double offsetM;
    private final double[] starts;
    private final List<JetPiece> done = new ArrayList<>();
    private final EdgeCursor here = new EdgeCursor();

    /**
     * A run.
     *
     * @param conditioned the programmed path
     * @param side side on which the jet runs
     * @param offsetM kerf offset
     * @param startM distance along the cut at which it starts
     */
    OffsetRun(ConditionedContour conditioned, Side side, double offsetM, double startM) {
        this.conditioned = conditioned;
        this.sign = side.sign();
        this.offsetM = offsetM;
        Contour source = conditioned.source();
        this.starts = new double[source.size() + 1];
        starts[0] = startM;
        for (int i = 0; i < source.size(); i++) {
            source.load(i, here);
            starts[i + 1] = starts[i] + here.length();
        }
    }

    /** The pieces in order; none if the offset does not fit. */
    List<JetPiece> pieces() {
        Contour path = conditioned.contour();
        int dropped = 0;
        boolean isGap = false;
        for (int i = 0; i < path.size(); i++) {
            JetPiece next = offset(i);
            boolean isJoined = next != null && join(i, next, isGap);
            while (next != null && !isJoined && done.size() > 1 && dropped < LOOK_AHEAD && isShorter(last(), next)) {
                done.remove(done.size() - 1);
                dropped++;
                isGap = true;
                isJoined = join(i, next, true);
            }
            if (isJoined) {
                done.add(next);
                dropped = 0;
                isGap = false;
            } else {
                isGap = true;
                dropped++;
            }
            if (dropped > LOOK_AHEAD) {
                return List.of();
            }
        }
        return isGap ? List.of() : done;
    }

    private JetPiece last() {
        return done.get(done.size() - 1);
    }

    private static boolean isShorter(JetPiece one, JetPiece other) {
        return one.edge.length() < other.edge.length();
    }

    /** A piece beside one of the path; null if it vanishes. */
    private @Nullable JetPiece offset(int piece) {
        conditioned.contour().load(piece, here);
        EdgeCursor beside = new EdgeCursor();
        double x0 = here.startX() - sign * here.startDirectionY() * offsetM;
        double y0 = here.startY() + sign * here.startDirectionX() * offsetM;
        double x1 = here.endX() - sign * here.endDirectionY() * offsetM;
        double y1 = here.endY() + sign * here.endDirectionX() * offsetM;
        if (here.isArc()) {
            if (here.radius() - sign * Math.signum(here.sweep()) * offsetM < MIN_RADIUS_M) {
                return null;
            }
            beside.arc(x0, y0, x1, y1, here.centreX(), here.centreY(), here.sweep());
        } else {
            beside.line(x0, y0, x1, y1);
        }
        double from = starts[conditioned.firstSourceEdge(piece)];
        double to = starts[conditioned.lastSourceEdge(piece) + 1];
        return new JetPiece(beside, conditioned.contour().requirement(piece), here.radius(), from, to);
    }

    /** Joins a piece to the last one; false if they do not meet. */
    private boolean join(int piece, JetPiece next, boolean isGap) {
        if (done.isEmpty()) {
            return true;
        }
        EdgeCursor last = last().edge;
        double gap = Math.hypot(next.edge.startX() - last.endX(), next.edge.startY() - last.endY());
        double turn = next.edge.turnFrom(last);
        if (!isGap && gap <= SHORT_JOINT_M && Math.abs(turn) < SHORT_JOINT_RAD) {
            next.joinTo(last.endX(), last.endY());
            return true;
        }
        boolean isReversal = Math.abs(turn) > Math.PI - REVERSAL_RAD;
        if (!isGap && (turn * sign < 0 || isReversal)) {
            around(piece, next, -sign * Math.abs(turn));
            return true;
        }
        return meet(next);
    }

    /** An arc around an outer corner. */
    private void around(int piece, JetPiece next, double turn) {
        conditioned.contour().load(piece, here);
        EdgeCursor last = last().edge;
        EdgeCursor arc = new EdgeCursor();
        arc.arc(last.endX(), last.endY(), next.edge.startX(), next.edge.startY(), here.startX(), here.startY(), turn);
        done.add(new JetPiece(arc, last().requirement, 0, last().toM, last().toM));
    }

    /** Cuts both pieces off where they meet nearest to the corner. */
    private boolean meet(JetPiece next) {
        double[] places = new double[4];
        int count = last().edge.crossings(next.edge, places);
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            double kept = last().edge.shareAt(places[2 * i], places[2 * i + 1])
                            * last().edge.length()
                    - next.edge.shareAt(places[2 * i], places[2 * i + 1]) * next.edge.length();
            if (kept > most) {
                most = kept;
                best = i;
            }
        }
        if (best < 0) {
            return false;
        }
        double x = places[2 * best];
        double y = places[2 * best + 1];
        boolean isKept = Math.hypot(x - last().edge.startX(), y - last().edge.startY()) > MIN_RADIUS_M
                && Math.hypot(x - next.edge.endX(), y - next.edge.endY()) > MIN_RADIUS_M;
        if (isKept) {
            last().endAt(x, y);
            next.startAt(x, y);
        }
        return isKept;
    }
}
