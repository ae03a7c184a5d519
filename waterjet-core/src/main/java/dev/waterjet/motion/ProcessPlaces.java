package dev.waterjet.motion;

import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import org.jspecify.annotations.Nullable;

/**
 * Walk over a path that collects the feed of each edge and the slowdown of each corner, arc and end.
 *
 * <p>A joint is a corner if a curve with its turn over the shorter neighbour would have a sagitta above the flattening of the
 * drawing; a smaller turn comes from sampling a curve. No fixed angle decides. Smaller turns to one side that follow one another
 * nearer than twice the spread of the dose are one bend, such as the cut-off tip of an extended corner.
 */
final class ProcessPlaces {

    /** A turn below this is rounding of coordinates. */
    private static final double LEAST_TURN_RAD = 1e-7;

    private final Contour path;
    private final int partSign;
    private final EdgePolicy[] policies;
    private final boolean isLoop;
    private final double flatteningM;
    private final double reachFactor;
    private final PathPlaces places = new PathPlaces();
    private final PathPieces pieces;

    private EdgeCursor edge = new EdgeCursor();
    private EdgeCursor before = new EdgeCursor();
    private double atM;

    private final EdgeCursor within = new EdgeCursor();
    private final EdgeCursor after = new EdgeCursor();

    /** Edge after the last joint of the last bend. */
    private int bendEnd;

    ProcessPlaces(
            Contour path, boolean isLoop, Side part, EdgePolicy[] policies, double flatteningM, double reachFactor) {
        this.path = path;
        this.isLoop = isLoop;
        this.partSign = part.sign();
        this.policies = policies;
        this.flatteningM = flatteningM;
        this.reachFactor = reachFactor;
        this.pieces = new PathPieces(path.size());
    }

    PathPieces pieces() {
        return pieces;
    }

    /**
     * Walks.
     *
     * @param endsInScrap whether the end of the path is overlapped or lies in scrap
     */
    PathPlaces walk(boolean endsInScrap) {
        int n = path.size();
        EdgePolicy last = policy(n - 1);
        Slowdown seam = null;
        FeedLimit seamLimit = FeedLimit.SEPARATION;
        if (isLoop && !endsInScrap) {
            path.load(n - 1, before);
            path.load(0, edge);
            seam = corner(last, policy(0));
            seamLimit = limitOf(seam, isInside());
            if (seam != null) {
                add(0, 0, seam, policy(0), seamLimit);
            }
        }
        for (int i = 0; i < n; i++) {
            path.load(i, edge);
            if (i > 0) {
                joint(i);
            }
            addEdge(policy(i), bounding(i));
            EdgeCursor swapped = before;
            before = edge;
            edge = swapped;
        }
        Slowdown end = endsInScrap ? null : last.end();
        if (seam != null && (end == null || seam.feedMPerS() <= end.feedMPerS())) {
            add(atM, atM, seam, last, seamLimit);
        } else if (end != null) {
            add(atM, atM, end, last, FeedLimit.SEPARATION);
        }
        return places;
    }

    private EdgePolicy policy(int index) {
        return policies[path.requirementIndex(index)];
    }

    /** Policy of an edge, or of the edge of the part that a lead-out leaves; null where the bottom edge does not matter. */
    private @Nullable EdgePolicy bounding(int i) {
        boolean isLeadOut = !policy(i).isSlowing() && i > 0 && policy(i - 1).isSlowing();
        return isLeadOut ? policy(i - 1) : policy(i).isSlowing() ? policy(i) : null;
    }

    /** The joint before an edge. */
    private void joint(int index) {
        EdgePolicy from = policy(index - 1);
        Slowdown slowdown = corner(from, policy(index));
        if (slowdown != null) {
            add(atM, atM, slowdown, from, limitOf(slowdown, isInside()));
        } else if (index > bendEnd) {
            bend(index);
        }
    }

