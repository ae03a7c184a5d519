package dev.waterjet.plan;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.TiltProfile;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Splits the moves of a plan where the tilt of the head is not linear in the distance. */
final class TiltedMoves {

    /** Largest deviation of a tilt from the line between both ends of a move. */
    private static final double TOLERANCE_RAD = Math.toRadians(0.02);
    /** A shorter move is not split off. */
    private static final double SHORT_M = 5e-6;

    private final TiltProfile tilt;
    private final Quantity<Length> standOff;
    private final double[] places;
    private final double last;

    TiltedMoves(FeedPlan plan, TiltProfile tilt, Quantity<Length> standOff) {
        this.tilt = tilt;
        this.standOff = standOff;
        this.places = tilt.places(Kind.ANGLE.of(TOLERANCE_RAD)).toSi();
        this.last = plan.contour().lengthSi();
    }

    /** Tilt in which the head pierces: the one in which the cut starts. */
    MoveTilt atStart() {
        HeadTilt start = tilt.at(Kind.LENGTH.of(0));
        return new MoveTilt(start, start, standOff);
    }

    /** Adds a move that runs between two distances along the planned path, in pieces. */
    void add(Move move, double fromM, double toM, List<Move> moves) {
        double length = toM - fromM;
        int next = Arrays.binarySearch(places, fromM);
        next = next >= 0 ? next + 1 : -next - 1;
        double at = fromM;
        Point start = move.start();
        while (at < toM) {
            while (next < places.length && places[next] < at + SHORT_M) {
                next++;
            }
            boolean isLast = next >= places.length || places[next] > toM - SHORT_M;
            double end = isLast ? toM : places[next];
            Point to = isLast ? move.end() : point(move, (end - fromM) / length);
            MoveTilt piece = new MoveTilt(tilt(at), tilt(end), standOff);
            moves.add(piece(move, start, to, (end - at) / length, piece));
            at = end;
            start = to;
        }
    }

    private HeadTilt tilt(double atM) {
        return tilt.at(Kind.LENGTH.of(Math.max(0, Math.min(last, atM))));
    }

    private static Move piece(Move move, Point start, Point end, double share, MoveTilt tilt) {
        return new Move(
                move.purpose(),
                move.cut(),
                move.edge(),
                move.quality(),
                start,
                end,
                move.centre(),
                move.turn(),
                Kind.LENGTH.of(Kind.LENGTH.si(move.length()) * share),
                move.feed(),
                Kind.TIME.of(Kind.TIME.si(move.time()) * share),
                move.limit(),
                Optional.of(tilt));
    }

    /** Point of a move at a share of its length. */
    private static Point point(Move move, double share) {
        if (!move.isArc()) {
            double x = move.start().xSi();
            double y = move.start().ySi();
            return Point.ofSi(
                    x + share * (move.end().xSi() - x), y + share * (move.end().ySi() - y));
        }
        Point centre = move.centre().orElseThrow();
        double fromX = move.start().xSi() - centre.xSi();
        double fromY = move.start().ySi() - centre.ySi();
        double sign = move.turn().orElseThrow() == Side.LEFT ? 1 : -1;
        double angle = sign * share * Kind.LENGTH.si(move.length()) / Math.hypot(fromX, fromY);
        double cosine = Math.cos(angle);
        double sine = Math.sin(angle);
        return Point.ofSi(centre.xSi() + fromX * cosine - fromY * sine, centre.ySi() + fromX * sine + fromY * cosine);
    }
}
