package dev.waterjet.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.PlanBlock;
import dev.waterjet.motion.SourceBlock;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.ToolPath;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;

/** Collects the moves of a plan in order. */
final class MoveList {

    /** Ends of an arc that are nearer make a line, which differs from it by less than a nanometre. */
    private static final double SHORT_ARC_M = 1e-5;

    private final Setup setup;
    private final Quantity<Length> standOff;
    private final List<Move> moves = new ArrayList<>();
    private @Nullable Point at;
    private @Nullable TiltedMoves tilted;

    /** A list for a setup with a stand-off distance. */
    MoveList(Setup setup, Quantity<Length> standOff) {
        this.setup = setup;
        this.standOff = standOff;
    }

    List<Move> moves() {
        return moves;
    }

    /** Goes to the start of a planned path and pierces, in the tilt in which the cut starts. */
    void pierce(int cut, Point place, double pierceTimeS, FeedPlan plan) {
        if (at != null) {
            double length = Kind.LENGTH.si(at.distance(place));
            moves.add(
                    still(Move.Purpose.RAPID, cut, at, place, length, setup.rapidTimeSi(length) + setup.moveDelaySi()));
        }
        if (setup.pierceDelaySi() > 0) {
            moves.add(still(Move.Purpose.RAPID, cut, place, place, 0, setup.pierceDelaySi()));
        }
        tilted = plan.tilt().map(tilt -> new TiltedMoves(plan, tilt, standOff)).orElse(null);
        moves.add(still(Move.Purpose.PIERCE, cut, place, place, 0, pierceTimeS));
        at = place;
    }

    private Move still(Move.Purpose purpose, int cut, Point from, Point to, double lengthM, double timeS) {
        return new Move(
                purpose,
                cut,
                -1,
                Optional.empty(),
                from,
                to,
                Optional.empty(),
                Optional.empty(),
                Kind.LENGTH.of(lengthM),
                Kind.SPEED.of(lengthM > 0 ? setup.rapidSpeedSi() : 0),
                Kind.TIME.of(timeS),
                Optional.empty(),
                purpose == Move.Purpose.PIERCE && tilted != null ? Optional.of(tilted.atStart()) : Optional.empty());
    }

    /** Adds a cutting move between two distances along the planned path. */
    private void add(Move move, double fromM, double toM) {
        if (tilted == null || !(toM > fromM)) {
            moves.add(move);
        } else {
            tilted.add(move, fromM, toM, moves);
        }
        at = move.end();
    }

    /** Adds the moves of a stretch of a tool path, whose first edge has an index in the path. */
    void addStretch(int cut, FeedPlan plan, ToolPath path, int firstEdge) {
        for (PlanBlock block : plan.blocks(setup.feedChange())) {
            int edge = firstEdge + block.edge();
            boolean isArc = isArc(block.centre(), block.start(), block.end(), block.length());
            double from = Kind.LENGTH.si(block.startsAt());
            double to = from + Kind.LENGTH.si(block.length());
            Move move = new Move(
                    purpose(path.purpose(edge)),
                    cut,
                    path.sourceEdge(edge).orElse(-1),
                    quality(path.contour().requirement(edge)),
                    block.start(),
                    block.end(),
                    isArc ? block.centre() : Optional.empty(),
                    isArc ? block.turn() : Optional.empty(),
                    block.length(),
                    block.meanFeed(),
                    block.time(),
                    Optional.of(block.limit()),
                    Optional.empty());
            add(move, from, to);
        }
    }

    private static Optional<CutQuality> quality(EdgeRequirement requirement) {
        return requirement.isLead() ? Optional.empty() : Optional.of(requirement.quality());
    }

    private static Move.Purpose purpose(ToolPath.Purpose purpose) {
        return switch (purpose) {
            case LEAD_IN -> Move.Purpose.LEAD_IN;
            case CUT -> Move.Purpose.CUT;
            case TAB -> Move.Purpose.RAPID;
            case OVERCUT -> Move.Purpose.OVERCUT;
            case LEAD_OUT -> Move.Purpose.LEAD_OUT;
        };
    }

    /**
     * Adds the moves along the planned path of a cut of a program.
     *
     * @param blockOf block of the cut to which a stretch of the path belongs
     */
    void addProgrammed(int cut, FeedPlan plan, ProgramCut programmed, ToIntFunction<SourceBlock> blockOf) {
        Contour path = plan.source();
        EdgeCursor edge = new EdgeCursor();
        int loaded = -1;
        double now = 0;
        for (SourceBlock block : plan.sourceBlocks(setup.feedChange())) {
            if (block.edge() != loaded) {
                path.load(block.edge(), edge);
                loaded = block.edge();
            }
            Point start = place(edge, block.from());
            Point end = place(edge, block.to());
            Optional<Point> centre =
                    edge.isArc() ? Optional.of(Point.ofSi(edge.centreX(), edge.centreY())) : Optional.empty();
            boolean isArc = isArc(centre, start, end, block.length());
            int words = blockOf.applyAsInt(block);
            boolean isIn = words < programmed.leadIn();
            boolean isOut = words >= programmed.size() - programmed.leadOut();
            double time = Math.min(now + Kind.TIME.si(block.time()), Kind.TIME.si(plan.time()));
            Move move = new Move(
                    isIn ? Move.Purpose.LEAD_IN : isOut ? Move.Purpose.LEAD_OUT : Move.Purpose.CUT,
                    cut,
                    words,
                    quality(path.requirement(block.edge())),
                    start,
                    end,
                    isArc ? centre : Optional.empty(),
                    isArc ? Optional.of(edge.sweep() > 0 ? Side.LEFT : Side.RIGHT) : Optional.empty(),
                    block.length(),
                    block.feed(),
                    block.time(),
                    Optional.of(block.limit()),
                    Optional.empty());
            add(move, plan.distanceAtSi(now), plan.distanceAtSi(time));
            now = time;
        }
    }

    /** Whether a move is posted as an arc: a short one whose ends nearly meet could be read as a full circle. */
    private static boolean isArc(Optional<Point> centre, Point start, Point end, Quantity<Length> length) {
        return centre.isPresent()
                && (Kind.LENGTH.si(start.distance(end)) > SHORT_ARC_M
                        || Kind.LENGTH.si(length) > Math.PI * Kind.LENGTH.si(start.distance(centre.get())));
    }

    private static Point place(EdgeCursor edge, double share) {
        if (share == 0) {
            return Point.ofSi(edge.startX(), edge.startY());
        }
        return share == 1 ? Point.ofSi(edge.endX(), edge.endY()) : Point.ofSi(edge.xAt(share), edge.yAt(share));
    }
}