    /** A bend of several joints, of which the first is the one before an edge. What rounding turns neither starts nor ends one. */
    private void bend(int index) {
        EdgePolicy from = policy(index - 1);
        double turn = edge.turnFrom(before);
        if (Math.abs(turn) <= LEAST_TURN_RAD) {
            return;
        }
        double length = 0;
        double sinceTurn = 0;
        bendEnd = index;
        path.load(index, within);
        for (int i = index; i + 1 < path.size() && !within.isArc(); i++) {
            sinceTurn += within.length();
            path.load(i + 1, after);
            double more = after.turnFrom(within);
            boolean isTurn = Math.abs(more) > LEAST_TURN_RAD;
            boolean isEnd = isTurn && (more * turn < 0 || isCorner(more, Math.min(within.length(), after.length())));
            if (isEnd || sinceTurn > 2 * from.spreadM()) {
                break;
            }
            if (isTurn) {
                turn += more;
                length += sinceTurn;
                sinceTurn = 0;
                bendEnd = i + 1;
            }
            path.load(i + 1, within);
        }
        if (length > 0 && from.isSlowing() && policy(bendEnd).isSlowing()) {
            boolean isInside = turn * partSign < 0;
            double radius = length / Math.abs(turn);
            Slowdown slowdown =
                    slower(from.arc(radius, length, isInside), policy(bendEnd).arc(radius, length, isInside));
            if (slowdown != null) {
                add(atM, atM + length, slowdown, from, limitOf(slowdown, isInside));
            }
        }
    }

    private boolean isInside() {
        return edge.turnFrom(before) * partSign < 0;
    }

    /**
     * Slowdown at the joint of the edge before and the present one; null if it is no corner of the part. Where a lead-out turns
     * off into the scrap, the front lags behind the nozzle into the part, as at a re-entrant corner. Behind a lead-in it lags in
     * the scrap, and then along the edge.
     */
    private @Nullable Slowdown corner(EdgePolicy from, EdgePolicy to) {
        double turn = edge.turnFrom(before);
        double shorter = Math.min(before.length(), edge.length());
        if (!isCorner(turn, shorter) || !from.isSlowing()) {
            return null;
        }
        if (!to.isSlowing()) {
            return isInside() ? from.corner(Math.abs(turn), true) : null;
        }
        Slowdown first = from.corner(Math.abs(turn), isInside());
        return from == to ? first : slower(first, to.corner(Math.abs(turn), isInside()));
    }

    private boolean isCorner(double turnRad, double shorterM) {
        return Math.abs(turnRad) > LEAST_TURN_RAD && shorterM * Math.abs(turnRad) / 8 > flatteningM;
    }

    private static @Nullable Slowdown slower(@Nullable Slowdown one, @Nullable Slowdown other) {
        return other == null || (one != null && one.feedMPerS() <= other.feedMPerS()) ? one : other;
    }

    private static FeedLimit limitOf(@Nullable Slowdown slowdown, boolean isInside) {
        if (slowdown != null && slowdown.reason() == SlowdownReason.SEPARATION) {
            return FeedLimit.SEPARATION;
        }
        return isInside ? FeedLimit.LAG_AT_INSIDE_CORNER : FeedLimit.LAG_AT_OUTSIDE_CORNER;
    }

    private void addEdge(EdgePolicy policy, @Nullable EdgePolicy bounding) {
        if (edge.isArc()) {
            pieces.arc(edge.startDirectionX(), edge.startDirectionY(), edge.radius(), edge.sweep());
        } else {
            pieces.line(edge.endX() - edge.startX(), edge.endY() - edge.startY());
        }
        double end = pieces.lengthM();
        places.edge(atM, end, policy.feedMPerS(), reach(policy.lagM()), policy.limit());
        boolean isInside = edge.sweep() * partSign < 0;
        // on the arc of a lead-out the front swings wide into the part; on the other side there is scrap
        if (edge.isArc() && bounding != null && (isInside || bounding == policy)) {
            Slowdown slowdown = bounding.arc(edge.radius(), edge.length(), isInside);
            if (slowdown != null) {
                FeedLimit limit =
                        slowdown.reason() == SlowdownReason.SEPARATION ? FeedLimit.SEPARATION : FeedLimit.LAG_ON_ARC;
                add(atM, end, slowdown, policy, limit);
            }
        }
        atM = end;
    }

    private void add(double from, double to, Slowdown slowdown, EdgePolicy policy, FeedLimit limit) {
        if (slowdown.feedMPerS() < policy.feedMPerS() || !slowdown.isWithinTolerance()) {
            places.slowdown(from, to, slowdown, reach(slowdown.zoneM()), limit);
        }
    }

    /** A reach of a micrometre stands for none: the place itself stays. */
    private double reach(double zoneM) {
        return Math.max(reachFactor * zoneM, 1e-6);
    }
}
